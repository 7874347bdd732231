package heat

import (
	"fmt"
	"slices"
	"strings"

	"coldreckon/economics/quantity"
)

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
			return c, fmt.Errorf("line 1: the columns %q and %q are of one kind. Keep one of them", field.name, strings.TrimSpace(cell))
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
		return c, fmt.Errorf("line 1: none of the columns %s is named date or time", list(cells))
	}
	unit := c.amps.at >= 0 || c.drawn.at >= 0 || c.run.at >= 0
	if c.ice.at < 0 && (c.box.at < 0 || c.cabin.at < 0 && !unit) {
		return c, fmt.Errorf("line 1: the columns %s tell nothing of ice, or of box and cabin. Have either beside %s", list(cells), c.date.name)
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
			return fmt.Errorf("line 1: %.40q is in %q, which is %s. Give %s", f.name, w, what, holds)
		}
	}
	return nil
}

// field gives the column that the first known word of a heading names: "Ah
// drawn", "current (A)", "run share". Before all others "ice left" is what is left,
// and "box shut" whether it was; "consumed" and "drawn" are of amp-hours.
func (c *logColumns) field(words []string) *column {
	for _, named := range []map[*column][]string{
		{&c.left: {"left", "remaining"}},
		{&c.shut: {"shut", "closed"}},
		{ // of a running unit
			&c.drawn: {"ah", "drawn", "consumed", "amphours"},
			&c.amps:  {"amps", "amp", "current", "ampere", "amperes"},
			&c.run:   {"run", "running", "duty", "compressor"},
		},
		{
			&c.date:  {"date", "day", "when", "datetime", "timestamp"},
			&c.clock: {"time", "clock", "hour"},
			&c.ice:   {"ice", "weight", "bought", "mass"},
			&c.box:   {"box", "icebox", "fridge", "inside", "food"},
			&c.cabin: {"cabin", "air", "outside", "ambient", "out", "saloon"},
		},
	} {
		for _, word := range words {
			for field, names := range named {
				if slices.Contains(names, word) {
					return field
				}
			}
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

// record is one line of a log, as written.
type record struct {
	line  int
	cells []string
}

// cell gives what stands in a column, "" for nothing.
func (r record) cell(f column) string {
	if f.at < 0 || f.at >= len(r.cells) {
		return ""
	}
	return strings.TrimSpace(r.cells[f.at])
}

// unitless refuses temperatures that name no unit where the owner's makes no
// sense of them: a cabin that freezes, a box as warm as no box. Bounds are
// engineering judgement, from memory.
func (c *logColumns) unitless(records []record) error {
	for _, f := range []column{c.box, c.cabin} {
		if f.at < 0 || f.unit != "" {
			continue
		}
		var figures []float64
		for _, r := range records {
			if x, err := quantity.ParseNumber(r.cell(f)); err == nil {
				figures = append(figures, x)
			}
		}
		if len(figures) == 0 {
			continue
		}
		slices.Sort(figures)
		middle, own, other := figures[len(figures)/2], "°C", "°F"
		strange := middle > 30 && middle < 100
		switch {
		case f.sys == quantity.US:
			own, other = other, own
			strange = f == c.box && middle < 12 || f == c.cabin && middle < 32
		case f == c.cabin:
			strange = middle > 45 && middle < 140
		}
		if strange {
			return fmt.Errorf("line 1, %s: figures of about %.0f make no sense as %s. Name their unit in a heading such as %q or %q", f.name, middle, own, f.name+" "+other, f.name+" "+own)
		}
	}
	return nil
}
