package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"coldreckon/economics/quantity"
)

// doubt is one hard question that a broker would ask of a sample's report,
// and what the report must say to answer it. Where the answer is a figure, it
// is worked out anew from the figures that the same run gives as data: nothing
// here is copied from a report.
type doubt struct {
	question string
	answers  func(f told) []string
}

// told reads the figures of a sample's run.
type told struct {
	*testing.T
	sheet    map[string]any
	currency string
	units    quantity.System
}

// at walks a path of keys; lists are walked by the id, name or option of their
// elements.
func (f told) at(path ...string) any {
	f.Helper()
	var here any = f.sheet
	for _, key := range path {
		switch now := here.(type) {
		case map[string]any:
			here = now[key]
		case []any:
			here = nil
			for _, element := range now {
				if m := element.(map[string]any); m["id"] == key || m["name"] == key || m["option"] == key || m["source"] == key || m["piece"] == key {
					here = m
				}
			}
		}
		if here == nil {
			f.Fatalf("the figures have no value at %v", path)
		}
	}
	return here
}

func (f told) number(path ...string) float64 { f.Helper(); return f.at(path...).(float64) }
func (f told) text(path ...string) string    { f.Helper(); return f.at(path...).(string) }

// round rounds to two significant digits, as the report does with all money.
func round(x float64) float64 {
	if x == 0 {
		return 0
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(x)))-1)
	return math.Round(x/step) * step
}

func (f told) money(path ...string) string {
	f.Helper()
	return quantity.FormatMoney(quantity.Money(round(f.number(path...))), f.currency)
}

// between is a range of money as tables print it, less the sign of its currency.
func (f told) between(option, what string) string {
	f.Helper()
	bare := func(end string) string {
		return strings.TrimPrefix(f.money("options", option, what+end), f.currency)
	}
	return "(" + bare("_low") + "–" + bare("_high") + ")"
}

// of100 is a count of futures.
func (f told) of100(path ...string) string {
	f.Helper()
	return fmt.Sprintf("%.0f of 100", f.number(path...))
}

var doubts = map[string][]doubt{
	"dunlin": {
		{"Why not simply carry more ice?", func(f told) []string {
			season := []string{"options", "ice", "fitted", "season"}
			return []string{
				"Ice alone works in only " + f.of100("options", "ice", "workable_of_100") + " futures",
				"Why not more ice? A full load is",
				fmt.Sprintf("in the %.0f %% of the box that ice is given (assumed)", 100*f.number("inputs", "ice", "share_of_box")),
				fmt.Sprintf("gone for up to %.0f hours at a stretch", f.number(append(season, "longest_off_h")...)),
				fmt.Sprintf("The food needs only %s of the %s left",
					quantity.FormatVolume(quantity.Litre(f.number(append(season, "food_to_keep_l")...)), f.units),
					quantity.FormatVolume(quantity.Litre(f.number(append(season, "room_for_food_l")...)), f.units)),
				"Give it a larger share and reckon again to see what that does.",
			}
		}},
		{"What if you use her half as much?", func(f told) []string {
			nights := 0.0
			for _, n := range f.at("inputs", "cruising", "nights_by_month").([]any) {
				nights += n.(float64)
			}
			return []string{
				fmt.Sprintf("At %.0f nights a year", nights),
				fmt.Sprintf("at %.0f nights dry stores; at %.0f nights the small unit", nights/2, 2*nights),
			}
		}},
		{"Is the foam figure guessed?", func(f told) []string {
			if f.text("inputs", "known", "box.foam") != "told" {
				f.Error("the foam of this sample was to be told")
			}
			leak := func(x float64) string {
				return strings.TrimSuffix(quantity.FormatConductance(quantity.WattPerKelvin(x), f.units), " Btu/h·°F")
			}
			out := []string{"what has no mark was told", "Foam in the walls 1 1/2 in", "The walls and the ice you remember agree as far as either can be trusted"}
			for source, name := range map[string]string{"drawing": "the walls", "ice history": "how long ice lasted"} {
				out = append(out, fmt.Sprintf("%s %s %s to %s", name, leak(f.number("box", "evidence", source, "ua_w_per_k")),
					leak(f.number("box", "evidence", source, "ua_low_w_per_k")), leak(f.number("box", "evidence", source, "ua_high_w_per_k"))))
			}
			return out
		}},
	},
	"kittiwake": {
		{"She has a dead unit: why not have it repaired?", func(f told) []string {
			return []string{"Repairing the old unit is worth up to about " + f.money("repair", "worth_up_to")}
		}},
		{"Will her battery carry a unit through the worst fortnight?", func(f told) []string {
			return []string{
				"With the small unit the food stays cold even in the worst fortnight.",
				fmt.Sprintf("battery never under %.0f %%", 100*f.number("options", "small", "fitted", "season", "battery_lowest_share")),
				"Works in " + f.of100("options", "small", "workable_of_100"),
			}
		}},
		{"You put a price on cold drinks. What if I do not?", func(f told) []string {
			best := "small"
			for _, id := range []string{"ice", "dry", "larger"} {
				if f.number("options", id, "cheapest_of_100") > f.number("options", best, "cheapest_of_100") {
					best = id
				}
			}
			return []string{
				fmt.Sprintf("This counts a cold day as worth %s%.0f to you, as you told.", f.currency, f.number("inputs", "money", "cold_day_worth")),
				fmt.Sprintf("By money alone the %s unit would be cheapest in %s futures.", best, f.of100("options", best, "cheapest_of_100")),
			}
		}},
	},
	"saltmeadow": {
		{"She lives aboard all year: why not the larger unit?", func(f told) []string {
			return []string{
				f.money("options", "larger", "fitted", "present_cost") + " " + f.between("larger", "present_cost"),
				fmt.Sprintf("Small unit %.0f", f.number("options", "small", "best_of_100")),
				fmt.Sprintf("Larger unit %.0f", f.number("options", "larger", "best_of_100")),
				"the larger unit " + f.money("options", "larger", "expected_regret"),
			}
		}},
		{"Your price of dry food is a guess, is it not?", func(f told) []string {
			premium := func(key string) string { return f.money("futures", "inputs", "dry_premium", key) }
			return []string{
				fmt.Sprintf("If food that keeps costs less than %s extra a person a day, dry stores are better. %.0f of 100 futures lie there.",
					premium("switch_at"), 100*f.number("futures", "inputs", "dry_premium", "chance_beyond")),
				"How much dearer food that keeps is " + quantity.Span(premium("low"), premium("high")),
				"Dearer dry food: worth about " + premium("evppi") + " to know.",
			}
		}},
		{"And when the unit dies in year seven?", func(f told) []string {
			years := func(key string) string {
				return fmt.Sprintf("%.0f", round(f.number("futures", "inputs", "unit_life", key)))
			}
			return []string{
				"How long a unit lasts " + years("low") + " to " + years("high") + " years",
				"lasts " + fmt.Sprintf("%.0f", f.number("inputs", "units_considered", "small", "life_years")) + " years",
				f.money("options", "small", "fitted", "present_cost") + " " + f.between("small", "present_cost"),
			}
		}},
	},
	"turnstone": {
		{"Units are cheap now: how many nights before one pays?", func(f told) []string {
			if even := f.at("break_even", "small").(map[string]any); even["nights_per_year"] != nil || even["unit_cheaper_now"] == true {
				f.Error("the small unit was to cost more than ice at any number of nights")
			}
			return []string{
				"As she is, the small unit costs more than ice alone at any number of nights a year.",
				f.money("options", "small", "fitted", "present_cost") + " " + f.between("small", "present_cost"),
			}
		}},
		{"One warm week, and is the food not lost?", func(f told) []string {
			warm := 0
			for _, c := range f.at("options", "ice", "worst_fortnight", "food_c").([]any) {
				if c.(float64) > f.number("options", "ice", "worst_fortnight", "limit_c") {
					warm++
				}
			}
			return []string{
				fmt.Sprintf("keeps the food cold on %.0f of 100 days aboard", 100*f.number("options", "ice", "fitted", "cold_share")),
				"Ice alone is best in " + f.of100("options", "ice", "best_of_100") + " equally likely futures",
				fmt.Sprintf("In the worst trip of %.0f days with ice alone the food is too warm for %d hours.", f.number("options", "ice", "worst_fortnight", "days"), warm),
			}
		}},
		{"What does it rest on that ice lasts in this box?", func(f told) []string {
			return []string{
				"an ice test " + strings.TrimSuffix(quantity.FormatConductance(quantity.WattPerKelvin(f.number("box", "evidence", "ice test", "ua_w_per_k")), f.units), " W/K"),
				fmt.Sprintf("%.0f came from tests", f.number("verdict", "evidence", "measured")),
				quantity.FormatMass(quantity.Kilogram(f.number("options", "ice", "fitted", "season", "ice_hottest_kg_per_day")), f.units) + " of ice a day",
			}
		}},
	},
}

// The report of each sample answers the three hardest questions that a broker
// who doubts it would ask, with the figures of the same run.
func TestReportsAnswerDoubts(t *testing.T) {
	for _, s := range sampleNames() {
		t.Run(s, func(t *testing.T) {
			if len(doubts[s]) != 3 {
				t.Fatalf("%d questions are asked of this sample; want 3", len(doubts[s]))
			}
			run := func(args ...string) string {
				var stdout, stderr bytes.Buffer
				if code := Main(args, func(string) string { return "" }, strings.NewReader(""), &stdout, io.Writer(&stderr)); code != 0 {
					t.Fatalf("%v: exit %d: %s", args, code, stderr.String())
				}
				return stdout.String()
			}
			f := told{T: t}
			if err := json.Unmarshal([]byte(run("figures", "sample:"+s, "--json")), &f.sheet); err != nil {
				t.Fatal(err)
			}
			f.currency, f.units = f.text("money", "currency"), quantity.System(f.text("units"))
			// Markdown keeps a cell in one piece, where plain text folds it.
			text := run("report", "sample:"+s, "--format", "md", "--date", "2026-04-01")
			text = strings.Join(strings.Fields(strings.NewReplacer("|", " ", "\\", "", "**", "").Replace(text)), " ")
			for _, d := range doubts[s] {
				for _, want := range d.answers(f) {
					if !strings.Contains(text, want) {
						t.Errorf("%s The report lacks %q", d.question, want)
					}
				}
			}
		})
	}
}
