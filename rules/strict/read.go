// Package strict reads the YAML files that people write by hand: answers and
// rules. A file holds one document of groups of keys, lists and texts, each with
// its place; whatever hides what is written (anchors, aliases, tags, a key twice)
// is refused with its line, what is wrong and what to write instead. It reads nodes
// rather than decoding into structs, because the decoder loses places, rounds
// 1.5 to 1 and reads 010 as 8.
//
// What the keys and texts mean is for those who call it; their faults go to the
// same Reader, which gives all of a file at once and in its order.
package strict

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"coldreckon/economics/quantity"
)

// The bounds of one file. The largest file of the program's own is under a
// quarter of each.
const (
	MostBytes  = 256 << 10
	MostFaults = 50
	mostDepth  = 8
)

// Reader is one file being read, and what is wrong with it so far.
type Reader struct {
	File   string // its name, as faults tell it
	Root   *yaml.Node
	faults Faults
}

// Read parses a file. Root is nil when there is any fault, and for a file that
// holds nothing but comments.
func Read(file string, data []byte) *Reader {
	r := &Reader{File: file}
	if r.Root = r.document(data); r.Root != nil {
		r.plain(r.Root, 1, "")
	}
	if len(r.faults) > 0 {
		r.Root = nil
	}
	return r
}

// Fault notes what is wrong at a node.
func (r *Reader) Fault(at *yaml.Node, key, wrong, instead, hint string) {
	r.Add(Fault{Line: at.Line, Column: at.Column, Key: key, Wrong: wrong, Instead: instead, Hint: hint})
}

// Add notes faults that have their place already. Of a file of nothing but
// faults only so many are kept.
func (r *Reader) Add(faults ...Fault) {
	for _, f := range faults {
		if r.Full() {
			return
		}
		f.File = r.File
		r.faults = append(r.faults, f)
	}
}

// Full reports whether there are more faults than will be told.
func (r *Reader) Full() bool { return len(r.faults) > 2*MostFaults }

// Count gives how many faults were noted so far.
func (r *Reader) Count() int { return len(r.faults) }

// Faults gives what was noted, in the order of the file; nil for nothing.
func (r *Reader) Faults() Faults { return r.faults.inOrder() }

// syntaxLine finds the line in the library's own message.
var syntaxLine = regexp.MustCompile(`^(?:yaml: )?(?:line (\d+): )?(?s:(.*))$`)

// document parses the only document of a file; nil when there is none.
func (r *Reader) document(data []byte) (root *yaml.Node) {
	fail := func(at int, wrong, instead, hint string) *yaml.Node {
		before := string(data[:min(max(at, 0), len(data))])
		r.Fault(&yaml.Node{Line: 1 + strings.Count(before, "\n"), Column: 1 + utf8.RuneCountInString(before[strings.LastIndexByte(before, '\n')+1:])},
			"", wrong, instead, hint)
		return nil
	}
	// The library answers most bad input with an error; what it answers with a
	// panic must not get further either.
	defer func() {
		if recover() != nil {
			r.Fault(&yaml.Node{}, "", "the text cannot be understood", "Write YAML: lines such as key: value", "")
			root = nil
		}
	}()
	if len(data) > MostBytes {
		r.Fault(&yaml.Node{}, "", fmt.Sprintf("the file is larger than %d kB", MostBytes>>10), "Give a far smaller one", "")
		return nil
	}
	data = bytes.ReplaceAll(bytes.TrimPrefix(data, []byte("\uFEFF")), []byte("\r\n"), []byte("\n"))
	if !utf8.Valid(data) {
		rest := data
		for c, size := utf8.DecodeRune(rest); c != utf8.RuneError || size > 1; c, size = utf8.DecodeRune(rest) {
			rest = rest[size:]
		}
		return fail(len(data)-len(rest), "a letter here is not UTF-8", "Save the file as UTF-8", "")
	}
	if i := bytes.IndexByte(data, 0); i >= 0 {
		return fail(i, "a zero byte is here, as UTF-16 has them", "Save the file as UTF-8", "")
	}
	// YAML counts these as ends of lines, editors do not: lines would be miscounted.
	if i := bytes.IndexAny(data, "\u0085\u2028\u2029\r"); i >= 0 {
		return fail(i, "an unusual character ends this line", "Type the line anew", "")
	}
	decoder := yaml.NewDecoder(bytes.NewReader(data))
	var document, next yaml.Node
	err := decoder.Decode(&document)
	if errors.Is(err, io.EOF) {
		return nil
	}
	if err == nil {
		if err = decoder.Decode(&next); err == nil {
			r.Fault(&next, "", "a second document begins here", "Keep to one document in a file, without --- lines between", "")
			return nil
		}
	}
	if !errors.Is(err, io.EOF) {
		m := syntaxLine.FindStringSubmatch(err.Error())
		line, _ := strconv.Atoi(m[1])
		hint := "a text that holds : or # or starts with a sign needs quotes round it"
		if bytes.ContainsRune(data, '\t') {
			hint = "indent with spaces, not tabs"
		}
		// The library tells the line before as often as the line itself.
		r.Fault(&yaml.Node{Line: line}, "", "this cannot be read as YAML, here or on the next line ("+quantity.Clip(m[2], 80)+")", "Write lines such as key: value", hint)
		return nil
	}
	if len(document.Content) == 0 || document.Content[0].Tag == "!!null" && document.Content[0].Style == 0 {
		return nil
	}
	return document.Content[0]
}

// plain refuses the parts of YAML that hide or change a value, below a key.
func (r *Reader) plain(n *yaml.Node, depth int, key string) {
	switch {
	case r.Full():
		return
	case depth > mostDepth:
		r.Fault(n, key, "the groups are nested too deeply", fmt.Sprintf("Use at most %d levels", mostDepth), "")
		return
	case n.Kind == yaml.AliasNode:
		r.Fault(n, key, "the alias *"+quantity.Clip(n.Value, 40)+" hides a value", "Write the value itself", "")
		return
	case n.Anchor != "":
		r.Fault(n, key, "the anchor &"+quantity.Clip(n.Anchor, 40)+" has no meaning here", "Write the value alone", "")
	case n.Style&yaml.TaggedStyle != 0:
		r.Fault(n, key, "the tag "+quantity.Clip(n.Tag, 40)+" has no meaning here", "Write the value alone", "put quotes round a text that begins with !")
	}
	if n.Kind != yaml.MappingNode {
		for _, child := range n.Content {
			r.plain(child, depth+1, key)
		}
		return
	}
	seen := map[string]bool{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		name := n.Content[i]
		below := strings.TrimPrefix(key+"."+quantity.Clip(name.Value, 40), ".")
		r.plain(name, depth+1, key)
		switch {
		case name.Kind != yaml.ScalarNode:
			r.Fault(name, key, Describe(name)+" stands for a key", "Write a word", "")
		case seen[name.Value]:
			r.Fault(name, below, "the key stands here a second time", "Write each key once", "")
		}
		seen[name.Value] = true
		r.plain(n.Content[i+1], depth+1, below)
	}
}

// Quoted reports whether a text is safe from YAML's own meanings: in quotes or
// a block.
func Quoted(n *yaml.Node) bool {
	return n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) != 0
}

// Describe says what a node is, in the words of a fault.
func Describe(n *yaml.Node) string {
	switch {
	case n.Kind == yaml.MappingNode:
		return "a group of keys"
	case n.Kind == yaml.SequenceNode && len(n.Content) == 0:
		return "an empty list"
	case n.Kind == yaml.SequenceNode:
		return "a list"
	case n.Tag == "!!null":
		return "nothing"
	}
	return quantity.Quoted(n.Value)
}
