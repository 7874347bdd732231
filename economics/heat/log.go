package heat

import (
	"cmp"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
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
	ClockBack  bool // the logger's clock was put back an hour before this row; At goes on
}

// maxLogBytes bounds a log: an hourly one of ten years is under 4 MB.
const maxLogBytes = 8 << 20

// ParseLog reads a log as comma-, semicolon- or tab-separated text, its first
// line naming the columns in any order: date, time or date-time; ice or weight;
// left; shut (yes or no); box; cabin or air; amps; Ah drawn, as a counter; run, as
// a share of the time. A unit may stand in the heading
// ("box °F", "ice (lb)") or in the cell ("40 F", "10 lb"); a bare figure under a
// bare heading takes the owner's system. Dates are written 2025-07-14, with a
// time as 2025-07-14 15:30; 14.07.2025 is read too, and 14/07/2025 or 07/14/2025
// where a row tells which of the two it is. Columns of other names are
// left alone, empty lines skipped, rows sorted by time; two rows alike are
// refused. A logger's clock may go back by an hour once; else it is an error.
//
// Ice is from 0 to 1000 kg, temperatures from -60 to 60 °C, years from 1950 to
// 2200, the whole log at most 8 MB. An error names line and field, what is wrong
// and what to give instead.
func ParseLog(r io.Reader, sys quantity.System) ([]LogRow, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxLogBytes+1))
	if err != nil {
		return nil, fmt.Errorf("the log cannot be read: %w", err)
	}
	if len(text) > maxLogBytes {
		return nil, fmt.Errorf("the log has over %d MB. Give a smaller one", maxLogBytes>>20)
	}
	body := strings.TrimPrefix(string(text), "\ufeff")
	in := csv.NewReader(strings.NewReader(body))
	in.Comma = separator(body)
	in.FieldsPerRecord = -1
	in.TrimLeadingSpace = in.Comma != '\t' // a tab is space too
	in.LazyQuotes = true

	heading, err := in.Read()
	if errors.Is(err, io.EOF) {
		return nil, errors.New("line 1: the log is empty. Begin it with a heading such as date, ice kg")
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
	var records []record
	for {
		cells, err := in.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, csvError(err)
		}
		if err := oneLine(in, cells); err != nil {
			return nil, err
		}
		if line, _ := in.FieldPos(0); strings.TrimSpace(strings.Join(cells, "")) != "" {
			records = append(records, record{line, cells})
		}
	}
	if len(records) == 0 {
		return nil, errors.New("the log has a heading but no rows. Write one row for each purchase or reading")
	}
	slashes, err := columns.slashOrder(records)
	if err == nil {
		err = columns.unitless(records)
	}
	if err != nil {
		return nil, err
	}
	rows := make([]LogRow, len(records))
	for i, r := range records {
		if rows[i], err = columns.row(r, slashes); err != nil {
			return nil, err
		}
	}
	if err := columns.inOrder(rows); err != nil {
		return nil, err
	}
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
			return fmt.Errorf("line %d: it is line %d again. Keep one of the two; ice put in twice at one time is one row with the sum", row.Line, first)
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
			return fmt.Errorf("line %d: a quote is open at the line's end. Close it or leave it out", line)
		}
	}
	return nil
}

func csvError(err error) error {
	var e *csv.ParseError
	if errors.As(err, &e) {
		return fmt.Errorf("line %d: %w. Part the cells by commas, semicolons or tabs", e.Line, e.Err)
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

// row reads one record, with dates between slashes in the order given.
func (c logColumns) row(r record, slashes string) (row LogRow, err error) {
	line := r.line
	row.Line = line
	if len(r.cells) > c.count {
		return row, fmt.Errorf("line %d: it has %d cells, but the heading has %d; a comma inside a figure needs quotes, as in \"2,5\"", line, len(r.cells), c.count)
	}
	fault := func(f column, err error) error {
		if err != nil {
			err = fmt.Errorf("line %d, %s: %w", line, f.name, err)
		}
		return err
	}
	var shut error
	row.At, err = parseTime(r.cell(c.date), r.cell(c.clock), slashes)
	row.Shut, shut = readShut(r.cell(c.shut))
	mass := func(text string) (quantity.Kilogram, error) { return quantity.ParseMass(text, c.ice.sys) }
	warmth := func(text string) (quantity.Celsius, error) { return quantity.ParseTemperature(text, c.box.sys) }
	var iceRead bool
	err = cmp.Or(
		fault(c.date, err),
		fault(c.ice, read(r, c.ice, mass, 0, 1000, "0 to 1000 kg", &row.Ice, &iceRead)),
		fault(c.left, read(r, c.left, mass, 0, 1000, "0 to 1000 kg", &row.Left, &row.LeftRead)),
		fault(c.shut, shut),
		fault(c.box, read(r, c.box, warmth, -60, 60, "-60 to 60 °C", &row.Box, &row.BoxRead)),
		fault(c.cabin, read(r, c.cabin, warmth, -60, 60, "-60 to 60 °C", &row.Cabin, &row.CabinRead)),
		fault(c.amps, read(r, c.amps, quantity.ParseCurrent, -200, 200, "0 to 200 A", &row.Amps, &row.AmpsRead)),
		fault(c.drawn, read(r, c.drawn, quantity.ParseCharge, -math.MaxFloat64, math.MaxFloat64, "a charge", &row.Drawn, &row.DrawnRead)),
		fault(c.run, read(r, c.run, quantity.ParseShare, 0, 1, "a share of the time, 0 to 1 or 0 to 100 %", &row.Run, &row.RunRead)),
	)
	// A monitor counts what leaves as negative.
	row.Amps, row.Drawn = quantity.Ampere(math.Abs(float64(row.Amps))), quantity.AmpHour(math.Abs(float64(row.Drawn)))
	return row, err
}

// read reads a cell's figure into x, and into told whether there is one.
func read[T ~float64](r record, f column, parse func(string) (T, error), low, high T, want string, x *T, told *bool) error {
	text := r.cell(f)
	if text == "" {
		return nil
	}
	v, err := parse(f.figure(text))
	if err == nil && !(v >= low && v <= high) {
		err = fmt.Errorf("%.40q cannot be. Give %s", text, want)
	}
	if err == nil {
		*x, *told = v, true
	}
	return err
}

func readShut(text string) (bool, error) {
	switch strings.ToLower(text) {
	case "yes", "y", "x", "true", "1", "shut", "closed":
		return true, nil
	case "", "no", "n", "false", "0", "-", "open":
		return false, nil
	}
	return false, fmt.Errorf("%.40q is neither yes nor no", text)
}
