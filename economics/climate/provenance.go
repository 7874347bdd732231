package climate

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// archives are the open collections that figures were read from, by the
// letters before the first hyphen of a code. See data/SOURCES.md.
var archives = map[string]string{
	"TMY":      "US typical weather years",
	"TMY2":     "US typical weather years, 1961 to 1990",
	"TMY3":     "US typical weather years, 1973 to 2005",
	"CWEC2016": "Canadian typical weather years, 1998 to 2014",
	"SWERA":    "United Nations solar and wind survey",
	"SWEC":     "Spanish weather for building energy",
	"NIWA":     "New Zealand typical weather years",
	"IMGW":     "Polish typical weather years, 1971 to 2000",
	"MSI":      "Israeli typical weather years, 1978 to 1996",
	"ETMY":     "Egyptian typical weather years, 1980 to 2003",
	"CSWD":     "Chinese standard weather years",
	"IGDG":     "Italian weather collection, 1951 to 1970",
	"COADS":    "ship reports, 2-degree squares, before 1990",
	"WOA94":    "World Ocean Atlas 1994",
	"EK81":     "sea-surface heat budget from ships' cloud reports, 1981",
	"UKMO":     "UK Met Office station records, 1981 to 2010",
	"SAP2012":  "UK government table of the sun by region, 2012",
	"KENAK":    "climate tables of the Greek building directive, 2010",
	"KNMI":     "Dutch weather service, 1991 to 2020",
	"GFI":      "Geophysical Institute in Bergen, 2010 to 2022",
	"DTU":      "Technical University of Denmark, five years from 2015",
	"MSS":      "Singapore weather service, 1991 to 2020",
	"BOM":      "Australian Bureau of Meteorology, 2008 to 2017",
	"WIKI":     "weather services as an open encyclopaedia quotes them",
	"USAF":     "US Army airfields, 1941 to 1945",
	"GLSEA":    "Great Lakes surface analysis, 1995 to 2024",
	"COOPS":    "US tide stations, since 1994",
	"CBP":      "Chesapeake Bay Program, 1985 to 2016",
	"EPCHC":    "water samples of Hillsborough County, 2000 to 2023",
	"DFO":      "Canadian weather buoys, since 1992",
}

const readPrefix = "read: "

// Explain puts a provenance in plain words: the archives' names for codes,
// anything else unchanged.
func Explain(provenance string) string {
	codes, isRead := strings.CutPrefix(provenance, readPrefix)
	if !isRead {
		return provenance
	}
	var names []string
	for code := range strings.SplitSeq(codes, "+") {
		prefix, _, _ := strings.Cut(code, "-")
		if name := archives[prefix]; !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return "read in " + strings.Join(names, "; ")
}

// provenance reads "tmean=ORIGIN|tmax=ORIGIN|...", where an origin is memory
// or read:CODE+CODE.
func (r *row) provenance(field string) Provenance {
	fields := []string{"tmean", "tmax", "tmin", "sst", "ghi"}
	parts := strings.Split(r.cell(field), "|")
	if len(parts) != len(fields) {
		r.fault(field, "five origins joined by |, for "+strings.Join(fields, ", "))
		return Provenance{}
	}
	origins := make(map[string]string, len(fields))
	for i, part := range parts {
		origin, ok := strings.CutPrefix(part, fields[i]+"=")
		if !ok {
			r.fault(field, fmt.Sprintf("origin %d to be of %s", i+1, fields[i]))
			return Provenance{}
		}
		if codes, isRead := strings.CutPrefix(origin, "read:"); isRead {
			r.knownCodes(field, codes)
			origin = readPrefix + codes
		} else if origin != fromMemory {
			r.fault(field, fmt.Sprintf("memory or read:CODE for %s", fields[i]))
		}
		origins[fields[i]] = origin
	}
	if origins["tmax"] != origins["tmin"] {
		r.fault(field, "one origin for both tmax and tmin")
	}
	return Provenance{Air: origins["tmean"], AirRange: origins["tmax"], Sea: origins["sst"], Sun: origins["ghi"]}
}

// knownCodes checks that each code names an archive and something in it.
func (r *row) knownCodes(field, codes string) {
	for code := range strings.SplitSeq(codes, "+") {
		prefix, detail, _ := strings.Cut(code, "-")
		if archives[prefix] == "" || detail == "" {
			r.fault(field, fmt.Sprintf("codes such as TMY3-726079, of %s", strings.Join(slices.Sorted(maps.Keys(archives)), ", ")))
			return
		}
	}
}
