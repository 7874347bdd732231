package handout

import (
	"fmt"
	"strconv"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/report/forms"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
	"coldreckon/rules"
)

// words are the units and the figures of a unit system as printed.
type words struct {
	volume, foam, leak, rim, degree, heat, mass string
	volumeFrom                                  string // how a volume is found
	target                                      string // the food temperature of the tables
	offset                                      string // of the cabin over the air outside
}

func wordsOf(sys quantity.System) words {
	if sys == quantity.US {
		return words{volume: "cu ft", volumeFrom: "inches, ÷ 1,728", foam: "in", leak: "Btu/h·°F", rim: "feet", degree: "°F", heat: "Btu/h", mass: "lb", target: "39 °F", offset: "4 °F"}
	}
	return words{volume: "L", volumeFrom: "cm, ÷ 1,000", foam: "mm", leak: "W/K", rim: "metres", degree: "°C", heat: "W", mass: "kg", target: "4 °C", offset: "2 °C"}
}

// Use of the box as a leak: people's food and the openings of the lid, W/K.
// A person's chilled food, 0.45 kg a day of 3.6 kJ/kg·K, is 0.019 W/K; a dozen
// openings of a middling box let in 0.1 W at 20 K.
const (
	usePerPerson = 0.02
	useOfLid     = 0.01
)

// carryLoss is the part of ice that melts on the way to the boat: what the
// program takes where its owner does not say. From memory.
const carryLoss = 0.08

// short prints a figure with so many significant digits and no idle zeros.
func short(x float64, digits int) string {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'e', digits-1, 64), 64)
	if err != nil {
		return ""
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// price prints a sum: in cents if it is small, else to two significant digits.
func price(x float64) string {
	if x >= 0.1 && x < 10 {
		return fixed(x, 2)
	}
	return short(x, 2)
}

// part is a run of steps under a heading.
type part struct {
	head  string
	lines []forms.Line
}

// steps are the lines of the worksheet, at most twenty.
func (h *Handout) steps() []part {
	w, m, u := h.words, h.money, unitsOf(h.sys)
	leak := func(wPerK float64) string { return short(wPerK/u.leakUnit(), 2) }
	rim := func(s heat.Seal) string { return short(seal(s)*u.foot/u.leakUnit(), 2) }
	density := func(k heat.IceKind) string {
		f, err := heat.BulkDensity(k)
		if err != nil { // the kinds are the ledger's own
			return ""
		}
		return short(f.Range.Typical*u.litre/u.kilogram/(1-carryLoss), 2)
	}
	drain := 0.0
	if f, err := heat.DrainLoss(heat.OpenDrain); err == nil {
		drain = f.Range.Typical
	}
	cur := func(x float64) string { return m.currency + price(x) }
	spoiled, worked := m.currency+h.spoiled(), h.worked()
	bimini := energy.Shade(energy.Bimini).Typical / energy.Shade(energy.Arch).Typical
	deck := panelOnDeck(h.ground)
	plain := energy.ControllerShare(energy.Plain).Typical / energy.ControllerShare(energy.Tracking).Typical
	lithium := 1 / (float64(energy.Bank{Volts: 12, Chemistry: energy.Lithium}.Energy(1)) / float64(energy.Bank{Volts: 12, Chemistry: energy.Lead}.Energy(1)))

	lines := []part{
		{"The box", []forms.Line{
			{Text: "Inside volume: length × width × height, in " + w.volumeFrom + ".", Unit: w.volume},
			{Text: "Foam that counts: thickness of the walls' foam × its share in table A.", Unit: w.foam},
			{Text: "Table B with lines 1 and 2: nearest column and row; between them is closer.", Unit: w.leak},
			{Text: "Lid side with less foam? Look it up too, and write (5 × line 3 + that) ÷ 6. If not, copy line 3.", Unit: w.leak},
			{Text: fmt.Sprintf("Line 4 + %s of lid rim × %s (soft gasket), %s (hard or gappy) or %s (it only rests). Open drain hose: %s more. "+
				"This is the leak; if you have tested the box, write the test's leak instead.", w.rim, rim(heat.GoodSeal), rim(heat.PoorSeal), rim(heat.NoSeal), leak(drain)), Unit: w.leak, Heavy: true},
			{Text: fmt.Sprintf("With use: line 5 + %s × people + %s.", leak(usePerPerson), leak(useOfLid)), Unit: w.leak},
			{Text: fmt.Sprintf("Degrees in your warmest month: table C. Add what your cabin is over %s warmer than the air outside, or take off what it is less; "+
				"the same for food colder or warmer than %s.", w.offset, w.target), Unit: w.degree},
			{Text: "Heat to get rid of: line 6 × line 7.", Unit: w.heat, Heavy: true},
		}},
		{"Ice", []forms.Line{
			{Text: "Ice a day: table D, at line 8, read between the rows.", Unit: w.mass, Heavy: true},
			{Text: fmt.Sprintf("One load to buy: line 1 × the box's share for ice × %s (cubes), %s (crushed) or %s (block). No more than you carry at once; whole bags, rounded down.",
				density(heat.Cubes), density(heat.Crushed), density(heat.Block)), Unit: w.mass},
			{Text: "Times a year that you buy ice later on a trip: stops after its first × the share of them that sell ice.", Unit: "times"},
			{Text: "Ice to buy, a year: trips × line 10 (0 if frozen at home) + line 11 × the lesser of line 10 and 1.1 × line 9 × nights ÷ (trips + line 11).", Unit: w.mass, Working: worked.iceToBuy},
			{Text: fmt.Sprintf("Chilled food aboard: people × %s a day × the share that must be cold × days between shops ÷ 2.", w.mass), Unit: w.mass},
			{Text: fmt.Sprintf("Ice, a year: line 12 × price + the year's errands for it + nights × line 13 × %s (spoiled).", spoiled), Unit: m.currency, Heavy: true, Working: worked.iceYear},
		}},
		{"A small unit, and dry stores", []forms.Line{
			{Text: fmt.Sprintf("Ah a day: table D, between the rows, in the column nearest to the unit's rated watts. Fins in a locker: × %s; sea water: × %s. Lithium battery: × %s.",
				short(condenserFactor(h.ground, energy.Fins), 3), short(condenserFactor(h.ground, energy.Seawater), 3), short(lithium, 2)), Unit: "Ah at 12 V", Heavy: true},
			{Text: fmt.Sprintf("Ah to spare a day: panel watts ÷ 100 × table C (bimini × %s, deck × %s; plain controller × %s) + engine hours × its amps × %s − all other loads. On 24 V count each Ah twice.",
				short(bimini, 2), short(deck, 2), short(plain, 2), short(energy.EngineCharge().Typical, 2)), Unit: "Ah at 12 V"},
			{Text: fmt.Sprintf("Nights not cold: one for each trip. All nights, if line 8 is over nine tenths of the most in table D, or (line 15 − line 16) × nights of a trip is over %s of the battery's Ah (lithium %s).",
				short(energy.UsableShare(energy.Lead).Typical, 2), short(energy.UsableShare(energy.Lithium).Typical, 2)), Unit: "nights", Working: worked.notCold},
			{Text: fmt.Sprintf("Owning it, a year: price × table E for its life + (fitting + %s for cable and fuse; sea water %s more) × table E for what lasts + upkeep.",
				cur(m.cable), cur(m.hull)), Unit: m.currency, Working: worked.owning},
			{Text: fmt.Sprintf("Unit, a year: line 18 + nights × line 15 × %s (lithium %s) + line 17 × line 13 × %s.",
				cur(m.wearLead), cur(m.wearLithium), spoiled), Unit: m.currency, Heavy: true},
			{Text: fmt.Sprintf("Dry stores, a year: people × nights × %s for dearer food that keeps.", cur(m.dry)), Unit: m.currency, Heavy: true},
		}},
	}
	n := 0
	for i := range lines {
		for k := range lines[i].lines {
			n++
			lines[i].lines[k].Mark = strconv.Itoa(n)
		}
	}
	return lines
}

// worksheet is the first sheet.
func (h *Handout) worksheet() []layout.Block {
	form := forms.Form{Type: sheet.Type{Size: 8.5}, BoxWidth: 28}
	for _, p := range h.steps() {
		form.Lines = append(form.Lines, forms.Line{Text: p.head, Head: true})
		form.Lines = append(form.Lines, p.lines...)
	}
	return []layout.Block{
		layout.Heading{Level: 0, Text: "Ice, dry stores or a fridge?"},
		layout.Para{Style: layout.Tiny, Text: "Twenty pencil lines for " + h.ground.Name + "; the tables are overleaf. Prices are typical: put in your own where you know them. " +
			"Nine times in ten a result comes within 15 in 100 of the program's."},
		form.Block(),
		layout.Para{Style: layout.Fine, Lead: "Which?", Text: "For money alone the least of lines 14, 19 and 20. Dry stores keep nothing cold; with ice, count on food over 5 °C (41 °F) on many days. " +
			"Line 19 less line 20, shared out over the cold nights, is the price of a cold night: is it worth that to you?"},
		h.keepers(),
	}
}

// keepers names the foods that keep in a locker of the warmest month.
func (h *Handout) keepers() layout.Block {
	locker := h.ground.Months[hottest(h.ground)].AirMean + quantity.Celsius(cabinOffsetK)
	names := map[rules.Band][]string{}
	for _, k := range h.foods.Keeping(float64(locker), 7, economics.UnknownEggs) {
		names[k.Band] = append(names[k.Band], k.Name)
	}
	keep := layout.Para{Style: layout.Tiny}
	for _, band := range []rules.Band{rules.Weeks, rules.Months} {
		list := strings.Join(names[band], "; ") + "."
		switch {
		case len(names[band]) == 0:
		case keep.Lead == "":
			keep.Lead, keep.Text = "Keeps "+string(band)+":", list
		default:
			keep.Text += " Keeps " + string(band) + ": " + list
		}
	}
	return keep
}
