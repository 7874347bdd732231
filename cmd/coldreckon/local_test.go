package main

import (
	"bytes"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics/quantity"
)

// Owners in US units read American words, all others British ones.
func TestEverybodyReadsTheirOwnWords(t *testing.T) {
	for _, run := range []struct {
		spelling int // of quantity.Spellings that must not be read
		args     string
	}{
		{0, "report sample:sandpiper --full --format text --futures 20"},
		{0, "report sample:sandpiper --full --format text --futures 20 --set safety.fuel_vapour_space=yes --set safety.lithium=yes --set food.dry_premium=staples"},
		{0, "ailing sample:sandpiper --set box.fitted_unit=dead --format text --futures 20"},
		{0, "questions --units us"},
		{0, "questions --units us --blank --format text"},
		{0, "handout chesapeake-bay --units us --format text"},
		{0, "boxtest --units us --format text"},
		{1, "report sample:turnstone --full --format text --futures 20 --set safety.fuel_vapour_space=yes"},
		{1, "ailing sample:turnstone --set box.fitted_unit=dead --format text --futures 20"},
		{1, "questions --units metric"},
		{1, "handout chesapeake-bay --units metric --format text"},
		{1, "rules show"},
	} {
		var said, wrong bytes.Buffer
		args := strings.Fields(run.args)
		if strings.Contains(run.args, "sample:") && !longRun() {
			args = append(args, fewNights...)
		}
		if code := Main(args, func(string) string { return "" }, strings.NewReader(""), &said, io.Writer(&wrong)); code != 0 {
			t.Errorf("%s: exit %d: %s", run.args, code, wrong.String())
		}
		text := strings.Join(strings.Fields(said.String()), " ")
		for _, s := range quantity.Spellings {
			if slices.Contains([]string{"can", "cans", "meter", "spoiled"}, s[1]) { // British in another sense
				s[1] = "gasoline"
			}
			word := regexp.MustCompile(`(?i)[^a-z_."]` + s[run.spelling] + `[^a-z_"]`)
			for _, at := range word.FindAllStringIndex(text, 2) {
				t.Errorf("%s: %q", run.args, text[max(0, at[0]-30):min(len(text), at[1]+20)])
			}
		}
	}
}
