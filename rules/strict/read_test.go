package strict

import (
	"fmt"
	"strings"
	"testing"
)

// What hides or changes a value is refused at its place. By YAML 1.2.2: anchors
// and aliases 7.1, tags 6.8, unique keys 3.2.1.3, line breaks 5.4.
func TestRefused(t *testing.T) {
	for text, want := range map[string]string{
		"a: &x 1\nb: *x\n":         "f:1:4: a: found the anchor &x, expected the value alone\nf:2:4: b: found the alias *x, expected the value itself",
		"a:\n  b: !c d\n":          "f:2:6: a.b: found the tag !c, expected the value alone",
		"a:\n  b: 1\n  b: 2\n":     "f:3:3: a.b: found the key a second time, expected each key once",
		"? [a]\n: b\n":             "f:1:3: found a list as a key, expected a word",
		"a: 1\n---\nb: 2\n":        "f:2:1: found a second document, expected one document in a file, without --- lines between",
		"a: b\nc: \xff\n":          "f:2:4: found bytes that are not UTF-8, expected UTF-8 text",
		"a: 1\nb\x00: 1\n":         "f:2:2: found zero bytes, as UTF-16 has them, expected UTF-8 text",
		"a: b\u2028c: d\n":         "f:1:5: found an unusual character that ends a line, expected a usual end of line",
		strings.Repeat("- ", 9):    "f:1:17: found groups nested too deeply, expected at most 8 levels",
		strings.Repeat("#", 1<<19): "f: found more than 256 kB, expected a file that is far smaller",
	} {
		r := Read("f", []byte(text))
		if got := r.Faults().Error(); got != want || r.Root != nil {
			t.Errorf("%.20q: got %s\nwant %s", text, got, want)
		}
	}
	for _, text := range []string{"", "# nothing\n", "---\n", "~\n", "\uFEFF# a\r\n"} {
		if r := Read("f", []byte(text)); r.Root != nil || r.Faults().OrNil() != nil {
			t.Errorf("%q: %v", text, r.Faults())
		}
	}
}

// Of a file of nothing but faults the first are told, and that there are more.
func TestFaultsAreBounded(t *testing.T) {
	r := Read("f", []byte("a: 1\n"))
	for i := 2000; i > 0; i-- {
		r.Add(Fault{Line: i%60 + 1, Found: fmt.Sprint(i)})
	}
	faults := r.Faults()
	if len(faults) != MostFaults+1 || faults[0].Line != 1 || faults[0].File != "f" || faults[MostFaults].Found != "more than can be told at once" {
		t.Errorf("%d faults: %v", len(faults), faults)
	}
}
