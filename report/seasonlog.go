package report

import (
	"strings"

	"coldreckon/economics/quantity"
	"coldreckon/report/forms"
	"coldreckon/report/layout"
)

// seasonRows is how many lines a page of the season's log has.
const seasonRows = 26

// seasonHeads are the columns of the season's log, in units of a system. The
// log's reader knows them by these names; it leaves nights and sun alone.
func seasonHeads(sys quantity.System) []string {
	if sys == quantity.US {
		return []string{"Date", "Nights", "Ice lb", "Left lb", "Ah drawn", "Box °F", "Cabin °F", "Sun"}
	}
	return []string{"Date", "Nights", "Ice kg", "Left kg", "Ah drawn", "Box °C", "Cabin °C", "Sun"}
}

// SeasonLogCSV is the heading line of a season's log to be kept in a file.
func SeasonLogCSV(sys quantity.System) string { return strings.Join(seasonHeads(sys), ",") + "\n" }

// SeasonLog is a page to keep a season's log on by hand.
func SeasonLog(sys quantity.System, version string) layout.Document {
	d := layout.Document{Title: "A season's log", Subject: "What to note of box, ice and charge", Foot: "coldreckon " + version}
	d.Part(layout.Heading{Level: 0, Text: d.Title})
	d.Add(layout.Para{Text: "One line each time ice goes in, or once a day while a unit runs, always at the same hour. Ice: weight put in. Left: weight found before that. " +
		"Ah drawn: what the meter has counted in all. Box and cabin: read before the lid has been open long. Sun: clear, half or cloud. Leave empty what was not read."})
	grid := forms.Grid{Heads: seasonHeads(sys), Rows: make([]string, seasonRows)}
	d.Add(grid.Block(), layout.Para{Style: layout.Small, Text: "Typed into a file with these headings, 'coldreckon learn' reads it back and says what changed."})
	return d
}
