package economics

import (
	"flag"
	"fmt"
	"maps"
	"os"
	"strings"
	"testing"

	"coldreckon/economics/quantity"
)

var variantsTo = flag.String("variants", "", "write what the other forms of the ways change as Markdown to this file, in some minutes")

// variants are the forms that owners ask after beside the ways as they come.
var variants = []struct {
	head   string
	change func(*Boat)
	cell   func(*view) string
}{
	{"as it is", func(*Boat) {}, wholeCell},
	{"ice in a cooler", func(b *Boat) {
		b.Cooler = Cooler{Stands: CoolerInCabin, Volume: 58, Wall: 0.051}
		b.Box = b.Cooler.box(b.Box)
	}, func(v *view) string { return fmt.Sprintf("ice %d", v.fitted[0]) }},
	{"drinks in one", func(b *Boat) {
		b.Cooler = Cooler{Stands: CoolerInCabin, For: CoolerForDrinks, Volume: 58, Wall: 0.051}
	}, wholeCell},
	{"cubes a day", func(b *Boat) { b.Food.Freeze = FreezesCubes }, wholeCell},
	{"off at night", func(b *Boat) { b.Power.ByDay = quantity.Yes }, func(v *view) string {
		return fmt.Sprintf("%d; bottles %d", v.byDay.Alone, v.byDay.Bottles)
	}},
	{"void of 40 L", func(b *Boat) { b.Box.VoidVolume = 40 }, wholeCell},
}

func wholeCell(v *view) string {
	return fmt.Sprintf("%s; %d %d %d", v.untold(), v.fitted[0], v.fitted[1], v.fitted[2])
}

// What the other forms change at a few places. Drinks that leave the box and foam
// poured round it leave no way working in clearly fewer futures: the search may
// stop at nine of ten, so that those that reach it are alike.
func TestVariantsOfTheLandscape(t *testing.T) {
	if *variantsTo == "" && os.Getenv("COLDRECKON_LONG") == "" {
		t.Skip("makes the long run only")
	}
	places := []place{{"maine-coast", "good", 10, 3}}
	if *variantsTo != "" {
		places = []place{{"maine-coast", "good", 10, 3}, {"chesapeake-bay", "average", 45, 3}, {"aegean-cyclades", "average", 120, 3}, {"windward-islands", "good", 365, 7}}
	}
	var out strings.Builder
	out.WriteString("| place |")
	for _, x := range variants {
		fmt.Fprintf(&out, " %s |", x.head)
	}
	fmt.Fprintf(&out, "\n|---|%s\n", strings.Repeat("---|", len(variants)))
	for _, p := range places {
		fmt.Fprintf(&out, "| %s, %d nights, %s |", p.ground, p.nights, p.box)
		var was view
		for i, x := range variants {
			b := p.boat()
			b.Box.Faces = maps.Clone(b.Box.Faces)
			x.change(&b)
			v := p.lookAt(t, b)
			fmt.Fprintf(&out, " %s |", x.cell(&v))
			if i == 0 {
				was = v
			}
			if x.head == "drinks in one" || x.head == "void of 40 L" {
				for k := range v.fitted {
					if v.fitted[k] < min(was.fitted[k], 90)-5 {
						t.Errorf("%s, %s: %s works in %d, without it in %d", p, x.head, cold[k], v.fitted[k], was.fitted[k])
					}
				}
			}
			if x.head == "off at night" && v.byDay.Alone > v.byDay.Bottles+5 {
				t.Errorf("%s: off at night it works in %d, beside bottles in %d", p, v.byDay.Alone, v.byDay.Bottles)
			}
		}
		out.WriteString("\n")
	}
	t.Log("\n" + out.String())
	if *variantsTo != "" {
		if err := os.WriteFile(*variantsTo, []byte(out.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
