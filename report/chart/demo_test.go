package chart

import (
	"bytes"
	"flag"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

var (
	update = flag.Bool("update", false, "write the golden files anew")
	keep   = flag.String("keep", "", "directory to keep the demo documents in, to be looked at")
)

// drawing is what all charts are.
type drawing interface {
	Draw(s sheet.Sheet, r sheet.Rect) error
}

type demoChart struct {
	name   string
	height float64
	chart  drawing
}

// The demos' figures are invented: they exercise the drawing, not the models.
func byMonth(label string, first int, values ...float64) ByMonth {
	m := ByMonth{label, map[int]float64{}}
	for i, v := range values {
		m.Values[first+i] = v
	}
	return m
}

func ramp(first, each, spread float64) OverYears {
	var l OverYears
	for y := range 11 {
		mid := first + each*float64(y)
		l.Mid = append(l.Mid, mid)
		l.Low = append(l.Low, mid*(1-spread))
		l.High = append(l.High, mid*(1+1.3*spread))
	}
	return l
}

func named(l OverYears, name string) OverYears { l.Label = name; return l }

func hourly(f func(day, hour float64) float64) []float64 {
	var out []float64
	for h := range 336 {
		out = append(out, f(float64(h/24), float64(h%24)))
	}
	return out
}

func demoCharts() []demoChart {
	sun := func(d, h float64) float64 {
		clear := []float64{1, .9, .3, .2, .1, .2, .8, 1, .5, .2, .15, .3, .9, 1}[int(d)]
		return clear * 140 * math.Max(0, math.Sin((h-6)/12*math.Pi))
	}
	return []demoChart{
		{"demand and sun", 62, Months{
			Head:  Head{"demand and sun", "From May to August the panel gives more than either unit takes; in October it does not.", "Watt-hours a day, in the months aboard", ""},
			Bars:  []ByMonth{byMonth("small unit", 4, 310, 345, 420, 465, 470, 400, 330), byMonth("larger unit", 4, 390, 440, 530, 610, 620, 510, 420)},
			Lines: []ByMonth{byMonth("sun on the panel", 1, 120, 190, 340, 480, 600, 660, 640, 560, 420, 260, 140, 100)},
		}},
		{"ice a day", 48, Months{
			Head: Head{"ice a day", "In August the box melts 6 kg of ice a day.", "Kilograms of ice a day", ""},
			Bars: []ByMonth{byMonth("ice", 4, 3.1, 3.9, 4.8, 5.6, 6.0, 5.1, 3.8)},
		}},
		{"heat by source", 46, Stacked{
			Head:  Head{"heat by source", "Two thirds of the heat comes through the walls, most of it through the hull side.", "Watts, mean of August", ""},
			Parts: []string{"hull side", "bottom", "other walls", "lid and seal", "openings", "warm food", "drain"},
			Rows: []StackedRow{
				{Label: "the box as it is", Values: []float64{11.2, 5.1, 7.3, 3.2, 2.9, 4.4, 0.6}, Total: "35 W (27–44)"},
				{Label: "with 50 mm more foam", Values: []float64{5.2, 3.4, 4.1, 2.2, 2.9, 4.4, 0.2}, Total: "22 W (17–29)"},
			},
		}},
		{"money by kind", 50, Stacked{
			Head:  Head{"money by kind", "The small unit costs most on the first day, ice costs most over ten years.", "$, present cost over ten years", ""},
			Parts: []string{"unit and fitting", "power", "ice", "errands", "upkeep", "resale"},
			Rows: []StackedRow{
				{Label: "ice alone", Values: []float64{0, 0, 4300, 1900, 100, 0}},
				{Label: "no-fridge stores", Values: []float64{60, 0, 0, 400, 0, 0}},
				{Label: "small unit", Values: []float64{1450, 900, 150, 60, 420, -350}},
				{Label: "larger unit", Values: []float64{2600, 1300, 0, 0, 600, -500}},
			},
		}},
		{"money over the years", 76, Years{
			Head: Head{"money over the years", "Ice overtakes the small unit in the fifth year, give or take two.", "$ spent since the start, in today's prices; bars show 8 cases in 10", ""},
			Lines: []OverYears{
				named(ramp(1450, 210, .2), "small unit"), named(ramp(60, 520, .3), "ice alone"),
				named(ramp(2600, 260, .2), "larger unit"), named(ramp(40, 70, .3), "no-fridge stores"),
			},
		}},
		{"worst fortnight", 88, Strips{
			Head: Head{"worst fortnight", "On the fifth dark day the battery is at its floor and the food passes 5 °C.", "The worst fortnight of the season, hour by hour, with the small unit", ""},
			Day:  func(d int) string { return []string{"Sat", "Sun", "Mon", "Tue", "Wed", "Thu", "Fri"}[(d-1)%7] },
			Strips: []Strip{
				{Label: "Food, °C", Zero: true, Limit: &Limit{5, "limit 5 °C", false}, Traces: []Trace{{"small unit", hourly(func(d, h float64) float64 {
					return 3 + math.Max(0, 4-math.Abs(d-4.5)*1.7) + .4*math.Sin(h/24*2*math.Pi)
				})}, {"ice alone", hourly(func(d, h float64) float64 { return 2.5 + math.Mod(d+h/24, 4)*.9 })}}},
				{Label: "Battery, % of full", Limit: &Limit{50, "floor 50 %", true}, Traces: []Trace{{"", hourly(func(d, h float64) float64 {
					return math.Min(100, 78-12*d+1.1*d*d+10*math.Sin((h-8)/24*2*math.Pi))
				})}}},
				{Label: "Sun on the panel, W", Filled: true, Traces: []Trace{{"", hourly(sun)}}},
			},
		}},
		{"of a hundred futures", 30, Hundred{
			Head:   Head{"of a hundred futures", "The small unit is the cheapest in 62 of 100 futures we drew.", "Each square is one equally likely future", ""},
			Groups: []string{"small unit cheapest", "ice alone cheapest", "larger unit cheapest", "nothing works"},
			Rows:   []HundredRow{{"", []int{62, 27, 8, 3}}},
		}},
		{"cold days", 58, Hundred{
			Head:   Head{"cold days", "Ice alone leaves one day in five warm.", "Each square is a day in a hundred aboard", ""},
			Groups: []string{"cold enough", "too warm"},
			Rows:   []HundredRow{{"Ice alone", []int{79, 21}}, {"Small unit", []int{97, 3}}, {"Larger unit", []int{100, 0}}},
		}},
		{"what moves the answer", 70, Swing{
			Head: Head{"what moves the answer", "The price of ice and the nights aboard decide; the rest does not turn the answer.", "$ a year by which ice is dearer than the small unit", ""},
			Base: 140, Left: "ice is cheaper", Right: "the small unit is cheaper",
			Rows: []SwingRow{
				{"Price of ice", -160, 420, "$0.90 per kg", "$3.10 per kg"},
				{"Nights aboard", -60, 330, "25", "70"},
				{"Leak of the box", 40, 260, "0.7 W/K", "1.5 W/K"},
				{"Price of the small unit, fitted", 220, 70, "$1,100", "$1,900"},
				{"Life of the unit", 90, 175, "7 years", "14 years"},
				{"Discount rate", 150, 128, "2 %", "6 %"},
			},
		}},
	}
}

func demo() *layout.Document {
	d := &layout.Document{Title: "Every chart", Foot: "Invented figures"}
	d.Add(layout.Heading{Level: 0, Text: "Every chart of the report"},
		layout.Para{Text: "Invented figures, drawn to be looked at on paper, on a screen and on a photocopy.", Style: layout.Lede})
	for _, c := range demoCharts() {
		d.Add(layout.Heading{Level: 1, Text: strings.ToUpper(c.name[:1]) + c.name[1:]}, layout.Picture{Headed: true, Height: c.height, Draw: c.chart.Draw})
	}
	return d
}

func TestDemoDocument(t *testing.T) {
	for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
		make := func() []byte {
			p, err := sheet.NewPDF(sheet.Info{Title: "Every chart", Lang: "en-GB", Date: time.Date(2026, 4, 1, 0, 0, 0, 0, time.UTC), Paper: paper})
			if err != nil {
				t.Fatal(err)
			}
			if err := demo().Draw(p); err != nil {
				t.Fatal(err)
			}
			b, err := p.Bytes()
			if err != nil {
				t.Fatal(err)
			}
			return b
		}
		b := make()
		if !bytes.Equal(b, make()) {
			t.Errorf("%s: two runs differ", paper)
		}
		if len(b) > 200_000 {
			t.Errorf("%s: %d bytes; a few pages of lines should stay below 200 kB", paper, len(b))
		}
		conf := model.NewDefaultConfiguration()
		conf.Offline = true
		if err := api.Validate(bytes.NewReader(b), conf); err != nil {
			t.Errorf("%s: %v", paper, err)
		}
		if *keep != "" {
			if err := os.WriteFile(filepath.Join(*keep, "demo-"+string(paper)+".pdf"), b, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}
