package climate

import (
	"embed"
	"fmt"
	"slices"
	"strings"
	"sync"

	"coldreckon/economics/quantity"
)

// Ground is a cruising ground, a stretch of coast or sea with one climate, and
// its usual year.
type Ground struct {
	ID     string    // lower-case words joined by hyphens; "own" when estimated
	Name   string    // as printed
	LatDeg float64   // north positive; -66 to 66
	LonDeg float64   // east positive; 0 when estimated
	Months [12]Month // January first
}

// Month holds the means of one month of a usual year.
type Month struct {
	AirMean quantity.Celsius // over day and night
	AirMax  quantity.Celsius // of the daily highest
	AirMin  quantity.Celsius // of the daily lowest
	Sea     quantity.Celsius // at the surface

	Sun quantity.KWhPerM2Day // on a level surface

	// HumidityRatio is the water in the air, kg per kg of dry air, never more
	// than air at AirMean can hold. HumidityRead tells whether it was
	// measured; otherwise it stands for 70 % relative humidity at AirMean.
	HumidityRatio float64
	HumidityRead  bool

	Provenance Provenance
}

// Provenance tells where each figure of a month comes from: "read: " and the
// archive's codes (Explain puts them in plain words), "memory", "told" by the
// owner, or "estimated: " and how.
type Provenance struct {
	Air      string // of AirMean
	AirRange string // of AirMax and AirMin
	Sea      string
	Sun      string // humidity has Month.HumidityRead instead
}

// The origins that need no further words.
const (
	fromMemory = "memory"
	fromOwner  = "told"
)

//go:embed data/grounds.csv data/climate.csv data/marine.csv
var tables embed.FS

var embedded = sync.OnceValues(func() ([]Ground, error) { return load(tables) })

// Grounds lists all cruising grounds in the order of their table: by sea area.
// The caller may change the list. Its rows were checked when the program was
// tested; should they ever be damaged the list is empty and Find tells why.
func Grounds() []Ground {
	grounds, err := embedded()
	if err != nil {
		return nil
	}
	return slices.Clone(grounds)
}

// Place is a cruising ground by its name.
type Place struct{ ID, Name string }

// Places lists all cruising grounds as Grounds does, without their climates, which
// take longer to read.
func Places() []Place {
	rows, err := readGrounds(tables)
	if err != nil {
		return nil
	}
	places := make([]Place, len(rows))
	for i, r := range rows {
		places[i] = Place{r.cell("id"), r.cell("name")}
	}
	return places
}

// Find gives the ground of an id. It fails when there is none, and then names
// the ids that look most alike.
func Find(id string) (Ground, error) {
	grounds, err := embedded()
	if err != nil {
		return Ground{}, err
	}
	for i := range grounds { // by place: a ground is 2 kB
		if grounds[i].ID == id {
			return grounds[i], nil
		}
	}
	if near := alike(grounds, id); len(near) > 0 {
		return Ground{}, fmt.Errorf("cruising ground: there is no %q in the list of grounds; did you mean %s?", id, strings.Join(near, " or "))
	}
	return Ground{}, fmt.Errorf("cruising ground: there is no %q among the %d names in the list of grounds", id, len(grounds))
}

// Clearness is the sun of a month, 1 to 12, as a share of the sun above the
// atmosphere: 0.20 to 0.75 on the grounds known here.
func (g Ground) Clearness(month int) float64 {
	return float64(g.Months[month-1].Sun) * mjPerKWh / monthlyExtraterrestrialMJ(g.LatDeg, month)
}

// WithAirMean gives the ground as its owner knows it: the mean air of a month,
// 1 to 12, set to t. Highest and lowest move with it, relative humidity stays.
func (g Ground) WithAirMean(month int, t quantity.Celsius) Ground {
	m := &g.Months[month-1]
	relative := relativeHumidity(m.AirMean, m.HumidityRatio)
	shift := t - m.AirMean
	m.AirMean, m.AirMax, m.AirMin = t, m.AirMax+shift, m.AirMin+shift
	m.HumidityRatio = humidityRatio(t, relative)
	m.Provenance.Air, m.Provenance.AirRange = fromOwner, fromOwner
	return g
}
