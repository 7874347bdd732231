package rules

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"

	"coldreckon/economics/quantity"
	"coldreckon/rules/strict"
)

// Limits on one rule file. The largest embedded file is under a quarter of each.
const (
	maxEntries = 500
	maxText    = 600
)

// reader turns one document into typed values and gathers every fault.
type reader struct{ *strict.Reader }

// fault notes a fault of a rule, "" outside any, and of a key in it, "" when the
// record itself is meant.
func (r *reader) fault(at *yaml.Node, rule, key, found, want string) {
	r.Fault(at, place(rule, key), strict.Found(found, want).Wrong, "", "")
}

// place names a rule and a key in it, either of them perhaps empty.
func place(rule, key string) string {
	if rule == "" || key == "" {
		return rule + key
	}
	return rule + ": " + key
}

// valueOf gives the value of a key in a mapping, nil where it has none.
func valueOf(n *yaml.Node, key string) *yaml.Node {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return n.Content[i+1]
		}
	}
	return nil
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
		r.fault(n, rule, "", strict.Describe(n), "the keys: "+strings.Join(known, ", "))
		return rec, false
	}
	if id := valueOf(n, "id"); id != nil && id.Value != "" && slices.Contains(known, "id") {
		rec.rule = clip(id.Value)
	}
	for i := 0; i+1 < len(n.Content) && !r.Full(); i += 2 {
		key := n.Content[i]
		if !slices.Contains(known, key.Value) {
			r.fault(key, rec.rule, "", "the key "+quantity.Quoted(key.Value), "one of: "+strings.Join(known, ", ")+didYouMean(key.Value, known))
			continue
		}
		rec.fields[key.Value] = n.Content[i+1]
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
		r.fault(n, rec.rule, key, strict.Describe(n), "a text")
	case !strict.Quoted(n) && n.LineComment != "":
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

// someOf reads a list of words of a fixed set, which may be left out.
func (r *reader) someOf(rec record, key string, set ...string) []string {
	var words []string
	for _, n := range r.items(rec, key) {
		one := record{node: n, rule: rec.rule, fields: map[string]*yaml.Node{key: n}}
		if word := r.oneOf(one, key, set...); word != "" {
			words = append(words, word)
		}
	}
	return words
}

// provenance reads how the figures of a record are known: "a" read in an
// official source, "b" read elsewhere, "c" from memory.
func (r *reader) provenance(rec record) string { return r.oneOf(rec, "grade", "a", "b", "c") }

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
	if n.Kind != yaml.ScalarNode || strict.Quoted(n) || len(n.Value) > 24 || !decimal.MatchString(n.Value) {
		found := strict.Describe(n)
		if n.Kind == yaml.ScalarNode && strict.Quoted(n) && decimal.MatchString(n.Value) {
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
		r.fault(n, rec.rule, key, strict.Describe(n), "a list with at least one entry")
		return nil
	case len(n.Content) > maxEntries:
		r.fault(n, rec.rule, key, fmt.Sprintf("%d entries", len(n.Content)), fmt.Sprintf("at most %d", maxEntries))
		return nil
	}
	return n.Content
}

// plainNumber writes a limit without an exponent.
func plainNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
