package answers

import (
	"embed"
	"strings"
)

// Sample is an invented boat that comes with the program.
type Sample struct {
	Name    string // of one lower-case word
	Summary string // one line
	Text    string // a complete answers file
}

//go:embed samples/*.yaml
var sampleFiles embed.FS

// Samples lists the invented boats, of several climates and sizes.
func Samples() []Sample {
	list := []Sample{
		{Name: "dunlin", Summary: "26 ft sloop on the coast of Maine, 60 nights a year, US units"},
		{Name: "kittiwake", Summary: "9.5 m sloop among the Cyclades, 120 nights a year, metric"},
		{Name: "sandpiper", Summary: "22 ft sloop on the Chesapeake, a dozen nights a year, US units"},
		{Name: "saltmeadow", Summary: "36 ft ketch in the Windward Islands, lived on all year, US units"},
		{Name: "turnstone", Summary: "7.5 m sloop on the west coast of Scotland, 28 nights a year, metric"},
	}
	for i := range list {
		// The files are embedded beside this list; a test reads each.
		text, _ := sampleFiles.ReadFile("samples/" + list[i].Name + ".yaml")
		list[i].Text = string(text)
	}
	return list
}

// SampleNamed finds a sample by its name, in capitals or not; ok is false when
// there is none.
func SampleNamed(name string) (sample Sample, ok bool) {
	for _, s := range Samples() {
		if strings.EqualFold(s.Name, strings.TrimSpace(name)) {
			return s, true
		}
	}
	return Sample{}, false
}
