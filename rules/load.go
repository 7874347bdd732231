package rules

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"gopkg.in/yaml.v3"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/rules/strict"
)

// The kinds of rule file, told by the key kind.
const (
	kindCriteria  = "criteria"
	kindCautions  = "cautions"
	kindPrices    = "prices"
	kindOwnPrices = "own-prices" // laid over a book, see Pack.WithPrices
)

// open parses a file and finds which of the given kinds it is; "" when it is
// none, or cannot be read.
func open(file string, data []byte, kinds ...string) (r *reader, kind string) {
	r = &reader{strict.Read(file, data)}
	switch root := r.Root; {
	case root == nil && r.Count() == 0:
		r.fault(&yaml.Node{}, "", "", "an empty file", "a file that starts with kind:")
	case root == nil:
	case root.Kind != yaml.MappingNode:
		r.fault(root, "", "", strict.Describe(root), "a file that starts with kind:")
	default:
		top := record{node: root, fields: map[string]*yaml.Node{}}
		for i := 0; i+1 < len(root.Content); i += 2 {
			if root.Content[i].Value == "kind" {
				top.fields["kind"] = root.Content[i+1]
			}
		}
		kind = r.oneOf(top, "kind", kinds...)
	}
	return r, kind
}

// add reads a document of the given kind into the pack; faults stay with the
// reader.
func (p *Pack) add(r *reader, kind string) {
	switch kind {
	case kindCriteria:
		p.readCriteria(r)
	case kindCautions:
		p.readCautions(r)
	case kindPrices:
		p.readPrices(r)
	}
}

// entries reads the list of a file, calling each for every record of it.
func (r *reader) entries(top record, key string, each func(*yaml.Node)) {
	if _, ok := r.field(top, key); !ok {
		return
	}
	for _, n := range r.items(top, key) {
		each(n)
	}
}

// criterionKinds are the words for economics.CriterionKinds.
var criterionKinds = func() (words []string) {
	for _, k := range economics.CriterionKinds {
		words = append(words, string(k))
	}
	return words
}()

func (p *Pack) readCriteria(r *reader) {
	top, _ := r.mapping(r.Root, "", "kind", "criteria")
	seen := map[string]bool{}
	r.entries(top, "criteria", func(n *yaml.Node) {
		rec, ok := r.mapping(n, "", "id", "kind", "options", "fails", "reason", "short", "examples")
		if !ok {
			return
		}
		c := economics.Criterion{
			ID:      r.id(rec, seen),
			Kind:    economics.CriterionKind(r.oneOf(rec, "kind", criterionKinds...)),
			Options: r.options(rec),
			Reason:  r.text(rec, "reason"),
		}
		r.places(rec, "reason")
		if rec.fields["short"] != nil {
			c.Short = r.text(rec, "short")
			r.places(rec, "short")
		}
		fails, ok := r.condition(rec, "fails")
		if ok {
			c.Fails = fails
			p.readExamples(r, rec, fails, nil, fails.facts)
		}
		if len(c.Options) == 0 {
			c.Options = economics.Options[:]
		}
		p.Book.Criteria = append(p.Book.Criteria, c)
	})
}

func (p *Pack) readCautions(r *reader) {
	top, _ := r.mapping(r.Root, "", "kind", "guidance", "cautions")
	if top.fields["guidance"] != nil {
		p.Guidance = r.text(top, "guidance")
	}
	seen := map[string]bool{}
	r.entries(top, "cautions", func(n *yaml.Node) {
		rec, ok := r.mapping(n, "", "id", "grade", "options", "group", "rank", "when", "text", "source", "examples")
		if !ok {
			return
		}
		c := Caution{
			ID:      r.id(rec, seen),
			Grade:   Grade(r.oneOf(rec, "grade", string(Stop), string(Careful), string(WorthANote))),
			Options: r.options(rec),
			Text:    r.text(rec, "text"),
			Source:  r.text(rec, "source"),
		}
		if rec.fields["group"] != nil || rec.fields["rank"] != nil {
			c.Group = r.text(rec, "group")
			c.Rank = r.rank(rec)
		}
		if strings.ContainsAny(c.Text, "{}") {
			// One text stands for several options, whose facts differ.
			r.fault(rec.fields["text"], rec.rule, "text", "a brace", "a text without places for facts")
		}
		when, ok := r.condition(rec, "when")
		if ok {
			c.When = when
			p.readExamples(r, rec, when, nil, when.facts)
		}
		p.Cautions = append(p.Cautions, c)
	})
}

// rank reads a rank within a group.
func (r *reader) rank(rec record) int {
	rank := r.number(rec, "rank", 1, 9)
	if rank != math.Trunc(rank) {
		r.fault(rec.fields["rank"], rec.rule, "rank", plainNumber(rank), "a whole number")
	}
	return int(rank)
}

// options reads the options a rule concerns; nil means all.
func (r *reader) options(rec record) []economics.OptionID {
	var options []economics.OptionID
	for _, n := range r.items(rec, "options") {
		one := record{node: n, rule: rec.rule, fields: map[string]*yaml.Node{"options": n}}
		var names []string
		for _, o := range economics.Options {
			names = append(names, string(o))
		}
		if name := r.oneOf(one, "options", names...); name != "" {
			options = append(options, economics.OptionID(name))
		}
	}
	return options
}

// expressionText reads an expression, which must be in quotes or a block:
// unquoted, YAML would cut it at # and swallow a leading !.
func (r *reader) expressionText(rec record, key string) (string, bool) {
	n, ok := r.field(rec, key)
	if !ok {
		return "", false
	}
	if n.Kind != yaml.ScalarNode || n.Tag == "!!null" || !strict.Quoted(n) {
		r.fault(n, rec.rule, key, strict.Describe(n)+", not in quotes", "the expression in quotes or as a block (|)")
		return "", false
	}
	return n.Value, true
}

func (r *reader) condition(rec record, key string) (condition, bool) {
	text, ok := r.expressionText(rec, key)
	if !ok {
		return condition{}, false
	}
	c, err := compileCondition(text)
	return c, r.compiled(rec, key, err)
}

func (r *reader) amount(rec record, key string) (amount, bool) {
	text, ok := r.expressionText(rec, key)
	if !ok {
		return amount{}, false
	}
	a, err := compileAmount(text)
	return a, r.compiled(rec, key, err)
}

// compiled turns a compile error into a fault.
func (r *reader) compiled(rec record, key string, err error) bool {
	if err == nil {
		return true
	}
	var wrong strict.Fault
	if !errors.As(err, &wrong) {
		wrong.Found, wrong.Expected = err.Error(), "an expression over the facts"
	}
	r.fault(rec.fields[key], rec.rule, key, wrong.Found, wrong.Expected)
	return false
}

// places checks the {fact} places of a text.
func (r *reader) places(rec record, key string) {
	n := rec.fields[key]
	if n == nil {
		return
	}
	for _, piece := range splitPlaces(n.Value) {
		if piece.fact == "" {
			continue
		}
		if _, known := factNamed(piece.fact); !known {
			r.fault(n, rec.rule, key, "the place {"+clip(piece.fact)+"}", "the name of a fact"+didYouMean(piece.fact, factNames()))
		}
	}
}

// priceRange reads the three marks of a price.
func (r *reader) priceRange(rec record) quantity.Range {
	before := r.Count()
	const most = 1e6
	v := quantity.Range{
		Low:     r.number(rec, "low", 0, most),
		Typical: r.number(rec, "typical", 0, most),
		High:    r.number(rec, "high", 0, most),
	}
	if r.Count() == before && !(v.Low <= v.Typical && v.Typical <= v.High) {
		r.fault(rec.node, rec.rule, "low", fmt.Sprintf("low %v, typical %v, high %v", v.Low, v.Typical, v.High), "low <= typical <= high")
	}
	return v
}
