package answers

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/rules/strict"
)

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
	if b.Box.Faces[heat.Aft].Neighbour != heat.Engine || b.Box.Faces[heat.Aft].Reach != economics.NotReached || b.Box.Faces[heat.Top].Reach != economics.FromInside {
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
		{"unknown key", "box:\n  volum: 90 L\n", 2, "box.volum: no question has this key. 'coldreckon questions' lists those there are.; did you mean box.volume?"},
		{"unknown group", "bxo:\n  volume: 90 L\n", 1, "did you mean box?"},
		{"key out of its group", "volume: 90 L\n", 1, "did you mean box.volume?"},
		{"wrong dimension", "box:\n  volume: 90 kg\n", 2, `"90 kg" is a mass. Give a volume`},
		{"impossible", "box:\n  volume: 4.4 L\n", 2, "did you mean 4.4 cu ft?"},
		{"not a number", "cruising:\n  crew: .nan\n", 2, "Give a number"},
		{"infinite", "cruising:\n  crew: .inf\n", 2, "Give a number"},
		{"twice", "units: us\nbox:\n  volume: 90 L\n  volume: 80 L\n", 4, "box.volume: the key stands here a second time"},
		{"twice, dotted first", "units: us\nbox.volume: 90 L\nbox:\n  volume: 80 L\n", 4, "box.volume: the key stands here a second time"},
		{"twice, dotted last", "units: us\nbox:\n  volume: 80 L\nbox.volume: 90 L\n", 4, "box.volume: the key stands here a second time"},
		{"utf-16", "u\x00n\x00i\x00t\x00s\x00", 1, "a zero byte is here, as UTF-16 has them"},
		{"month twice in a line", "cruising:\n  nights: \"june: 25, jul 3, jun: 25\"\n", 2, "June stands there twice"},
		{"month twice", "cruising:\n  nights: {jun: 8, june: 9}\n", 2, "June stands there twice"},
		{"month twice alike", "cruising:\n  nights:\n    jun: 8\n    jun: 9\n", 4, "cruising.nights.jun: the key stands here a second time"},
		{"no such month", "cruising:\n  nights: {jume: 8}\n", 2, "did you mean june?"},
		{"null", "box:\n  volume:\n", 2, "box.volume: nothing is written"},
		{"null as ~", "box:\n  volume: ~\n", 2, "nothing is written"},
		{"empty group", "box:\nunits: us\n", 1, "box: nothing stands here. Write a group of keys, such as box."},
		{"text for a group", "box: large\n", 1, `box: "large" stands`},
		{"group for a text", "box:\n  volume: {l: 90}\n", 2, "a group of keys stands"},
		{"list for a text", "units: [us]\n", 1, "a list stands"},
		{"anchor", "box:\n  volume: &v 90 L\n", 2, "the anchor &v"},
		{"alias", "box:\n  volume: &v 90 L\nunits_considered:\n  small:\n    rated_box: *v\n", 2, "the anchor"},
		{"tag", "boat:\n  name: !important Dunlin\n", 2, "the tag"},
		{"merge", "box: &b\n  volume: 90 L\nice:\n  <<: *b\n", 1, "the anchor"},
		{"several lines", "boat:\n  name: |\n    a\n    b\n", 2, "several lines"},
		{"long text", "boat:\n  name: " + strings.Repeat("x", 500) + "\n", 2, "a text of 500 bytes"},
		{"deep", "cruising:\n  nights: " + deep + "\n", 2, "nested too deeply"},
		{"endless brackets", strings.Repeat("[", 100000), 0, "as YAML"},
		{"huge", strings.Repeat("# comment\n", 40000), 0, "larger than 256 kB"},
		{"empty", "", 0, "holds no answer"},
		{"only comments", "# nothing\n", 0, "holds no answer"},
		{"only null", "---\n", 0, "holds no answer"},
		{"a list", "- units\n", 1, "a list stands"},
		{"two documents", "units: us\n---\nunits: us\n", 2, "a second document"},
		{"tab", "box:\n\tvolume: 90 L\n", 2, "not tabs"},
		{"broken", "box: [\n", 0, "as YAML"},
		{"colon in a value", "boat:\n  name: a: b\n", 2, "needs quotes"},
		{"not UTF-8", "boat:\n  name: \xff\xfe\n", 2, "not UTF-8"},
		{"unusual end of line", "units: us\nboat:\n  name: a\u2028b\n", 3, "ends this line"},
		{"a later YAML", "%YAML 1.2\n---\nunits: us\n", 0, "as YAML"},
		{"other currency", "currency: €\nice:\n  price: $1 /kg\n", 3, "another currency"},
		{"record without a part", "evidence:\n  ice_history:\n    - {ice: 10 kg, hours: 36}\n", 3, "month is missing"},
		{"record with a strange part", "evidence:\n  ice_history:\n    - ice: 10 kg\n      ours: 36\n      month: 7\n", 4, "did you mean hours?"},
		{"thirteen months", "cruising:\n  nights: [1, 2, 3]\n", 2, "has 3 entries"},
		{"key that is no word", "? [a]\n: b\n", 1, "for a key"},
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

// A file of nothing but mistakes is answered soon and briefly.
func TestFaultsAreBounded(t *testing.T) {
	for _, line := range []string{"k%d: 1\n", "bok%d: {volume: 90 L}\n", "  mnth%d: 1\n"} {
		var text strings.Builder
		if strings.HasPrefix(line, " ") {
			text.WriteString("cruising:\n nights:\n")
		}
		for i := 0; text.Len() < strict.MostBytes-100; i++ {
			fmt.Fprintf(&text, line, i)
		}
		began := time.Now()
		_, faults := Read("boat.yaml", strings.NewReader(text.String()))
		if took := time.Since(began); took > 30*time.Second {
			t.Errorf("took %v", took)
		}
		if len(faults) != strict.MostFaults+1 || strings.Contains(line, "k%d") && !strings.Contains(faults[strict.MostFaults].Wrong, "more faults than") {
			t.Errorf("%d faults, the last: %v", len(faults), faults[len(faults)-1])
		}
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

// The kilograms of earlier files held drinks; they are translated, said so, and
// saved in today's words with everything else as it was.
func TestFoodOfEarlierFiles(t *testing.T) {
	for _, test := range []struct{ text, food, text2 string }{
		{"units: metric\nfood:\n  kg_per_person_day: 1.8 kg # a summer\n", "0.75 kg", "units: metric\n\n# Food and drink\nfood:\n  food_per_person_day: 0.75 kg # Food a person and day, drinks apart\n"},
		{"units: metric\nfood:\n  kg_per_person_day: 1.8 kg\n  drinks_a_day: 1\n", "1.5 kg", "units: metric\nfood:\n  food_per_person_day: 1.5 kg # Food a person and day, drinks apart\n  drinks_a_day: 1\n"},
		{"units: metric\nfood: {kg_per_person_day: 1 kg, target: 4 °C}\n", "0.4 kg", ""},
		{"units: metric\nfood:\n  kg_per_person_day: don't know\n", "0 kg", ""},
	} {
		f := read(t, test.text)
		b := f.Told()
		if got := quantity.FormatMass(b.Food.KgPerPersonDay, quantity.Metric); got != test.food {
			t.Errorf("%q: taken as %s, want %s", test.text, got, test.food)
		}
		if notes := f.Notes(); len(notes) != 1 || !strings.Contains(notes[0], "food.food_per_person_day") {
			t.Errorf("%q: notes %q", test.text, notes)
		}
		if got := written(t, f); test.text2 != "" && got != test.text2 {
			t.Errorf("%q is saved as\n%s", test.text, got)
		}
	}
	if _, faults := Read("boat.yaml", strings.NewReader("food:\n  kg_per_person_day: 90 L\n")); len(faults) != 1 || faults[0].Line != 2 {
		t.Errorf("faults %v", faults)
	}
}
