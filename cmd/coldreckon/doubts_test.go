package main

import (
	"fmt"
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

// price is what a cold day costs with a way: its middle, in the steps that a
// person would say.
func (f told) price(option string) string {
	f.Helper()
	x, step := f.number("options", option, "price_of_cold", "typical"), 5.0
	for _, s := range [][2]float64{{40, 2}, {16, 1}, {6, 0.5}, {2, 0.25}} {
		if x < s[0] {
			step = s[1]
		}
	}
	return f.say(step * math.Round(x/step))
}

// say writes a sum with cents only where it has any.
func (f told) say(x float64) string {
	if x == math.Trunc(x) {
		return fmt.Sprintf("%s%.0f", f.currency, x)
	}
	return fmt.Sprintf("%s%.2f", f.currency, x)
}

// counts are the futures in which a cold day costs no more than the worths that
// the answer names: a table of page one, or a sentence where the owner told the
// worth.
func (f told) counts() []string {
	var rows, told []string
	for i, c := range f.at("answer", "counts").([]any) {
		count := c.(map[string]any)
		worth, of100 := f.say(count["worth"].(float64)), count["of_100"].(float64)
		rows = append(rows, fmt.Sprintf("Worth %s %.0f %.0f", worth, of100, 100-of100))
		if i == 0 {
			told = append(told, fmt.Sprintf("In %.0f of 100 futures a cold day costs %s or less", of100, worth))
		} else {
			told = append(told, fmt.Sprintf("in %.0f, %s or less", of100, worth))
		}
	}
	if f.sheet["answer"].(map[string]any)["worth_told"] != nil {
		return []string{strings.Join(told, "; ")}
	}
	return rows
}

// works is the row of the futures in which each way does what is wanted, as she
// is and with the work.
func (f told) works() string {
	return f.row("Works, of 100", "keeps nothing cold", ", no work", func(option, fit string) float64 {
		return f.number("options", option, map[string]string{"as_told": "as_told_works_of_100", "fitted": "workable_of_100"}[fit])
	})
}

// coldDays is the row of the days with cold food.
func (f told) coldDays() string {
	return f.row("Cold days, of 100", "0", "", func(option, fit string) float64 {
		return math.Round(100 * f.number("options", option, fit, "cold_share"))
	})
}

// row is one of the table of the four ways: a figure as she is, an arrow, and the
// same with the work, or the latter alone where there is none to do or it moves nothing.
func (f told) row(name, dry, noWork string, of func(option, fit string) float64) string {
	for _, option := range []string{"ice", "dry", "small", "larger"} {
		switch pieces, _ := f.at("options", option, "fitted").(map[string]any)["pieces"].([]any); {
		case option == "dry":
			name += " " + dry
		case len(pieces) == 0:
			name += fmt.Sprintf(" %.0f%s", of(option, "fitted"), noWork)
		case of(option, "as_told") == of(option, "fitted"):
			name += fmt.Sprintf(" %.0f", of(option, "fitted"))
		default:
			name += fmt.Sprintf(" %.0f → %.0f", of(option, "as_told"), of(option, "fitted"))
		}
	}
	return name
}

// of100 is a count of futures.
func (f told) of100(path ...string) string {
	f.Helper()
	return fmt.Sprintf("%.0f of 100", f.number(path...))
}

var doubts = map[string][]doubt{
	"dunlin": {
		{"Why not simply carry more ice?", func(f told) []string {
			return []string{
				f.works(),
				fmt.Sprintf("%.0f lb to carry a year", round(f.number("options", "ice", "fitted", "season", "ice_bought_kg_per_year")/0.45359237)),
				"With ice alone a cold day costs about " + f.price("ice"),
			}
		}},
		{"What if a cold day is worth little to me?", func(f told) []string {
			return append(f.counts(), f.say(f.number("answer", "yes_worth"))+" or more to you", "Under "+f.say(f.number("answer", "no_worth"))+", live on food that keeps.")
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
				fmt.Sprintf("battery over %.0f %%", 100*f.number("options", "small", "fitted", "season", "battery_lowest_share")),
				f.works(),
			}
		}},
		{"You put a price on cold drinks. What if I do not?", func(f told) []string {
			return append(f.counts(), fmt.Sprintf("(%.0f of 100). A cold day costs about %s and you said %s%.0f.",
				f.number("answer", "yes_of_100"), f.price("small"), f.currency, f.number("inputs", "money", "cold_day_worth")))
		}},
		{"And ice, in a good box?", func(f told) []string {
			season := []string{"options", "ice", "fitted", "season"}
			return []string{
				fmt.Sprintf("It is gone for up to %.0f hours at a stretch.", round(f.number(append(season, "longest_off_h")...))),
				f.coldDays(),
			}
		}},
	},
	"saltmeadow": {
		{"She lives aboard all year: why not the larger unit?", func(f told) []string {
			return []string{
				f.money("options", "larger", "fitted", "present_cost") + " " + f.between("larger", "present_cost"),
				"with the larger unit a cold day costs about " + f.price("larger"),
				"the larger unit " + f.money("options", "larger", "expected_regret"),
			}
		}},
		{"Your price of dry food is a guess, is it not?", func(f told) []string {
			aDay := f.number("inputs", "food", "dry_premium_per_person_night") * f.number("inputs", "cruising", "crew_people")
			return []string{
				fmt.Sprintf("Food that keeps costs you %s%.2f a day more, you said, for two.", f.currency, aDay),
				"The small unit gives a cold day for about " + f.price("small"),
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
	"sandpiper": {
		{"A dozen nights a year: what is all the talk about?", func(f told) []string {
			return append(f.counts(), "unless a cold day is worth "+f.say(f.number("answer", "yes_worth"))+" or more to you",
				"From "+f.say(f.number("answer", "no_worth"))+" it is close.")
		}},
		{"Then why not two bags of ice?", func(f told) []string {
			return []string{fmt.Sprintf("Ice alone does it in only %s futures (cold %.0f days of 100)",
				f.of100("options", "ice", "workable_of_100"), 100*f.number("options", "ice", "fitted", "cold_share"))}
		}},
		{"You would not spend more than $800?", func(f told) []string {
			return []string{"costs " + f.money("options", "small", "fitted", "over_limit") + " over your limit of " + f.money("inputs", "money", "budget") + " at first"}
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
			return []string{
				fmt.Sprintf("keeps the food cold on %.0f of 100 days aboard", 100*f.number("options", "ice", "fitted", "cold_share")),
				"Ice alone keeps the food cold as often as you want in " + f.of100("options", "ice", "workable_of_100") + " futures",
				f.coldDays(),
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

// The report of each sample answers the hardest questions that a broker who
// doubts it would ask, with the figures of the same run.
func TestReportsAnswerDoubts(t *testing.T) {
	for _, s := range sampleNames() {
		t.Run(s, func(t *testing.T) {
			if len(doubts[s]) < 3 {
				t.Fatalf("%d questions are asked of this sample; want 3", len(doubts[s]))
			}
			run := runOf(t, s)
			f := told{T: t, sheet: run.sheet}
			f.currency, f.units = f.text("money", "currency"), quantity.System(f.text("units"))
			text := strings.Join(strings.Fields(strings.NewReplacer("|", " ", "\\", "", "**", "").Replace(run.report)), " ")
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
