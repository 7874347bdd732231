package questions

import (
	"cmp"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"coldreckon/economics/quantity"
)

var monthNames = [12]string{"january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december"}

// MonthName gives "January" for 1 and so on to 12; other numbers are the caller's fault.
func MonthName(month int) string { return time.Month(month).String() }

// DaysIn are the days of the months of a year of 365 days, January first.
var DaysIn = [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// parseMonth reads "jan", "January", "sept." or "1".
func parseMonth(text string) (int, error) {
	word := loose(text)
	if n, err := strconv.Atoi(word); err == nil && n >= 1 && n <= 12 {
		return n, nil
	}
	for i, name := range monthNames {
		if len(word) >= 3 && strings.HasPrefix(name, word) || word == "sept" && i == 8 {
			return i + 1, nil
		}
	}
	e := &quantity.Error{Wrong: quantity.Quoted(text) + " is no month", Want: "a month, such as june, jun or 6"}
	for _, name := range monthNames {
		if len(word) > 2 && quantity.Distance(name, word) <= 2 {
			e.Hint = "did you mean " + name + "?"
			break
		}
	}
	return 0, e
}

// monthsNamed reads the month, or the span of months, that a key or a phrase
// names: "jun", "jun-aug", "november to march", "all".
func monthsNamed(text string) ([]int, error) {
	word := strings.ToLower(strings.TrimSpace(text))
	if word == "all" || word == "every month" {
		return []int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}, nil
	}
	for _, joint := range []string{" to ", "–", "-", " through "} {
		a, b, ok := strings.Cut(word, joint)
		if !ok {
			continue
		}
		first, err := parseMonth(a)
		if err != nil {
			return nil, err
		}
		last, err := parseMonth(b)
		if err != nil {
			return nil, err
		}
		months := []int{first}
		for m := first; m != last; {
			m = m%12 + 1
			months = append(months, m)
		}
		return months, nil
	}
	if a, b, two := strings.Cut(word, " "); two && b[:1] > "9" { // "may-sept", loosened
		if _, err := parseMonth(a); err == nil {
			return monthsNamed(a + " to " + b)
		}
	}
	m, err := parseMonth(word)
	if err != nil {
		return nil, err
	}
	return []int{m}, nil
}

const nightsWanted = "nights by month, such as june: 8, or a phrase such as weekends in summer"

// waters tell in which months people sail; the zero value is the temperate north.
type waters struct {
	south    bool
	tropical bool // sailed all year, most in winter
}

// tropicsDeg is the latitude under which boats are sailed all year.
// Engineering judgement, from memory.
const tropicsDeg = 28

// phrase is a short way of telling the nights of a year.
type phrase struct {
	match  *regexp.Regexp
	nights func(m []string, where waters) ([12]float64, bool)
}

// Count reads a count before a noun: "2", "two", "a", "half a".
func Count(words string) (n float64, ok bool) {
	switch words = loose(words); words {
	case "a", "an":
		return 1, true
	case "half a":
		return 0.5, true
	}
	n, err := quantity.ParseNumber(words)
	return n, err == nil
}

const inMonths = `(?: (?:in|every|each) (?:the )?(.+))?$`

// goes is how people begin to tell of their nights.
var goes = regexp.MustCompile(`^(?:we|i) (?:are |usually |mostly |often |normally )*(?:go(?: out| sailing| away)?|sail|cruise|out|get out|spend|sleep|stay|aboard)(?: aboard)?(?: for)? `)

var phrases = []phrase{
	{regexp.MustCompile(`^(?:i |we )?liv(?:e|ing) ?aboard$|^liveaboard$|^all year$|^full time$`), func([]string, waters) ([12]float64, bool) {
		return DaysIn, true
	}},
	{regexp.MustCompile(`^(?:the )?winter in the sun$|^winters? south$`), func(_ []string, where waters) ([12]float64, bool) {
		return whole(season("cruising winter", where)), true
	}},
	{regexp.MustCompile(`^(?:about |around |some )?(\d+|[a-z]+) (long )?weekends(?: (?:a|per) year)?` + inMonths), func(m []string, where waters) ([12]float64, bool) {
		n, ok := Count(m[1])
		if n *= 2; m[2] != "" {
			n *= 1.5
		}
		if m[3] == "" {
			return inSeason(n, where), ok
		}
		months, known := monthsOrSeason(m[3], where)
		spread, fits := shared(n, months)
		return spread, ok && known && fits
	}},
	{regexp.MustCompile(`^(?:on |at )?(?:(?:every|each|all|the|some|most) )?(long )?weekends?(?:(?: in| from)? (?:the )?(.+))?$`), weekends},
	{regexp.MustCompile(`^(?:on |at )?(?:(?:every|each|all) )?()(.+) weekends$`), weekends},
	{regexp.MustCompile(`^(?:about |around |some )?(\d+)(?: nights?| days?)?(?: (?:a|in a|per) year| altogether| in all| all told)?$`), func(m []string, where waters) ([12]float64, bool) {
		n, err := strconv.ParseFloat(m[1], 64)
		return inSeason(n, where), err == nil && n <= 1000
	}},
	{regexp.MustCompile(`^(?:(?:all|the whole|whole|every night)(?: of| in)? )?(.+)$`), func(m []string, where waters) ([12]float64, bool) {
		months, ok := monthsOrSeason(m[1], where)
		return whole(months), ok
	}},
	{regexp.MustCompile(`^(\d+|[a-z]+) (week|day|night|month)s?(?: (?:holidays?|vacation|cruise|trip|away))?` + inMonths), func(m []string, where waters) ([12]float64, bool) {
		n, ok := Count(m[1])
		n *= map[string]float64{"week": 7, "day": 1, "night": 1, "month": 30}[m[2]]
		if m[3] == "" {
			m[3] = "holiday"
		}
		months, known := monthsOrSeason(m[3], where)
		spread, fits := poured(n, months)
		return spread, ok && known && fits
	}},
}

// weekends takes whether they are long, and the months: where none are named, those
// in which people sail.
func weekends(m []string, where waters) ([12]float64, bool) {
	if m[2] == "" {
		m[2] = "warm half"
		if where.tropical {
			m[2] = "all"
		}
	}
	months, ok := monthsOrSeason(m[2], where)
	nights := 8.0
	if m[1] != "" {
		nights = 12
	}
	return each(nights, months), ok
}

// inSeason puts a number of nights where most people sail: in the four months
// of summer, where they do not fit in the seven warm months, and then all year; in
// the tropics in the cruising winter first. What no year holds counts as all of it.
func inSeason(n float64, where waters) [12]float64 {
	names := []string{"summer", "warm half"}
	if where.tropical {
		names = []string{"cruising winter"}
	}
	for _, name := range names {
		if spread, fits := shared(n, season(name, where)); fits {
			return spread
		}
	}
	if spread, fits := shared(n, []int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}); fits {
		return spread
	}
	return DaysIn
}

// season gives the months of a season, months counted from 1. "summer" here
// is the sailing summer, June to September in the north.
func season(name string, where waters) []int {
	months := map[string][]int{
		"summer": {6, 7, 8, 9}, "winter": {12, 1, 2}, "spring": {3, 4, 5}, "autumn": {9, 10, 11}, "fall": {9, 10, 11},
		"warm half":       {4, 5, 6, 7, 8, 9, 10},
		"cruising winter": {11, 12, 1, 2, 3, 4},
		// The month of the long holiday, and where it spills.
		"holiday": {7, 8, 6, 9},
	}[name]
	if !where.south || months == nil {
		return months
	}
	turned := make([]int, len(months))
	for i, m := range months {
		turned[i] = (m+5)%12 + 1
	}
	return turned
}

// monthsOrSeason reads the name of a season, or months as monthsNamed does.
func monthsOrSeason(name string, where waters) ([]int, bool) {
	name = strings.TrimPrefix(name, "the ")
	if s := season(name, where); s != nil {
		return s, true
	}
	months, err := monthsNamed(name)
	return months, err == nil
}

// each puts n nights into each of some months.
func each(n float64, months []int) (nights [12]float64) {
	for _, m := range months {
		nights[m-1] = n
	}
	return nights
}

// whole puts every night of some months.
func whole(months []int) (nights [12]float64) {
	for _, m := range months {
		nights[m-1] = DaysIn[m-1]
	}
	return nights
}

// poured puts n nights into months in their order: a stay of up to two weeks
// goes into the first, more is spread evenly. It fails when they cannot hold n.
func poured(n float64, months []int) (nights [12]float64, fits bool) {
	if len(months) == 0 || n < 0 {
		return nights, false
	}
	if n <= 14 {
		nights[months[0]-1] = n
		return nights, true
	}
	return shared(n, months)
}

// shared puts n nights into months as evenly as whole nights allow. It fails
// when they cannot hold n.
func shared(n float64, months []int) (nights [12]float64, fits bool) {
	room := slices.Clone(months)
	slices.SortFunc(room, func(a, b int) int { return cmp.Compare(DaysIn[a-1], DaysIn[b-1]) })
	for i, m := range room { // shortest months first, so that what they cannot hold goes on
		share := math.Ceil(n / float64(len(room)-i))
		nights[m-1] = math.Min(share, DaysIn[m-1])
		n -= nights[m-1]
	}
	return nights, n <= 0
}

var (
	afterPlus = regexp.MustCompile(`(?i)\s*(?:,?\s*\+|,?\s*\bplus\b)\s*`)
	between   = regexp.MustCompile(`(?i)\s*(?:[,;&]|\band\b)\s*`)
)

// nightsOf reads the nights of a year from a phrase ("weekends in summer and
// two weeks' holiday") or from a list ("jun 8, jul-aug 12").
func nightsOf(text string, where waters) ([12]float64, error) {
	var total [12]float64
	fail := func(part string) ([12]float64, error) {
		return total, quantity.Unclear(part, nightsWanted)
	}
	if len(text) > 300 {
		return fail(text)
	}
	parts := between.Split(afterPlus.ReplaceAllString(strings.TrimSpace(text), ", + "), -1)
	stem := "" // "weekends in ", for "weekends in july and august"
	var listed [12]bool
	for _, part := range parts {
		if rest, anew := strings.CutPrefix(part, "+"); anew {
			part, stem = strings.TrimSpace(rest), ""
		}
		words := goes.ReplaceAllString(loose(part), "")
		if _, err := monthsNamed(words); err == nil && stem != "" {
			words = stem + words
		}
		if i := strings.Index(words, " in "); i >= 0 {
			stem = words[:i] + " in "
		}
		nights, ok := onePhrase(words, where)
		if !ok {
			var months []int
			if nights, months, ok = oneListing(part); !ok {
				return fail(part)
			}
			for _, m := range months {
				if listed[m-1] {
					return total, &quantity.Error{Wrong: MonthName(m) + " stands there twice", Want: "each month once"}
				}
				listed[m-1] = true
			}
		}
		for i := range total {
			total[i] = math.Min(total[i]+nights[i], math.Max(DaysIn[i], nights[i]))
		}
	}
	return total, nil
}

func onePhrase(words string, where waters) ([12]float64, bool) {
	for _, p := range phrases {
		if m := p.match.FindStringSubmatch(words); m != nil {
			if nights, ok := p.nights(m, where); ok {
				return nights, true
			}
		}
	}
	return [12]float64{}, false
}

var listing = regexp.MustCompile(`(?i)^([a-z.]+(?:\s*(?:-|–|to)\s*[a-z.]+)?)\s*[:=\s]\s*([\d.*+/]+)\s*(?:nights?)?$`)

// oneListing reads "jun 8" or "jul-aug: 12".
func oneListing(part string) (nights [12]float64, months []int, ok bool) {
	m := listing.FindStringSubmatch(strings.TrimSpace(part))
	if m == nil {
		return nights, nil, false
	}
	months, err := monthsNamed(m[1])
	if err != nil {
		return nights, nil, false
	}
	n, err := quantity.ParseNumber(m[2])
	if err != nil {
		return nights, nil, false
	}
	return each(n, months), months, true
}

// formatNights prints the nights of a year: "60 nights (Jun 10, Jul 25, Aug 25)".
func formatNights(nights [12]float64) string {
	var parts []string
	total := 0.0
	for i, n := range nights {
		if n > 0 {
			parts = append(parts, MonthName(i + 1)[:3]+" "+quantity.FormatNumber(n))
			total += n
		}
	}
	switch {
	case total == 0:
		return "no nights"
	case nights == DaysIn:
		return "all year"
	}
	return quantity.FormatNumber(total) + " nights (" + strings.Join(parts, ", ") + ")"
}

// eased fills the months between those given along half a cosine, so that two
// months given, the coldest and the warmest, make a smooth year.
func eased(given map[int]float64) (year [12]float64) {
	months := slices.Sorted(maps.Keys(given))
	for i, a := range months {
		b := months[(i+1)%len(months)]
		gap := (b - a + 12) % 12
		if gap == 0 {
			gap = 12
		}
		for k := 0; k < gap; k++ {
			w := (1 - math.Cos(math.Pi*float64(k)/float64(gap))) / 2
			year[(a-1+k)%12] = given[a]*(1-w) + given[b]*w
		}
	}
	return year
}
