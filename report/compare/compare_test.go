package compare

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"math"
	"runtime"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

func TestABadBoatDoesNotStopTheRest(t *testing.T) {
	made := table(t)
	if len(made.Rows) != 4 || made.Failed() != 1 {
		t.Fatalf("%d rows, %d failed; want 4 and 1", len(made.Rows), made.Failed())
	}
	bad := made.Rows[1]
	if bad.File != "nowhere.yaml" || bad.Name != "Nowhere" || !strings.Contains(bad.Error, "atlantis") {
		t.Errorf("the bad boat's row is %q, %q, %q", bad.File, bad.Name, bad.Error)
	}
	if r := rowOf(Entry{File: "x.yaml", Err: errors.New("x.yaml:3: found a riddle")}, rulePack(t), few); r.Error != "x.yaml:3: found a riddle" || r.File != "x.yaml" {
		t.Errorf("a file that cannot be read is %+v", r)
	}
	empty := economics.Boat{Name: "Empty", Cruising: economics.Cruising{Ground: "maine-coast"}}
	if r := rowOf(Entry{File: "empty.yaml", Boat: empty}, rulePack(t), few); r.Error == "" {
		t.Error("a boat without a box was reckoned")
	}
}

// broken is a criterion that no boat survives.
type broken struct{}

func (broken) Holds(economics.Facts) (bool, error) { panic("a riddle") }

// A fault in the program, met in one of the reckoning's workers, is an error of
// the boat. Guards the recover in economics' share.
func TestAFaultIsTheBoatsError(t *testing.T) {
	pack := rulePack(t)
	pack.Book.Criteria = append(slices.Clone(pack.Book.Criteria),
		economics.Criterion{ID: "broken", Options: []economics.OptionID{economics.IceOnly}, Fails: broken{}})
	row := rowOf(entries()[0], pack, few)
	if !strings.Contains(row.Error, "fault in the program") || !strings.Contains(row.Error, "a riddle") {
		t.Errorf("the row's error is %q", row.Error)
	}
}

// A row says what a reckoning of the boat alone says.
func TestRowIsTheReckoning(t *testing.T) {
	e := entries()[0]
	ground, err := e.Boat.Ground()
	if err != nil {
		t.Fatal(err)
	}
	p := rulePack(t)
	want, err := economics.Reckon(e.Boat, p.Book, ground, few)
	if err != nil {
		t.Fatal(err)
	}
	row := table(t).Rows[0]
	if row.Answer != want.Answer.Way() || row.Best != want.Answer.WayOf100 {
		t.Errorf("answer %s in %d of 100, want %s in %d", row.Answer, row.Best, want.Answer.Way(), want.Answer.WayOf100)
	}
	for i := range want.Options {
		o, got := want.Options[i], row.Options[i]
		if got.ID != o.ID || got.AsTold.Works != o.AsToldWorksOf100 || got.Fitted.Works != o.WorksOf100 || len(got.Work) != len(o.Fit.Items) {
			t.Errorf("%s: works %d → %d with %d pieces, want %d → %d with %d", o.ID, got.AsTold.Works, got.Fitted.Works, len(got.Work), o.AsToldWorksOf100, o.WorksOf100, len(o.Fit.Items))
		}
		if y := got.Fitted.Yearly; y.Typical != o.Fitted.Yearly || y.Low != o.FittedBands.Yearly.Low || y.High != o.FittedBands.Yearly.High {
			t.Errorf("%s: a year %v, want %g (%g to %g)", o.ID, y, o.Fitted.Yearly, o.FittedBands.Yearly.Low, o.FittedBands.Yearly.High)
		}
		if math.Abs(got.Fitted.First.Typical-o.Fitted.First) > 1e-9 {
			t.Errorf("%s: first cost %g, want %g", o.ID, got.Fitted.First.Typical, o.Fitted.First)
		}
		if f := got.Fitted.First; f.Low > f.Typical || f.High < f.Typical || o.Fitted.First > 0 && f.Low == f.High {
			t.Errorf("%s: first cost %v is no range", o.ID, f)
		}
		if f, want := got.AsTold.First, o.AsToldBands.First; f.Low != min(want.Low, o.AsTold.First) || f.High != max(want.High, o.AsTold.First) {
			t.Errorf("%s: first cost as told %v, want %v", o.ID, f, want)
		}
	}
	if row.Box.Leak.Typical != float64(want.Box.Leak) {
		t.Errorf("leak %v, want %g", row.Box.Leak, float64(want.Box.Leak))
	}
}

// The cost of the work is the sum of its pieces.
func TestCostOfWork(t *testing.T) {
	var r economics.Reckoning
	o := &r.Options[2]
	o.ID = economics.SmallUnit
	o.PieceCosts = []economics.PieceCost{{Piece: economics.SealPiece, Cost: quantity.Range{Low: 15, Typical: 45, High: 110}},
		{Piece: economics.CoverPiece, Cost: quantity.Range{Low: 5, Typical: 10, High: 20}}}
	if got, want := optionOf(&r, o, economics.Book{}).WorkCost, (quantity.Range{Low: 20, Typical: 55, High: 130}); got != want {
		t.Errorf("work costs %v, want %v", got, want)
	}
}

// Hand-made counts and costs: the way to cold food.
func TestColdWay(t *testing.T) {
	option := func(id economics.OptionID, works int, yearly float64) Option {
		return Option{ID: id, Fitted: Case{Works: works, Yearly: quantity.Range{Typical: yearly}}}
	}
	for _, c := range []struct {
		name               string
		answer             economics.OptionID
		works              bool
		ice, small, larger Option
		want               economics.OptionID
	}{
		{"the answer keeps food cold", economics.LargerUnit, true, option("ice", 95, 100), option("small", 95, 200), option("larger", 95, 300), economics.LargerUnit},
		{"nothing to decide: the cheapest that works", "", true, option("ice", 10, 100), option("small", 92, 200), option("larger", 100, 300), economics.SmallUnit},
		{"nothing to decide: the nearest when none works", "", true, option("ice", 10, 100), option("small", 40, 200), option("larger", 80, 300), economics.LargerUnit},
		{"nothing works", economics.IceOnly, false, option("ice", 5, 100), option("small", 0, 200), option("larger", 3, 300), economics.IceOnly},
	} {
		r := Row{Answer: c.answer, Works: c.works, Options: [4]Option{c.ice, option("dry", 100, 10), c.small, c.larger}}
		if got := r.coldWay(); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

func TestStopsComeWithTheBoat(t *testing.T) {
	for _, id := range []string{"child-trap", "co-charging-blind", "fuel-vapour"} {
		row := table(t).Rows[0]
		if !slices.ContainsFunc(row.Stops, func(s Stop) bool { return s.ID == id }) {
			t.Errorf("stop %s is missing from a boat that calls for it", id)
		}
	}
}

func TestProgressIsToldAfterEachBoat(t *testing.T) {
	var told []string
	Compare(many(2), rulePack(t), few, func(done int, row *Row) {
		if done != len(told)+1 {
			t.Errorf("told of %d boats after %d", done, len(told)+1)
		}
		told = append(told, row.File)
	})
	if !slices.Equal(told, []string{"0.yaml", "1.yaml"}) {
		t.Errorf("told of %q", told)
	}
}

// Of each boat only a row stays: 4 more boats leave less than 32 kB each.
func TestMemoryIsFlat(t *testing.T) {
	live := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	p := rulePack(t)
	Compare(many(1), p, few, nil)
	before := live()
	const boats = 4
	kept := Compare(many(boats), p, few, nil)
	after := live()
	if grown := float64(after) - float64(before); grown > boats*32_000 {
		t.Errorf("%.0f bytes stay for each boat, want under 32,000", grown/boats)
	}
	runtime.KeepAlive(kept)
}

func TestSort(t *testing.T) {
	for _, key := range SortKeys() {
		if sortWords[key] == "" {
			t.Errorf("key %s has no words", key)
		}
	}
	figure := map[string]func(*Row) float64{
		"price": func(r *Row) float64 {
			if !r.Placed() {
				return math.Inf(1)
			}
			return r.Of(r.Way).Price.Typical
		},
		"yearly": func(r *Row) float64 { return r.Of(r.Way).Fitted.Yearly.Typical },
		"first":  func(r *Row) float64 { return r.Of(r.Way).Fitted.First.Typical },
		"work":   func(r *Row) float64 { return r.Of(r.Way).WorkCost.Typical },
		"cold":   func(r *Row) float64 { return -r.mostCold() },
		"leak":   func(r *Row) float64 { return r.Box.Leak.Typical },
		"volume": func(r *Row) float64 { return -r.Box.VolumeL },
		"stops":  func(r *Row) float64 { return float64(len(r.StopsFor(r.Way))) },
		"ice":    func(r *Row) float64 { return r.Options[0].Fitted.Yearly.Typical },
		"small":  func(r *Row) float64 { return r.Options[2].Fitted.Yearly.Typical },
		"larger": func(r *Row) float64 { return r.Options[3].Fitted.Yearly.Typical },
	}
	for _, key := range SortKeys() {
		made := table(t)
		if err := made.Sort(key); err != nil {
			t.Fatal(err)
		}
		if made.Rows[3].Error == "" {
			t.Errorf("%s: the bad boat is not last", key)
		}
		if key == "name" {
			if made.Rows[0].Name != "Avocet" || made.Rows[1].Name != "Osprey" || made.Rows[2].Name != "Plover" {
				t.Errorf("by name: %s, %s, %s", made.Rows[0].Name, made.Rows[1].Name, made.Rows[2].Name)
			}
			continue
		}
		of, ok := figure[key]
		if !ok {
			t.Errorf("no test for key %s", key)
			continue
		}
		if a, b, c := of(&made.Rows[0]), of(&made.Rows[1]), of(&made.Rows[2]); a > b || b > c {
			t.Errorf("by %s: %g, %g, %g", key, a, b, c)
		}
	}
	made := table(t)
	if err := made.Sort("beauty"); err == nil || !strings.Contains(err.Error(), "beauty") || !strings.Contains(err.Error(), "yearly") {
		t.Errorf("an unknown key gives %v", err)
	}
}

func TestTheBuyerBringsHisOwn(t *testing.T) {
	boat := drawn("Osprey", 80, 25, 30, heat.Damp, quantity.US, "$")
	boat.Known = map[string]quantity.How{"box.volume": quantity.Measured, "cruising.nights": quantity.Told, "ice.share_of_box": quantity.Told, "safety.co_alarm": quantity.Told, "money.years": quantity.Told}
	boat.Assumptions = []economics.Assumption{{Key: "box.foam"}, {Key: "food.target"}}
	buyer := drawn("nobody", 10, 1, 0, heat.Soaked, quantity.Metric, "$")
	buyer.Cruising = economics.Cruising{Ground: "ionian-islands", Nights: [12]float64{5: 20}, TripNights: 20, ShopEveryDays: 4, Crew: 4}
	buyer.Food.Target, buyer.Money.Years, buyer.Ice.Price, buyer.Ice.ShareOfBox = 5, 6, 2.5, 0.9
	buyer.Safety.Fish, buyer.Safety.COAlarm = quantity.Yes, quantity.Unknown
	buyer.Known = map[string]quantity.How{"cruising.crew": quantity.Told, "box.volume": quantity.Told, "ice.price": quantity.Told, "safety.co_alarm": quantity.Unsure}
	buyer.Assumptions = []economics.Assumption{{Key: "food.kg_per_person_day"}, {Key: "box.state"}}

	got := ForBuyer(boat, buyer, nil)
	his := got.Cruising.Ground == "ionian-islands" && got.Cruising.Crew == 4 && got.Food.Target == 5 && got.Money.Years == 6 && got.Ice.Price == 2.5 &&
		got.Safety.Fish == quantity.Yes && got.Units == quantity.Metric
	if !his {
		t.Errorf("the buyer's answers are not all there: %+v", got)
	}
	if got.Name != "Osprey" || got.Box.Volume != 80 || got.Ice.ShareOfBox != 0.4 || got.Safety.COAlarm != quantity.No || got.Power.SolarWp != 30 || got.Small.Price != 900 {
		t.Errorf("the boat's own answers are gone: %+v", got)
	}
	want := map[string]quantity.How{"box.volume": quantity.Measured, "ice.share_of_box": quantity.Told, "safety.co_alarm": quantity.Told, "cruising.crew": quantity.Told, "ice.price": quantity.Told}
	for key, how := range want {
		if got.Known[key] != how {
			t.Errorf("%s is known as %q, want %q", key, got.Known[key], how)
		}
	}
	if len(got.Known) != len(want) {
		t.Errorf("known: %v", got.Known)
	}
	if len(got.Assumptions) != 2 || got.Assumptions[0].Key != "box.foam" || got.Assumptions[1].Key != "food.kg_per_person_day" {
		t.Errorf("assumed: %v", got.Assumptions)
	}
	if boat.Cruising.Ground != "maine-coast" || len(boat.Known) != 5 {
		t.Error("the boat given was changed")
	}

	boat.Known["units_considered.small.price"] = quantity.Told
	boat.Currency = "€"
	if got := ForBuyer(boat, buyer, nil); got.Currency != "€" || got.Small.Price != 900 {
		t.Errorf("prices in another currency without a rate: %g in %s", float64(got.Small.Price), got.Currency)
	}
	if got := ForBuyer(boat, buyer, Rates{"EUR": 1.5}); got.Currency != "$" || got.Small.Price != 1350 || got.Larger.Fitting != 1050 {
		t.Errorf("€900 is %g in %s at 1.5", float64(got.Small.Price), got.Currency)
	}
}

func TestHowTheBoxIsKnown(t *testing.T) {
	b := asSheIs(drawn("Osprey", 80, 25, 30, heat.Damp, quantity.Metric, "$"))
	p := rulePack(t)
	row := rowOf(Entry{Boat: b}, p, few)
	if row.Box.Volume != (Datum{"80 L", Told}) || row.Box.Foam != (Datum{"25 mm", Told}) || row.Box.State != (Datum{"damp", Assumed}) || row.Box.LeakHow != Reckoned {
		t.Errorf("the box: %+v", row.Box)
	}
	b.Evidence.IceHistory = []heat.IceHistory{{Ice: 10, Hours: 36, Month: 7, InUse: true}}
	if row = rowOf(Entry{Boat: b}, p, few); row.Box.LeakHow != Remembered {
		t.Errorf("a box whose ice is remembered: %s from %s", row.Box.LeakHow, row.Box.LeakFrom)
	}
	b.Evidence.JugTests = []heat.JugTest{{Water: 10, Hours: 8, Start: 4, End: 13, Out: 24, BoxAir: 12, BoxAirRead: true}}
	if row = rowOf(Entry{Boat: b}, p, few); row.Box.LeakHow != Measured || !strings.Contains(row.Box.LeakFrom, "jug test") {
		t.Errorf("a tested box: %s from %s", row.Box.LeakHow, row.Box.LeakFrom)
	}
	for _, side := range heat.Sides {
		b.Known["box.faces."+string(side)+".state"] = quantity.Told
	}
	if row = rowOf(Entry{Boat: b}, p, few); row.Box.State.How != Told {
		t.Errorf("a state told face by face is %s", row.Box.State.How)
	}
}

func TestCSVAndJSON(t *testing.T) {
	made := table(t)
	made.Rows[2].Name = "=SUM(A1:A9)"
	made.Terms.Line = "Maine Coast, 18 nights"
	marked, err := made.CSV()
	if err != nil {
		t.Fatal(err)
	}
	data, ok := strings.CutPrefix(string(marked), "\xef\xbb\xbf") // the mark of UTF-8 (RFC 3629, 6)
	if !ok {
		t.Error("no byte-order mark: a spreadsheet would take the text for another encoding")
	}
	lines, err := csv.NewReader(strings.NewReader(data)).ReadAll() // refuses lines of unlike length
	if err != nil {
		t.Fatal(err)
	}
	if len(lines) != 5 {
		t.Fatalf("%d lines, want a head and four boats", len(lines))
	}
	seen := map[string]bool{}
	for _, h := range lines[0] {
		if seen[h] {
			t.Errorf("column %q twice", h)
		}
		seen[h] = true
	}
	cell := func(line int, column string) string { return lines[line][slices.Index(lines[0], column)] }
	if cell(3, "name") != "'=SUM(A1:A9)" || cell(2, "error") == "" || cell(2, "answer") != "" || cell(1, "note") != "not a survey or a valuation" {
		t.Errorf("names and errors: %q, %q", cell(3, "name"), cell(2, "error"))
	}
	if got, want := cell(1, "small_yearly_fitted"), made.Rows[0].Options[2].Fitted.Yearly.Typical; !near(got, want) {
		t.Errorf("small_yearly_fitted is %s, want %.4g", got, want)
	}
	if got, want := cell(1, "leak_w_per_k_high"), made.Rows[0].Box.Leak.High; !near(got, want) {
		t.Errorf("leak_w_per_k_high is %s, want %.4g", got, want)
	}

	text, err := made.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var back struct {
		Schema  int
		Heading string
		Boats   []struct {
			Name, Error, Answer string
			Options             []struct {
				Option string
				Fitted struct {
					Yearly struct{ Low, Typical, High float64 } `json:"yearly_cost"`
				}
			}
		}
	}
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if back.Schema != 1 || back.Heading != Heading || len(back.Boats) != 4 || back.Boats[1].Error == "" || len(back.Boats[0].Options) != 4 {
		t.Errorf("JSON: %+v", back)
	}
	if got, want := back.Boats[0].Options[0].Fitted.Yearly.Typical, made.Rows[0].Options[0].Fitted.Yearly.Typical; math.Abs(got/want-1) > 1e-3 {
		t.Errorf("yearly cost of ice is %g, want %g", got, want)
	}
}

func near(text string, want float64) bool {
	var got float64
	if err := json.Unmarshal([]byte(text), &got); err != nil {
		return false
	}
	return math.Abs(got/want-1) < 1e-3
}

// How a trip starts cold is another thing with ice than with a unit, and on a
// boat that is plugged in than on one that is not.
func TestAColdStartIsToldByOption(t *testing.T) {
	p := rulePack(t)
	start := func(shore quantity.Fraction, id economics.OptionID) string {
		b := drawn("Osprey", 80, 50, 100, heat.Dry, quantity.Metric, "$")
		b.Cruising.ShorePowerShare = shore
		r := economics.Reckoning{Boat: b}
		for i, option := range economics.Options {
			r.Options[i].ID = option
			r.Options[i].Fit.Items = []economics.FitItem{{Piece: economics.ColdStartPiece}}
		}
		return strings.Join(optionOf(&r, r.Of(id), p.Book).Work, "; ")
	}
	for _, c := range []struct {
		shore quantity.Fraction
		id    economics.OptionID
		want  string
	}{
		{0, economics.IceOnly, "ice in the day before"}, {0.3, economics.IceOnly, "ice in the day before"},
		{0, economics.SmallUnit, "its own sun"}, {0.3, economics.LargerUnit, "shore power the day before"},
	} {
		if got := start(c.shore, c.id); !strings.Contains(got, c.want) {
			t.Errorf("%s with %g of nights on shore power: %q, want %q in it", c.id, float64(c.shore), got, c.want)
		}
	}
}

// Sums print as in a boat's own report: two digits, rounded once, and no finer
// than the range lets one tell.
func TestSumsPrintAsInTheReport(t *testing.T) {
	r := Row{Currency: "£"}
	for _, c := range []struct {
		x    quantity.Range
		want string
	}{
		{quantity.Range{Low: 1300, Typical: 1446, High: 1700}, "£1,400 (1,300–1,700)"},
		{quantity.Range{Low: 68, Typical: 378, High: 1400}, "£400 (68–1,400)"},
		{quantity.Range{Low: 0, Typical: 0.14, High: 2.2}, "£0.10 (0–2.20)"},
		{quantity.Range{Low: 20, Typical: 56, High: 140}, "£60 (20–140)"},
	} {
		if got := r.band(c.x); got != c.want {
			t.Errorf("%v prints as %q, want %q", c.x, got, c.want)
		}
	}
}
