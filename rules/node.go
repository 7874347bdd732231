package rules

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"coldreckon/economics/quantity"
)

// Limits on one rule file. The largest embedded file is under a quarter of each.
const (
	maxFileBytes = 256 << 10
	maxDepth     = 8
	maxEntries   = 500
	maxFaults    = 50
	maxText      = 600
)

// reader turns one YAML document into typed values and gathers every fault.
// It reads nodes rather than decoding into structs, because the decoder loses
// places, rounds 1.5 to 1 and reads 010 as 8.
type reader struct {
	file   string
	faults Faults
}

func (r *reader) fault(at *yaml.Node, rule, key, found, want string) {
	if len(r.faults) < maxFaults {
		r.faults = append(r.faults, Fault{File: r.file, Line: at.Line, Column: at.Column, Rule: rule, Key: key, Found: found, Want: want})
	}
}

// inOrder gives the faults in the order of the file.
func (r *reader) inOrder() Faults {
	slices.SortStableFunc(r.faults, func(a, b Fault) int { return cmp.Or(a.Line-b.Line, a.Column-b.Column) })
	return r.faults
}

// syntaxLine finds the line in the library's own message.
var syntaxLine = regexp.MustCompile(`^yaml: line (\d+): `)

// firstFault gives line and column, from 1, of the first byte that is no UTF-8.
func firstFault(data []byte) (line, column int) {
	line, column = 1, 1
	for len(data) > 0 {
		r, size := utf8.DecodeRune(data)
		switch {
		case r == utf8.RuneError && size == 1:
			return line, column
		case r == '\n':
			line, column = line+1, 1
		default:
			column++
		}
		data = data[size:]
	}
	return line, column
}

// document parses the only document of a file and refuses what a rule file
// has no use for: anchors, aliases, tags, deep nesting. It gives nil when
// nothing can be read.
func (r *reader) document(data []byte) (root *yaml.Node) {
	start := &yaml.Node{}
	defer func() {
		if trouble := recover(); trouble != nil {
			r.fault(start, "", "", "text that the YAML reader fails on", "a YAML mapping")
			root = nil
		}
	}()
	switch {
	case len(data) > maxFileBytes:
		r.fault(start, "", "", fmt.Sprintf("%d bytes", len(data)), fmt.Sprintf("at most %d", maxFileBytes))
		return nil
	case !utf8.Valid(data):
		start.Line, start.Column = firstFault(data)
		r.fault(start, "", "", "bytes that are not UTF-8", "UTF-8 text")
		return nil
	}
	decoder := yaml.NewDecoder(bytes.NewReader(data))
	var doc, second yaml.Node
	if err := decoder.Decode(&doc); err != nil {
		r.syntax(err)
		return nil
	}
	if err := decoder.Decode(&second); !errors.Is(err, io.EOF) {
		if err != nil {
			r.syntax(err)
		} else {
			r.fault(&second, "", "", "a second document", "one document in a file")
		}
		return nil
	}
	if len(doc.Content) == 0 {
		r.syntax(io.EOF)
		return nil
	}
	root = doc.Content[0]
	r.plainTree(root, 1, "", "")
	if len(r.faults) > 0 {
		return nil
	}
	return root
}

// syntax reports an error of the YAML library at its line.
func (r *reader) syntax(err error) {
	at := &yaml.Node{}
	if errors.Is(err, io.EOF) {
		r.fault(at, "", "", "an empty file", "a YAML mapping")
		return
	}
	message := err.Error()
	if m := syntaxLine.FindStringSubmatch(message); m != nil {
		at.Line, _ = strconv.Atoi(m[1])
		at.Column = 1
		message = message[len(m[0]):]
	}
	r.fault(at, "", "", "text that is not YAML, here or on the next line ("+quantity.Clip(strings.TrimPrefix(message, "yaml: "), 80)+")", "YAML; quote texts that hold : or # or start with a sign")
}

// plainTree refuses the parts of YAML that hide or change a value. Rule and
// key are those that the node stands under, for messages.
func (r *reader) plainTree(n *yaml.Node, depth int, rule, key string) {
	switch {
	case depth > maxDepth:
		r.fault(n, rule, key, "nesting too deep", fmt.Sprintf("at most %d levels", maxDepth))
		return
	case n.Kind == yaml.AliasNode:
		r.fault(n, rule, key, "the alias *"+clip(n.Value), "the value itself")
		return
	case n.Anchor != "":
		r.fault(n, rule, key, "the anchor &"+clip(n.Anchor), "no anchors")
	case n.Style&yaml.TaggedStyle != 0:
		// An expression that starts with ! is read as a tag and vanishes.
		r.fault(n, rule, key, "the tag "+clip(n.Tag), "no tags; quote an expression that starts with !")
	}
	if n.Kind != yaml.MappingNode {
		for _, child := range n.Content {
			r.plainTree(child, depth+1, rule, key)
		}
		return
	}
	if id := idOf(n); id != "" {
		rule = id
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		r.plainTree(n.Content[i], depth+1, rule, "")
		r.plainTree(n.Content[i+1], depth+1, rule, clip(n.Content[i].Value))
	}
}

// idOf gives the id written in a mapping, shortened for messages.
func idOf(n *yaml.Node) string {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == "id" {
			return clip(n.Content[i+1].Value)
		}
	}
	return ""
}

// record is one mapping, its keys checked.
type record struct {
	node   *yaml.Node
	rule   string // id, for messages
	fields map[string]*yaml.Node
}

// mapping reads a record that may hold the given keys and no others.
func (r *reader) mapping(n *yaml.Node, rule string, known ...string) (record, bool) {
	rec := record{node: n, rule: rule, fields: map[string]*yaml.Node{}}
	if n.Kind != yaml.MappingNode {
		r.fault(n, rule, "", kindWord(n), "a mapping with the keys: "+strings.Join(known, ", "))
		return rec, false
	}
	if id := idOf(n); id != "" && slices.Contains(known, "id") {
		rec.rule = id
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key := n.Content[i]
		switch {
		case key.Kind != yaml.ScalarNode || !slices.Contains(known, key.Value):
			r.fault(key, rec.rule, "", "the key "+quantity.Quoted(key.Value), "one of: "+strings.Join(known, ", ")+didYouMean(key.Value, known))
		case rec.fields[key.Value] != nil:
			r.fault(key, rec.rule, key.Value, "the key a second time", "each key once")
		default:
			rec.fields[key.Value] = n.Content[i+1]
		}
	}
	return rec, true
}

// field gives the value of a key that must be there.
func (r *reader) field(rec record, key string) (*yaml.Node, bool) {
	n := rec.fields[key]
	if n == nil {
		r.fault(rec.node, rec.rule, key, "nothing", "a value")
		return nil, false
	}
	return n, true
}

// text reads a non-empty text of printable characters.
func (r *reader) text(rec record, key string) string {
	n, ok := r.field(rec, key)
	if !ok {
		return ""
	}
	switch {
	case n.Kind != yaml.ScalarNode || n.Tag == "!!null" || strings.TrimSpace(n.Value) == "":
		r.fault(n, rec.rule, key, kindWord(n), "a text")
	case !quoted(n) && n.LineComment != "":
		r.fault(n, rec.rule, key, "a text cut short at #", "the text in quotes")
	case len(n.Value) > maxText:
		r.fault(n, rec.rule, key, fmt.Sprintf("%d bytes", len(n.Value)), fmt.Sprintf("at most %d", maxText))
	case strings.ContainsFunc(strings.TrimSuffix(n.Value, "\n"), func(c rune) bool { return !unicode.IsPrint(c) && c != '\n' || c > 0xFFFF }):
		r.fault(n, rec.rule, key, "a character that cannot be printed", "plain text")
	default:
		return strings.Join(strings.Fields(n.Value), " ")
	}
	return ""
}

// idPattern is the shape of an id.
var idPattern = regexp.MustCompile(`^[a-z][a-z0-9]*(?:[-_][a-z0-9]+)*$`)

// id reads an identifier that is not yet in seen, and adds it.
func (r *reader) id(rec record, seen map[string]bool) string {
	id := r.text(rec, "id")
	switch {
	case id == "":
	case len(id) > 40 || !idPattern.MatchString(id):
		r.fault(rec.fields["id"], "", "id", quantity.Quoted(id), "up to 40 of a-z, 0-9, - and _, a letter first")
	case seen[id]:
		r.fault(rec.fields["id"], id, "id", "an id used before", "a new id")
	default:
		seen[id] = true
	}
	return id
}

// oneOf reads one word of a fixed set.
func (r *reader) oneOf(rec record, key string, set ...string) string {
	word := r.text(rec, key)
	if word != "" && !slices.Contains(set, word) {
		r.fault(rec.fields[key], rec.rule, key, quantity.Quoted(word), "one of: "+strings.Join(set, ", ")+didYouMean(word, set))
		return ""
	}
	return word
}

// decimal is the only way to write a number: no exponent, no leading zero
// (which YAML reads as octal), no .inf, no .nan.
var decimal = regexp.MustCompile(`^-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?$`)

// number reads a plain decimal from low to high.
func (r *reader) number(rec record, key string, low, high float64) float64 {
	n, ok := r.field(rec, key)
	if !ok {
		return 0
	}
	want := fmt.Sprintf("a plain number from %s to %s", plainNumber(low), plainNumber(high))
	if n.Kind != yaml.ScalarNode || quoted(n) || len(n.Value) > 24 || !decimal.MatchString(n.Value) {
		found := kindWord(n)
		if n.Kind == yaml.ScalarNode && quoted(n) && decimal.MatchString(n.Value) {
			found += " in quotes"
		}
		r.fault(n, rec.rule, key, found, want)
		return 0
	}
	value, err := strconv.ParseFloat(n.Value, 64)
	if err != nil || math.IsNaN(value) || value < low || value > high {
		r.fault(n, rec.rule, key, n.Value, want)
		return 0
	}
	return value
}

// items reads a list.
func (r *reader) items(rec record, key string) []*yaml.Node {
	n := rec.fields[key]
	switch {
	case n == nil:
		return nil
	case n.Kind != yaml.SequenceNode || len(n.Content) == 0:
		r.fault(n, rec.rule, key, kindWord(n), "a list with at least one entry")
		return nil
	case len(n.Content) > maxEntries:
		r.fault(n, rec.rule, key, fmt.Sprintf("%d entries", len(n.Content)), fmt.Sprintf("at most %d", maxEntries))
		return nil
	}
	return n.Content
}

// quoted reports whether a scalar is safe from YAML's own meanings: in quotes
// or a block.
func quoted(n *yaml.Node) bool {
	return n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) != 0
}

// kindWord says what a node is, in the words of an error.
func kindWord(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "a mapping"
	case yaml.SequenceNode:
		if len(n.Content) == 0 {
			return "an empty list"
		}
		return "a list"
	}
	if n.Value == "" || n.Tag == "!!null" {
		return "nothing"
	}
	return quantity.Quoted(n.Value)
}

// plainNumber writes a limit without an exponent.
func plainNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
