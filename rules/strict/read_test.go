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
		"a: &x 1\nb: *x\n":         "f:1:4: a: the anchor &x has no meaning here. Write the value alone.\nf:2:4: b: the alias *x hides a value. Write the value itself.",
		"a:\n  b: !c d\n":          "f:2:6: a.b: the tag !c has no meaning here. Write the value alone.",
		"a:\n  b: 1\n  b: 2\n":     "f:3:3: a.b: the key stands here a second time. Write each key once.",
		"? [a]\n: b\n":             "f:1:3: a list stands for a key. Write a word.",
		"a: 1\n---\nb: 2\n":        "f:2:1: a second document begins here. Keep to one document in a file, without --- lines between.",
		"a: b\nc: \xff\n":          "f:2:4: a letter here is not UTF-8. Save the file as UTF-8.",
		"a: 1\nb\x00: 1\n":         "f:2:2: a zero byte is here, as UTF-16 has them. Save the file as UTF-8.",
		"a: b\u2028c: d\n":         "f:1:5: an unusual character ends this line. Type the line anew.",
		strings.Repeat("- ", 9):    "f:1:17: the groups are nested too deeply. Use at most 8 levels.",
		strings.Repeat("#", 1<<19): "f: the file is larger than 256 kB. Give a far smaller one.",
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
		r.Add(Fault{Line: i%60 + 1, Wrong: fmt.Sprint(i)})
	}
	faults := r.Faults()
	if len(faults) != MostFaults+1 || faults[0].Line != 1 || faults[0].File != "f" || faults[MostFaults].Wrong != "there are more faults than can be told at once" {
		t.Errorf("%d faults: %v", len(faults), faults)
	}
}
