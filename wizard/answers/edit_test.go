package answers

import (
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/wizard/questions"
)

var update = flag.Bool("update", false, "rewrite the golden files")

func TestSetRewritesOneAnswer(t *testing.T) {
	const before = "# about\n\nunits: us\n\nbox:\n  volume: 3 cu ft # by bucket\n\n  # the walls\n  foam: 2 in\n  # end of the box\n\n# food\nfood: {target: 4 C} # cold\n"
	tests := []struct {
		key, text, after string
	}{
		{"box.volume", "90 L", strings.Replace(before, "3 cu ft # by", "90 L # by", 1)},
		{"box.foam", "don't know", strings.Replace(before, "2 in", "don't know", 1)},
		{"box.state", "wet", strings.Replace(before, "2 in\n", "2 in\n  state: wet # dry, damp, wet, soaked, missing\n", 1)},
		{"box.inside", "18 x 22 x 16 in", strings.Replace(before, "box:\n", "box:\n  inside: 18 x 22 x 16 in # Ice box, inside measures\n", 1)},
		{"box.faces.top.foam", "none", strings.Replace(before, "2 in\n", "2 in\n  faces:\n    top:\n      foam: none # Foam, top\n", 1)},
		{"food.medicine", "no", strings.Replace(before, "food: {target: 4 C} # cold", "# cold\nfood:\n  target: 4 C\n  medicine: no # Medicine to be kept cold", 1)},
		{"ice.price", "0.50 /lb", before + "\n# Buying ice\nice:\n  price: 0.50 /lb # Price of ice\n"},
		{"boat.name", "Sea: foam #2", strings.Replace(before, "units: us\n", "units: us\n\n# The boat\nboat:\n  name: \"Sea: foam #2\" # Name\n", 1)},
		{"boat.name", "null", strings.Replace(before, "units: us\n", "units: us\n\n# The boat\nboat:\n  name: \"null\" # Name\n", 1)},
		{"boat.name", " Sea ", strings.Replace(before, "units: us\n", "units: us\n\n# The boat\nboat:\n  name: \" Sea \" # Name\n", 1)},
		{"currency", "€", strings.Replace(before, "units: us\n", "units: us\ncurrency: € # Currency\n", 1)},
	}
	for _, tt := range tests {
		f := read(t, before)
		if err := f.Set(tt.key, tt.text); err != nil {
			t.Errorf("Set(%s, %q): %v", tt.key, tt.text, err)
			continue
		}
		if got := written(t, f); got != tt.after {
			t.Errorf("Set(%s, %q) writes\n%s\nwant\n%s", tt.key, tt.text, got, tt.after)
		}
		if got, ok := f.answer(tt.key); !ok || got != tt.text {
			t.Errorf("answer to %s is %q, %v", tt.key, got, ok)
		}
	}
}

func TestNewGroupsStandApart(t *testing.T) {
	f := read(t, "food:\n  target: 4 C\n")
	for _, kv := range [][2]string{{"box.volume", "90 L"}, {"units", "metric"}, {"safety.fish", "no"}} {
		if err := f.Set(kv[0], kv[1]); err != nil {
			t.Fatal(err)
		}
	}
	const want = "units: metric # us, metric\n# The ice box\nbox:\n  volume: 90 L # Ice box, inside volume\n\nfood:\n  target: 4 C\n\n# Safety\nsafety:\n  fish: no # Catch kept aboard\n"
	if got := written(t, f); got != want {
		t.Errorf("writes\n%s\nwant\n%s", got, want)
	}
}

func TestRefusedSetChangesNothing(t *testing.T) {
	const before = "units: us\nbox:\n  foam: 2\n"
	f := read(t, before)
	for _, kv := range [][2]string{{"box.volume", "90 kg"}, {"box.volum", "90 L"}, {"units", "metric"}, {"boat.name", ""}, {"boat.name", "a\nb\x00"}} {
		err := f.Set(kv[0], kv[1])
		if _, ok := err.(Fault); !ok {
			t.Errorf("Set(%s, %q): %v", kv[0], kv[1], err)
		}
		if got := written(t, f); got != before {
			t.Errorf("Set(%s, %q) leaves\n%s", kv[0], kv[1], got)
		}
	}
}

func TestRemove(t *testing.T) {
	const before = "units: us\n# box\nbox:\n  volume: 3 cu ft\n  faces:\n    top:\n      foam: none # bare\n# food\nfood: {target: 4 C, medicine: no}\nice: {price: 1 /kg}\n"
	tests := []struct{ key, after string }{
		{"box.volume", strings.Replace(before, "  volume: 3 cu ft\n", "", 1)},
		{"box.faces.top.foam", strings.Replace(before, "  faces:\n    top:\n      foam: none # bare\n", "", 1)},
		{"food.medicine", strings.Replace(before, "food: {target: 4 C, medicine: no}", "food:\n  target: 4 C", 1)},
		{"ice.price", strings.Replace(before, "ice: {price: 1 /kg}\n", "", 1)},
		{"boat.name", before},
	}
	for _, tt := range tests {
		f := read(t, before)
		if err := f.Remove(tt.key); err != nil {
			t.Errorf("Remove(%s): %v", tt.key, err)
		}
		if got := written(t, f); got != tt.after {
			t.Errorf("Remove(%s) writes\n%s\nwant\n%s", tt.key, got, tt.after)
		}
	}
}

func TestFileInBraces(t *testing.T) {
	f := read(t, "{units: metric, box: {volume: 90 L}} # mine\n")
	if err := f.Set("box.foam", "25 mm"); err != nil {
		t.Fatal(err)
	}
	if got, want := written(t, f), "# mine\nunits: metric\nbox:\n  volume: 90 L\n  foam: 25 mm # Foam in the walls\n"; got != want {
		t.Errorf("writes\n%s\nwant\n%s", got, want)
	}
}

func TestWindowsLineEndsAreKept(t *testing.T) {
	f := read(t, "units: us\r\nbox:\r\n  volume: 3 cu ft # by bucket\r\n")
	if err := f.Set("box.volume", "90 L"); err != nil {
		t.Fatal(err)
	}
	if got, want := written(t, f), "units: us\r\nbox:\r\n  volume: 90 L # by bucket\r\n"; got != want {
		t.Errorf("writes %q, want %q", got, want)
	}
}

func TestRecordsAreWrittenPartByPart(t *testing.T) {
	f := read(t, "units: metric\n")
	if err := f.Set("evidence.ice_history", "ice: 10 kg; hours: 36; month: july | ice: 4.25 kg; hours: 14; month: 8; in_use: no"); err != nil {
		t.Fatal(err)
	}
	const want = "units: metric\n\n# What the box has shown\nevidence:\n  ice_history:\n    - ice: 10 kg\n      hours: 36\n      month: july\n    - ice: 4.25 kg\n      hours: 14\n      month: 8\n      in_use: no\n"
	if got := written(t, f); got != want {
		t.Errorf("writes\n%s\nwant\n%s", got, want)
	}
}

// parted are the kinds whose answers may have several parts.
var parted = []questions.Kind{questions.Dimensions, questions.Opening, questions.Months, questions.MonthTemperatures,
	questions.MonthOverrides, questions.Records}

// answer gives the text that answers a key, as its owner wrote it; ok is false
// when it has no answer or one of several parts.
func (f *File) answer(key string) (text string, ok bool) {
	in, ok := f.inputs[key]
	return in.Text, ok && in.Shape == questions.Scalar
}

// Each sample, with every answer set anew to what it is, keeps its text; with
// every answer changed, it keeps its comments.
func TestEditingKeepsComments(t *testing.T) {
	for i, s := range Samples() {
		if i%3 > 0 && os.Getenv("COLDRECKON_LONG") == "" {
			continue // two of the five
		}
		f := read(t, s.Text)
		for _, row := range questions.All() {
			if text, ok := f.answer(row.Key); ok {
				if err := f.Set(row.Key, text); err != nil {
					t.Errorf("%s: Set(%s, %q): %v", s.Name, row.Key, text, err)
				}
			}
		}
		if got := written(t, f); got != s.Text {
			t.Errorf("%s: setting every answer to itself changes the file", s.Name)
		}
		b, _ := f.Boat(economics.Book{})
		for _, row := range questions.All() {
			if _, ok := f.answer(row.Key); ok && !slices.Contains(parted, row.Kind) && row.Key != "units" && row.Key != "currency" {
				if err := f.Set(row.Key, "?"); err != nil {
					t.Errorf("%s: Set(%s): %v", s.Name, row.Key, err)
				}
			} else if in, _ := questions.Given(&b, row.Key); !ok && len(in.List) == 0 && row.Kind != questions.Text && row.Kind != questions.Months {
				if err := f.Set(row.Key, "?"); err != nil {
					t.Errorf("%s: Set(%s): %v", s.Name, row.Key, err)
				}
			}
		}
		after := written(t, f)
		for _, line := range strings.Split(s.Text, "\n") {
			if _, comment, ok := strings.Cut(line, "# "); ok && !strings.Contains(after, comment) {
				t.Errorf("%s loses the comment %q", s.Name, comment)
			}
		}
	}
}

// A list written anew keeps what its owner noted among its parts, above it.
func TestRewritingAListKeepsItsComments(t *testing.T) {
	const text = "evidence:\n  # weighed\n  ice_history: # by hand\n    # a hot week\n    - ice: 10 kg # about\n      hours: 36\n      month: july\n\nfood:\n  target: 4 °C\n"
	f := read(t, text)
	in := questions.Word("ice: 8 kg; hours: 30; month: july")
	for range 2 {
		if err := f.Accept("evidence.ice_history", in); err != nil {
			t.Fatal(err)
		}
	}
	const want = "evidence:\n  # weighed\n  # a hot week\n  # about\n  ice_history: # by hand\n    - ice: 8 kg\n      hours: 30\n      month: july\n\nfood:\n  target: 4 °C\n"
	if got := written(t, f); got != want {
		t.Errorf("writes\n%s\nwant\n%s", got, want)
	}
}

func TestFresh(t *testing.T) {
	for _, s := range Samples() {
		told := read(t, s.Text).Told()
		f, err := Fresh(told)
		if err != nil {
			t.Fatal(err)
		}
		got := written(t, f)
		golden := filepath.Join("testdata", "fresh-"+s.Name+".golden.yaml")
		if *update {
			if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s: a fresh file differs from %s:\n%s", s.Name, golden, got)
		}
		again := read(t, got).Told()
		for _, row := range questions.All() {
			if a, b := row.Print(&told), row.Print(&again); a != b {
				t.Errorf("%s: %s was %q, reads back as %q", s.Name, row.Key, a, b)
			}
			if told.Known[row.Key] != again.Known[row.Key] {
				t.Errorf("%s: %s was %q, reads back as %q", s.Name, row.Key, told.Known[row.Key], again.Known[row.Key])
			}
		}
	}
	empty, err := Fresh(economics.Boat{})
	if err != nil || !strings.HasPrefix(written(t, empty), "# Answers about one boat") {
		t.Errorf("empty: %v", err)
	}
	if err := empty.Set("units", "us"); err != nil {
		t.Error(err)
	}
}

// However an owner lays a file out, every key can be set and removed, and the
// lines that hold other answers and comments stay.
func TestLayouts(t *testing.T) {
	layouts := []struct{ name, text string }{
		{"no end of line", "units: us"},
		{"marks and wide margins", "---\nunits: us\nbox:\n    volume: 90 L\n    foam: 2 in\n...\n"},
		{"a comment on the mark", "--- # doc\nunits: us\n"},
		{"a directive", "%YAML 1.1\n---\nunits: us\n"},
		{"quoted keys", "\"units\": us\n'box':\n  'volume': \"90 L\" # c\n  # mid\n\n  # more\n\nfood:\n  target: 4 C\n"},
		{"much air", "# a\n\n\nunits: us\n\n\n\n# b\nbox:\n\n  # c\n\n  volume: 90 L\n\n\n# d\n"},
		{"braces inside", "box:\n  faces:\n    top: {foam: 1 in}\n    aft:\n      foam: 2 in\n"},
		{"braces further up", "units_considered:\n  small: {price: 900}\n  larger:\n    price: 900 # c\n"},
		{"braces at the top", "units_considered: {small: {price: 900}}\n"},
		{"comments in odd places", "cruising:\n  nights:\n  # odd\n    jun: 8\n    jul: 9 # x\n  crew: 2\n"},
		{"lists at the margin", "evidence:\n  ice_history:\n  - ice: 10 kg\n    hours: 36\n    month: 7\n  - {ice: 10 kg, hours: 30, month: 8}\nfood:\n  target: 4 C\n"},
		{"a list of lines", "box:\n  inside:\n    - 18 in\n    - 22 in\n    - 16 in\n  lid: top\n"},
		{"brackets over lines", "box:\n  inside: [18 in,\n    22 in,\n    16 in]\n  lid: top\n"},
		{"a value below its key", "box:\n  volume:\n    90 L\n  lid:   top\n"},
		{"a value over lines", "box:\n  volume: \"90\n    L\"\n  lid:   top\n"},
		{"braces over lines", "units: us\nbox: {volume: 90 L,\n  # inner\n  foam: 2 in}\n# end\n"},
		{"only comments", "# c\n"},
	}
	answers := [][2]string{
		{"units", "us"}, {"box.volume", "80 L"}, {"box.foam", "1 in"}, {"box.faces.top.foam", "none"}, {"box.faces.aft.state", "wet"},
		{"units_considered.small.price", "$1000"}, {"units_considered.larger.fitting", "100"}, {"cruising.nights", "june 5"},
		{"evidence.ice_history", "ice 5 kg; hours 10; month 6"}, {"box.inside", "20 x 20 x 20 in"},
		{"boat.name", "a: #b, [c] {d} 'e' \"f\" & * ! | > % @ `"}, {"currency", "?"},
	}
	for _, l := range layouts {
		for _, kv := range answers {
			f, faults := parse("boat.yaml", l.text, nil)
			if len(faults) > 0 {
				t.Fatalf("%s: %v", l.name, faults)
			}
			kept := map[string]string{}
			for key := range f.inputs {
				if key != kv[0] {
					kept[key] = questionsPrint(f, key)
				}
			}
			if err := f.Set(kv[0], kv[1]); err != nil {
				t.Errorf("%s: Set(%s): %v", l.name, kv[0], err)
				continue
			}
			again := read(t, written(t, f))
			for key, was := range kept {
				if now := questionsPrint(again, key); now != was {
					t.Errorf("%s: setting %s turns %s from %s into %s", l.name, kv[0], key, was, now)
				}
			}
			if !strings.Contains(l.text, "{") {
				checkLines(t, l.name, kv[0], l.text, written(t, f))
			}
			if err := f.Remove(kv[0]); err != nil {
				t.Errorf("%s: Remove(%s): %v", l.name, kv[0], err)
			}
			for key, was := range kept {
				if now := questionsPrint(f, key); now != was {
					t.Errorf("%s: removing %s turns %s from %s into %s", l.name, kv[0], key, was, now)
				}
			}
		}
	}
}

func questionsPrint(f *File, key string) string {
	row, _ := questions.Find(key)
	b := f.Told()
	return row.Print(&b)
}

// checkLines demands that no comment or blank line outside the edited answer
// is lost, and that the rest stands in the old order.
func checkLines(t *testing.T, layout, key, before, after string) {
	t.Helper()
	last := key[strings.LastIndex(key, ".")+1:]
	rest := strings.Split(after, "\n")
	for _, line := range strings.Split(strings.TrimSuffix(before, "\n"), "\n") {
		answer := strings.Contains(line, last) || !strings.Contains(line, ":") && !blank(line) || key == "cruising.nights" || key == "evidence.ice_history"
		if answer {
			continue
		}
		found := false
		for i := range rest {
			if rest[i] == line {
				rest, found = rest[i+1:], true
				break
			}
		}
		if !found {
			t.Errorf("%s: setting %s loses the line %q", layout, key, line)
		}
	}
}

func TestLayoutThatCannotBeEdited(t *testing.T) {
	const before = "? box\n: volume: 90 L\n  lid: top\n"
	f := read(t, before)
	err := f.Set("box.volume", "80 L")
	if fault, ok := err.(Fault); !ok || fault.Hint == "" {
		t.Errorf("%v", err)
	}
	if got := written(t, f); got != before {
		t.Errorf("a refused edit leaves\n%s", got)
	}
}
