package main

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// Each sample has a page of arithmetic in a file of its own, worked on paper
// from its answers file and the tables below, every line rounded as it is
// written and carried on rounded. The table under the page holds the program's
// figures to it.
//
// What the pages take as given, with its source; judgement is engineering
// judgement, and that and the ASHRAE, EN ISO and IEC values are from memory:
//
//	films, W/m²K         8.3 wall, 6.1 heat down, 9.3 heat up (ASHRAE Fundamentals); sea 500 (judgement)
//	k dry, W/m·K         old polyurethane 0.028, new 0.024, extruded polystyrene 0.033
//	                     (CIBSE Guide A; cold-store wall tables; EN 13164 data sheets)
//	k moist              k·exp(f·w), f 6 for polyurethane (EN ISO 10456); w 0.04 damp, 0.12 wet (judgement)
//	edges                0.54 × inside length × U·t, the two faces' mean by area;
//	corners              0.15 × mean U·t × mean t each (Langmuir, Adams and Meikle 1913; Holman, ch. 3);
//	                     what a face brings fades in from 10 to 20 mm of foam (judgement)
//	lid seal, W/m·K      good 0.08, worn 0.20, resting 0.35; open drain 0.15 W/K (judgement)
//	box of a volume      1 : 1 : 1.1; an untold top has half the walls' foam; a lid of 0.30 × 0.40 m (judgement)
//	trust, log-sd        walls told 0.25, ice test 0.10, remembered ice 0.30 over the
//	                     elasticity of its hours (judgement); combined in logarithms by inverse variance
//	ice, water           333.6 kJ/kg, 4.19 kJ/kg·K, leaves at 2 °C: 342.0 kJ/kg
//	ice in a litre       block 0.92, cubes 0.56 kg (FAO Fisheries Technical Paper 436)
//	a day's air          mean + half the range × cos(15° × (hour - 15)): from 7 to 21 h this is
//	                     0.509 of half the range over the mean, from 12 to 18 h 0.900
//	engine space         8 K over the cabin while motoring (judgement)
//	lid                  0.3 of the free air at one opening from above, 0.8 through a door, from 7 to 21 h; free
//	                     air is half of the room beside ice or plate (5 L thin, 12 L cold-storing) (judgement)
//	moist air            1.006 t + w (2501 + 1.86 t) kJ/kg; ASHRAE Fundamentals, ch. 1; the cold air that falls out is
//	                     saturated, 611.2 exp(17.62 t/(243.12 + t)) Pa (Magnus; WMO guide, from memory)
//	goods                perishables 3.5 kJ/kg·K, in at 8 °C; drinks 0.35 kg each, 4.19, in at the cabin's (judgement;
//	                     Earle, appendix 7)
//	heat held            0.15 kJ/K a litre of box; jars 0.40, 40 kJ/K at most; what is stowed (judgement)
//	plate                5 W/K thin, 8 cold-storing at -10 °C, both × W/50 over 50 W (judgement)
//	condenser            over its air or water: fins 20 K, a fan in its locker 15 K, ducted 12 K, sea 6 K, at
//	                     least 30 °C; fan or pump 3 W; standby 0.1 W (judgement)
//	cooling              W at -10/45 °C × exp(0.045 (Te + 10)) × (1 - 0.008 (Tc - 45)) (judgement)
//	COP                  0.33 × Te in kelvin / (Tc - Te) (judgement; US EPA-430-R-93-010)
//	sun in an hour       π/24 (a + b cos ω)(cos ω - cos ωs)/(sin ωs - ωs cos ωs), stretched to a sum of 1
//	                     (Collares-Pereira and Rabl 1979); sunset by FAO-56 eq. 24 and 25
//	panel                shade arch 0.92, bimini 0.85, deck 0.75; tracking 0.96, plain 0.80; soil and
//	                     wire 0.94; -0.4 %/K over 25 °C; cells (NOCT - 20)/800 K per W/m² over the air,
//	                     NOCT 45, on deck 63 °C (IEC 61215; Gilman et al. 2018)
//	factors, 3 %         present worth of 1 a year: 7.0197 for 8 years, 8.5302 for 10; of 1 after
//	                     8 years 0.7894 (NIST Handbook 135)
//	prices, as usual     fitting by own hands 120 and 500; cable and fuse 70; haul-out 500, seacock 350;
//	                     upkeep 2 and 2.5 % of the unit's price; shore 0.35, engine 1.50, wear of lead
//	                     0.73 a kWh; food spoiled 0.80 a kg and warm day; dry stores as
//	                     told; a unit stops unseen once in 8 years of 365 nights (judgement) and spoils
//	                     what is chilled, 8 a kg: under a hundredth, and left out, but on Saltmeadow's
//	                     page; seen at a sale 0.15; a sealed battery lasts 6 years (price book)
//
// Units last 14 years and are not renewed within 10. A battery is: what is left
// of its renewal at the end, in equal parts a year, comes off. What only a season
// hour by hour can tell, ice bought, warm days, remembered ice and the kilowatt-
// hours that shore and engine bring for the unit's sake and that the battery wears
// by, is taken over from the run and marked "run"; the pages price it.
//
// A break-even is of the ways with the work found for them: fixed ÷ (ice a night -
// unit a night), fixed being what comes whatever the nights, upkeep with it, less
// the same of ice; a night is the rest ÷ nights a year.

// pageRounding is how far a page of three figures, carried on from line to
// line, may stray from the unrounded sums, relative.
const pageRounding = 0.01

// handRow is one result of a page.
type handRow struct {
	path string  // of the program's figure, see figureAt
	hand float64 // as worked on the page
}

// holdToPage compares the printed figures of a sample with its page.
func holdToPage(t *testing.T, sheet any, rows []handRow) {
	t.Helper()
	for _, row := range rows {
		got, ok := figureAt(t, sheet, row.path).(float64)
		if !ok || math.Abs(got-row.hand) > pageRounding*math.Abs(row.hand) {
			t.Errorf("%s: program %v, by hand %g", row.path, figureAt(t, sheet, row.path), row.hand)
		}
	}
}

// neverEven holds the sheet to a page that finds no break-even within a year
// because the unit's fixed costs are too high.
func neverEven(t *testing.T, sheet any) {
	t.Helper()
	for _, unit := range []string{"small", "larger"} {
		if got := figureAt(t, sheet, "break_even/"+unit+"/nights_per_year"); got != nil {
			t.Errorf("%s: break-even at %v nights, by hand never", unit, got)
		}
		if got := figureAt(t, sheet, "break_even/"+unit+"/unit_cheaper_now"); got != false {
			t.Errorf("%s: cheaper now is %v, by hand it never is", unit, got)
		}
	}
}

// figureAt follows a path of keys through the printed JSON. Of a list it takes
// the element that names itself by the key: by id, option, source, or month.
// A path that leads nowhere fails the test; null is nil.
func figureAt(t *testing.T, sheet any, path string) any {
	t.Helper()
	at := sheet
	for _, key := range strings.Split(path, "/") {
		found := false
		switch level := at.(type) {
		case map[string]any:
			at, found = level[key]
		case []any:
			for _, element := range level {
				if named(element, key) {
					at, found = element, true
					break
				}
			}
		}
		if !found {
			t.Fatalf("the figures have no %s (at %s)", path, key)
		}
	}
	return at
}

func named(element any, key string) bool {
	fields, ok := element.(map[string]any)
	if !ok {
		return false
	}
	for _, field := range []string{"id", "option", "source"} {
		if name, ok := fields[field].(string); ok {
			return name == key
		}
	}
	month, ok := fields["month"].(float64)
	return ok && strconv.FormatFloat(month, 'f', -1, 64) == key
}
