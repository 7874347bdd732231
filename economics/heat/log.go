package heat

import (
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
		return nil, errors.New("the log has a heading but no rows; want one row per purchase or reading")
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

// row reads one record, with dates between slashes in the order given.
func (c logColumns) row(r record, slashes string) (row LogRow, err error) {
	line := r.line
	row.Line = line
	if len(r.cells) > c.count {
		return row, fmt.Errorf("line %d: found %d cells, expected the heading's %d; a comma inside a figure needs quotes, as in \"2,5\"", line, len(r.cells), c.count)
	}
	cell := r.cell
	fault := func(f column, err error) error { return fmt.Errorf("line %d, %s: %w", line, f.name, err) }

	if row.At, err = parseTime(cell(c.date), cell(c.clock), slashes); err != nil {
		return row, fault(c.date, err)
	}
	if row.Ice, _, err = readIce(cell(c.ice), c.ice); err != nil {
		return row, fault(c.ice, err)
	}
	if row.Left, row.LeftRead, err = readIce(cell(c.left), c.left); err != nil {
		return row, fault(c.left, err)
	}
	if row.Shut, err = readShut(cell(c.shut)); err != nil {
		return row, fault(c.shut, err)
	}
	if row.Box, row.BoxRead, err = readTemperature(cell(c.box), c.box); err != nil {
		return row, fault(c.box, err)
	}
	if row.Cabin, row.CabinRead, err = readTemperature(cell(c.cabin), c.cabin); err != nil {
		return row, fault(c.cabin, err)
	}
	if err := c.unitCells(&row, cell, fault); err != nil {
		return row, err
	}
	return row, nil
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
