package main

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"coldreckon/economics"
	"coldreckon/economics/climate"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/rules"
	"coldreckon/rules/strict"
	"coldreckon/wizard/answers"
	"coldreckon/wizard/questions"
)

// logsKey is where an answers file keeps what logs have taught.
const logsKey = "evidence.logs"

// learnCommand refines leak and use of a boat's box by a log kept aboard.
func learnCommand(out environment) *cobra.Command {
	var water string
	var dry bool
	cmd := &cobra.Command{
		Use:   "learn LOG.csv FILE",
		Short: "Learn from a log of ice or temperatures how much the box leaks",
		Long: `Reads a log kept aboard and works out by least squares how much heat the box
lets in, and how much comes with food and openings. What it finds is written
into the answers file FILE, under evidence.logs, beside all else that is known
of the box; the rest of the file stays as it is. Three lines tell what that
changes in the answer.

The first line of the log names its columns, in any order:
  date          with a time of day, or with a column time: 2025-07-14 15:30;
                14/07/2025 or 07/14/2025 where a row tells which it is
  ice           weight put into the box then
  left          weight of the ice found then, before more was put in; optional
  shut          yes where the lid stayed shut until the next row of ice; optional
  box, cabin    temperatures; optional beside ice
A heading may name its unit: ice (lb), box °F. Ice without left counts as melted
by the next purchase. A log without ice is one of an empty box, or of jugs of
cold water in it, that warms by itself with lid closed and unit off: say with
--water how much water stood in it.

A log of the running unit is read too: box, cabin, and amps (mean since the row
before), Ah drawn (a counter) or run (share of the time). It takes the unit for a
sound one of its kind; 'coldreckon check' does not.

A log that cannot tell the answer is refused, with what is missing.`,
		Example: `  coldreckon learn ice.csv boat.yaml --dry-run
  coldreckon learn ice.csv boat.yaml
  coldreckon learn warming.csv boat.yaml --water "10 kg"
  coldreckon learn running.csv boat.yaml --dry-run`,
		Args: arguments(2, 2, "a LOG.csv and an answers FILE"),
		RunE: func(cmd *cobra.Command, args []string) error {
			return learn(cmd.Context(), out, args[0], args[1], water, dry)
		},
		ValidArgsFunction: completeTwoFiles,
	}
	cmd.Flags().StringVar(&water, "water", "", "`WEIGHT` of the water that stood in a box without ice; 0 kg for none")
	cmd.Flags().BoolVar(&dry, "dry-run", false, "show what would be learned, write nothing")
	return cmd
}

func learn(ctx context.Context, out environment, logName, fileName, water string, dry bool) error {
	switch {
	case logName == "-" && fileName == "-":
		return misuse("Name a file for one of them.", "standard input: it cannot be both log and answers")
	case !dry && (fileName == "-" || strings.HasPrefix(fileName, samplePrefix)):
		return misuse("'coldreckon sample NAME > boat.yaml' makes a file of one; --dry-run writes nothing.",
			"%s: it cannot be written to. Give the name of an answers file.", fileName)
	}
	if !dry {
		if err := writable(fileName); err != nil { // before it is reckoned
			return err
		}
	}
	pack, err := rules.Load()
	if err != nil {
		return err
	}
	before, err := out.answersText(fileName)
	if err != nil {
		return err
	}
	file, err := out.understood(fileName, before)
	if err != nil {
		return err
	}
	boat, faults := file.Boat(pack.Book)
	if len(faults) > 0 {
		return strict.Faults(faults).OrNil()
	}
	log, err := out.log(logName, water, boat.Units)
	if err != nil {
		return err
	}
	l, err := study(boat, log)
	if err != nil {
		return misuse(logHint, "%s: %v", logName, err)
	}
	if err := keep(file, boat, l.lesson.Record); err != nil {
		return misuse(logHint, "%s: no one box has such readings (%v)", logName, err)
	}
	after, faults := file.Boat(pack.Book)
	if len(faults) > 0 {
		return strict.Faults(faults).OrNil()
	}
	if l.after, err = economics.Weigh(after, l.ground); err != nil {
		return misuse("", "%s: %v", fileName, err)
	}
	l.useAfter = after.Evidence.Use()
	change, err := answerChanged(ctx, boat, after, pack.Book)
	if err != nil {
		return err
	}
	told := append(l.plain(boat.Units), change...)
	if dry {
		fmt.Fprintln(out.stderr, "Nothing was written.")
		return out.result(told)
	}
	var written bytes.Buffer
	if err := file.Write(&written); err != nil {
		return err
	}
	kept := savedFile{fileName, before}
	if err := kept.save(written.Bytes()); err != nil { // before it is told, as a reader may have left
		return err
	}
	fmt.Fprintf(out.stderr, "%s now holds it under %s.\n", oneLine(fileName), logsKey)
	return out.result(told)
}

const logHint = "'coldreckon learn --help' tells what a log needs."

// log reads a log file and the weight of the water.
func (out environment) log(name, water string, sys quantity.System) (economics.Log, error) {
	data, err := out.read(name, logFile)
	if err != nil {
		return economics.Log{}, err
	}
	var log economics.Log
	if log.Rows, err = heat.ParseLog(bytes.NewReader(data), sys); err != nil {
		return log, misuse(logHint, "%s: %v", name, err)
	}
	for _, row := range log.Rows {
		if row.ClockBack {
			fmt.Fprintf(out.stderr, "%s: line %d: the clock went back within an hour, as at the end of summer time; the rows after it count an hour on.\n", oneLine(name), row.Line)
		}
	}
	if water == "" {
		return log, nil
	}
	if log.Water, err = quantity.ParseMass(water, sys); err != nil {
		return log, misuse("", "--water: %v", err)
	}
	if !(log.Water >= 0 && log.Water <= 300) {
		return log, misuse("", "--water: %q cannot be. Give 0 to 300 kg.", water)
	}
	log.WaterTold = true
	return log, nil
}

// A lesson is what one log taught of one boat, and what was known before.
type lesson struct {
	lesson              economics.Lesson
	ground              climate.Ground
	before, after       economics.BoxFigures
	useBefore, useAfter quantity.Range
}

func study(boat economics.Boat, log economics.Log) (lesson, error) {
	var l lesson
	var err error
	if l.ground, err = boat.Ground(); err != nil {
		return l, err
	}
	if l.before, err = economics.Weigh(boat, l.ground); err != nil {
		return l, err
	}
	l.useBefore = boat.Evidence.Use()
	l.lesson, err = economics.Learn(boat, l.ground, log)
	return l, err
}

// keep puts the lesson among the answers of the file.
func keep(file *answers.File, boat economics.Boat, record heat.Learnt) error {
	boat.Evidence = boat.Evidence.WithLog(record)
	boat.Known = map[string]quantity.How{logsKey: quantity.Measured}
	in, _ := questions.Given(&boat, logsKey)
	return file.Accept(logsKey, in)
}

// mostShown bounds the rows whose residuals are listed.
const mostShown = 3

// plain says what was learned, in a few lines.
func (l lesson) plain(sys quantity.System) []byte {
	if l.lesson.Running != nil {
		return l.running(sys)
	}
	var b bytes.Buffer
	r, fit := l.lesson.Record, l.lesson.Fit
	rows := "stays of ice"
	if r.Of == heat.OfTemperatures {
		rows = "readings of box and cabin"
	}
	fmt.Fprintf(&b, "Log: %d %s, %s to %s.\n", r.Rows, rows, r.From, r.To)
	if n := l.lesson.TooLong; n > 0 {
		fmt.Fprintf(&b, "Left out: %s longer than a trip.\n", count(n, "stay"))
	}
	if n := l.lesson.Blurred; n > 0 {
		fmt.Fprintf(&b, "Left out for surer ones: %s with the first ice of a trip, or with none left at the end.\n", count(n, "stay"))
	}
	if r.Of == heat.OfIce {
		fmt.Fprintf(&b, "Warmth: %s.\n", warmth(l.lesson.Read, r.Rows))
	}
	leak := func(ua quantity.WattPerKelvin) string { return quantity.FormatConductance(ua, sys) }
	span := func(box economics.BoxFigures) string {
		figure, unit, _ := strings.Cut(leak(box.Leak), " ")
		return fmt.Sprintf("%s (%s) %s", figure, strings.TrimSuffix(quantity.Span(leak(box.LeakLow), leak(box.LeakHigh)), " "+unit), unit)
	}
	fmt.Fprintf(&b, "Leak: %s by the log alone, give or take %s.\n", leak(r.UA), quantity.FormatShare(r.LogSD))
	fmt.Fprintf(&b, "  before %s\n  now    %s in 8 of 10 cases\n", span(l.before), span(l.after))
	times := func(u quantity.Range) string {
		return fmt.Sprintf("%.2g (%.2g to %.2g)", u.Typical, u.Low, u.High)
	}
	switch {
	case r.Of == heat.OfTemperatures:
		b.WriteString("Use: a closed box tells nothing of food and openings; they stay as they were.\n")
	case r.UseLogSD > 0:
		fmt.Fprintf(&b, "Use: food and openings bring %.2g times what the answers say, give or take %s.\n", r.Use, quantity.FormatShare(r.UseLogSD))
		fmt.Fprintf(&b, "  before %s\n  now    %s times in 8 of 10 cases\n", times(l.useBefore), times(l.useAfter))
	default:
		fmt.Fprintf(&b, "Use: the log cannot tell food and openings from the leak; they stay at %s times\n", times(l.useBefore))
		b.WriteString("  what the answers say. Some stays with the lid kept shut would tell.\n")
	}
	fmt.Fprintf(&b, "Unexplained: %s a row%s.\n", l.residual(fit.ResidualSD, sys), l.worst(sys))
	fmt.Fprintf(&b, "%s\n", l.after.Evidence.Why)
	return b.Bytes()
}

// running says what the log of a running unit taught.
func (l lesson) running(sys quantity.System) []byte {
	var b bytes.Buffer
	run := l.lesson.Running
	leak := func(x float64) string { return quantity.FormatConductance(quantity.WattPerKelvin(x), sys) }
	share := func(x float64) string { return quantity.FormatShare(quantity.Fraction(math.Round(100*x) / 100)) }
	fmt.Fprintf(&b, "Log: %d rows of a running unit, %s to %s; it took %.0f Ah a day.\n", run.Rows, l.lesson.Record.From, l.lesson.Record.To, run.AhPerDay)
	fmt.Fprintf(&b, "Leak: %s by the log alone (%s in 8 of 10 cases).\n", leak(run.Leak.Typical), quantity.Span(leak(run.Leak.Low), leak(run.Leak.High)))
	fmt.Fprintf(&b, "  before %s (%s)\n  now    %s (%s)\n", leak(float64(l.before.Leak)), quantity.Span(leak(float64(l.before.LeakLow)), leak(float64(l.before.LeakHigh))),
		leak(float64(l.after.Leak)), quantity.Span(leak(float64(l.after.LeakLow)), leak(float64(l.after.LeakHigh))))
	fmt.Fprintf(&b, "Unit: %s of the ideal efficiency (%s).\n", share(run.Eta.Typical), quantity.Span(share(run.Eta.Low), share(run.Eta.High)))
	fmt.Fprintf(&b, "%s\n%s\n", checkTells(run, false), l.after.Evidence.Why)
	return b.Bytes()
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// warmth says where the temperatures of a log of ice come from.
func warmth(read, rows int) string {
	switch {
	case read == 0:
		return "by the climate of the ground and the ice in the box"
	case read < rows:
		return fmt.Sprintf("as read in %s, else by the climate and the ice in the box", count(read, "stay"))
	}
	return "as read"
}

// residual prints what the fit leaves of a row: ice, or degrees.
func (l lesson) residual(x float64, sys quantity.System) string {
	if l.lesson.Record.Of == heat.OfTemperatures {
		return quantity.FormatTemperatureDifference(quantity.Kelvin(math.Abs(x)), sys)
	}
	return quantity.FormatMass(quantity.Kilogram(math.Abs(x)), sys)
}

// worst names the rows that the fit explains least.
func (l lesson) worst(sys quantity.System) string {
	items := slices.Clone(l.lesson.Items)
	slices.SortStableFunc(items, func(a, b economics.LessonItem) int { return cmp.Compare(math.Abs(b.Residual), math.Abs(a.Residual)) })
	more, less := "more than fits", "less than fits"
	if l.lesson.Record.Of == heat.OfTemperatures {
		more, less = "warmer than fits", "colder than fits"
	}
	var parts []string
	for _, it := range items[:min(mostShown, len(items))] {
		way := more
		if it.Residual < 0 {
			way = less
		}
		when := it.From.Format("2006-01-02 15:04")
		if it.From.Equal(it.From.Truncate(24 * time.Hour)) {
			when = it.From.Format(time.DateOnly)
		}
		parts = append(parts, fmt.Sprintf("\n  %s: %s %s", when, l.residual(it.Residual, sys), way))
	}
	return "; most" + strings.Join(parts, ",")
}
