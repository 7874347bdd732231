package rules

import (
	"math"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/rules/strict"
)

func loadFoods(t testing.TB) Foods {
	t.Helper()
	foods, err := LoadFoods()
	if err != nil {
		t.Fatal(err)
	}
	return foods
}

// Published keeping times at room temperature, and what the bands say of them.
func TestFoodBandsAgainstPublishedTimes(t *testing.T) {
	foods := loadFoods(t)
	for _, row := range []struct {
		ID     string
		StoreC float64
		Eggs   economics.Eggs
		Want   Band
		Source string
	}{
		{"eggs-washed", 12, economics.WashedEggs, notAtAll, "63 FR 45663: 45 °F or less; two hours out of it"},
		{"eggs-unwashed", 18, economics.UnwashedEggs, Weeks, "Regulation (EU) 2023/2465, article 4: best before at most 28 days from lay, unchilled"},
		{"eggs-unknown", 18, economics.UnknownEggs, notAtAll, "63 FR 45663, the stricter of the two rules"},
		{"butter", 20, economics.NoEggs, UnderAWeek, "USDA guidance through Michigan State University Extension: one to two days out"},
		{"dry-sausage", 20, economics.NoEggs, Months, "USDA FSIS: 4 to 6 weeks in a pantry"},
		{"country-ham", 20, economics.NoEggs, Months, "USDA FSIS: whole, one year"},
		{"tins-plain", 20, economics.NoEggs, Months, "USDA FSIS: low-acid, 2 to 5 years"},
		{"tins-sour", 20, economics.NoEggs, Months, "USDA FSIS: high-acid, 12 to 18 months"},
		{"jerky", 20, economics.NoEggs, Months, "USDA FSIS: 12 months"},
		{"dry-staples", 20, economics.NoEggs, Months, "USDA FSIS: 2 years"},
		{"squash", 12, economics.NoEggs, Months, "farm storage sheet: 3 to 6 months at 50 to 55 °F"},
		{"potatoes", 24, economics.NoEggs, Weeks, "2 to 4 weeks at 20 to 28 °C, common practice, no source"},
		{"carrots", 24, economics.NoEggs, Weeks, "1 to 2 weeks at 20 to 28 °C, common practice, no source"},
		{"squash", 27, economics.NoEggs, Months, "4 to 8 weeks at 20 to 28 °C, common practice, no source"},
	} {
		list := foods.Keeping(row.StoreC, row.Eggs)
		i := slices.IndexFunc(list, func(k Keeping) bool { return k.ID == row.ID })
		if i < 0 {
			t.Errorf("%s is not listed", row.ID)
			continue
		}
		if list[i].Band != row.Want {
			t.Errorf("%s at %g °C: %q; want %q (%s)", row.ID, row.StoreC, list[i].Band, row.Want, row.Source)
		}
	}
}

// The rows' own figures lie within the published ranges.
func TestFoodDaysAgainstPublishedTimes(t *testing.T) {
	foods := loadFoods(t)
	for _, row := range []struct {
		ID        string
		At        string
		Low, High float64 // days
		Source    string
	}{
		{"eggs-unwashed", "to_20", 1, 28, "Regulation (EU) 2023/2465, article 4"},
		{"butter", "to_20", 1, 2, "USDA guidance through Michigan State University Extension"},
		{"dry-sausage", "to_25", 28, 42, "USDA FSIS"},
		{"country-ham", "to_25", 365, 365, "USDA FSIS"},
		{"tins-plain", "to_25", 2 * 365, 5 * 365, "USDA FSIS"},
		{"tins-sour", "to_25", 365, 550, "USDA FSIS"},
		{"pouches", "to_25", 540, 550, "USDA FSIS"},
		{"jerky", "to_25", 365, 365, "USDA FSIS"},
		{"dry-staples", "to_25", 730, 730, "USDA FSIS"},
		{"squash", "to_15", 90, 180, "farm storage sheet, 50 to 55 °F"},
	} {
		i := slices.IndexFunc(foods.foods, func(f food) bool { return f.ID == row.ID })
		if i < 0 {
			t.Fatalf("no row %s", row.ID)
		}
		if days := foods.foods[i].days[slices.Index(warmths[:], row.At)]; days < row.Low || days > row.High {
			t.Errorf("%s: %g days; want %g to %g (%s)", row.ID, days, row.Low, row.High, row.Source)
		}
	}
}

func TestEveryFoodRowIsWhole(t *testing.T) {
	foods := loadFoods(t)
	if len(foods.foods) < 20 {
		t.Fatalf("%d rows", len(foods.foods))
	}
	for _, storeC := range []float64{-5, 10, 15, 20, 25, 30, 45} {
		for _, eggs := range []economics.Eggs{economics.WashedEggs, economics.UnwashedEggs, economics.UnknownEggs, economics.NoEggs} {
			want := len(foods.foods) - 2
			if eggs == economics.NoEggs {
				want--
			}
			list := foods.Keeping(storeC, eggs)
			if len(list) != want {
				t.Errorf("%g °C, %s eggs: %d rows; want %d", storeC, eggs, len(list), want)
			}
			for _, k := range list {
				if k.ID == "" || k.Name == "" || k.Advice == "" || k.Source == "" || !slices.Contains(bands, k.Band) {
					t.Errorf("%g °C: not whole: %+v", storeC, k)
				}
			}
		}
	}
	for _, c := range foods.CannotDo() {
		if c.Text == "" || c.Source == "" {
			t.Errorf("not whole: %+v", c)
		}
	}
}

// Warmth never lengthens keeping.
func TestKeepingIsOrderly(t *testing.T) {
	foods := loadFoods(t)
	for _, eggs := range []economics.Eggs{economics.WashedEggs, economics.UnwashedEggs, economics.UnknownEggs} {
		before := map[string]int{}
		for storeC := 0.0; storeC <= 40; storeC += 0.5 {
			for _, k := range foods.Keeping(storeC, eggs) {
				band := slices.Index(bands, k.Band)
				if was, seen := before[k.ID]; seen && band > was {
					t.Errorf("%s keeps longer at %g °C than a little cooler", k.ID, storeC)
				}
				before[k.ID] = band
			}
		}
	}
}

func TestKeepingIsSorted(t *testing.T) {
	for _, storeC := range []float64{12, 22, 30} {
		list := loadFoods(t).Keeping(storeC, economics.UnwashedEggs)
		for i := 1; i < len(list); i++ {
			a, b := list[i-1], list[i]
			ai, bi := slices.Index(bands, a.Band), slices.Index(bands, b.Band)
			if ai > bi || ai == bi && a.Name >= b.Name {
				t.Errorf("%g °C: %q (%s) before %q (%s)", storeC, a.Name, a.Band, b.Name, b.Band)
			}
		}
		if a := loadFoods(t).Keeping(storeC, economics.UnwashedEggs); !slices.Equal(a, list) {
			t.Error("twice is not the same")
		}
	}
}

// The edges of the ranges belong to the cooler one; what is no temperature
// counts as the warmest.
func TestWarmthOf(t *testing.T) {
	for _, row := range []struct {
		storeC float64
		want   string
	}{
		{-30, "to_15"}, {15, "to_15"}, {15.01, "to_20"}, {20, "to_20"}, {25, "to_25"}, {25.01, "over_25"},
		{math.Inf(1), "over_25"}, {math.NaN(), "over_25"},
	} {
		if got := warmths[warmthOf(row.storeC)]; got != row.want {
			t.Errorf("%g °C: %s; want %s", row.storeC, got, row.want)
		}
	}
}

func TestBandOf(t *testing.T) {
	for _, row := range []struct {
		days float64
		want Band
	}{
		{0, notAtAll}, {0.5, UnderAWeek}, {6, UnderAWeek}, {7, Weeks}, {21, Weeks}, {27, Weeks}, {28, Months}, {3650, Months},
	} {
		if got := bandOf(row.days); got != row.want {
			t.Errorf("%g days: %q; want %q", row.days, got, row.want)
		}
	}
}

// What the sources leave open is marked as judgement, temperature by temperature.
func TestJudgement(t *testing.T) {
	foods := loadFoods(t)
	find := func(id string, storeC float64) Keeping {
		for _, k := range foods.Keeping(storeC, economics.NoEggs) {
			if k.ID == id {
				return k
			}
		}
		t.Fatalf("no %s", id)
		return Keeping{}
	}
	if find("jerky", 22).Judged || !find("jerky", 28).Judged || !find("potatoes", 22).Judged ||
		!find("butter", 14).Judged || find("butter", 18).Judged {
		t.Error("judgement is not marked where it is one")
	}
}

// One rule for eggs at a time, as they are sold.
func TestEggRules(t *testing.T) {
	foods := loadFoods(t)
	for _, row := range []struct {
		eggs economics.Eggs
		want []string
	}{
		{economics.WashedEggs, []string{"eggs-washed"}},
		{economics.UnwashedEggs, []string{"eggs-unwashed"}},
		{economics.UnknownEggs, []string{"eggs-unknown"}},
		{economics.NoEggs, nil},
	} {
		var got []string
		for _, k := range foods.Keeping(18, row.eggs) {
			if strings.HasPrefix(k.ID, "eggs") {
				got = append(got, k.ID)
			}
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("%s: %v; want %v", row.eggs, got, row.want)
		}
	}
}

// What no locker can do is always said.
func TestCannotDo(t *testing.T) {
	said := map[string]string{}
	for _, c := range loadFoods(t).CannotDo() {
		said[c.ID] = c.Text
	}
	for id, word := range map[string]string{"medicine": "8 °C", "fish": "poison", "opened": "two hours", "milk": "milk", "cooked": "rice"} {
		if !strings.Contains(said[id], word) {
			t.Errorf("%s: %q does not speak of %q", id, said[id], word)
		}
	}
}

const (
	badFoodsHead = "kind: foods\nfoods:\n" +
		"  - {id: e1, name: E, eggs: washed, days: {to_15: 0, to_20: 0, to_25: 0, over_25: 0}, advice: A, grade: b, source: S}\n" +
		"  - {id: e2, name: E, eggs: unwashed, days: {to_15: 9, to_20: 9, to_25: 5, over_25: 3}, advice: A, grade: b, source: S}\n" +
		"  - {id: e3, name: E, eggs: unknown, days: {to_15: 0, to_20: 0, to_25: 0, over_25: 0}, advice: A, grade: b, source: S}\n"
	badFoodsTail = "cannot:\n  - {id: c, text: T, grade: a, source: S}\n"
)

// Every slip in a file is refused by its place. The sixth line is the one at fault.
func TestBadFoods(t *testing.T) {
	if _, err := readFoods("x.yaml", []byte(badFoodsHead+badFoodsTail)); err != nil {
		t.Fatal("the file without a slip is refused:", err)
	}
	for _, row := range []struct{ line, want string }{
		{`  - {id: a, name: N, days: {to_15: 9, to_20: 12, to_25: 5, over_25: 3}, advice: A, grade: b, source: S}`,
			`x.yaml:6:46: a: to_20: found 12 days, expected at most the 9 of to_15: warmth never keeps longer`},
		{`  - {id: a, name: N, days: {to_15: 9, to_20: 8, over_25: 3}, advice: A, grade: b, source: S}`,
			`x.yaml:6:28: a: to_25: found nothing, expected a value`},
		{`  - {id: a, name: N, days: 7, advice: A, grade: b, source: S}`,
			`x.yaml:6:28: a: found "7", expected the keys: to_15, to_20, to_25, over_25`},
		{`  - {id: a, name: N, days: {to_15: 010, to_20: 8, to_25: 5, over_25: 3}, advice: A, grade: b, source: S}`,
			`x.yaml:6:36: a: to_15: found "010", expected a plain number from 0 to 3650`},
		{`  - {id: a, name: N, days: {to_15: .inf, to_20: 8, to_25: 5, over_25: 3}, advice: A, grade: b, source: S}`,
			`x.yaml:6:36: a: to_15: found ".inf", expected a plain number from 0 to 3650`},
		{`  - {id: a, name: N, days: {to_15: 9, to_20: 8, to_25: 5, over_25: -3}, advice: A, grade: b, source: S}`,
			`x.yaml:6:68: a: over_25: found -3, expected a plain number from 0 to 3650`},
		{`  - {id: a, name: N, days: {to_15: 9, to_20: 8, to_25: 5, over_25: 3, over_30: 1}, advice: A, grade: b, source: S}`,
			`x.yaml:6:71: a: found the key "over_30", expected one of: to_15, to_20, to_25, over_25 (did you mean "over_25"?)`},
		{`  - {id: a, name: N, days: {to_15: 9, to_20: 8, to_25: 5, over_25: 3}, judged: [to_30], advice: A, grade: b, source: S}`,
			`x.yaml:6:81: a: judged: found "to_30", expected one of: to_15, to_20, to_25, over_25 (did you mean "to_20"?)`},
		{`  - {id: a, name: N, days: {to_15: 9, to_20: 8, to_25: 5, over_25: 3}, advice: A, grade: b}`,
			`x.yaml:6:5: a: source: found nothing, expected a value`},
		{`  - {id: a, name: N, days: {to_15: 9, to_20: 8, to_25: 5, over_25: 3}, advice: "", grade: b, source: S}`,
			`x.yaml:6:80: a: advice: found nothing, expected a text`},
		{`  - {id: a, name: N, days: {to_15: 9, to_20: 8, to_25: 5, over_25: 3}, advice: A, weight: ~, grade: b, source: S}`,
			`x.yaml:6:91: a: weight: found nothing, expected a text`},
		{`  - {id: a, name: N, days: {to_15: 9, to_20: 8, to_25: 5, over_25: 3}, advice: A, grade: d, source: S}`,
			`x.yaml:6:90: a: grade: found "d", expected one of: a, b, c`},
		{`  - {id: a, name: N, eggs: boiled, days: {to_15: 9, to_20: 8, to_25: 5, over_25: 3}, advice: A, grade: b, source: S}`,
			`x.yaml:6:28: a: eggs: found "boiled", expected one of: washed, unwashed, unknown`},
		{`  - {id: a, name: N, eggs: washed, days: {to_15: 9, to_20: 8, to_25: 5, over_25: 3}, advice: A, grade: b, source: S}`,
			`x.yaml:3:3: eggs: found 2 rows for washed eggs, expected one row for each way eggs are sold`},
		{`  - {id: e1, name: N, days: {to_15: 9, to_20: 8, to_25: 5, over_25: 3}, advice: A, grade: b, source: S}`,
			`x.yaml:6:10: e1: id: found an id used before, expected a new id`},
		{`  - {id: a, name: &n N, days: {to_15: 9, to_20: 8, to_25: 5, over_25: 3}, advice: *n, grade: b, source: S}`,
			`x.yaml:6:19: foods.name: the anchor &n has no meaning here. Write the value alone.`},
		{`  - just words`,
			`x.yaml:6:5: found "just words", expected the keys: id, name, eggs, days, judged, advice, limits, weight, grade, source`},
	} {
		_, err := readFoods("x.yaml", []byte(badFoodsHead+row.line+"\n"+badFoodsTail))
		if err == nil {
			t.Errorf("accepted: %s", row.line)
			continue
		}
		if first, _, _ := strings.Cut(err.Error(), "\n"); first != row.want {
			t.Errorf("%s\n got %s\nwant %s", row.line, first, row.want)
		}
	}
	for _, row := range []struct{ file, want string }{
		{"", "x.yaml: found an empty file, expected a file that starts with kind:"},
		{"kind: prices\nprices: []\n", `x.yaml:1:7: kind: found "prices", expected one of: foods`},
		{"kind: foods\n", "x.yaml:1:1: foods: found nothing, expected a value"},
		{"kind: foods\nfoods: []\ncannot: []\n", "x.yaml:2:8: foods: found an empty list, expected a list with at least one entry"},
		{badFoodsHead, "x.yaml:1:1: cannot: found nothing, expected a value"},
		{badFoodsHead + "cannot:\n  - {id: c, grade: a, source: S}\n", "x.yaml:7:5: c: text: found nothing, expected a value"},
		{"kind: foods\nfoods: \"\xff\"\n", "x.yaml:2:9: a letter here is not UTF-8. Save the file as UTF-8."},
	} {
		_, err := readFoods("x.yaml", []byte(row.file))
		if err == nil {
			t.Errorf("accepted: %q", row.file)
			continue
		}
		if first, _, _ := strings.Cut(err.Error(), "\n"); first != row.want {
			t.Errorf("%q\n got %s\nwant %s", row.file, first, row.want)
		}
	}
}

// FuzzFoods: any bytes are read or refused with places, and what is read keeps
// its promises.
func FuzzFoods(f *testing.F) {
	data, err := embedded.ReadFile("packs/foods.yaml")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(data)
	f.Add([]byte(badFoodsHead + badFoodsTail))
	f.Fuzz(func(t *testing.T, data []byte) {
		foods, err := readFoods("x.yaml", data)
		if err != nil {
			if _, ok := err.(strict.Faults); !ok {
				t.Fatalf("%T", err)
			}
			return
		}
		for _, row := range foods.foods {
			for i := 1; i < len(row.days); i++ {
				if !(row.days[i] <= row.days[i-1]) || row.days[i] < 0 {
					t.Fatalf("%s: %v", row.ID, row.days)
				}
			}
			if row.Source == "" || row.Name == "" || row.Advice == "" {
				t.Fatalf("%+v", row)
			}
		}
	})
}
