package boxtest

import (
	"fmt"
	"strconv"

	"coldreckon/economics/quantity"
	"coldreckon/report/forms"
	"coldreckon/report/layout"
)

// title heads the page and names the file.
const title = "How much does the box leak?"

// Document is the page in the units of sys. foot stands at its foot, such as a
// program and version.
func Document(sys quantity.System, foot string) layout.Document {
	doc := layout.Document{Title: title, Subject: "Two tests of an ice box, with blanks to fill in", Foot: foot}
	doc.Part(blocks(sys)...)
	return doc
}

// names are the words and units of a unit system.
type names struct {
	mass, volume, degree, heat, perDegree, leak string
	jugs                                        string // how much water to take
	ice                                         string // how much ice to take
	apart                                       string // least difference of the airs
	cold                                        string // of the water at the start
	warmer                                      string // by how much it should warm
	zero                                        string // what is taken from the meltwater's temperature
	meaning                                     string // of one unit of leak
}

func namesOf(sys quantity.System) names {
	if sys == quantity.US {
		return names{
			mass: "lb", volume: "cu ft", degree: "°F", heat: "Btu", perDegree: "Btu/°F", leak: "Btu/h·°F",
			jugs: "2 or 3 gallons of water", ice: "20 to 30 lb of ice", apart: "20 °F", cold: "39 °F", warmer: "16 °F", zero: "(F − 32)",
			meaning: "one Btu an hour for each °F that it is warmer outside",
		}
	}
	return names{
		mass: "kg", volume: "L", degree: "°C", heat: "Wh", perDegree: "Wh/°C", leak: "W/K",
		jugs: "about 10 L of water", ice: "8 to 12 kg of ice", apart: "10 °C", cold: "4 °C", warmer: "9 °C", zero: "F",
		meaning: "one watt of heat for each °C that it is warmer outside",
	}
}

// blocks gives the page's text.
func blocks(sys quantity.System) []layout.Block {
	n := namesOf(sys)
	ice, jug := trust()
	return []layout.Block{
		layout.Heading{Level: 0, Text: title},
		layout.Para{Wide: true, Text: "A drawing of the walls can be wrong by half. Either test settles it in a day, with a scale, two thermometers and a clock. " +
			"Empty the box of food first, and keep the lid shut: every peep counts as a leak."},
		layout.Side{Columns: [][]layout.Block{iceColumn(sys), jugColumn(sys)}},
		layout.Para{Style: layout.Small, Text: fmt.Sprintf("1 %s lets in %s. Eight times in ten the ice test comes within %d in 100 of the true leak, the jug test within %d. "+
			"A leak over double what the walls promise points to wet or missing foam, a gaping lid or a drain that breathes. "+
			"To copy into the answers file: letters are the lines above, mean is the last row of readings.", n.leak, n.meaning, ice, jug)},
	}
}

func iceColumn(sys quantity.System) []layout.Block {
	n, f, x := namesOf(sys), factorsOf(sys), iceExample[sys]
	taken, leak := iceLeak(sys, x)
	return []layout.Block{
		layout.Heading{Level: 1, Text: "The ice test"},
		steps(
			fmt.Sprintf("The day before, put in %s and a thermometer. The first night only chills box and liner; it does not count.", n.ice),
			"Next day, when it drips, pour off the water, weigh the ice (A), put it back, shut the lid, start the clock.",
			fmt.Sprintf("Catch the water from the drain; plug the hose in between. Read both airs four times. Outside should stay %s warmer.", n.apart),
			"After a day weigh the ice again (B), then the water caught (E), and read its temperature (F).",
		),
		readings([]string{"Time", "Outside " + n.degree, "Inside " + n.degree}),
		form(
			forms.Line{Mark: "A", Text: "Ice at the start", Unit: n.mass, Example: figure(x.Before)},
			forms.Line{Mark: "B", Text: "Ice at the end", Unit: n.mass, Example: figure(x.After)},
			forms.Line{Mark: "C", Text: "Melted: A − B", Unit: n.mass, Example: figure(x.Before - x.After)},
			forms.Line{Mark: "D", Text: "Hours between", Unit: "h", Example: figure(x.Hours)},
			forms.Line{Mark: "E", Text: "Water caught", Unit: n.mass, Example: figure(x.Water)},
			forms.Line{Mark: "F", Text: "Its temperature", Unit: n.degree, Example: figure(x.WaterTemp)},
			forms.Line{Mark: "G", Text: "Outside − inside, means", Unit: n.degree, Example: figure(x.Outside - x.Inside)},
			forms.Line{Mark: "H", Text: fmt.Sprintf("%s × C + %sE × %s", say(f.Ice), times(f.Water), n.zero), Unit: n.heat, Example: say(taken)},
			forms.Line{Mark: "I", Text: "Leak: H ÷ (D × G)", Unit: n.leak, Example: say(leak), Heavy: true},
		),
		answers("ice_tests", "melted: _C_ "+n.mass+", hours: _D_, ice: _A_ "+n.mass+",",
			"water: _E_ "+n.mass+", water_end: _F_ "+n.degree+",", "outside: _mean_ "+n.degree+", inside: _mean_ "+n.degree),
	}
}

func jugColumn(sys quantity.System) []layout.Block {
	n, f, x := namesOf(sys), factorsOf(sys), jugExample[sys]
	perDegree, leak := jugLeak(sys, x)
	return []layout.Block{
		layout.Heading{Level: 1, Text: "The water-jug test"},
		steps(
			fmt.Sprintf("Weigh %s in jugs (A) and chill it to about %s, no ice left in it. Chill the box overnight with ice; take it out.", n.jugs, n.cold),
			"Stand the jugs apart, hang a thermometer between them, touching nothing. Shut the lid for an hour.",
			"Shake and read the jugs (D), shut the lid, start the clock. Read both airs four times, by a probe wire if you can.",
			fmt.Sprintf("When the water has warmed by about %s, read it again (E). Outside must stay warmer than the jugs.", n.warmer),
		),
		readings([]string{"Time", "Outside " + n.degree, "Box air " + n.degree}),
		form(
			forms.Line{Mark: "A", Text: "Water in the jugs", Unit: n.mass, Example: figure(x.Water)},
			forms.Line{Mark: "B", Text: "Box, inside volume", Unit: n.volume, Example: figure(x.Box)},
			forms.Line{Mark: "C", Text: fmt.Sprintf("%sA + %s × B", times(f.Water), say(f.Liner)), Unit: n.perDegree, Example: say(perDegree)},
			forms.Line{Mark: "D", Text: "Water at the start", Unit: n.degree, Example: figure(x.Start)},
			forms.Line{Mark: "E", Text: "Water at the end", Unit: n.degree, Example: figure(x.End)},
			forms.Line{Mark: "F", Text: "Warmed: E − D", Unit: n.degree, Example: figure(x.End - x.Start)},
			forms.Line{Mark: "G", Text: "Hours between", Unit: "h", Example: figure(x.Hours)},
			forms.Line{Mark: "H", Text: "Outside − box air, means", Unit: n.degree, Example: figure(x.Outside - x.BoxAir)},
			forms.Line{Mark: "I", Text: "Leak: C × F ÷ (G × H)", Unit: n.leak, Example: say(leak), Heavy: true},
		),
		answers("jug_tests", "water: _A_ "+n.mass+", hours: _G_,",
			"start: _D_ "+n.degree+", end: _E_ "+n.degree+",", "outside: _mean_ "+n.degree+", box_air: _mean_ "+n.degree),
	}
}

// times prints a factor before what it multiplies; a 1 needs no printing.
func times(x float64) string {
	if x == 1 {
		return ""
	}
	return say(x) + " × "
}

func figure(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// steps sets the doing in the type of tables.
func steps(texts ...string) layout.Block {
	list := layout.Texts(layout.Number, texts...)
	list.Steps = true
	return list
}

func readings(heads []string) layout.Block {
	return forms.Grid{Heads: heads, Rows: []string{"", "", "", "", "Mean"}}.Block()
}

func form(lines ...forms.Line) layout.Block {
	return forms.Form{Lines: lines, BoxWidth: 25, ExampleWidth: 8.5, ExampleHead: "example"}.Block()
}

// answers shows what a finished test adds to the answers file, as YAML: the
// parts of one record, line by line.
func answers(list string, parts ...string) layout.Block {
	lines := []string{"evidence: # in the answers file", "  " + list + ":"}
	for i, part := range parts {
		lead, end := "       ", ""
		if i == 0 {
			lead = "    - {"
		}
		if i == len(parts)-1 {
			end = "}"
		}
		lines = append(lines, lead+part+end)
	}
	return forms.Listing{Lines: lines}.Block()
}
