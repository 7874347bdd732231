package words

import (
	"fmt"
	"slices"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// ailment is one thing that may be found, with its likely cause and the line of
// the price book that says what mending costs.
type ailment struct{ finds, cause, line string }

// Findings of trades and owners; common practice, no source.
var ailments = []ailment{
	{"No volts at the unit", "a blown fuse, a breaker, a switch, a wire off", "mend_switch"},
	{"The volts sag when it tries to start, or a joint is warm", "a thin or green cable, a loose joint, a tired battery", "mend_wiring"},
	{"It tries, and its fan stands still", "the fan: it wears out first, and the unit stops with it", "mend_fan"},
	{"It runs with the thermostat bridged, not without", "the thermostat, or its wire", "mend_thermostat"},
	{"Volts, fan and bridge are right; the controller blinks or is dead", "the controller: read its blinks in the maker's list first", "mend_controller"},
	{"It runs without a pause, the plate frosts all over, the room about it is hot", "air: dust on the fins, a shut locker; or the box leaks", "mend_air"},
	{"It runs, and frost covers a corner of the plate or none", "gas has leaked, at a joint or a rusted plate", "mend_gas"},
	{"Frost runs back along the thicker pipe to the compressor", "too much gas, or a blocked pipe", "mend_charge"},
	{"Volts are right; it hums, gets hot and stops", "the compressor", "mend_compressor"},
}

// Ail is a row of the page on a unit that ails.
type Ail struct {
	Finds, Cause string
	Price        quantity.Range // of mending
	Costs        string         // the same in words, low to high
	Do           string         // mend, replace or take out, by the figures of this boat
}

// Ailing gives the rows of the page. Causes whose price the book does not have are
// left out.
func (v Voice) Ailing() []Ail {
	var out []Ail
	for _, a := range ailments {
		line, ok := v.book.Price(a.line)
		if !ok {
			continue
		}
		p := line.Price
		out = append(out, Ail{Finds: a.finds, Cause: a.cause, Price: p, Costs: v.span(p), Do: v.mend(p)})
	}
	return out
}

func (v Voice) mend(p quantity.Range) string {
	worth := v.Money(v.r.RepairWorth)
	switch v.r.Mend(p.Low, p.High) {
	case economics.Mend:
		return "mend"
	case economics.MendUnder:
		if v.r.RepairWorth < 1 {
			return "mend only what is free"
		}
		return "mend under " + worth
	case economics.Replace:
		if v.WantsUnit() {
			return "replace"
		}
		return "take out"
	}
	return "hold it against a new one"
}

// WantsUnit tells whether a unit is among the ways that lead.
func (v Voice) WantsUnit() bool { return slices.ContainsFunc(v.r.Answer.Ways, unit) }

// Mendable counts the causes, of how many, whose mending costs no more than it is
// worth on this boat, even at its dearest.
func (v Voice) Mendable() (n, of int) {
	for _, a := range ailments {
		if line, ok := v.book.Price(a.line); ok {
			of++
			if v.r.Mend(line.Price.Low, line.Price.High) == economics.Mend {
				n++
			}
		}
	}
	return n, of
}

// AilingSteps is the half hour with a meter, in order.
func (v Voice) AilingSteps() []string {
	steps := []string{
		"Open lockers and hatches and sniff: no petrol or cooking gas, or stop here. Shore power and inverter off and unplugged. A clock, a meter, a piece of wire.",
		"Look at fuse, breaker and switch. Measure volts at the battery, then at the unit's own terminals with its switch on.",
	}
	least := "it must not fall under the unit's own cut-out"
	if len(v.r.Months) > 0 {
		u := v.r.Units[0]
		least = fmt.Sprintf("a unit of about %s cuts out near %s", quantity.FormatCurrent(quantity.Ampere(Round(u.RunningA))), quantity.FormatVoltage(quantity.Volt(u.Cable.CutOutV)))
	}
	steps = append(steps,
		"Read them again while it tries to start: "+least+". Feel each joint for warmth. More than a thirtieth lost on the way is too much.",
		"Does the fan turn, by hand and by itself? Do the fins breathe, free of dust?",
		"Bridge the two wires of the thermostat for a minute. If it starts, the thermostat is at fault.",
		"Count the blinks of the controller's lamp, and look them up in the maker's sheet.",
		"If it runs, wait a quarter of an hour. Note how much of the plate frosts, and whether the thicker pipe is bare, wet or white.")
	run := "Time it for an hour once cold, and read how warm the cabin is."
	if len(v.r.Months) > 0 {
		if u := v.r.Units[0]; u.RunShare > 0 {
			run += fmt.Sprintf(" In this box a sound small unit runs about %d %% of the time in the hottest month aboard.", min(100, share100(Round(u.RunShare))))
		}
	}
	return append(steps, run)
}

// AilingWorth says what mending is worth on this boat, and what the answer is.
func (v Voice) AilingWorth() string {
	text := "No dead or doubtful unit was told of, so nothing here says what mending is worth: tell box.fitted_unit."
	if v.r.HasRepair {
		text = v.aboard()
	}
	if way := v.r.Answer.Way(); way != "" && !v.WantsUnit() {
		text += fmt.Sprintf(" By the report %s %s the way for her: mend what is cheap, and take out what is not, which gives the room back.", In(way), is(way))
	}
	return text
}

// AilingCautions stand on the page whatever is found.
func (v Voice) AilingCautions() []string {
	return []string{
		"Leave the gas circuit shut: no gauges, no valve, no cut pipe. Work on refrigerant is for certified people by law (40 CFR 82 subpart F in the US; Regulation (EU) 2024/573). Some units hold gas that burns.",
		"A side that runs on shore power has capacitors that keep a charge after the plug is out. Leave it shut, and to a licensed electrician.",
		"A battery short-circuited by a spanner burns and can explode: rings off, fuse in every bridge you make.",
		"Without certainty have it looked at: local codes and the maker's sheet go before this page.",
	}
}
