package rules

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"coldreckon/economics"
	"coldreckon/rules/strict"
)

const ownPrices = `# Club prices, spring.
kind: own-prices
currency: EUR
per_dollar: 0.5
prices:
  - {id: ice_block, unit: lb, low: 0.50, typical: 0.60, high: 0.80, source: "Harbour kiosk"}
  - {id: seal, low: 12, typical: 12, high: 12}
`

func TestOwnPrices(t *testing.T) {
	base := load(t)
	pack, err := base.WithPrices("club.yaml", []byte(ownPrices))
	if err != nil {
		t.Fatal(err)
	}
	if pack.Book.Currency != "EUR" || pack.Book.Identity == base.Book.Identity {
		t.Errorf("currency %q, identity %q", pack.Book.Currency, pack.Book.Identity)
	}
	for _, row := range []struct {
		id   string
		want float64
		why  string
	}{
		{"ice_block", 0.60 / 0.45359237, "told per lb, the book counts kg"},
		{"seal", 12, "told in euro"},
		{"foam", 75, "150 dollars at half a euro"},
		{"panel", 1.75, "3.50 dollars at half a euro"},
		{"small_life", 14, "years are not money"},
		{"small_upkeep", 0.02, "a share is not money"},
		{"yard_factor", 2, "a factor is not money"},
	} {
		line, _ := pack.Book.Price(row.id)
		if math.Abs(line.Price.Typical-row.want) > 1e-12*row.want {
			t.Errorf("%s: %v; want %v, %s", row.id, line.Price.Typical, row.want, row.why)
		}
	}
	if line, _ := pack.Book.Price("ice_block"); line.Source != "Harbour kiosk" || line.Quantity != nil || line.Unit != "kg" {
		t.Errorf("ice_block: %+v", line)
	}
	if line, _ := pack.Book.Price("seal"); line.Source != "own prices: club.yaml" || line.Quantity == nil {
		t.Errorf("seal: %+v", line)
	}
	if line, _ := base.Book.Price("seal"); line.Price.Typical != 25 {
		t.Errorf("the embedded book was changed: %+v", line)
	}
	panel, _ := base.Book.Price("panel")
	after, _ := pack.Book.Price("panel")
	if panel.Life != after.Life {
		t.Errorf("life %v became %v", panel.Life, after.Life)
	}
}

func TestOwnPricesOfOneCurrency(t *testing.T) {
	pack, err := load(t).WithPrices("club.yaml", []byte("kind: own-prices\nprices:\n  - {id: foam, low: 1, typical: 2, high: 3}\n"))
	if err != nil || pack.Book.Currency != "$" {
		t.Errorf("currency %q, %v", pack.Book.Currency, err)
	}
	// The book's own currency needs no rate; kind: may come last.
	pack, err = load(t).WithPrices("club.yaml", []byte("currency: $\nprices:\n  - {id: foam, low: 1, typical: 2, high: 3}\nkind: own-prices\n"))
	if err != nil || pack.Book.Currency != "$" {
		t.Errorf("currency %q, %v", pack.Book.Currency, err)
	}
	pack, err = load(t).WithPrices("club.yaml", []byte("kind: own-prices\ncurrency: CHF\nper_dollar: 0.9\n"))
	if line, _ := pack.Book.Price("foam"); err != nil || math.Abs(line.Price.Typical-135) > 1e-9 {
		t.Errorf("foam %v, %v; want 135", line.Price, err)
	}
	if _, err := load(t).WithPrices("club.yaml", []byte("kind: cautions\ncautions: []\n")); err == nil {
		t.Error("cautions are accepted as prices")
	}
}

// Windows line ends and a byte order mark change nothing.
func TestWindowsFiles(t *testing.T) {
	for _, name := range packNames {
		data, err := embedded.ReadFile("packs/" + name)
		if err != nil {
			t.Fatal(err)
		}
		plain, err := Read(name, data)
		if err != nil {
			t.Fatal(err)
		}
		windows, err := Read(name, []byte("\ufeff"+strings.ReplaceAll(string(data), "\n", "\r\n")))
		if err != nil {
			t.Fatal(err)
		}
		plain.Book.Identity, windows.Book.Identity = "", ""
		if plain.Listing() != windows.Listing() {
			t.Errorf("%s reads differently with Windows line ends", name)
		}
	}
}

// All faults of a file are told at once, in its order.
func TestAllFaultsAreGathered(t *testing.T) {
	_, err := Read("x.yaml", []byte(`kind: criteria
criteria:
  - {id: a, fails: "fited", reason: "One.", kind: warmth}
  - {id: b, fails: "crew > ", reason: "", kind: need}
  - {id: c, options: [ise], fails: "fitted", reason: "Three.", why: "?", kind: room}
`))
	faults, ok := err.(strict.Faults)
	if !ok || len(faults) != 5 {
		t.Fatalf("got %v; want five faults", err)
	}
	for i, want := range []string{"x.yaml:3:20: a: fails", "x.yaml:4:20: b: fails", "x.yaml:4:39: b: reason", "x.yaml:5:23: c: options", `x.yaml:5:64: c: found the key "why"`} {
		if !strings.HasPrefix(faults[i].Error(), want) {
			t.Errorf("fault %d: %v; want it to start with %q", i, faults[i], want)
		}
	}
}

// forEver is longer than any slow machine takes for what is linear, and shorter than
// what grows faster.
const forEver = 30 * time.Second

// A hostile file is read or refused, without waiting for ever, and never more than
// strict.MostFaults are told.
func TestHostileFilesAreBounded(t *testing.T) {
	many := "kind: criteria\ncriteria:\n" + strings.Repeat("  - {id: a, fails: \"x\"}\n", maxEntries+1)
	for name, file := range map[string]struct{ text, want string }{
		"huge":            {strings.Repeat("a", 10<<20), "larger than 256 kB"},
		"flow":            {strings.Repeat("[", 200000), "as YAML"},
		"flow mapping":    {strings.Repeat("{a: ", 60000), ""},
		"dashes":          {strings.Repeat("- ", 120000), ""},
		"questions":       {strings.Repeat("? ", 120000), ""},
		"many entries":    {many, "501 entries"},
		"many faults":     {"kind: criteria\ncriteria:\n" + strings.Repeat("  - {id: a}\n", 400), ""},
		"many keys":       {"kind: criteria\n" + strings.Repeat("a: b\n", 40000), ""},
		"long key":        {strings.Repeat("k", 200000) + ": 1\n", "as YAML"},
		"laughs":          {"a: &a [x, x, x]\nb: &b [*a, *a, *a]\nc: &c [*b, *b, *b]\nd: [*c, *c, *c]\n", "the anchor"},
		"self alias":      {"a: &a\n  - *a\n", "the anchor"},
		"nul":             {"kind: criteria\x00", ""},
		"not utf-8":       {"kind: \xff\xfe", "not UTF-8"},
		"byte order mark": {"\ufeffkind: nothing\n", "kind:"},
		"comments":        {strings.Repeat("# \n", 80000), "empty file"},
		"directive":       {"%YAML 9.9\n---\nkind: criteria\n", "as YAML"},
	} {
		start := time.Now()
		_, err := Read("hostile.yaml", []byte(file.text))
		if err == nil {
			t.Errorf("%s: accepted", name)
			continue
		}
		if faults, ok := err.(strict.Faults); !ok || len(faults) > strict.MostFaults+1 {
			t.Errorf("%s: %d faults of type %T", name, len(faults), err)
		}
		if !strings.Contains(err.Error(), file.want) {
			t.Errorf("%s: got %s; want %q", name, clip(err.Error()), file.want)
		}
		if longest := len(err.Error()); longest > 60000 {
			t.Errorf("%s: a message of %d bytes", name, longest)
		}
		if spent := time.Since(start); spent > forEver {
			t.Errorf("%s: took %v", name, spent)
		}
	}
}

// Each limit of a file: what lies on it is read, what lies past it is refused.
func TestLimitsOfAFile(t *testing.T) {
	criteria := func(reason, id string) string {
		return `kind: criteria` + "\n" + `criteria: [{id: ` + id + `, kind: need, fails: "fitted", reason: "` + reason + `", examples: [{facts: {fitted: true}, fires: yes}]}]`
	}
	own := func(currency, rate string) string {
		return "kind: own-prices\ncurrency: " + currency + "\nper_dollar: " + rate
	}
	price := func(unit, marks, rest string) string {
		return "kind: prices\ncurrency: $\nprices: [{id: a, label: A, unit: " + unit + ", " + marks + ", grade: c, source: S, " + rest + "}]"
	}
	const each, renewed = "low: 1, typical: 1, high: 1", `billing: renewed, quantity: "1", examples: [{facts: {}, gives: 1}]`
	of := strings.Repeat
	base := load(t)
	for name, row := range map[string]struct{ on, past string }{
		"entries":         {criteria("R.", "a"), "kind: criteria\ncriteria:" + of("\n  - {}", maxEntries+1)},
		"length of text":  {criteria(of("r", 600), "a"), criteria(of("r", 601), "a")},
		"length of id":    {criteria("R.", of("a", 40)), criteria("R.", of("a", 41))},
		"a currency":      {own("CURRENCY", "2"), own("CURRENCIE", "2")},
		"a rate":          {own("EUR", "1000000"), own("EUR", "1000000.1")},
		"the lowest rate": {own("EUR", "0.0001"), own("EUR", "0.00009")},
		"years":           {price("years", each, "billing: rate"), price("years", "low: 0.9, typical: 1, high: 1", "billing: rate")},
		"a share":         {price("share of price", each, "billing: rate"), price("share of price", "low: 1, typical: 1, high: 1.1", "billing: rate")},
		"a life":          {price("each", each, renewed+", life: {"+each+"}"), price("each", each, renewed+", life: {low: 0.9, typical: 1, high: 1}")},
	} {
		read := func(text string) error {
			if strings.Contains(text, "own-prices") {
				_, err := base.WithPrices("x.yaml", []byte(text))
				return err
			}
			_, err := Read("x.yaml", []byte(text))
			return err
		}
		if err := read(row.on); err != nil {
			t.Errorf("%s, on the limit: %v", name, err)
		}
		if err := read(row.past); err == nil {
			t.Errorf("%s: past the limit, and read", name)
		}
	}
	if got := clip(of("x", 41)); got != of("x", 40)+"…" {
		t.Errorf("a text of 41 is clipped to %q", got)
	}
}

// A rule that names options is for these alone, one that names none for all.
func TestOptionsOfARule(t *testing.T) {
	for _, row := range []struct {
		options string
		want    []economics.OptionID
	}{{"", economics.Options[:]}, {"options: [small], ", []economics.OptionID{economics.SmallUnit}}} {
		criterion, err := Read("x.yaml", []byte(`kind: criteria`+"\n"+`criteria: [{id: a, kind: need, `+row.options+`fails: "fitted", reason: "R.", examples: [{facts: {fitted: true}, fires: yes}]}]`))
		if err != nil || !slices.Equal(criterion.Book.Criteria[0].Options, row.want) {
			t.Errorf("criterion of %q: %v, %v", row.options, criterion.Book.Criteria, err)
		}
		price, err := Read("x.yaml", []byte("kind: prices\ncurrency: $\nprices: [{id: a, label: A, unit: each, low: 1, typical: 1, high: 1, billing: once, "+
			row.options+`grade: c, source: S, quantity: "1", examples: [{facts: {}, gives: 1}]}]`))
		if err != nil || !slices.Equal(price.Book.Prices[0].Options, row.want) {
			t.Errorf("price of %q: %v, %v", row.options, price.Book.Prices, err)
		}
	}
}

// A line stands where all that its quantity and its condition ask is known before any year.
func TestStandingLines(t *testing.T) {
	for _, row := range []struct {
		counts   string
		facts    string
		standing bool
	}{
		{`quantity: "box_volume_l"`, "box_volume_l: 5", true},
		{`quantity: "nights_per_year"`, "nights_per_year: 5", false},
		{`when: "nights_per_year > 1", quantity: "5 * box_volume_l"`, "box_volume_l: 1, nights_per_year: 2", false},
		{`when: "box_volume_l > 1", quantity: "nights_per_year"`, "box_volume_l: 2, nights_per_year: 5", false},
	} {
		pack, err := Read("x.yaml", []byte("kind: prices\ncurrency: $\nprices: [{id: a, label: A, unit: each, low: 1, typical: 1, high: 1, billing: once, grade: c, "+
			"source: S, "+row.counts+", examples: [{facts: {"+row.facts+"}, gives: 5}]}]"))
		if err != nil || pack.Book.Prices[0].Standing != row.standing || pack.RunExamples().OrNil() != nil {
			t.Errorf("%s: %+v, %v; want standing %t", row.counts, pack.Book.Prices, err, row.standing)
		}
	}
}

func TestDidYouMean(t *testing.T) {
	for _, row := range []struct{ found, want string }{
		{"cold_shar", ` (did you mean "cold_share"?)`},
		{"warmest_food", ` (did you mean "warmest_food_c"?)`},
		{"zzzzzzzz", ""},
		{"", ""},
		{strings.Repeat("x", 1000), ""},
	} {
		if got := didYouMean(row.found, factNames()); got != row.want {
			t.Errorf("%q: got %q; want %q", clip(row.found), got, row.want)
		}
	}
}

func FuzzLoad(f *testing.F) {
	for _, name := range packNames {
		data, err := embedded.ReadFile("packs/" + name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data[:min(len(data), 1500)])
	}
	f.Add([]byte(ownPrices))
	f.Add([]byte("kind: cautions\ncautions:\n  - {id: a, grade: stop, when: \"crew > 1\", text: \"T.\", source: s, examples: [{facts: {crew: 2}, fires: yes}]}\n"))
	f.Add([]byte("kind: criteria\ncriteria: [{id: a, fails: |\n  fitted\n, reason: x}]"))
	f.Fuzz(func(t *testing.T, data []byte) {
		pack, err := Read("fuzz.yaml", data)
		if err != nil {
			if _, ok := err.(strict.Faults); !ok {
				t.Fatalf("an error of type %T: %v", err, err)
			}
			if strings.TrimSpace(err.Error()) == "" {
				t.Fatal("an empty error")
			}
			return
		}
		for _, c := range pack.Cautions {
			if c.ID == "" || c.Text == "" || c.When == nil {
				t.Fatalf("accepted %+v", c)
			}
		}
		for _, c := range pack.Book.Criteria {
			if c.ID == "" || c.Reason == "" || c.Fails == nil {
				t.Fatalf("accepted %+v", c)
			}
		}
		for _, line := range pack.Book.Prices {
			if line.ID == "" || !(0 <= line.Price.Low && line.Price.Low <= line.Price.Typical && line.Price.Typical <= line.Price.High) {
				t.Fatalf("accepted %+v", line)
			}
		}
		pack.Listing()
		pack.RunExamples()
	})
}

// Whether a box is too warm shows in the year; all else that fails is known before it.
func TestStandingCriteria(t *testing.T) {
	pack, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range pack.Book.Criteria {
		if c.Standing == (c.Kind == economics.Warmth) {
			t.Errorf("%s: standing %t", c.ID, c.Standing)
		}
	}
}
