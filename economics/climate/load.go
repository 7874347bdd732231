package climate

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"coldreckon/economics/quantity"
)

// Bounds of a plausible monthly mean anywhere people cruise.
const (
	lowestAirC, highestAirC = -40, 50
	lowestSeaC, highestSeaC = -2, 36
	// Monthly clearness of the stations in data/SOURCES.md stays within these.
	lowestClearness, highestClearness = 0.20, 0.72
	// Water in a kilogram of moist air over any sea.
	lowestHumidityGPerKg, highestHumidityGPerKg = 1, 25
	// A square of ship reports stands for a ground no farther off than this.
	farthestCellDeg = 4
)

var idPattern = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)

// load reads and checks the three tables. All faults are reported together,
// each with file, line, field, what was found and what was expected.
func load(files fs.FS) ([]Ground, error) {
	grounds, err := loadGrounds(files)
	if err != nil {
		return nil, err
	}
	index := make(map[string]int, len(grounds))
	for i, g := range grounds {
		index[g.ID] = i
	}
	if err := loadClimate(files, grounds, index); err != nil {
		return nil, err
	}
	if err := loadMarine(files, grounds, index); err != nil {
		return nil, err
	}
	return grounds, nil
}

func readGrounds(files fs.FS) ([]*row, error) {
	return readTable(files, "data/grounds.csv", "id", "name", "lat", "lon")
}

func loadGrounds(files fs.FS) ([]Ground, error) {
	rows, err := readGrounds(files)
	if err != nil {
		return nil, err
	}
	grounds := make([]Ground, 0, len(rows))
	var faults []error
	for _, r := range rows {
		g := Ground{ID: r.cell("id"), Name: r.cell("name")}
		if !idPattern.MatchString(g.ID) {
			r.fault("id", "lower-case words joined by hyphens")
		}
		if slices.ContainsFunc(grounds, func(other Ground) bool { return other.ID == g.ID }) {
			r.fault("id", "an id not used before")
		}
		if strings.TrimSpace(g.Name) == "" {
			r.fault("name", "a name")
		}
		g.LatDeg = r.number("lat", -MaxLatitudeDeg, MaxLatitudeDeg)
		g.LonDeg = r.number("lon", -180, 180)
		grounds = append(grounds, g)
		faults = append(faults, r.faults...)
	}
	return grounds, errors.Join(faults...)
}

func loadClimate(files fs.FS, grounds []Ground, index map[string]int) error {
	const file = "data/climate.csv"
	rows, err := readTable(files, file, "ground", "month", "tmean", "tmax", "tmin", "sst", "ghi", "prov")
	if err != nil {
		return err
	}
	seen := newYears(grounds)
	var faults []error
	for _, r := range rows {
		if g, month := r.place(grounds, index, seen); g != nil {
			g.Months[month-1] = r.month(*g, month)
		}
		faults = append(faults, r.faults...)
	}
	for i, g := range grounds {
		if months := seen[i]; months.count() != 12 {
			faults = append(faults, fmt.Errorf("%s: ground %s: found %d months, expected 12", file, g.ID, months.count()))
		}
	}
	return errors.Join(faults...)
}

// month reads one row of climate.csv.
func (r *row) month(g Ground, month int) Month {
	m := Month{
		AirMean: quantity.Celsius(r.number("tmean", lowestAirC, highestAirC)),
		AirMax:  quantity.Celsius(r.number("tmax", lowestAirC, highestAirC)),
		AirMin:  quantity.Celsius(r.number("tmin", lowestAirC, highestAirC)),
		Sea:     quantity.Celsius(r.number("sst", lowestSeaC, highestSeaC)),
	}
	if len(r.faults) > 0 {
		return m
	}
	if m.AirMax < m.AirMean {
		r.fault("tmax", fmt.Sprintf("at least tmean, %g", m.AirMean))
	}
	if m.AirMin > m.AirMean {
		r.fault("tmin", fmt.Sprintf("at most tmean, %g", m.AirMean))
	}
	most := ExtraterrestrialMJ(g.LatDeg, MidMonthDay(month)) / mjPerKWh // near enough to a month's mean, and quick
	m.Sun = quantity.KWhPerM2Day(r.number("ghi", lowestClearness*most, highestClearness*most))
	m.HumidityRatio = humidityRatio(m.AirMean, assumedHumidity)
	m.Provenance = r.provenance("prov")
	return m
}

func loadMarine(files fs.FS, grounds []Ground, index map[string]int) error {
	const file = "data/marine.csv"
	rows, err := readTable(files, file, "ground", "month", "specific_humidity_g_per_kg", "coads_cell")
	if err != nil {
		return err
	}
	seen := newYears(grounds)
	var faults []error
	for _, r := range rows {
		specific := r.number("specific_humidity_g_per_kg", lowestHumidityGPerKg, highestHumidityGPerKg) / 1000
		if g, month := r.place(grounds, index, seen); g != nil {
			r.nearby("coads_cell", *g)
			m := &g.Months[month-1]
			// Ships meet milder winters than the coast: the coast's air cannot
			// hold all their water.
			m.HumidityRatio = min(specific/(1-specific), humidityRatio(m.AirMean, 1))
			m.HumidityRead = true
		}
		faults = append(faults, r.faults...)
	}
	for i, g := range grounds {
		if n := seen[i].count(); n != 0 && n != 12 {
			faults = append(faults, fmt.Errorf("%s: ground %s: found %d months, expected 12 or none", file, g.ID, n))
		}
	}
	return errors.Join(faults...)
}

// year marks the months seen.
type year [12]bool

func (y year) count() int {
	n := 0
	for _, seen := range y {
		if seen {
			n++
		}
	}
	return n
}

func newYears(grounds []Ground) []year { return make([]year, len(grounds)) }

// place finds the ground and month of a row, nil when either is wrong.
func (r *row) place(grounds []Ground, index map[string]int, seen []year) (*Ground, int) {
	i, known := index[r.cell("ground")]
	if !known {
		r.fault("ground", "an id of grounds.csv")
	}
	month, err := strconv.Atoi(r.cell("month"))
	if err != nil || month < 1 || month > 12 {
		r.fault("month", "a whole number from 1 to 12")
		return nil, 0
	}
	if !known {
		return nil, 0
	}
	if seen[i][month-1] {
		r.fault("month", "each month of a ground once")
	}
	seen[i][month-1] = true
	return &grounds[i], month
}

// nearby checks that a cell such as "(43;-69)" lies by the ground.
func (r *row) nearby(field string, g Ground) {
	lat, lon, found := strings.Cut(strings.Trim(r.cell(field), "()"), ";")
	latDeg, latErr := strconv.ParseFloat(lat, 64)
	lonDeg, lonErr := strconv.ParseFloat(lon, 64)
	if !found || latErr != nil || lonErr != nil ||
		!(math.Abs(latDeg-g.LatDeg) <= farthestCellDeg) || !(math.Abs(lonDeg-g.LonDeg) <= farthestCellDeg) {
		r.fault(field, fmt.Sprintf("(latitude;longitude) within %d degrees of the ground's %g;%g", farthestCellDeg, g.LatDeg, g.LonDeg))
	}
}

// row is one line of a table, with the faults found in it.
type row struct {
	file          string
	line          int
	header, cells []string
	faults        []error
}

func (r *row) cell(field string) string { return r.cells[slices.Index(r.header, field)] }

func (r *row) fault(field, expected string) {
	r.faults = append(r.faults, fmt.Errorf("%s:%d: %s: found %q, expected %s", r.file, r.line, field, r.cell(field), expected))
}

// number reads a finite decimal within bounds.
func (r *row) number(field string, low, high float64) float64 {
	v, err := strconv.ParseFloat(r.cell(field), 64)
	if err != nil || !(low <= v && v <= high) {
		r.fault(field, fmt.Sprintf("a number from %.4g to %.4g", low, high))
		return 0
	}
	return v
}

// readTable reads a comma-separated file whose first line is exactly header.
func readTable(files fs.FS, name string, header ...string) ([]*row, error) {
	f, err := files.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	reader := csv.NewReader(f)
	found, err := reader.Read()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if !slices.Equal(found, header) {
		return nil, fmt.Errorf("%s:1: header: found %q, expected %q", name, strings.Join(found, ","), strings.Join(header, ","))
	}
	var rows []*row
	for {
		record, err := reader.Read()
		if errors.Is(err, io.EOF) {
			return rows, nil
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		line, _ := reader.FieldPos(0)
		rows = append(rows, &row{file: name, line: line, header: header, cells: record})
	}
}
