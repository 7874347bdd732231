package questions

import (
	"regexp"
	"strings"

	"coldreckon/economics/quantity"
)

// The keys that a sentence about the cruising pattern may answer.
const (
	NightsKey = "cruising.nights"
	TripKey   = "cruising.trip_nights"
	ShopKey   = "cruising.shop_every_days"
	ShoreKey  = "cruising.shore_power_share"
)

// Telling is the text that answers one key.
type Telling struct{ Key, Text string }

var (
	clauseEnd = regexp.MustCompile(`(?i)\s*[;.]\s+|\s*[;]\s*|\s*,\s*|\s+(?:and|but)\s+(?:we\s+|i\s+)?((?:shop|buy|trips?|plug|never|always|on shore|in (?:a )?marina|half|most|a third|a quarter)\b)`)
	ofShop    = regexp.MustCompile(`(?i)\b(?:shop|shops|shopping|stores?|provision\w*|buy food|groceries)\b`)
	ofTrip    = regexp.MustCompile(`(?i)\btrips?\b|\bat a time\b|\bcruises? of\b`)
	tripOf    = regexp.MustCompile(`(?i)\btrips? of (\d[^,;]*)$`)
	ofShore   = regexp.MustCompile(`(?i)\bplug\w*\b|\bshore ?power\b|\bmarinas?\b|\bdockside\b`)
	aSpan     = regexp.MustCompile(`(?i)(\w[\w.]*(?:\s*(?:to|-|–)\s*\w[\w.]*)?)\s*(nights?|days?|weeks?|fortnights?)\b`)
	everyNth  = regexp.MustCompile(`(?i)\bevery\s+(\w+)(?:\s+(days?|weeks?))?`)
	shoreFill = regexp.MustCompile(`(?i)\b(?:we are|we're|i am|we|plug\w*|in|on|at|a|the|our|of|shore ?power|marinas?|dockside|nights?|time|days?)\b`)
)

var ordinals = map[string]string{"day": "1", "other": "2", "second": "2", "third": "3", "fourth": "4", "fifth": "5", "sixth": "6", "seventh": "7", "tenth": "10", "week": "7", "fortnight": "14"}

// Pattern takes a sentence about a cruising year apart, such as "weekends in
// summer and all of August; we shop every third day; half the nights in
// marinas". What it cannot place is taken to tell the nights.
func Pattern(text string) []Telling {
	var nights []string
	told := map[string]string{}
	for _, clause := range clauses(text) {
		switch {
		case ofShop.MatchString(clause):
			told[ShopKey] = shopEvery(clause)
		case ofShore.MatchString(clause):
			told[ShoreKey] = shoreShare(clause)
		case ofTrip.MatchString(clause) && aSpan.MatchString(clause):
			m := aSpan.FindStringSubmatch(clause)
			told[TripKey] = inDays(m[1], m[2])
		case tripOf.MatchString(clause):
			told[TripKey] = tripOf.FindStringSubmatch(clause)[1]
		default:
			nights = append(nights, clause)
		}
	}
	var out []Telling
	if len(nights) > 0 {
		out = append(out, Telling{NightsKey, strings.Join(nights, ", ")})
	}
	for _, key := range []string{TripKey, ShopKey, ShoreKey} {
		if text := told[key]; text != "" {
			out = append(out, Telling{key, text})
		}
	}
	return out
}

// clauses splits a sentence, keeping the word that begins a clause after "and".
func clauses(text string) []string {
	var parts []string
	at := 0
	for _, m := range clauseEnd.FindAllStringSubmatchIndex(text, -1) {
		parts = append(parts, text[at:m[0]])
		at = m[1]
		if m[2] >= 0 {
			at = m[2]
		}
	}
	var out []string
	for _, p := range append(parts, text[at:]) {
		if p = strings.Trim(p, " .;,"); p != "" {
			out = append(out, p)
		}
	}
	return out
}

// shopEvery gives the days between shops that a clause tells, as text.
func shopEvery(clause string) string {
	words := loose(clause)
	switch {
	case strings.Contains(words, "daily") || strings.Contains(words, "every day"):
		return "1"
	case strings.Contains(words, "twice a week"):
		return "3.5"
	case strings.Contains(words, "weekly") || strings.Contains(words, "once a week"):
		return "7"
	}
	if m := everyNth.FindStringSubmatch(words); m != nil {
		if n := ordinals[m[1]]; n != "" {
			return n
		}
		return inDays(m[1], m[2])
	}
	if m := aSpan.FindStringSubmatch(clause); m != nil {
		return inDays(m[1], m[2])
	}
	return clause
}

// inDays gives a count of days or weeks as days, as text.
func inDays(figure, unit string) string {
	days := 1.0
	switch unit = strings.ToLower(unit); {
	case strings.HasPrefix(unit, "week"):
		days = 7
	case strings.HasPrefix(unit, "fortnight"):
		days = 14
	}
	n, ok := Count(figure)
	if !ok {
		return figure
	}
	return quantity.FormatNumber(n * days)
}

// shoreShare gives the share of nights on shore power that a clause tells.
func shoreShare(clause string) string {
	words := loose(clause)
	if strings.HasPrefix(words, "no ") || strings.Contains(words, "never") || strings.Contains(words, "without") {
		return "none"
	}
	for _, share := range []string{"half", "a third", "a quarter", "two thirds", "three quarters", "most", "some", "always"} {
		if strings.Contains(words, share) {
			return share
		}
	}
	if left := strings.Trim(strings.Join(strings.Fields(shoreFill.ReplaceAllString(clause, " ")), " "), " ,"); left != "" {
		return left
	}
	return "always"
}
