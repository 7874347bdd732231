package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// What has a name is stated once: in a copy of the tree a question, a price, a
// criterion, a fact, an uncertain figure and a ground are added by touching the
// files that DEVELOPERS.md names and no other; all else follows, or a test that
// fails says what is still wanted.
func TestAdditionsTouchWhatTheyShould(t *testing.T) {
	if os.Getenv("COLDRECKON_LONG") == "" {
		t.Skip("builds a copy of the tree for each of them: COLDRECKON_LONG=1")
	}
	root, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	listed, err := exec.Command("git", "-C", root, "ls-files", "--cached", "--others", "--exclude-standard").Output()
	if err != nil {
		t.Fatal(err)
	}
	type edit struct{ file, before, insert string } // before "" appends
	for _, tt := range []struct {
		name    string
		edits   []edit
		tests   []string // of go test, which must pass as they are
		wanting string   // a package whose tests then fail
		wants   string   // what they say
		command []string // of the program
		shows   string
	}{
		{
			name: "question",
			edits: []edit{
				{"economics/boat.go", "	ChestFits ", "	Ladder quantity.Tri // a ladder leads to the box\n"},
				{"wizard/questions/rows_box.go", "		{\n			Key: \"box.chest_fits\"", "		{\n			Key: \"box.ladder\", Group: OfBox, Label: \"Ladder\", Kind: YesNoUnknown, Detail: true,\n" +
					"			Ask: \"Does a ladder lead to the box?\", Help: \"Typical: no.\",\n			Field: func(b *economics.Boat) Slot { return at(&b.Box.Ladder) },\n			Default: always(quantity.No, \"usual\"),\n		},\n"},
			},
			tests:   []string{"./wizard/questions", "./report/forms"},
			command: []string{"figures", "sample:turnstone", "--json", "--futures", "20", "--set", "box.ladder=yes"}, shows: `"ladder": "yes"`,
		},
		{
			name: "price",
			edits: []edit{{"rules/packs/prices.yaml", "", "  - id: polish\n    label: \"Polish for the lid\"\n    unit: each\n    low: 1\n    typical: 2\n    high: 3\n" +
				"    billing: rate\n    grade: c\n    source: \"Invented.\"\n"}},
			tests:   []string{"./rules"},
			command: []string{"rules", "check"}, shows: "",
		},
		{
			name: "criterion",
			edits: []edit{{"rules/packs/criteria.yaml", "  - id: no-battery\n", "  - id: dry-lonely\n    kind: room\n    options: [dry]\n    fails: \"crew > 40\"\n    reason: \"With {crew} people aboard nobody could buy so many tins in one shop, let alone carry them home and stow them.\"\n" +
				"    examples:\n      - {facts: {crew: 50}, fires: \"yes\"}\n      - {facts: {crew: 2}, fires: \"no\"}\n\n"}},
			tests:   []string{"./rules"},
			command: []string{"rules", "check"}, shows: "",
		},
		{
			name: "fact",
			edits: []edit{
				{"economics/factrows.go", "	numberFact(\"crew\"", "	numberFact(\"corners\", \"corners\", \"of the box\", func(s *subject) float64 { return 8 }),\n"},
				{"rules/packs/criteria.yaml", "  - id: no-battery\n", "  - id: edgy\n    kind: need\n    options: [small]\n    fails: \"corners > 7\"\n    reason: \"The box has {corners}, and at each of them three sheets of foam meet and leave a gap that heat finds.\"\n" +
					"    examples:\n      - {facts: {corners: 8}, fires: \"yes\"}\n      - {facts: {corners: 6}, fires: \"no\"}\n\n"},
			},
			tests:   []string{"./rules"},
			command: []string{"figures", "sample:turnstone", "--json", "--futures", "20"}, shows: "The box has 8 corners, and",
		},
		{
			name: "uncertain figure",
			edits: []edit{
				{"economics/future.go", "	Foam ", "	Tide float64 // invented\n"},
				{"economics/inputrows.go", "}\n\n// factor is a range", "	{\n		Input: Input{\n			Name: \"tide\", Label: \"how high the tide is\", Short: \"tide\", Beyond: \"the tide is {more} {at}\", FindOut: \"Look.\",\n" +
					"			at: func(f *Future) *float64 { return &f.Tide },\n		},\n		figure: func(k *knowledge) (float64, quantity.Range) { return 1, factor(0.9, 1.1) },\n	},\n"},
			},
			tests:   []string{"./economics", "-run=UncertainFigures"},
			command: []string{"figures", "sample:turnstone", "--json", "--futures", "20"}, shows: `"tide"`,
		},
		{
			name:    "ground",
			edits:   []edit{{"economics/climate/data/grounds.csv", "", "lake-of-ours,\"Lake of ours\",10.0,-60.0\n"}, {"economics/climate/data/climate.csv", "", lake()}},
			wanting: "./economics/climate", wants: "data/SOURCES.md states",
			command: []string{"grounds", "lake-of-ours"}, shows: "Lake of ours",
		},
	} {
		t.Run(tt.name, func(t *testing.T) {
			tree := t.TempDir()
			for _, name := range strings.Fields(string(listed)) {
				text, err := os.ReadFile(filepath.Join(root, name))
				if os.IsNotExist(err) {
					continue
				}
				if err != nil {
					t.Fatal(err)
				}
				for _, e := range tt.edits {
					switch {
					case e.file != name:
					case e.before == "":
						text = append(text, e.insert...)
					case strings.Count(string(text), e.before) != 1:
						t.Fatalf("%s holds %q %d times, expected once", name, e.before, strings.Count(string(text), e.before))
					default:
						text = []byte(strings.Replace(string(text), e.before, e.insert+e.before, 1))
					}
				}
				to := filepath.Join(tree, name)
				if err := os.MkdirAll(filepath.Dir(to), 0o777); err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(to, text, 0o666); err != nil {
					t.Fatal(err)
				}
			}
			in := func(args ...string) (string, error) {
				cmd := exec.Command("go", args...)
				cmd.Dir = tree
				out, err := cmd.CombinedOutput()
				return string(out), err
			}
			if tt.tests != nil {
				if out, err := in(append([]string{"test"}, tt.tests...)...); err != nil {
					t.Errorf("go test %v: %v\n%s", tt.tests, err, out)
				}
			}
			if tt.wanting != "" {
				if out, err := in("test", tt.wanting); err == nil || !strings.Contains(out, tt.wants) {
					t.Errorf("go test %s: %v, and it does not say %q:\n%s", tt.wanting, err, tt.wants, out)
				}
			}
			out, err := in(append([]string{"run", "./cmd/coldreckon"}, tt.command...)...)
			if err != nil {
				t.Errorf("%v: %v\n%s", tt.command, err, out)
			}
			if !strings.Contains(out, tt.shows) {
				t.Errorf("%v does not show %s", tt.command, tt.shows)
			}
		})
	}
}

// lake is a year of weather of a ground that there is not.
func lake() string {
	var rows strings.Builder
	for month := 1; month <= 12; month++ {
		fmt.Fprintf(&rows, "lake-of-ours,%d,26,29,24,27,5,tmean=memory|tmax=memory|tmin=memory|sst=memory|ghi=memory\n", month)
	}
	return rows.String()
}
