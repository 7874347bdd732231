package compare

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// schema counts the forms of the JSON; it grows when a key changes its meaning
// or goes.
const schema = 1

// jsonRange is a range whose ends are left out where they are endless.
type jsonRange struct {
	Low     *float64 `json:"low,omitempty"`
	Typical *float64 `json:"typical,omitempty"`
	High    *float64 `json:"high,omitempty"`
}

type jsonCase struct {
	Works    int       `json:"works_of_100_futures"`
	ColdDays int       `json:"cold_days_of_100"`
	First    jsonRange `json:"first_cost"`
	PerYear  jsonRange `json:"then_a_year"`
	Yearly   jsonRange `json:"yearly_cost"`
}

type jsonOption struct {
	ID       economics.OptionID `json:"option"`
	AsTold   jsonCase           `json:"as_told"`
	Fitted   jsonCase           `json:"fitted"`
	Work     []string           `json:"work"`
	WorkCost jsonRange          `json:"work_cost"`
	Price    jsonRange          `json:"price_of_a_cold_day"`
	Best     int                `json:"best_of_100_futures"`
}

type jsonBoat struct {
	File     string             `json:"file"`
	Name     string             `json:"name"`
	Error    string             `json:"error,omitempty"`
	Currency string             `json:"currency,omitempty"`
	Answer   economics.OptionID `json:"answer,omitempty"`
	Best     *int               `json:"answer_of_100_futures,omitempty"`
	Sure     *bool              `json:"sure,omitempty"`
	Works    *bool              `json:"works,omitempty"`
	Way      economics.OptionID `json:"cold_food_by,omitempty"`
	Evidence string             `json:"evidence,omitempty"`
	WhyNot   string             `json:"why_not,omitempty"`
	ToldIn   string             `json:"told_in,omitempty"`
	Rate     float64            `json:"rate,omitempty"`
	Options  []jsonOption       `json:"options,omitempty"`
	Box      *jsonBox           `json:"box,omitempty"`
	Old      *OldUnit           `json:"old_unit,omitempty"`
	Stops    []Stop             `json:"stops,omitempty"`
	Unasked  []string           `json:"not_told,omitempty"`
}

type jsonBox struct {
	VolumeL  float64          `json:"volume_l"`
	Leak     jsonRange        `json:"leak_w_per_k"`
	LeakHow  How              `json:"leak_how"`
	LeakFrom string           `json:"leak_from"`
	Figures  map[string]Datum `json:"figures"`
}

// digits4 keeps four significant digits, already more than is known.
func digits4(x float64) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0
	}
	return quantity.Significant(x, 4)
}

func jsonOf(r quantity.Range) jsonRange {
	end := func(x float64) *float64 {
		if math.IsInf(x, 0) || math.IsNaN(x) {
			return nil
		}
		x = digits4(x)
		return &x
	}
	return jsonRange{end(r.Low), end(r.Typical), end(r.High)}
}

// JSON gives the comparison as data, units in the names of the keys, money in
// each boat's currency. Low and high are 10th and 90th percentiles.
func (t *Table) JSON() ([]byte, error) {
	boats := make([]jsonBoat, 0, len(t.Rows))
	for i := range t.Rows {
		boats = append(boats, t.Rows[i].json())
	}
	out, err := json.MarshalIndent(struct {
		Program string     `json:"program"` // first, so that the file is known as the program's own
		Schema  int        `json:"schema"`
		Heading string     `json:"heading"`
		Pattern string     `json:"pattern,omitempty"`
		For     string     `json:"prepared_for,omitempty"`
		By      string     `json:"prepared_by,omitempty"`
		Day     string     `json:"date,omitempty"`
		Sorted  string     `json:"sorted_by,omitempty"`
		Version string     `json:"version,omitempty"`
		Seed    uint64     `json:"seed"`
		Futures int        `json:"futures"`
		Prices  string     `json:"price_book"`
		Boats   []jsonBoat `json:"boats"`
	}{"coldreckon", schema, Heading, t.Terms.Line, t.For, t.By, t.Day, t.Sorted, t.Version, t.Seed, t.Futures, t.Prices, boats}, "", "  ")
	if err != nil {
		return nil, fmt.Errorf("comparison as JSON: %w", err)
	}
	return append(out, '\n'), nil
}

func (r *Row) json() jsonBoat {
	b := jsonBoat{File: r.File, Name: r.Name, Error: r.Error}
	if r.Error != "" {
		return b
	}
	b.Currency, b.Answer, b.Best, b.Sure, b.Works, b.Way = r.Currency, r.Answer, &r.Best, &r.Sure, &r.Works, r.Way
	b.Evidence, b.WhyNot, b.ToldIn, b.Rate, b.Stops, b.Unasked = string(r.Grade), r.WhyNot, r.ToldIn, r.Rate, r.Stops, r.Unasked
	one := func(c Case) jsonCase {
		return jsonCase{c.Works, c.ColdDays, jsonOf(c.First), jsonOf(c.PerYear), jsonOf(c.Yearly)}
	}
	for _, o := range r.Options {
		b.Options = append(b.Options, jsonOption{o.ID, one(o.AsTold), one(o.Fitted), o.Work, jsonOf(o.WorkCost), jsonOf(o.Price), o.Best})
	}
	x := r.Box
	b.Box = &jsonBox{digits4(x.VolumeL), jsonOf(x.Leak), x.LeakHow, x.LeakFrom,
		map[string]Datum{"volume": x.Volume, "foam": x.Foam, "state": x.State, "lid_seal": x.Seal, "drain": x.Drain}}
	if r.Old != nil {
		old := *r.Old
		old.Worth = digits4(old.Worth)
		b.Old = &old
	}
	return b
}

// byteOrderMark has a spreadsheet read the text as UTF-8.
const byteOrderMark = "\ufeff"

// CSV gives the comparison as a table with one line a boat and a head line
// (RFC 4180), behind a byte-order mark. A text that a spreadsheet would take for a formula stands behind
// an apostrophe. The first column of every line repeats that it is no survey.
func (t *Table) CSV() ([]byte, error) {
	var out bytes.Buffer
	out.WriteString(byteOrderMark)
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	head := []string{"note", "file", "name", "error", "currency", "answer", "answer_of_100", "sure", "works", "cold_food_by"}
	for _, id := range economics.Options {
		for _, column := range optionColumns {
			head = append(head, string(id)+"_"+column)
		}
	}
	head = append(head, "box_volume_l", "volume_how", "foam", "foam_how", "state", "state_how", "lid_seal", "lid_seal_how", "drain", "drain_how",
		"leak_w_per_k_low", "leak_w_per_k", "leak_w_per_k_high", "leak_how", "stops", "evidence", "why_not", "not_told", "told_in", "rate", "old_unit", "repair_worth")
	lines := [][]string{head}
	for i := range t.Rows {
		lines = append(lines, t.Rows[i].csv(len(head)))
	}
	if err := w.WriteAll(lines); err != nil {
		return nil, fmt.Errorf("comparison as CSV: %w", err)
	}
	return out.Bytes(), nil
}

var optionColumns = []string{"works_as_told_of_100", "works_fitted_of_100", "cold_days_as_told_of_100", "cold_days_fitted_of_100",
	"work", "work_cost_low", "work_cost", "work_cost_high", "first_cost_fitted_low", "first_cost_fitted", "first_cost_fitted_high",
	"yearly_as_told_low", "yearly_as_told", "yearly_as_told_high", "yearly_fitted_low", "yearly_fitted", "yearly_fitted_high",
	"then_a_year_low", "then_a_year", "then_a_year_high", "cold_day_low", "cold_day", "cold_day_high"}

func (r *Row) csv(columns int) []string {
	num := func(x float64) string {
		if math.IsInf(x, 0) || math.IsNaN(x) {
			return ""
		}
		return strconv.FormatFloat(digits4(x), 'f', -1, 64)
	}
	three := func(x quantity.Range) []string { return []string{num(x.Low), num(x.Typical), num(x.High)} }
	line := []string{"not a survey or a valuation", inert(r.File), inert(r.Name), inert(r.Error)}
	if r.Error != "" {
		return append(line, make([]string, columns-len(line))...)
	}
	line = append(line, inert(r.Currency), string(r.Answer), strconv.Itoa(r.Best), strconv.FormatBool(r.Sure), strconv.FormatBool(r.Works), string(r.Way))
	for i := range r.Options {
		o := &r.Options[i]
		line = append(line, strconv.Itoa(o.AsTold.Works), strconv.Itoa(o.Fitted.Works), strconv.Itoa(o.AsTold.ColdDays), strconv.Itoa(o.Fitted.ColdDays),
			strings.Join(o.Work, "; "))
		for _, x := range []quantity.Range{o.WorkCost, o.Fitted.First, o.AsTold.Yearly, o.Fitted.Yearly, o.Fitted.PerYear, o.Price} {
			line = append(line, three(x)...)
		}
	}
	b := r.Box
	line = append(line, num(b.VolumeL), string(b.Volume.How))
	for _, f := range []Datum{b.Foam, b.State, b.Seal, b.Drain} {
		line = append(line, f.Value, string(f.How))
	}
	line = append(line, three(b.Leak)...)
	var stops []string
	for _, s := range r.Stops {
		stops = append(stops, s.ID)
	}
	rate := ""
	if r.Rate > 0 {
		rate = num(r.Rate)
	}
	state, worth := "", ""
	if u := r.Old; u != nil {
		state, worth = "untried", num(u.Worth)
		if u.Dead {
			state = "dead"
		}
	}
	return append(line, string(b.LeakHow), strings.Join(stops, " "), string(r.Grade), inert(r.WhyNot), strings.Join(r.Unasked, "; "), inert(r.ToldIn), rate, state, worth)
}

// inert keeps a spreadsheet from taking an owner's text for a formula.
func inert(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}
