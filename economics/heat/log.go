package heat

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"sort"
	"strings"
	"time"

	"coldreckon/economics/quantity"
)

// LogRow is one line of a kept log. A cell left empty is false or zero.
type LogRow struct {
	Line       int // in the file, from 1
	At         time.Time
	Ice        quantity.Kilogram // ice put in then, 0 for none
	Left       quantity.Kilogram // ice found then, before more was put in; counts only when LeftRead
	Box, Cabin quantity.Celsius
	Amps       quantity.Ampere   // drawn by the unit then, or on average since the row before; counts only when AmpsRead
	Drawn      quantity.AmpHour  // a counter of what was drawn so far; counts only when DrawnRead
	Run        quantity.Fraction // of the time since the row before; counts only when RunRead
	LeftRead   bool
	AmpsRead   bool
	DrawnRead  bool
	RunRead    bool
	Shut       bool // the lid stays shut from here to the next row of ice
	BoxRead    bool
	CabinRead  bool
}

// maxLogBytes bounds a log: an hourly one of ten years is under 4 MB.
const maxLogBytes = 8 << 20

// ParseLog reads a log as comma-, semicolon- or tab-separated text, its first
// line naming the columns in any order: date, time or date-time; ice or weight;
// left; shut (yes or no); box; cabin or air; amps; Ah drawn, as a counter; run, as
// a share of the time. A unit may stand in the heading
// ("box °F", "ice (lb)") or in the cell ("40 F", "10 lb"); a bare figure under a
// bare heading takes the owner's system. Dates are written 2025-07-14, with a
// time as 2025-07-14 15:30; 14.07.2025 is read too. Columns of other names are
// left alone, empty lines skipped, rows sorted by time; two rows alike are
// refused.
//
// Ice is from 0 to 1000 kg, temperatures from -60 to 60 °C, years from 1950 to
// 2200, the whole log at most 8 MB. An error names line, field, what was found
// and what is expected.
func ParseLog(r io.Reader, sys quantity.System) ([]LogRow, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxLogBytes+1))
	if err != nil {
		return nil, fmt.Errorf("the log cannot be read: %w", err)
	}
	if len(text) > maxLogBytes {
		return nil, fmt.Errorf("the log has over %d MB; want a smaller one", maxLogBytes>>20)
	}
	body := strings.TrimPrefix(string(text), "\ufeff")
	in := csv.NewReader(strings.NewReader(body))
	in.Comma = separator(body)
	in.FieldsPerRecord = -1
	in.TrimLeadingSpace = in.Comma != '\t' // a tab is space too
	in.LazyQuotes = true

	heading, err := in.Read()
	if errors.Is(err, io.EOF) {
		return nil, errors.New("line 1: found nothing, expected a heading such as date, ice kg")
	}
	if err != nil {
		return nil, csvError(err)
	}
	if err := oneLine(in, heading); err != nil {
		return nil, err
	}
	columns, err := parseHeading(heading, sys)
	if err != nil {
		return nil, err
	}
	var rows []LogRow
	for {
		record, err := in.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, csvError(err)
		}
		if err := oneLine(in, record); err != nil {
			return nil, err
		}
		line, _ := in.FieldPos(0)
		row, empty, err := columns.row(line, record)
		if err != nil {
			return nil, err
		}
		if !empty {
			rows = append(rows, row)
		}
	}
	if len(rows) == 0 {
		return nil, errors.New("the log has a heading but no rows; want one row per purchase or reading")
	}
	sort.SliceStable(rows, func(i, j int) bool { return rows[i].At.Before(rows[j].At) })
	if err := eachOnce(rows); err != nil {
		return nil, err
	}
	return rows, nil
}

// eachOnce refuses rows, sorted by time, of which two are alike in all that is
// read: pasted twice, the ice of one would count double.
func eachOnce(rows []LogRow) error {
	seen := map[LogRow]int{} // by the row without its line
	for i, row := range rows {
		if i > 0 && !row.At.Equal(rows[i-1].At) {
			clear(seen)
		}
		bare := row
		bare.Line, bare.At = 0, time.Time{}
		if bare == (LogRow{}) {
			continue // of other columns, which nobody reads
		}
		if first := seen[bare]; first > 0 {
			return fmt.Errorf("line %d: found all of line %d again, expected each row once; ice put in twice at one time is one row with the sum", row.Line, first)
		}
		seen[bare] = row.Line
	}
	return nil
}

// oneLine refuses a cell that an open quote runs on over the lines below.
func oneLine(in *csv.Reader, record []string) error {
	for i, cell := range record {
		if strings.ContainsAny(cell, "\r\n") {
			line, _ := in.FieldPos(i)
			return fmt.Errorf("line %d: found a quote that is open at the line's end, expected it closed or left out", line)
		}
	}
	return nil
}

func csvError(err error) error {
	var e *csv.ParseError
	if errors.As(err, &e) {
		return fmt.Errorf("line %d: %w; want cells between commas, semicolons or tabs", e.Line, e.Err)
	}
	return fmt.Errorf("the log cannot be read: %w", err)
}

// separator gives the mark that the heading uses most.
func separator(body string) rune {
	heading, _, _ := strings.Cut(body, "\n")
	best, most := ',', 0
	for _, mark := range []rune{',', ';', '\t'} {
		if n := strings.Count(heading, string(mark)); n > most {
			best, most = mark, n
		}
	}
	return best
}

// column tells where a field stands, -1 for nowhere, how the heading wrote it,
// the unit it names for bare figures, "" for none, and the system that they
// take without one.
type column struct {
	at   int
	name string
	unit string
	sys  quantity.System
}

// figure gives a cell with the unit that it takes.
func (f column) figure(cell string) string {
	if last := len(cell) - 1; f.unit != "" && '0' <= cell[last] && cell[last] <= '9' {
		return cell + " " + f.unit
	}
	return cell
}

type logColumns struct {
	date, clock, ice, left, shut, box, cabin, amps, drawn, run column

	count int // cells of the heading
}

func parseHeading(cells []string, sys quantity.System) (logColumns, error) {
	none := column{at: -1, sys: sys}
	c := logColumns{none, none, none, none, none, none, none, none, none, none, len(cells)}
	for i, cell := range cells {
		words := strings.FieldsFunc(strings.ToLower(cell), func(r rune) bool {
			return strings.ContainsRune(" ()[]/_-,.:°º", r)
		})
		field := c.field(words)
		if field == nil {
			continue
		}
		if field.at >= 0 {
			return c, fmt.Errorf("line 1: found two columns of one kind, %q and %q, expected each once", field.name, strings.TrimSpace(cell))
		}
		*field = column{at: i, name: strings.TrimSpace(cell), sys: sys}
		if err := field.takeUnit(words, c.holds(field)); err != nil {
			return c, err
		}
	}
	if c.date.at < 0 {
		c.date, c.clock = c.clock, none // a column of times alone holds date and time
	}
	if c.date.at < 0 {
		return c, fmt.Errorf("line 1: found the columns %s, expected one named date or time", list(cells))
	}
	unit := c.amps.at >= 0 || c.drawn.at >= 0 || c.run.at >= 0
	if c.ice.at < 0 && (c.box.at < 0 || c.cabin.at < 0 && !unit) {
		return c, fmt.Errorf("line 1: found the columns %s, expected ice, or box and cabin, beside %s", list(cells), c.date.name)
	}
	return c, nil
}

// holds gives what a column's figures measure, "" when they are none.
func (c *logColumns) holds(f *column) string {
	switch f {
	case &c.ice, &c.left:
		return "a mass"
	case &c.box, &c.cabin:
		return "a temperature"
	}
	return ""
}

// takeUnit looks for a unit of what the column holds among a heading's words.
// Words such as "in" and "day" are units of other things by chance; a volume
// of ice or a mass in degrees is a slip.
func (f *column) takeUnit(words []string, holds string) error {
	for _, w := range words {
		what, ok := quantity.Measures(w)
		switch {
		case !ok || holds == "":
		case what == holds:
			f.unit = w
		case what == "a mass" || what == "a volume" || what == "a temperature":
			return fmt.Errorf("line 1: found %.40q, in %q, which is %s, expected %s", f.name, w, what, holds)
		}
	}
	return nil
}

// field gives the column that the first known word of a heading names; "ice
// left" is what is left, and "box shut" whether it was, whatever comes first.
func (c *logColumns) field(words []string) *column {
	if slices.Contains(words, "left") || slices.Contains(words, "remaining") {
		return &c.left
	}
	if slices.Contains(words, "shut") || slices.Contains(words, "closed") {
		return &c.shut
	}
	if f := c.unitField(words); f != nil {
		return f
	}
	for _, word := range words {
		switch word {
		case "date", "day", "when", "datetime", "timestamp":
			return &c.date
		case "time", "clock", "hour":
			return &c.clock
		case "ice", "weight", "bought", "mass":
			return &c.ice
		case "box", "icebox", "fridge", "inside", "food":
			return &c.box
		case "cabin", "air", "outside", "ambient", "out", "saloon":
			return &c.cabin
		}
	}
	return nil
}

// unitField gives the column of a running unit that a heading names: "Ah drawn",
// "current (A)", "run share". "consumed" and "drawn" are of amp-hours.
func (c *logColumns) unitField(words []string) *column {
	for _, word := range words {
		switch word {
		case "ah", "drawn", "consumed", "amphours":
			return &c.drawn
		case "amps", "amp", "current", "ampere", "amperes":
			return &c.amps
		case "run", "running", "duty", "compressor":
			return &c.run
		}
	}
	return nil
}

func list(cells []string) string {
	const most = 8
	var quoted []string
	for i, c := range cells {
		if i == most {
			quoted = append(quoted, "…")
			break
		}
		quoted = append(quoted, fmt.Sprintf("%.40q", strings.TrimSpace(c)))
	}
	return strings.Join(quoted, ", ")
}

// row reads one record; it is empty when no cell holds anything.
func (c logColumns) row(line int, record []string) (row LogRow, empty bool, err error) {
	row.Line = line
	if strings.TrimSpace(strings.Join(record, "")) == "" {
		return row, true, nil
	}
	if len(record) > c.count {
		return row, false, fmt.Errorf("line %d: found %d cells, expected the heading's %d; a comma inside a figure needs quotes, as in \"2,5\"", line, len(record), c.count)
	}
	cell := func(f column) string {
		if f.at < 0 || f.at >= len(record) {
			return ""
		}
		return strings.TrimSpace(record[f.at])
	}
	fault := func(f column, err error) error { return fmt.Errorf("line %d, %s: %w", line, f.name, err) }

	if row.At, err = parseTime(cell(c.date), cell(c.clock)); err != nil {
		return row, false, fault(c.date, err)
	}
	if row.Ice, _, err = readIce(cell(c.ice), c.ice); err != nil {
		return row, false, fault(c.ice, err)
	}
	if row.Left, row.LeftRead, err = readIce(cell(c.left), c.left); err != nil {
		return row, false, fault(c.left, err)
	}
	if row.Shut, err = readShut(cell(c.shut)); err != nil {
		return row, false, fault(c.shut, err)
	}
	if row.Box, row.BoxRead, err = readTemperature(cell(c.box), c.box); err != nil {
		return row, false, fault(c.box, err)
	}
	if row.Cabin, row.CabinRead, err = readTemperature(cell(c.cabin), c.cabin); err != nil {
		return row, false, fault(c.cabin, err)
	}
	if err := c.unitCells(&row, cell, fault); err != nil {
		return row, false, err
	}
	return row, false, nil
}

// unitCells reads what a row tells of a running unit.
func (c logColumns) unitCells(row *LogRow, cell func(column) string, fault func(column, error) error) error {
	if text := cell(c.amps); text != "" {
		x, err := quantity.ParseCurrent(text)
		if err == nil && !(math.Abs(float64(x)) <= 200) {
			err = fmt.Errorf("found %.40q, expected 0 to 200 A", text)
		}
		if err != nil {
			return fault(c.amps, err)
		}
		row.Amps, row.AmpsRead = quantity.Ampere(math.Abs(float64(x))), true // a monitor counts what leaves as negative
	}
	if text := cell(c.drawn); text != "" {
		x, err := quantity.ParseCharge(text)
		if err != nil {
			return fault(c.drawn, err)
		}
		row.Drawn, row.DrawnRead = quantity.AmpHour(math.Abs(float64(x))), true
	}
	if text := cell(c.run); text != "" {
		x, err := quantity.ParseShare(text)
		if err == nil && !(x >= 0 && x <= 1) {
			err = fmt.Errorf("found %.40q, expected a share of the time, 0 to 1 or 0 to 100 %%", text)
		}
		if err != nil {
			return fault(c.run, err)
		}
		row.Run, row.RunRead = x, true
	}
	return nil
}

func readIce(text string, f column) (quantity.Kilogram, bool, error) {
	if text == "" {
		return 0, false, nil
	}
	kg, err := quantity.ParseMass(f.figure(text), f.sys)
	if err != nil {
		return 0, false, err
	}
	if !(kg >= 0 && kg <= 1000) {
		return 0, false, fmt.Errorf("found %.40q, expected 0 to 1000 kg", text)
	}
	return kg, true, nil
}

func readShut(text string) (bool, error) {
	switch strings.ToLower(text) {
	case "yes", "y", "x", "true", "1", "shut", "closed":
		return true, nil
	case "", "no", "n", "false", "0", "-", "open":
		return false, nil
	}
	return false, fmt.Errorf("found %.40q, expected yes or no", text)
}

func readTemperature(text string, f column) (quantity.Celsius, bool, error) {
	if text == "" {
		return 0, false, nil
	}
	t, err := quantity.ParseTemperature(f.figure(text), f.sys)
	if err != nil {
		return 0, false, err
	}
	if !(math.Abs(float64(t)) <= 60) {
		return 0, false, fmt.Errorf("found %.40q, expected -60 to 60 °C", text)
	}
	return t, true, nil
}

// parseTime reads a date and, in its own cell or in the same one, a time of
// day. A date alone is midnight. Dates with slashes are refused: half the
// world would read them otherwise.
func parseTime(date, clock string) (time.Time, error) {
	text := strings.TrimSpace(date + " " + clock)
	for _, day := range []string{"2006-01-02", "2.1.2006", "2 Jan 2006", "2 January 2006"} {
		for _, layout := range []string{day, day + " 15:04", day + " 15:04:05", day + "T15:04", day + "T15:04:05", day + "T15:04:05Z07:00", day + " 3:04 PM", day + " 3:04PM"} {
			if t, err := time.Parse(layout, text); err == nil {
				if t.Year() < 1950 || t.Year() > 2200 {
					return time.Time{}, fmt.Errorf("found the year %d, expected 1950 to 2200", t.Year())
				}
				return t, nil
			}
		}
	}
	if text == "" {
		return time.Time{}, errors.New("found nothing, expected a date such as 2025-07-14 or 2025-07-14 15:30")
	}
	return time.Time{}, fmt.Errorf("found %.40q, expected a date such as 2025-07-14 or 2025-07-14 15:30", text)
}
