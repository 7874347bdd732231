package answers

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"coldreckon/economics"
	"coldreckon/rules/strict"
	"coldreckon/wizard/questions"
)

// Fault is one thing wrong with an answers file.
type Fault = strict.Fault

// maxValue bounds the bytes of one text.
const maxValue = 400

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
	raw, err := io.ReadAll(io.LimitReader(r, strict.MostBytes+1))
	if err != nil {
		return nil, []Fault{{File: name, Wrong: "the file cannot be read (" + err.Error() + ")"}}
	}
	text := strings.TrimPrefix(string(raw), "\uFEFF")
	crlf := strings.Contains(text, "\r\n")
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
	f, faults := parse(name, text, nil)
	if len(faults) > 0 {
		return nil, faults
	}
	if len(f.inputs) == 0 {
		return nil, []Fault{{File: name, Wrong: "the file holds no answer", Instead: "Write keys such as units: us", Hint: "coldreckon sample prints a complete file"}}
	}
	f.crlf = crlf
	return f, nil
}

// parse understands text with line feeds only; answers understood before are
// not read again.
func parse(name, text string, before map[string]questions.Answer) (*File, []Fault) {
	w := &walker{Reader: strict.Read(name, []byte(text)), inputs: map[string]questions.Input{}, older: map[string]questions.Input{}}
	f := &File{name: name, text: text, root: w.Root, inputs: w.inputs}
	if f.root != nil {
		w.group("", f.root)
	}
	w.Add(f.understand(before)...)
	translated, older := f.translate(w.older)
	w.Add(older...)
	faults := w.Faults()
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
		now.root = strict.Read(now.name, []byte(now.text)).Root
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

// walker collects the inputs of a tree, and what is wrong with its form.
type walker struct {
	*strict.Reader
	inputs map[string]questions.Input
	older  map[string]questions.Input // by keys of earlier files
}

// group walks the keys of a mapping that lies at path.
func (w *walker) group(path string, n *yaml.Node) {
	if n.Kind != yaml.MappingNode {
		hint := ""
		if n.Tag == "!!null" {
			hint = "leave the line out"
		}
		w.Fault(n, path, strict.Describe(n)+" stands here", "Write a group of keys, such as "+firstUnder(path), hint)
		return
	}
	for i := 0; i+1 < len(n.Content) && !w.Full(); i += 2 {
		name, value := n.Content[i], n.Content[i+1]
		key := strings.TrimPrefix(path+"."+name.Value, ".")
		_, asked := questions.Find(key)
		_, twice := w.inputs[key] // "box.volume:" and "volume:" below "box:"
		switch older := questions.Older(key); {
		case twice:
			w.Fault(name, key, "the key stands here a second time", "Write each key once", "")
		case asked || older:
			if in, ok := w.input(value, key); ok && asked {
				w.inputs[key] = in
			} else if ok {
				w.older[key] = in
			}
		case firstUnder(key) != "":
			w.group(key, value)
		default:
			w.Add(questions.NoSuchKey(key, name.Line, name.Column))
		}
	}
}

// firstUnder gives the first key below a group, "" when path is no group.
func firstUnder(path string) string {
	for _, row := range questions.All() {
		if path == "" || strings.HasPrefix(row.Key, path+".") {
			return row.Key
		}
	}
	return ""
}

// input turns a node into the input of a key.
func (w *walker) input(n *yaml.Node, key string) (questions.Input, bool) {
	in, before := questions.Input{Line: n.Line, Column: n.Column}, w.Count()
	switch n.Kind {
	case yaml.ScalarNode:
		switch {
		case n.Tag == "!!null":
			w.Fault(n, key, "nothing is written here", "Give an answer, leave the line out, or write don't know", "")
		case len(n.Value) > maxValue:
			w.Fault(n, key, fmt.Sprintf("a text of %d bytes is too long", len(n.Value)), fmt.Sprintf("Write at most %d", maxValue), "")
		case strings.ContainsAny(n.Value, "\n\r"):
			w.Fault(n, key, "the text runs over several lines", "Write it on one", "")
		}
		in.Text = n.Value
	case yaml.SequenceNode:
		in.Shape = questions.Listed
		for _, item := range n.Content {
			part, _ := w.input(item, key)
			in.List = append(in.List, part)
		}
	case yaml.MappingNode:
		in.Shape = questions.Paired
		for i := 0; i+1 < len(n.Content); i += 2 {
			name, _ := w.input(n.Content[i], key)
			value, _ := w.input(n.Content[i+1], key)
			in.Pairs = append(in.Pairs, questions.Pair{Name: name, Value: value})
		}
	}
	return in, w.Count() == before
}
