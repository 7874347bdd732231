package rules

import (
	"cmp"
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
		top := record{node: root, fields: map[string]*yaml.Node{"kind": valueOf(root, "kind")}}
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

// entries reads the list of a file, calling each for every record of it, which may
// hold the known keys and no others.
func (r *reader) entries(top record, key string, known []string, each func(record)) {
	if _, ok := r.field(top, key); !ok {
		return
	}
	for _, n := range r.items(top, key) {
		if rec, ok := r.mapping(n, "", known...); ok {
			each(rec)
		}
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
	r.entries(top, "criteria", []string{"id", "kind", "options", "fails", "reason", "short", "examples"}, func(rec record) {
		c := economics.Criterion{
			ID:      r.id(rec, seen),
			Kind:    economics.CriterionKind(r.oneOf(rec, "kind", criterionKinds...)),
			Options: r.options(rec),
			Reason:  r.text(rec, "reason"),
		}
		r.places(rec, "reason")
		c.Short = r.textIfAny(rec, "short")
		r.places(rec, "short")
		if fails := r.expression(rec, "fails", economics.Truth); fails != nil {
			c.Fails, c.Standing = fails, standing(fails.facts)
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
	p.Guidance = cmp.Or(r.textIfAny(top, "guidance"), p.Guidance)
	seen := map[string]bool{}
	r.entries(top, "cautions", []string{"id", "grade", "options", "group", "rank", "when", "text", "source", "examples"}, func(rec record) {
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
		if when := r.expression(rec, "when", economics.Truth); when != nil {
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
	var names []string
	for _, o := range economics.Options {
		names = append(names, string(o))
	}
	var options []economics.OptionID
	for _, name := range r.someOf(rec, "options", names...) {
		options = append(options, economics.OptionID(name))
	}
	return options
}

// expression reads an expression of a kind, which must be in quotes or a block:
// unquoted, YAML would cut it at # and swallow a leading !. It is nil when there is
// none that can be read.
func (r *reader) expression(rec record, key string, kind economics.Kind) *expression {
	n, ok := r.field(rec, key)
	if !ok {
		return nil
	}
	if n.Kind != yaml.ScalarNode || n.Tag == "!!null" || !strict.Quoted(n) {
		r.fault(n, rec.rule, key, strict.Describe(n)+", not in quotes", "the expression in quotes or as a block (|)")
		return nil
	}
	e, err := compile(n.Value, kind)
	if err != nil {
		var wrong strict.Fault
		if !errors.As(err, &wrong) {
			wrong = strict.Found(err.Error(), "an expression over the facts")
		}
		r.Fault(n, place(rec.rule, key), wrong.Wrong, "", "")
		return nil
	}
	return e
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
