package chart

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// sampleDrawings are invented figures: they exercise the drawing, not the models.
func sampleDrawings() map[string]Drawing {
	worth := HundredFutures{Counts: [3]int{74, 7, 19}}
	untold := func(over string, n int) HundredFutures {
		return HundredFutures{Over: over, Under: "yes in " + Number(float64(n), 1) + " of 100", Counts: [3]int{n, 0, 100 - n}}
	}
	dollars := func(v float64) string { return "$" + Number(v, 1) }
	months := []SeasonMonth{{"May", 15}, {"June", 24}, {"July", 21}, {"August", 16}, {"September", 25}, {"October", 4}}
	shares := func(cold, cool float64) []DayShares {
		out := make([]DayShares, len(months))
		for i := range out {
			out[i] = DayShares{cold * (1 - 0.1*float64(i%3)), cool}
		}
		return out
	}
	var power []PowerMonth
	for i, m := range months {
		power = append(power, PowerMonth{m, 190 + 15*float64(i), 310 + 20*float64(i), 620 - 85*float64(i)})
	}
	face := func(name string, now, with float64) BoxFace {
		return BoxFace{BoxLeak{name, "", now, with}, 50, 25}
	}
	box := BoxSections{
		Across: 430, Deep: 460, High: 510, Lid: BoxFace{BoxLeak{"lid", "", 4.1, 3.4}, 40, 0}, Bottom: face("bottom, wet", 4.6, 2.5),
		Inboard: BoxFace{BoxLeak{"inboard", "cabin 27 °C", 3.4, 1.6}, 50, 25}, Outboard: BoxFace{BoxLeak{"outboard", "sea 24 °C", 3.1, 1.5}, 60, 25},
		Fore: face("fore", 3.2, 1.8), Aft: face("aft", 3.2, 1.8), Seal: BoxLeak{"seal", "", 6.2, 2.9}, Drain: BoxLeak{"drain", "", 1.1, 0.2},
		Opening: [2]float64{360, 310}, Plate: true, Volume: "77 L", Was: "was 101 L", Sections: [2]string{"Cut across, looking aft", "From above, lid off"},
		Foam: "foam there, 5 cm, damp", Board: "board to add inside, 2.5 cm", PlateName: "plate",
	}
	return map[string]Drawing{
		"one field":    TenByTen{Fields: []HundredFutures{worth}, Groups: [3]string{"small unit", "larger unit", "dry stores"}},
		"three fields": TenByTen{Fields: []HundredFutures{untold("$1 a day", 12), untold("$2 a day", 55), untold("$5 a day", 97)}, Groups: [3]string{"worth it", "", "dry stores"}},
		"price": PriceOfCold{Top: 10, Marks: []float64{2, 5, 10}, Worth: 3, Flag: "a cold day is worth $3 to you", Saves: "it saves", Say: dollars,
			Rows: []PriceRow{{"Small unit", -4, 0.2, 1.5, true, ""}, {"Larger unit", 0.7, 2.4, 23, false, ""}, {"Ice alone", 0, 0, 0, false, "cannot keep this box cold: 7 days of 120"}}},
		"price untold": PriceOfCold{Top: 10, Marks: []float64{1, 2, 5}, Say: dollars, Zones: []PriceZone{{0, 2, "YES"}, {5, 10, "NO"}},
			Rows: []PriceRow{{"Small unit", 1, 2, 4, true, ""}}},
		"box": box,
		"room": Room{Unit: "L", Bars: []RoomBar{{"as she is", []RoomPart{{"free", 101, Free}}},
			{"with the work", []RoomPart{{"food", 8, Food}, {"drinks", 4, Other}, {"plate", 3, Other}, {"free", 62, Free}, {"board", 24, Added}}}}},
		"season": Season{Months: months, Nights: "nights aboard", Cold: "cold: food at 5 °C or under", Cool: "cool: 10 °C or under", Warm: "warm", AsSheIs: "thin: as she is",
			Rows: []SeasonRow{{"Small unit", true, shares(1, 0), shares(0.7, 0.2)}, {"Ice alone", false, shares(0.1, 0.2), nil}, {"Dry stores", false, shares(0, 0), shares(0, 0)}}},
		"power": Power{Months: power, With: "with the work", AsSheIs: "as she is", Sun: "sun left over"},
		"cut list": CutList{LeftOver: "left over", Sheets: []CutSheet{
			{1200, 600, []CutPiece{{1, "bottom", 0, 0, 430, 460}, {2, "fore", 430, 0, 430, 485}}},
			{1200, 600, []CutPiece{{3, "aft", 0, 0, 430, 485}, {4, "inboard", 430, 0, 410, 485}, {5, "strip", 840, 0, 60, 485}}},
			{1200, 600, []CutPiece{{6, "outboard", 0, 0, 410, 485}}}}},
		"against": Against{Predicted: "kg of ice a day, reckoned", Measured: "measured", Points: []AgainstPoint{
			{2, 3, 4.5, 3.3}, {5, 6, 8, 5.4}, {0.8, 1, 1.3, 1.1}, {5, 6, 8, 5.5}}},
	}
}

// widths are those of a telephone, of columns, of both papers.
var drawingWidths = []float64{82, 113, 140, 166, 182}

func TestDrawingsKeepToTheirRectangle(t *testing.T) {
	for name, d := range sampleDrawings() {
		for _, w := range drawingWidths {
			for _, more := range []float64{0, 20} {
				r := sheet.Rect{X: 14, Y: 30, W: w, H: d.Height(w) + more}
				rec, err := drawn(t, d, r)
				if err != nil {
					t.Errorf("%s, %.0f mm wide: %v", name, w, err)
					continue
				}
				for _, f := range faults(rec, r) {
					t.Errorf("%s, %.0f mm wide: %s", name, w, f)
				}
				for _, o := range rec.Ops {
					if o.Kind == sheet.TextOp && o.Type.Size < 9 {
						t.Errorf("%s: %v is small", name, o)
					}
				}
			}
		}
	}
}

// A little less height than a drawing asks for, and it says so, as it does on a
// screen.
func TestDrawingsTellWhatTheyNeed(t *testing.T) {
	for name, d := range sampleDrawings() {
		if _, err := drawn(t, d, sheet.Rect{W: 166, H: d.Height(166) - 1}); err == nil || !strings.Contains(err.Error(), "picture") {
			t.Errorf("%s: error %v in too little room", name, err)
		}
		var doc layout.Document
		doc.Add(Picture(d, "It is so.", "in W", "It is so and so.", layout.Table{}))
		b, err := doc.HTML(sheet.Info{Lang: "en", Author: "test"})
		if err != nil || !strings.Contains(string(b), `viewBox="0 0 82 `) {
			t.Errorf("%s: not drawn for a telephone: %v", name, err)
		}
	}
}

// What cannot be drawn is refused, whatever it is.
func TestDrawingsRefuseWhatIsNone(t *testing.T) {
	nan := math.NaN()
	bad := sampleDrawings()["box"].(BoxSections)
	bad.Fore.Board, bad.Aft.Board = 300, 300
	for name, d := range map[string]Drawing{
		"counts":   TenByTen{Fields: []HundredFutures{{Counts: [3]int{50, 0, 49}}}},
		"no field": TenByTen{},
		"range":    PriceOfCold{Top: 10, Rows: []PriceRow{{Name: "x", Low: 3, Mid: 2, High: 4}}},
		"no scale": PriceOfCold{Rows: []PriceRow{{Name: "x"}}},
		"nan":      PriceOfCold{Top: 10, Rows: []PriceRow{{Name: "x", Mid: nan}}},
		"no month": Season{},
		"no night": Power{Months: []PowerMonth{{SeasonMonth: SeasonMonth{"May", 0}}}},
		"shares":   Season{Months: []SeasonMonth{{"May", 3}}, Rows: []SeasonRow{{With: []DayShares{{0.8, 0.3}}}}},
		"volume":   Room{Bars: []RoomBar{{"x", []RoomPart{{"y", -1, Free}}}}},
		"off":      CutList{Sheets: []CutSheet{{1000, 500, []CutPiece{{1, "x", 800, 0, 300, 300}}}}},
		"over":     CutList{Sheets: []CutSheet{{1000, 500, []CutPiece{{1, "x", 0, 0, 300, 300}, {2, "y", 200, 0, 300, 300}}}}},
		"board":    bad,
		"point":    Against{Points: []AgainstPoint{{Low: 2, Mid: 1, High: 3}}},
		"no point": Against{},
	} {
		if _, err := drawn(t, d, sheet.Rect{W: 166, H: 250}); err == nil {
			t.Errorf("%s is drawn", name)
		}
	}
}

func areas(rec *sheet.Recording, f sheet.Fill) []sheet.Rect {
	var out []sheet.Rect
	for _, o := range rec.Ops {
		if o.Kind == sheet.AreaOp && o.Fill == f && len(o.Points) == 4 {
			out = append(out, o.Box)
		}
	}
	return out
}

// Squares count: as many of each fill as its futures, filled from the bottom.
func TestSquaresCount(t *testing.T) {
	d := sampleDrawings()["one field"]
	rec := mustDraw(t, d, sheet.Rect{W: 60, H: d.Height(60)})
	for fill, want := range map[sheet.Fill]int{solid: 74 + 1, hatched: 7 + 1, open: 19 + 1} { // one more in the key
		if n := len(areas(rec, fill)); n != want {
			t.Errorf("%d squares of %v, want %d", n, fill, want)
		}
	}
	full, hollow := areas(rec, solid), areas(rec, open)
	if full[0].Y <= hollow[0].Y || math.Abs(full[0].W-full[0].H) > 1e-9 {
		t.Errorf("the first square is %v, a hollow one %v", full[0], hollow[0])
	}
}

// Every block is as long as its figure, on every scale.
func TestDrawingsAreToScale(t *testing.T) {
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-6*math.Abs(want)+1e-9 {
			t.Errorf("%s is %v, want %v", what, got, want)
		}
	}
	all := sampleDrawings()
	draw := func(name string) *sheet.Recording {
		return mustDraw(t, all[name], sheet.Rect{W: 166, H: all[name].Height(166)})
	}

	price := draw("price")
	flag := 0.0
	zero := 0.0
	for _, o := range price.Ops {
		switch {
		case o.Kind == sheet.LineOp && o.Pen.Width == heavyPen.Width:
			flag = o.Box.X
		case o.Kind == sheet.LineOp && o.Pen.Width == 0.35:
			zero = o.Box.X
		}
	}
	var dashes []float64
	for _, o := range price.Ops {
		if o.Kind == sheet.LineOp && len(o.Pen.Dash) > 0 {
			dashes = append(dashes, o.Box.X-zero)
		}
	}
	near("$5 over $2", dashes[1]/dashes[0], 2.5)
	near("the flag at $3 over $2", (flag-zero)/dashes[0], 1.5)
	marks := 0
	for _, a := range areas(price, open) {
		if math.Abs(a.W-1.8) < 1e-9 { // a mark, and no patch under a word
			if marks++; marks == 2 {
				near("the middle of the larger unit", (a.X+a.W/2-zero)/dashes[0], 2.4/2)
			}
		}
	}
	if marks != 2 {
		t.Errorf("%d marks, want 2", marks)
	}

	season := draw("season")
	var blocks, cold []sheet.Rect
	for _, a := range areas(season, open) {
		if math.Abs(a.H-seasonBlock) < 1e-9 {
			blocks = append(blocks, a)
		}
	}
	for _, a := range areas(season, solid) {
		if math.Abs(a.H-seasonBlock) < 1e-9 {
			cold = append(cold, a)
		}
	}
	near("24 nights over 15", blocks[1].W/blocks[0].W, 24.0/15)
	near("nine tenths cold", cold[1].W/blocks[1].W, 0.9)

	power := areas(draw("power"), sheet.Shade(sheet.Dark))[1:] // the first is the key's
	near("205 over 190", power[1].H/power[0].H, 205.0/190)
	near("widths as the season's", power[1].W/power[0].W, 24.0/15)

	room := areas(draw("room"), solid)
	near("8 L of 101", room[0].W, 8.0/101*areas(draw("room"), open)[0].W)

	cut := all["cut list"].(CutList)
	n, _, _ := cut.fit(166)
	pieces := areas(draw("cut list"), open)
	near("a piece", pieces[0].W, 430/n)
	near("its height", pieces[1].H, 485/n)

	box := all["box"].(BoxSections)
	foam := areas(draw("box"), sheet.Shade(sheet.Light))
	n = box.scale(166)
	near("the box over its foam", foam[0].W, (430+50+60)/n)
	near("and in height", foam[0].H, (510+40+50)/n)
	shaft := false
	for _, a := range areas(draw("box"), solid) {
		shaft = shaft || math.Abs(a.W-0.9*3.4) < 1e-6
	}
	if !shaft {
		t.Error("the lid's arrow is not 0.9 mm a watt")
	}
}

// Arrow heads say that a bar runs on below nothing, an open end that it runs on
// beyond the scale.
func TestPricesBeyondTheScale(t *testing.T) {
	d := sampleDrawings()["price"]
	rec := mustDraw(t, d, sheet.Rect{W: 113, H: d.Height(113)})
	heads, figure := 0, false
	for _, o := range rec.Ops {
		if o.Kind == sheet.AreaOp && len(o.Points) == 3 {
			heads++
		}
		figure = figure || o.Text == "to $23"
	}
	if heads != 1 || !figure {
		t.Errorf("%d arrow heads, want 1; the end beyond the scale is told: %v", heads, figure)
	}
}

// Boxes, sheets and prices of any kind keep to their rectangle.
func TestInventedDrawingsKeepToTheirRectangle(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 9))
	for range 60 {
		face := func(name string) BoxFace {
			return BoxFace{BoxLeak{name, "", 25 * rng.Float64(), 12 * rng.Float64()}, 120 * rng.Float64(), 60 * rng.Float64()}
		}
		across, deep, high := 200+600*rng.Float64(), 200+600*rng.Float64(), 200+500*rng.Float64()
		box := BoxSections{Across: across, Deep: deep, High: high, Lid: face("lid"), Bottom: face("bottom, soaked"), Inboard: face("inboard"), Outboard: face("outboard"),
			Fore: face("fore"), Aft: face("aft"), Seal: BoxLeak{"seal", "", 9 * rng.Float64(), 4}, Drain: BoxLeak{"drain", "", 2, 1}, Volume: "88 L", Was: "was 120 L",
			Sections: [2]string{"Cut across", "From above"}, Foam: "foam there", Board: "board to add", Opening: [2]float64{across * 0.6, deep * 0.6}, Plate: true, PlateName: "plate"}
		low := 14*rng.Float64() - 6
		mid := low + 6*rng.Float64()
		price := PriceOfCold{Top: 10, Marks: []float64{2, 5, 10}, Worth: 14*rng.Float64() - 2, Flag: "worth it to you", Saves: "it saves",
			Rows: []PriceRow{{"Small unit", low, mid, mid + 8*rng.Float64(), true, ""}, {"Larger unit", 2, 3, 4, false, ""}}}
		cut := CutList{LeftOver: "left over"}
		for range 1 + rng.IntN(5) {
			w, h := 400+2000*rng.Float64(), 400+800*rng.Float64()
			cut.Sheets = append(cut.Sheets, CutSheet{w, h, []CutPiece{{1, "bottom", 0, 0, w * rng.Float64(), h * rng.Float64()}}})
		}
		for name, d := range map[string]Drawing{"box": box, "price": price, "cut list": cut} {
			for _, w := range []float64{82, 166} {
				r := sheet.Rect{X: 14, Y: 30, W: w, H: d.Height(w)}
				rec, err := drawn(t, d, r)
				if err != nil {
					t.Errorf("%s: %v", name, err)
					continue
				}
				for _, f := range faults(rec, r) {
					t.Errorf("%s, %.0f mm wide: %s\n%+v", name, w, f, d)
				}
			}
		}
		if t.Failed() {
			return
		}
	}
}
