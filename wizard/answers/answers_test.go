package answers

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

var update = flag.Bool("update", false, "rewrite the golden files")

func read(t *testing.T, text string) *File {
	t.Helper()
	f, faults := Read("boat.yaml", strings.NewReader(text))
	for _, fault := range faults {
		t.Fatal(fault)
	}
	return f
}

func written(t *testing.T, f *File) string {
	t.Helper()
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestSamplesAreSound(t *testing.T) {
	for _, s := range Samples() {
		f, faults := Read(s.Name, strings.NewReader(s.Text))
		for _, fault := range faults {
			t.Error(fault)
		}
		if f == nil {
			continue
		}
		b, faults := f.Boat(economics.Book{})
		for _, fault := range faults {
			t.Error(fault)
		}
		if got := written(t, f); got != s.Text {
			t.Errorf("%s: written back unchanged it differs", s.Name)
		}
		if len(b.Assumptions) > 45 {
			t.Errorf("%s leaves %d answers to assumptions", s.Name, len(b.Assumptions))
		}
		if found, ok := SampleNamed(strings.ToUpper(s.Name)); !ok || found.Name != s.Name || s.Summary == "" || s.Text == "" {
			t.Errorf("%s is not found by its name", s.Name)
		}
	}
	if _, ok := SampleNamed("nobody"); ok {
		t.Error("a sample that is not there is found")
	}
}

func TestASampleBecomesABoat(t *testing.T) {
	s, _ := SampleNamed("dunlin")
	b, faults := read(t, s.Text).Boat(economics.Book{})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	const in, lb = 0.0254, 0.45359237
	near := func(name string, got, want float64) {
		t.Helper()
		if d := got - want; d > 1e-9 || d < -1e-9 {
			t.Errorf("%s is %v, want %v", name, got, want)
		}
	}
	near("volume", float64(b.Box.Volume), 20*18*20*0.016387064) // cubic inches, NIST SP 811
	near("foam of the top", float64(b.Box.Faces[heat.Top].Foam), 0.5*in)
	near("foam of the aft side", float64(b.Box.Faces[heat.Aft].Foam), 1.5*in)
	near("ice price", float64(b.Ice.Price), 0.5/lb)
	near("target", float64(b.Food.Target), 8/1.8)
	near("budget", float64(b.Money.Budget), 2500)
	near("nights of July", b.Cruising.Nights[6], 22)
	if b.Box.Faces[heat.Aft].Neighbour != heat.Engine || b.Box.Faces[heat.Aft].Reachable || !b.Box.Faces[heat.Top].Reachable {
		t.Errorf("aft face %+v", b.Box.Faces[heat.Aft])
	}
	if len(b.Evidence.IceHistory) != 1 || b.Evidence.IceHistory[0].Month != 7 || b.Known["evidence.ice_history"] != quantity.Measured {
		t.Errorf("evidence %+v", b.Evidence)
	}
	if b.Known["money.will_sell"] != quantity.Unsure || b.Known["ice.share_of_box"] != quantity.Assumed || b.Known["box.volume"] != quantity.Told {
		t.Errorf("known %v", b.Known)
	}
}

func TestFaults(t *testing.T) {
	deep := strings.Repeat("{a: ", 20) + "1" + strings.Repeat("}", 20)
	tests := []struct {
		name, text string
		line       int
		says       string // in the fault and its hint
	}{
		{"unknown key", "box:\n  volum: 90 L\n", 2, "box.volum: found a key that means nothing here, expected a key of the answers file; did you mean box.volume?"},
		{"unknown group", "bxo:\n  volume: 90 L\n", 1, "did you mean box?"},
		{"key out of its group", "volume: 90 L\n", 1, "did you mean box.volume?"},
		{"wrong dimension", "box:\n  volume: 90 kg\n", 2, `"90 kg", which is a mass, expected a volume`},
		{"impossible", "box:\n  volume: 4.4 L\n", 2, "did you mean 4.4 cu ft?"},
		{"not a number", "cruising:\n  crew: .nan\n", 2, "expected a number"},
		{"infinite", "cruising:\n  crew: .inf\n", 2, "expected a number"},
		{"twice", "units: us\nbox:\n  volume: 90 L\n  volume: 80 L\n", 4, "box.volume: found the key a second time"},
		{"month twice", "cruising:\n  nights: {jun: 8, june: 9}\n", 2, "June a second time"},
		{"month twice alike", "cruising:\n  nights:\n    jun: 8\n    jun: 9\n", 4, "jun a second time"},
		{"no such month", "cruising:\n  nights: {jume: 8}\n", 2, "did you mean june?"},
		{"null", "box:\n  volume:\n", 2, "box.volume: found nothing"},
		{"null as ~", "box:\n  volume: ~\n", 2, "found nothing"},
		{"empty group", "box:\nunits: us\n", 1, "box: found nothing, expected a group of keys, such as box."},
		{"text for a group", "box: large\n", 1, "box: found a text"},
		{"group for a text", "box:\n  volume: {l: 90}\n", 2, "found a group of keys"},
		{"list for a text", "units: [us]\n", 1, "found a list"},
		{"anchor", "box:\n  volume: &v 90 L\n", 2, "an anchor (&v)"},
		{"alias", "box:\n  volume: &v 90 L\nunits_considered:\n  small:\n    rated_box: *v\n", 2, "an anchor"},
		{"tag", "boat:\n  name: !important Dunlin\n", 2, "a tag"},
		{"merge", "box: &b\n  volume: 90 L\nice:\n  <<: *b\n", 1, "an anchor"},
		{"several lines", "boat:\n  name: |\n    a\n    b\n", 2, "several lines"},
		{"long text", "boat:\n  name: " + strings.Repeat("x", 500) + "\n", 2, "a text of 500 bytes"},
		{"deep", "cruising:\n  nights: " + deep + "\n", 2, "nested too deeply"},
		{"endless brackets", strings.Repeat("[", 100000), 0, "not YAML"},
		{"huge", strings.Repeat("# comment\n", 40000), 0, "more than 256 kB"},
		{"empty", "", 0, "no answer at all"},
		{"only comments", "# nothing\n", 0, "no answer at all"},
		{"only null", "---\n", 0, "no answer at all"},
		{"a list", "- units\n", 1, "found a list"},
		{"two documents", "units: us\n---\nunits: us\n", 2, "a second document"},
		{"tab", "box:\n\tvolume: 90 L\n", 2, "not tabs"},
		{"broken", "box: [\n", 0, "not YAML"},
		{"colon in a value", "boat:\n  name: a: b\n", 2, "needs quotes"},
		{"not UTF-8", "boat:\n  name: \xff\xfe\n", 2, "not UTF-8"},
		{"other currency", "currency: €\nice:\n  price: $1 /kg\n", 3, "another currency"},
		{"record without a part", "evidence:\n  ice_history:\n    - {ice: 10 kg, hours: 36}\n", 3, "no month"},
		{"record with a strange part", "evidence:\n  ice_history:\n    - ice: 10 kg\n      ours: 36\n      month: 7\n", 4, "did you mean hours?"},
		{"thirteen months", "cruising:\n  nights: [1, 2, 3]\n", 2, "a list of 3"},
		{"key that is no word", "? [a]\n: b\n", 1, "as a key"},
	}
	for _, tt := range tests {
		f, faults := Read("boat.yaml", strings.NewReader(tt.text))
		if f != nil || len(faults) == 0 {
			t.Errorf("%s: accepted", tt.name)
			continue
		}
		first := faults[0]
		if s := first.Error() + "; " + first.Hint; !strings.Contains(s, tt.says) || !strings.HasPrefix(s, "boat.yaml:") || first.Line != tt.line && tt.line > 0 {
			t.Errorf("%s: line %d: %s\n\twant line %d: %s", tt.name, first.Line, s, tt.line, tt.says)
		}
		if strings.Contains(first.Error(), "\n") {
			t.Errorf("%s: %q takes several lines", tt.name, first.Error())
		}
	}
}

func TestAllFaultsAtOnceInOrder(t *testing.T) {
	_, faults := Read("boat.yaml", strings.NewReader("box:\n  volume: 90 kg\n  lid: side\nunits: miles\nfood:\n  tagret: 4 °C\n"))
	var lines []int
	for _, f := range faults {
		lines = append(lines, f.Line)
	}
	if len(lines) != 4 || lines[0] != 2 || lines[1] != 3 || lines[2] != 4 || lines[3] != 6 {
		t.Errorf("faults on lines %v: %v", lines, faults)
	}
}

func TestContradictionsAreForBoat(t *testing.T) {
	f := read(t, "cruising:\n  ground: own\n  nights: {jun: 6}\n  trip_nights: 9\n")
	_, faults := f.Boat(economics.Book{})
	if len(faults) != 4 || faults[0].Key != "cruising.trip_nights" || faults[0].Line != 4 || faults[0].File != "boat.yaml" {
		t.Errorf("%v", faults)
	}
}

func TestWaysOfWriting(t *testing.T) {
	f := read(t, "\uFEFF---\n\"units\": metric\nbox: {inside: [450, 400, 500 mm], faces: {top: {foam: 3 cm}}}\n"+
		"cruising: {nights: {6: 8, Jul-Aug: 10}, crew: '2', air_mean: {july: 24}}\nsafety: {lithium: unknown, fish: \"?\"}\n...\n")
	b, faults := f.Boat(economics.Book{})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if b.Units != quantity.Metric || b.Box.Inside != (quantity.Dimensions{Length: 0.45, Width: 0.4, Height: 0.5}) || b.Box.Faces[heat.Top].Foam != 0.03 ||
		b.Cruising.Nights != [12]float64{5: 8, 6: 10, 7: 10} || b.Cruising.Crew != 2 || b.Cruising.AirOverrides[7] != 24 || b.Known["safety.fish"] != quantity.Unsure {
		t.Errorf("%+v", b)
	}
}

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
		{"food.medicine", "no", strings.Replace(before, "food: {target: 4 C} # cold", "# cold\nfood:\n  target: 4 C\n  medicine: no", 1)},
		{"ice.price", "0.50 /lb", before + "\n# Buying ice\nice:\n  price: 0.50 /lb # Price of ice\n"},
		{"boat.name", "Sea: foam #2", strings.Replace(before, "units: us\n", "units: us\n\n# The boat\nboat:\n  name: \"Sea: foam #2\" # Name\n", 1)},
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
		if got, ok := f.Answer(tt.key); !ok || got != tt.text {
			t.Errorf("Answer(%s) = %q, %v", tt.key, got, ok)
		}
	}
}

func TestRefusedSetChangesNothing(t *testing.T) {
	const before = "units: us\nbox:\n  volume: 3\n"
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
	if got, want := written(t, f), "# mine\nunits: metric\nbox:\n  volume: 90 L\n  foam: 25 mm\n"; got != want {
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

// Each sample, with every answer set anew to what it is, keeps its text; with
// every answer changed, it keeps its comments.
func TestEditingKeepsComments(t *testing.T) {
	for _, s := range Samples() {
		f := read(t, s.Text)
		for _, row := range questions.All() {
			if text, ok := f.Answer(row.Key); ok {
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
			if _, ok := f.Answer(row.Key); ok && !row.Kind.Structured() && row.Key != "units" && row.Key != "currency" {
				if err := f.Set(row.Key, "?"); err != nil {
					t.Errorf("%s: Set(%s): %v", s.Name, row.Key, err)
				}
			} else if !ok && len(questions.PrintRecords(&b, row.Key)) == 0 && row.Kind != questions.Text && row.Kind != questions.Months {
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

// Whatever a file holds, reading gives a file that can be written, set and
// filled, or faults that name the file; it never panics.
func FuzzRead(f *testing.F) {
	for _, s := range Samples() {
		f.Add(s.Text, "box.volume", "90 L")
	}
	f.Add("{units: metric, box: {volume: 90 L}}\n", "box.foam", "25 mm")
	f.Add("box:\n  faces: {top: {foam: 1 in}} # x\n\n# y\n", "box.faces.top.foam", "none")
	f.Add("evidence:\n  ice_history:\n    - {ice: 10 kg, hours: 36, month: 7}\n", "evidence.ice_history", "?")
	f.Fuzz(func(t *testing.T, text, key, answer string) {
		file, faults := Read("f", strings.NewReader(text))
		if file == nil {
			if len(faults) == 0 {
				t.Fatal("neither file nor fault")
			}
			for _, fault := range faults {
				if fault.File != "f" || fault.Found == "" || strings.ContainsAny(fault.Error(), "\n\r") {
					t.Errorf("fault %#v", fault)
				}
			}
			return
		}
		before := written(t, file)
		if err := file.Set(key, answer); err != nil {
			if _, ok := err.(Fault); !ok {
				t.Errorf("%T", err)
			}
			if written(t, file) != before {
				t.Error("a refused answer changes the file")
			}
		} else if _, faults := Read("f", strings.NewReader(written(t, file))); len(faults) > 0 {
			t.Errorf("after setting %s to %q: %v", key, answer, faults)
		}
		file.Boat(economics.Book{})
		if err := file.Remove(key); err != nil {
			if _, ok := err.(Fault); !ok {
				t.Errorf("%T", err)
			}
		}
	})
}

func BenchmarkSet(b *testing.B) {
	s, _ := SampleNamed("dunlin")
	f, _ := Read("f", strings.NewReader(s.Text))
	for b.Loop() {
		if err := f.Set("box.volume", "90 L"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRead(b *testing.B) {
	s, _ := SampleNamed("dunlin")
	for b.Loop() {
		Read("f", strings.NewReader(s.Text))
	}
}
