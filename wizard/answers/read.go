package answers

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"maps"
	"regexp"
	"slices"
	"sort"
	"strconv"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// Fault is one thing wrong with an answers file.
type Fault = questions.Fault

// The bounds of an answers file. A filled file is about 5 kB.
const (
	maxBytes = 256 << 10
	maxValue = 400 // bytes of one text
	maxDepth = 6   // groups within groups
	most     = 50  // faults told at once
)

// File is an answers file, read without fault or made by Fresh.
type File struct {
	name   string
	text   string // as on disk, with line feeds only
	crlf   bool   // written back with carriage returns
	root   *yaml.Node
	inputs map[string]questions.Input // by key, as given
	notes  []string                   // what was understood otherwise than it stood

	understood map[string]questions.Answer // by key, as boat holds it
	boat       economics.Boat              // the answers alone, nothing filled in
	tried      questions.Answer            // the last that was only tried
	reads      int                         // texts read so far
}

// Notes gives sentences for the owner about answers of an earlier meaning that
// were translated; they are saved as translated.
func (f *File) Notes() []string { return f.notes }

// Read reads an answers file; name stands in its faults. The File is nil when
// there is any fault. Whether the answers fit each other is for Boat to say.
func Read(name string, r io.Reader) (*File, []Fault) {
	raw, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return nil, []Fault{{File: name, Found: "a file that cannot be read (" + err.Error() + ")", Expected: "an answers file"}}
	}
	if len(raw) > maxBytes {
		return nil, []Fault{{File: name, Found: fmt.Sprintf("more than %d kB", maxBytes>>10), Expected: "an answers file, which is far smaller"}}
	}
	text := strings.TrimPrefix(string(raw), "\uFEFF")
	crlf := strings.Contains(text, "\r\n")
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
	f, faults := parse(name, text, nil)
	if len(faults) > 0 {
		return nil, faults
	}
	if len(f.inputs) == 0 {
		return nil, []Fault{{File: name, Found: "no answer at all", Expected: "keys such as units: us", Hint: "coldreckon sample prints a complete file"}}
	}
	f.crlf = crlf
	return f, nil
}

// parse understands text with line feeds only; answers understood before are
// not read again.
func parse(name, text string, before map[string]questions.Answer) (*File, []Fault) {
	f := &File{name: name, text: text, inputs: map[string]questions.Input{}}
	if fault := f.decode(); fault != nil {
		return nil, []Fault{*fault}
	}
	w := &walker{file: name, inputs: f.inputs, older: map[string]questions.Input{}}
	if f.root != nil {
		w.group("", f.root, 0)
	}
	faults := f.understand(before)
	translated, older := f.translate(w.older)
	faults = append(faults, older...)
	faults = append(w.faults, faults...)
	sort.SliceStable(faults, func(i, j int) bool { return faults[i].Line < faults[j].Line })
	if len(faults) > most+1 {
		faults = faults[:most+1]
	}
	for i := range faults {
		faults[i].File = name
	}
	if len(faults) == 0 && translated != nil {
		return translated, nil
	}
	return f, faults
}

// translate gives the file with answers to keys of earlier files put in today's
// words; nil when there are none.
func (f *File) translate(older map[string]questions.Input) (*File, []Fault) {
	if len(older) == 0 {
		return nil, nil
	}
	now, faults := f, []Fault(nil)
	for _, key := range slices.Sorted(maps.Keys(older)) {
		newer, in, note, bad := questions.Translate(&f.boat, key, older[key])
		if faults = append(faults, bad...); len(bad) > 0 {
			continue
		}
		now.text = now.without(key)
		if now.decode() != nil {
			continue
		}
		if _, given := now.inputs[newer]; !given {
			next := &File{name: f.name, text: now.with(newer, in)}
			if next, bad = parse(f.name, next.text, f.understood); len(bad) > 0 {
				return nil, bad
			}
			next.notes = append(now.notes, note)
			now = next
		}
	}
	return now, faults
}

var yamlLine = regexp.MustCompile(`^(?:yaml: )?(?:line (\d+): )?(?s:(.*))$`)

// decode parses the YAML into root, which stays nil for a file of comments.
func (f *File) decode() (fault *Fault) {
	fail := func(line int, found, hint string) *Fault {
		return &Fault{File: f.name, Line: line, Found: found, Expected: "YAML: lines such as volume: 90 L below a line box:", Hint: hint}
	}
	if !utf8.ValidString(f.text) {
		line := 1
		for i, r := range f.text {
			if r == utf8.RuneError && !strings.HasPrefix(f.text[i:], "\uFFFD") {
				break
			}
			if r == '\n' {
				line++
			}
		}
		return fail(line, "text that is not UTF-8", "save the file as UTF-8")
	}
	if i := strings.IndexByte(f.text, 0); i >= 0 {
		return fail(1+strings.Count(f.text[:i], "\n"), "zero bytes, as UTF-16 has them", "save the file as UTF-8")
	}
	// YAML counts these as ends of lines, editors do not: lines would be miscounted.
	if i := strings.IndexAny(f.text, "\u0085\u2028\u2029\r"); i >= 0 {
		return fail(1+strings.Count(f.text[:i], "\n"), "an unusual character that ends a line", "type the line anew")
	}
	// The parser answers most bad input with an error; what it answers with a
	// panic must not reach the owner either.
	defer func() {
		if r := recover(); r != nil {
			f.root, fault = nil, fail(0, "text that cannot be understood", "")
		}
	}()
	decoder := yaml.NewDecoder(bytes.NewReader([]byte(f.text)))
	var document, next yaml.Node
	switch err := decoder.Decode(&document); {
	case errors.Is(err, io.EOF):
		return nil
	case err != nil:
		m := yamlLine.FindStringSubmatch(err.Error())
		line, _ := strconv.Atoi(m[1])
		hint := ""
		switch {
		case strings.Contains(f.text, "\t"):
			hint = "indent with spaces, not tabs"
		case strings.Contains(m[2], "mapping") || strings.Contains(m[2], "expected"):
			hint = "a value that contains a colon or # needs quotes round it"
		}
		// The library tells the line before as often as the line itself.
		return fail(line, "text that is not YAML, here or on the next line ("+quantity.Clip(m[2], 60)+")", hint)
	}
	if err := decoder.Decode(&next); !errors.Is(err, io.EOF) {
		return fail(next.Line, "a second document", "keep one boat in one file, without --- lines between")
	}
	if len(document.Content) == 0 {
		return nil
	}
	f.root = document.Content[0]
	if f.root.Kind == yaml.ScalarNode && f.root.Tag == "!!null" && plainNode(f.root) {
		f.root = nil
		return nil
	}
	if f.root.Kind != yaml.MappingNode {
		return fail(f.root.Line, kindOf(f.root), "")
	}
	return nil
}

func plainNode(n *yaml.Node) bool { return n.Anchor == "" && n.Style&yaml.TaggedStyle == 0 }

func kindOf(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "a group of keys"
	case yaml.SequenceNode:
		return "a list"
	case yaml.AliasNode:
		return "an alias (*" + n.Value + ")"
	}
	if n.Tag == "!!null" {
		return "nothing"
	}
	return "a text"
}

// walker collects the inputs of a tree, and what is wrong with its form.
type walker struct {
	file   string
	inputs map[string]questions.Input
	older  map[string]questions.Input // by keys of earlier files
	faults []Fault
}

func (w *walker) fault(n *yaml.Node, key, found, expected, hint string) {
	if w.full() {
		found, expected, hint = "more than can be told at once", "those above mended first", ""
	} else if len(w.faults) > most {
		return
	}
	w.faults = append(w.faults, Fault{File: w.file, Line: n.Line, Column: n.Column, Key: key, Found: found, Expected: expected, Hint: hint})
}

// full reports whether as many faults are gathered as an owner can use.
func (w *walker) full() bool { return len(w.faults) == most }

// sound refuses what an answers file never needs.
func (w *walker) sound(n *yaml.Node, key string, depth int) bool {
	switch {
	case n.Kind == yaml.AliasNode:
		w.fault(n, key, kindOf(n), "the answer itself", "")
	case n.Anchor != "":
		w.fault(n, key, "an anchor (&"+quantity.Clip(n.Anchor, 60)+")", "the answer alone", "")
	case n.Style&yaml.TaggedStyle != 0:
		w.fault(n, key, "a tag ("+quantity.Clip(n.Tag, 60)+")", "the answer alone", "put quotes round a text that begins with !")
	case depth > maxDepth:
		w.fault(n, key, "groups nested too deeply", "", "")
	case n.Kind == yaml.ScalarNode && len(n.Value) > maxValue:
		w.fault(n, key, fmt.Sprintf("a text of %d bytes", len(n.Value)), fmt.Sprintf("at most %d", maxValue), "")
	case n.Kind == yaml.ScalarNode && (n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 || strings.ContainsAny(n.Value, "\n\r")):
		w.fault(n, key, "a text of several lines", "one line", "")
	default:
		return true
	}
	return false
}

// group walks the keys of a mapping that lies at path.
func (w *walker) group(path string, n *yaml.Node, depth int) {
	if !w.sound(n, path, depth) {
		return
	}
	if n.Kind != yaml.MappingNode {
		hint := ""
		if n.Tag == "!!null" {
			hint = "leave the line out"
		}
		w.fault(n, path, kindOf(n), "a group of keys, such as "+firstUnder(path), hint)
		return
	}
	seen := map[string]bool{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		name, value := n.Content[i], n.Content[i+1]
		if name.Kind != yaml.ScalarNode {
			w.fault(name, path, kindOf(name)+" as a key", "a word", "")
			continue
		}
		key := strings.TrimPrefix(path+"."+name.Value, ".")
		if !w.sound(name, path, depth) {
			continue
		}
		if _, dotted := w.inputs[key]; seen[name.Value] || dotted { // "box.volume:" and "volume:" below "box:"
			w.fault(name, key, "the key a second time", "each key once", "")
			continue
		}
		seen[name.Value] = true
		if _, ok := questions.Find(key); ok {
			if in, ok := w.input(value, key, depth+1); ok {
				w.inputs[key] = in
			}
			continue
		}
		if questions.Older(key) {
			if in, ok := w.input(value, key, depth+1); ok {
				w.older[key] = in
			}
			continue
		}
		if firstUnder(key) != "" {
			w.group(key, value, depth+1)
			continue
		}
		if len(w.faults) > most {
			return
		}
		hint := ""
		if near := questions.Near(key); near != "" {
			hint = "did you mean " + near + "?"
		}
		w.fault(name, quantity.Clip(key, 60), "a key that means nothing here", "a key of the answers file", hint)
	}
}

// firstUnder gives the first key below a group, "" when path is no group.
func firstUnder(path string) string {
	for _, row := range questions.All() {
		if strings.HasPrefix(row.Key, path+".") {
			return row.Key
		}
	}
	return ""
}

// input turns a node into the input of a key.
func (w *walker) input(n *yaml.Node, key string, depth int) (questions.Input, bool) {
	in := questions.Input{Line: n.Line, Column: n.Column}
	if !w.sound(n, key, depth) {
		return in, false
	}
	good := true
	switch n.Kind {
	case yaml.ScalarNode:
		if n.Tag == "!!null" {
			w.fault(n, key, "nothing", "an answer", "leave the line out, or answer don't know")
			return in, false
		}
		in.Text = n.Value
	case yaml.SequenceNode:
		in.Shape = questions.Listed
		for _, item := range n.Content {
			part, ok := w.input(item, key, depth+1)
			in.List, good = append(in.List, part), good && ok
		}
	case yaml.MappingNode:
		in.Shape = questions.Paired
		seen := map[string]bool{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			name, ok := w.input(n.Content[i], key, depth+1)
			value, fine := w.input(n.Content[i+1], key, depth+1)
			if ok && name.Shape != questions.Scalar {
				w.fault(n.Content[i], key, kindOf(n.Content[i])+" as a key", "a word", "")
				ok = false
			}
			if ok && seen[name.Text] {
				w.fault(n.Content[i], key, quantity.Clip(name.Text, 60)+" a second time", "each key once", "")
				ok = false
			}
			seen[name.Text] = true
			in.Pairs, good = append(in.Pairs, questions.Pair{Name: name, Value: value}), good && ok && fine
		}
	}
	return in, good
}
