package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// What has a name is stated once: in a copy of the tree a question, a price and
// a criterion are added by touching the files that DEVELOPERS.md names and no
// other; all else follows.
func TestAdditionsTouchWhatTheyShould(t *testing.T) {
	if os.Getenv("COLDRECKON_LONG") == "" {
		t.Skip("builds a copy of the tree three times: COLDRECKON_LONG=1")
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
		tests   []string // packages that must pass as they are
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
			edits: []edit{{"rules/packs/criteria.yaml", "  - id: dry-medicine\n", "  - id: dry-lonely\n    options: [dry]\n    fails: \"crew > 40\"\n    reason: \"With {crew} people aboard nobody could buy so many tins in one shop, let alone carry them home and stow them.\"\n" +
				"    examples:\n      - {facts: {crew: 50}, fires: \"yes\"}\n      - {facts: {crew: 2}, fires: \"no\"}\n\n"}},
			tests:   []string{"./rules"},
			command: []string{"rules", "check"}, shows: "",
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
			in := func(args ...string) string {
				cmd := exec.Command("go", args...)
				cmd.Dir = tree
				out, err := cmd.CombinedOutput()
				if err != nil {
					t.Errorf("go %s: %v\n%s", strings.Join(args, " "), err, out)
				}
				return string(out)
			}
			in(append([]string{"test"}, tt.tests...)...)
			if out := in(append([]string{"run", "./cmd/coldreckon"}, tt.command...)...); !strings.Contains(out, tt.shows) {
				t.Errorf("%v does not show %s", tt.command, tt.shows)
			}
		})
	}
}
