package answers

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"coldreckon/rules/strict"
	"coldreckon/wizard/questions"
)

// Set answers a key with a text, as questions.Set reads it, and rewrites its
// lines. The error is a Fault, and the file is then as before. Whether the
// answers fit each other is for Check to say.
func (f *File) Set(key, text string) error { return f.Accept(key, questions.Word(text)) }

// Accept is Set for an answer of any shape, as questions.Given gives it.
func (f *File) Accept(key string, in questions.Input) error {
	in = questions.Expand(key, in)
	changed := &File{name: f.name, inputs: maps.Clone(f.inputs)}
	changed.inputs[key] = in
	before := f.understood
	if f.tried.Key == key {
		before = maps.Clone(before)
		before[key] = f.tried
	}
	faults := changed.understand(before)
	f.reads += changed.reads
	for _, fault := range faults {
		if fault.Key == key {
			return fault
		}
	}
	if len(faults) > 0 {
		return faults[0] // units or a currency that other answers cannot bear
	}
	return f.become(f.with(key, in), changed.inputs, changed.understood)
}

// Remove takes an answer away, with every group that it leaves empty. A key
// without an answer is left alone. The error is a Fault of a file whose layout
// cannot be edited, and the file is then as before.
func (f *File) Remove(key string) error {
	if _, ok := f.inputs[key]; !ok {
		return nil
	}
	left := maps.Clone(f.inputs)
	delete(left, key)
	return f.become(f.without(key), left, f.understood)
}

// become takes the edited text on, after making sure that it says what it
// should and nothing else.
func (f *File) become(text string, inputs map[string]questions.Input, understood map[string]questions.Answer) error {
	edited, faults := parse(f.name, text, understood)
	as := len(faults) == 0 && len(edited.inputs) == len(inputs)
	for key, in := range inputs {
		as = as && in.Same(edited.inputs[key])
	}
	if !as {
		return Fault{File: f.name, Wrong: "the file is laid out so that it cannot be edited in place", Instead: "Put each key on a line of its own",
			Hint: "edit the file by hand, or begin a new one"}
	}
	f.text, f.root, f.inputs = edited.text, edited.root, edited.inputs
	f.boat, f.understood, f.reads = edited.boat, edited.understood, f.reads+edited.reads
	return nil
}

// entry is one key of a block mapping and the lines it takes.
type entry struct {
	path        string
	name, value *yaml.Node
	first, end  int // lines, from 0; end is one past the last
	siblings    int // keys in the same mapping
}

// entries lists the keys of all block mappings down to the rows, in order.
// What lies inside braces is part of the entry that holds them.
func (f *File) entries(lines []string) []entry {
	var list []entry
	var walk func(path string, n *yaml.Node, end int)
	walk = func(path string, n *yaml.Node, end int) {
		for i := 0; i+1 < len(n.Content); i += 2 {
			e := entry{name: n.Content[i], value: n.Content[i+1], siblings: len(n.Content) / 2, end: end}
			e.path = strings.TrimPrefix(path+"."+e.name.Value, ".")
			e.first = e.name.Line - 1
			if i+2 < len(n.Content) {
				e.end = n.Content[i+2].Line - 1
			}
			for e.end > e.first+1 && blank(lines[e.end-1]) {
				e.end--
			}
			list = append(list, e)
			if _, row := questions.Find(e.path); !row && e.value.Kind == yaml.MappingNode && e.value.Style&yaml.FlowStyle == 0 {
				walk(e.path, e.value, e.end)
			}
		}
	}
	if f.root != nil && f.root.Style&yaml.FlowStyle == 0 {
		end := len(lines)
		for end > 0 && (blank(lines[end-1]) || strings.HasPrefix(lines[end-1], "...")) {
			end--
		}
		walk("", f.root, end)
	}
	return list
}

// blank reports whether a line is empty or only a comment.
func blank(line string) bool {
	line = strings.TrimSpace(line)
	return line == "" || strings.HasPrefix(line, "#")
}

func (f *File) lines() []string {
	return strings.Split(strings.TrimSuffix(f.text, "\n"), "\n")
}

func joined(lines []string) string { return strings.Join(lines, "\n") + "\n" }

// splice puts lines in place of lines[first:end].
func splice(lines []string, first, end int, put ...string) []string {
	return slices.Concat(lines[:first], put, lines[end:])
}

// unfolded gives the file with the group in braces that a key belongs to, if
// there is one, written out in lines.
func (f *File) unfolded(key string) *File {
	inBraces := func(n *yaml.Node) bool { return n != nil && n.Style&yaml.FlowStyle != 0 }
	lines := f.lines()
	if inBraces(f.root) {
		lines = append(comments(f.root, 0), render(inputOf(f.root), 0)...)
	} else {
		list := f.entries(lines)
		i := slices.IndexFunc(list, func(e entry) bool { return strings.HasPrefix(key, e.path+".") && inBraces(e.value) })
		if i < 0 {
			return f
		}
		e := list[i]
		indent := e.name.Column - 1
		block := append(comments(e.value, indent), named(e.name.Value, inputOf(e.value), indent)...)
		lines = splice(lines, e.first, e.end, block...)
	}
	text := joined(lines)
	return &File{name: f.name, text: text, root: strict.Read(f.name, []byte(text)).Root}
}

// with gives the text with one answer put in.
func (f *File) with(key string, in questions.Input) string {
	f = f.unfolded(key)
	lines := f.lines()
	if f.root == nil && strings.TrimSpace(f.text) == "" {
		lines = nil
	}
	var parent *entry // the nearest group there is
	list := f.entries(lines)
	for i, e := range list {
		indent := e.name.Column - 1
		switch {
		case e.path == key:
			block := named(e.name.Value, in, indent)
			block[0] = withComment(block[0], lineComment(e))
			block = append(inner(e, indent), block...)
			return joined(splice(lines, e.first, e.end, block...))
		case strings.HasPrefix(key, e.path+"."):
			parent = &list[i]
		}
	}
	path, at, indent := "", -1, 0
	if parent != nil {
		path, at = parent.path, parent.first+1
		indent = parent.value.Content[0].Column - 1
	}
	// After the last sibling that comes before it in the table; else first.
	rest := strings.TrimPrefix(strings.TrimPrefix(key, path), ".")
	first := len(lines)
	for _, e := range list {
		if tail := strings.TrimPrefix(strings.TrimPrefix(e.path, path), "."); strings.HasPrefix(e.path, path) && e.path != path && !strings.Contains(tail, ".") {
			first = min(first, e.first)
			if rank(e.path) < rank(key) {
				at = max(at, e.end)
			}
		}
	}
	if at < 0 { // above the first key and the comment that belongs to it
		for at = first; at > 0 && at < len(lines) && strings.HasPrefix(lines[at-1], "#"); at-- {
		}
		first = at
	}
	head, tail, nested := strings.Cut(rest, ".")
	if nested {
		groups := strings.Split(tail, ".")
		for _, name := range slices.Backward(groups) {
			in = questions.Input{Shape: questions.Paired, Pairs: []questions.Pair{{Name: questions.Word(name), Value: in}}}
		}
	}
	block := named(head, in, indent)
	note(block, key)
	if path == "" {
		block = append(heading(key), block...)
		// Groups stand apart; single keys at the top stand together.
		if at > first && (nested || strings.HasPrefix(lines[at-1], " ")) || at == len(lines) && at > 0 && blank(lines[at-1]) {
			block = append([]string{""}, block...)
		}
		if nested && at < len(lines) && !blank(lines[at]) {
			block = append(block, "")
		}
	}
	return joined(splice(lines, at, at, block...))
}

// heading gives the comment above a new group of keys.
func heading(key string) []string {
	row, _ := questions.Find(key)
	if !strings.Contains(key, ".") {
		return nil
	}
	if strings.HasPrefix(key, "units_considered.") {
		return []string{"# The units considered"}
	}
	if row.Group == questions.OfFaces {
		return []string{"# " + string(questions.OfBox)}
	}
	return []string{"# " + string(row.Group)}
}

// note adds what the answer is to the line of a new key, where it fits.
func note(block []string, key string) {
	row, _ := questions.Find(key)
	last := key[strings.LastIndex(key, ".")+1:]
	for i, line := range block {
		name, value, _ := strings.Cut(strings.TrimSpace(line), ":")
		if name != last || value == "" {
			continue
		}
		text := row.Label
		if row.Kind == questions.Choice && len(row.Options) <= 6 {
			var values []string
			for _, o := range row.Options {
				values = append(values, o.Value)
			}
			text = strings.Join(values, ", ")
		}
		if noted := withComment(line, "# "+text); len(noted) <= 100 {
			block[i] = noted
		}
	}
}

// rank gives a key's or a group's place in the table of questions.
func rank(path string) int {
	for i, row := range questions.All() {
		if row.Key == path || strings.HasPrefix(row.Key, path+".") {
			return i
		}
	}
	return len(questions.All())
}

// without gives the text with one answer taken out, and with it every group
// that it leaves empty.
func (f *File) without(key string) string {
	f = f.unfolded(key)
	lines := f.lines()
	list := f.entries(lines)
	victim := -1
	for i, e := range list {
		// The inner one, unless the outer would be left empty.
		if (e.path == key || strings.HasPrefix(key, e.path+".")) && (victim < 0 || e.siblings > 1) {
			victim = i
		}
	}
	return joined(splice(lines, list[victim].first, list[victim].end))
}

// inputOf turns a sound node into an input.
func inputOf(n *yaml.Node) questions.Input {
	in, _ := (&walker{Reader: &strict.Reader{}}).input(n, "")
	return in
}

// comments gathers the comments inside a node that is about to be rewritten,
// as lines of their own.
func comments(n *yaml.Node, indent int) []string {
	var lines []string
	var walk func(*yaml.Node)
	walk = func(n *yaml.Node) {
		for _, c := range []string{n.HeadComment, n.LineComment, n.FootComment} {
			for _, line := range strings.Split(c, "\n") {
				if line = strings.TrimSpace(line); line != "" {
					lines = append(lines, strings.Repeat(" ", indent)+line)
				}
			}
		}
		for _, part := range n.Content {
			walk(part)
		}
	}
	walk(n)
	return lines
}

// inner gathers the comments among the parts of a value in several lines,
// without the one that stays beside its key.
func inner(e entry, indent int) []string {
	if e.value.Kind == yaml.ScalarNode {
		return nil
	}
	beside := strings.Repeat(" ", indent) + lineComment(e)
	return slices.DeleteFunc(comments(e.value, indent), func(line string) bool { return line == beside })
}

func lineComment(e entry) string {
	return cmp.Or(e.value.LineComment, e.name.LineComment)
}

func withComment(line, comment string) string {
	if comment == "" || strings.Contains(comment, "\n") {
		return line
	}
	return line + " " + comment
}
