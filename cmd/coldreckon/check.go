package main

import (
	"cmp"
	"fmt"
	"math"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// checkCommand holds the log of a running unit against what was promised.
func checkCommand(out environment) *cobra.Command {
	var unit, water string
	var to printer
	cmd := &cobra.Command{
		Use:   "check FILE LOG.csv",
		Short: "Hold a log of the running unit against what was promised",
		Long: `Reads the log of a running unit and sets what it did beside what the boat's
answers lead one to expect at the temperatures logged: charge, running time, leak
and efficiency, and whether each is inside its range. Where it is not, the likely
causes follow with the check that tells them apart. Nothing is written to FILE;
tell in it the work done since.

The first line of the log names its columns, in any order: date (and time), box,
cabin, and one of amps (mean since the row before), Ah drawn (a counter) or run
(share of the time). Rows every five to twenty minutes tell most; ten hours a
night with the lid shut are what leak and efficiency are told apart by. A column
shut with yes says that the lid stayed shut.`,
		Example: `  coldreckon check boat.yaml running.csv
  coldreckon check boat.yaml running.csv --water "20 kg" -o check.pdf`,
		Args: arguments(2, 2, "an answers FILE and a LOG.csv"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := to.settle(out, args...); err != nil {
				return err
			}
			if err := once("-", args...); err != nil {
				return err
			}
			pack, err := rules.Load()
			if err != nil {
				return err
			}
			boat, err := out.boat(args[0], nil, pack.Book)
			if err != nil {
				return err
			}
			id := economics.OptionID(unit)
			if id != economics.SmallUnit && id != economics.LargerUnit {
				if boat, id, err = boat.WithOffer(unit, &pack.Book); err != nil {
					return misuse("", "--unit: %v", err)
				}
			}
			log, err := out.log(args[1], water, boat.Units)
			if err != nil {
				return err
			}
			ground, err := boat.Ground()
			if err != nil {
				return err
			}
			found, err := economics.CheckLog(boat, ground, id, log)
			if err != nil {
				return misuse("'coldreckon check --help' tells what a log needs.", "%s: %v", args[1], err)
			}
			return to.print(cmd.Context(), out, boat.Units, func(sheet.Info) (layout.Document, error) { return checkPage(boat, &found, log.WaterTold), nil })
		},
		ValidArgsFunction: completeTwoFiles,
	}
	cmd.Flags().StringVar(&unit, "unit", "small", "which unit of the answers it is: small, larger or the `NAME` of a quotation")
	cmd.Flags().StringVar(&water, "water", "", "`WEIGHT` of jugs of water that stood in the box all the while")
	to.addFlags(cmd, "text", "pdf", "md", "html")
	return cmd
}

// checkPage is the one page: promised, measured, inside or not, and why. weighed
// tells whether water of known weight stood in the box.
func checkPage(boat economics.Boat, c *economics.Check, weighed bool) layout.Document {
	l := &c.Lesson
	d := layout.Document{Title: cmp.Or(boat.Name, "Your boat") + ": did the unit do what was promised?", Subject: "A log held against the answers", Foot: "coldreckon " + buildVersion()}
	d.Part(layout.Heading{Level: 0, Text: d.Title})
	d.Add(layout.Para{Style: layout.Lede, Text: checkVerdict(c)})
	temperature := func(x float64) string { return quantity.FormatTemperature(quantity.Celsius(x), boat.Units) }
	d.Add(layout.Para{Text: fmt.Sprintf("The log: %d rows over %s days, %s to %s. On average the box held %s in a cabin of %s.", l.Rows,
		quantity.FormatNumber(math.Round(10*l.Days)/10), l.From.Format(time.DateOnly), l.To.Format(time.DateOnly), temperature(l.BoxC), temperature(l.CabinC))})
	ah := func(x float64) string { return quantity.FormatCharge(quantity.AmpHour(words.Round(x))) }
	share := func(x float64) string { return quantity.FormatShare(quantity.Fraction(words.Round(x))) }
	leak := func(x float64) string { return quantity.FormatConductance(quantity.WattPerKelvin(x), boat.Units) }
	t := layout.Table{Columns: []layout.Column{{Quiet: true, Share: 0.26}, {Head: "Promised"}, {Head: "Measured"}, {Head: "Inside?"}}}
	span := func(print func(float64) string, r quantity.Range) string {
		return print(r.Typical) + " (" + quantity.Span(print(r.Low), print(r.High)) + ")"
	}
	row := func(label string, print func(float64) string, promised quantity.Range, measured string, inside bool) {
		t.Rows = append(t.Rows, []string{label, span(print, promised), measured, map[bool]string{true: "yes", false: "no"}[inside]})
	}
	row("Charge a day", ah, c.PromisedAh, ah(l.AhPerDay), c.Inside())
	row("Share of the time it runs", share, c.PromisedRun, share(l.RunShare), l.RunShare >= c.PromisedRun.Low-0.02 && l.RunShare <= c.PromisedRun.High+0.02)
	if l.Told == economics.TellsBoth {
		meets := func(a, b quantity.Range) bool { return a.Low <= b.High && b.Low <= a.High }
		row("Leak of the box", leak, c.PromisedLeak, span(leak, l.Leak), meets(l.Leak, c.PromisedLeak))
		row("Unit's share of the ideal", share, c.PromisedEta, span(share, l.Eta), meets(l.Eta, c.PromisedEta))
	}
	d.Add(t)
	d.Add(layout.Para{Style: layout.Small, Text: checkTells(l, len(c.Causes) > 0 && !weighed)})
	if len(c.Causes) > 0 {
		var items []layout.Item
		for _, cause := range c.Causes {
			items = append(items, layout.Item{Lead: causes[cause].what, Text: causes[cause].check})
		}
		d.Add(layout.Heading{Level: 1, Text: "Likely causes, and what tells them apart"}, layout.List{Mark: layout.Number, Items: items},
			layout.Para{Style: layout.Small, Text: "Never open the refrigerant circuit: its charge and its repair are for a licensed technician."})
	}
	return d
}

func checkVerdict(c *economics.Check) string {
	switch {
	case c.Inside() && len(c.Causes) == 0:
		return "As promised: the charge it took lies inside the range that was to be expected in this weather."
	case c.Inside():
		return "The charge it took lies inside the promise, but the log shows something else to look at."
	case c.Lesson.AhPerDay < c.PromisedAh.Low:
		return "Better than promised: it took less charge than was to be expected in this weather."
	}
	return "Not as promised: it took more charge than was to be expected in this weather."
}

// checkTells says which of leak and efficiency the log can tell.
func checkTells(l *economics.RunLesson, narrow bool) string {
	var parts []string
	if l.Told == economics.TellsBoth {
		parts = append(parts, fmt.Sprintf("The quiet nights tell leak and efficiency apart: the box warmed with the unit off in %d spells.", l.SpellsOff))
	} else {
		parts = append(parts, "This log tells only leak and efficiency together, not one without the other. Rows every ten minutes through some nights would tell them apart.")
	}
	if narrow {
		parts = append(parts, "Jugs of water of known weight in the box through some nights, told with --water, would narrow both.")
	}
	if l.Gaps > 0 {
		parts = append(parts, fmt.Sprintf("Left out: %s without readings, or with a counter set back.", count(l.Gaps, "stretch")))
	}
	return strings.Replace(strings.Join(parts, " "), "stretchs", "stretches", 1)
}

// causes has words for each cause, and the check that tells it from the others.
var causes = map[economics.Cause]struct{ what, check string }{
	economics.LidOrFoam:  {"The box lets in more heat than was told: lid, drain or wet foam.", "Close the lid on a strip of paper all round: where it slides out, the seal is open. Plug the drain for a night. A night's test with jugs of water tells the leak without the unit ('coldreckon boxtest')."},
	economics.Condenser:  {"The unit makes less cold from its current: warm air at the condenser, a blocked fan or strainer, or a low charge.", "Measure the air that enters the condenser: more than 5 °C (9 °F) over the cabin means it breathes its own heat. Clean fins or strainer and see that fan or pump runs. If frost covers only part of the plate after an hour's running, have a licensed technician look at the charge."},
	economics.SetColder:  {"The thermostat is set colder than the answers say.", "Turn it one step warmer and log two more days; a box at 4 to 5 °C (39 to 41 °F) is cold enough."},
	economics.TooSmall:   {"It runs without a pause and the box stays warm: too little unit for this heat.", "Log one night with nothing put in and the lid shut: if it still never pauses, it is the box or the condenser, else what is put in."},
	economics.OtherLoads: {"Something else is on the meter while the unit rests.", "Switch the unit off at its own switch for ten minutes: what the meter still shows is not the unit's."},
	economics.MoreUse:    {"More is opened and stowed than the answers say.", "Log two days with the lid opened half as often and food put in cold: if the charge falls, it was the use."},
}
