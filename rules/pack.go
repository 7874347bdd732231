package rules

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"slices"

	"coldreckon/economics"
	"coldreckon/rules/strict"
)

// Grade tells how grave a caution is.
type Grade string

// The grades, from the gravest.
const (
	Stop       Grade = "stop"    // the option cannot be called suitable until it is cleared
	Careful    Grade = "caution" // always printed
	WorthANote Grade = "note"    // printed where there is room
)

// grades lists them in printing order.
var grades = []Grade{Stop, Careful, WorthANote}

// Caution is a warning and the facts under which it is printed.
type Caution struct {
	ID      string
	Grade   Grade
	Options []economics.OptionID // which it can concern; empty means all
	When    economics.Condition
	Text    string // plain words for the owner, without places for facts
	Source  string // where the advice is from
	// Of the cautions with one Group that hold for an option, only the one of
	// the highest Rank, 1 to 9, is printed. Without a group Rank is 0.
	Group string
	Rank  int
}

// concerns reports whether the caution can fire for an option.
func (c Caution) concerns(option economics.OptionID) bool {
	return len(c.Options) == 0 || slices.Contains(c.Options, option)
}

// Pack is everything read from rule files.
type Pack struct {
	Book     economics.Book
	Cautions []Caution
	Guidance string // printed in every report: what kind of advice it is; "" when the file has none
	examples []example
}

//go:embed packs/*.yaml
var embedded embed.FS

// packNames lists the embedded files in the order they are read.
var packNames = []string{"criteria.yaml", "cautions.yaml", "prices.yaml"}

// Load reads the embedded criteria, cautions and prices. An error is a strict.Faults;
// in a tested build there is none.
func Load() (Pack, error) {
	var pack Pack
	var faults strict.Faults
	hash := sha256.New()
	for _, name := range packNames {
		data, err := embedded.ReadFile("packs/" + name)
		if err != nil {
			return Pack{}, err
		}
		hash.Write(data)
		r, kind := open(name, data, kindCriteria, kindCautions, kindPrices)
		pack.add(r, kind)
		faults = append(faults, r.Faults()...)
	}
	pack.Book.Identity = shortHash(hash.Sum(nil))
	if err := faults.OrNil(); err != nil {
		return Pack{}, err
	}
	return pack, nil
}

// Read reads the text of one rule file, whose name stands in its faults:
// criteria, cautions or prices become a pack of their own; own prices are laid
// over the embedded book. The error is a strict.Faults.
func Read(file string, data []byte) (Pack, error) {
	r, kind := open(file, data, kindCriteria, kindCautions, kindPrices, kindOwnPrices)
	if kind == kindOwnPrices {
		base, err := Load()
		if err != nil {
			return Pack{}, err
		}
		return base.overlay(r, data)
	}
	var pack Pack
	pack.add(r, kind)
	if err := r.Faults().OrNil(); err != nil {
		return Pack{}, err
	}
	sum := sha256.Sum256(data)
	pack.Book.Identity = shortHash(sum[:])
	return pack, nil
}

// shortHash gives the first 12 hex digits of a hash, enough to tell two books
// apart on paper.
func shortHash(sum []byte) string { return hex.EncodeToString(sum)[:12] }
