package rules

import (
	"strings"
	"testing"
)

// An owner's own prices that cannot be are refused with their place, what was
// found and what was expected; the book stays as it was.
func TestHostileOwnPrices(t *testing.T) {
	pack, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	const usual = "low: 1, typical: 2, high: 3}"
	for name, row := range map[string]struct {
		entry string
		says  []string
	}{
		"negative":         {"{id: ice_block, low: -1, typical: 2, high: 3}", []string{"low: found -1", "0 to 1000000"}},
		"not a number":     {"{id: ice_block, low: 1, typical: .nan, high: 3}", []string{`typical: found ".nan"`, "a plain number"}},
		"infinite":         {"{id: ice_block, low: 1, typical: 2, high: .inf}", []string{`high: found ".inf"`, "a plain number"}},
		"beyond a float":   {"{id: ice_block, low: 1, typical: 2, high: 1e400}", []string{`high: found "1e400"`, "a plain number"}},
		"too much":         {"{id: ice_block, low: 1, typical: 2, high: 12000000}", []string{"high: found 12000000", "0 to 1000000"}},
		"with a unit":      {"{id: ice_block, low: 1 L, typical: 2, high: 3}", []string{`low: found "1 L"`, "a plain number"}},
		"with a separator": {`{id: ice_block, low: 1, typical: 2, high: "12,000"}`, []string{`high: found "12,000"`, "a plain number"}},
		"out of order":     {"{id: ice_block, low: 3, typical: 2, high: 1}", []string{"low <= typical <= high"}},
		"misspelt":         {"{id: ice_blok, " + usual, []string{`did you mean "ice_block"?`}},
		"unknown key":      {"{id: ice_block, lo: 1, typical: 2, high: 3}", []string{`found the key "lo"`, "one of: id, unit, low"}},
		"twice":            {"{id: ice_block, " + usual + "\n  - {id: ice_block, " + usual, []string{"ice_block"}},
		"an alias":         {"&a {id: ice_block, " + usual + "\n  - *a", []string{"the anchor &a", "the alias *a"}},
		"deep":             {strings.Repeat("[", 500) + strings.Repeat("]", 500), nil},
		"a long id":        {"{id: " + strings.Repeat("i", 1<<18) + ", " + usual, nil},
		"a long figure":    {"{id: ice_block, low: 1, typical: 2, high: " + strings.Repeat("9", 1<<18) + "}", nil},
	} {
		changed, err := pack.WithPrices("own.yaml", []byte("kind: own-prices\nprices:\n  - "+row.entry+"\n"))
		if err == nil {
			t.Errorf("%s: accepted", name)
			continue
		}
		if !strings.HasPrefix(err.Error(), "own.yaml:") || len(err.Error()) > 2000 {
			t.Errorf("%s: %d bytes: %s", name, len(err.Error()), clip(err.Error()))
		}
		for _, words := range row.says {
			if !strings.Contains(err.Error(), words) {
				t.Errorf("%s: %q does not say %q", name, clip(err.Error()), words)
			}
		}
		if len(changed.Book.Prices) > 0 {
			t.Errorf("%s: a book comes back with the error", name)
		}
	}
}
