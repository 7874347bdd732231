package wizard

import (
	"regexp"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// historyKey is the answer that is put together from what is remembered of a
// load of ice.
const historyKey = "evidence.ice_history"

// history asks how long ice lasts in the box, in one sentence, and gives the
// text of the record.
func (t *conversation) history(row questions.Row, why string) (string, error) {
	boat := t.File.Told()
	example := "20 lb, two days in July"
	if boat.Units == quantity.Metric {
		example = "10 kg, two days in July"
	}
	q := Question{Why: why, Text: t.place(row.Key) + row.Ask + " Such as: " + example + ".", Help: row.Help, Enter: "if you don't remember"}
	text, err := t.typed(row, q, func(text string) error {
		record, missing := remembered(text, &boat)
		if missing != "" {
			return refusal("Please say " + missing + " too, such as: " + example + ".")
		}
		return t.refuse(row.Key, record)
	})
	if err != nil || text == "" || questions.Unsure(text) {
		return text, err
	}
	record, _ := remembered(text, &boat)
	return record, nil
}

var (
	aMass  = regexp.MustCompile(`(?i)(\d[\d.,/ ]*)\s*(lbs?|pounds?|kg|kilos?|kilograms?)\b`)
	bags   = regexp.MustCompile(`(?i)\b(\d+|an?|one|two|three|four)?\s*(?:bags?|blocks?)\b`)
	aTime  = regexp.MustCompile(`(?i)(\d[\d.,/ ]*|\b(?:an?|one|two|three|four|five|half a)\b)\s*(hours?|hrs?|h|days?|d|nights?|weeks?)\b(\s+and\s+a\s+half)?`)
	months = regexp.MustCompile(`(?i)\b(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\b`)
)

// remembered turns what an owner says of a load of ice ("two bags last a day and
// a half in July") into the text of a record, or says what is missing. A month
// that is not said is the warmest of the sailing season.
func remembered(text string, boat *economics.Boat) (record, missing string) {
	mass, unit, bag := "", "lb", 10*quantity.Pound
	if boat.Units == quantity.Metric {
		unit, bag = "kg", 2
	}
	if boat.Ice.UnitSize > 0 {
		bag = boat.Ice.UnitSize
	}
	first, _, _ := strings.Cut(text, " ")
	first = strings.TrimRight(first, ",")
	_, err := quantity.ParseNumber(first)
	if m := aMass.FindStringSubmatch(text); m != nil {
		mass = strings.TrimSpace(m[1]) + " " + m[2]
	} else if m := bags.FindStringSubmatch(text); m != nil {
		count, ok := questions.Count(m[1])
		if !ok { // "bags last a day"
			count = 1
		}
		mass = quantity.FormatMass(bag*quantity.Kilogram(count), boat.Units)
	} else if words := strings.Fields(text); err == nil && len(words) > 1 && !aTime.MatchString(strings.Join(words[:2], " ")) {
		mass = first + " " + unit
	}
	if mass == "" {
		return "", "how much ice it was"
	}
	m := aTime.FindStringSubmatch(text)
	if m == nil {
		return "", "how long it lasted"
	}
	hours, ok := questions.Count(m[1])
	if !ok {
		return "", "how long it lasted"
	}
	if m[3] != "" {
		hours += 0.5
	}
	switch strings.ToLower(m[2])[0] {
	case 'd', 'n':
		hours *= 24
	case 'w':
		hours *= 24 * 7
	}
	month := "july"
	if ground, err := boat.Ground(); err == nil && ground.LatDeg < 0 {
		month = "january"
	}
	if m := months.FindStringSubmatch(text); m != nil {
		month = strings.ToLower(m[1])
	}
	return "ice: " + mass + "; hours: " + quantity.FormatNumber(hours) + "; month: " + month + "; in_use: yes", ""
}
