package wizard

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/answers"
	"coldreckon/wizard/questions"
)

// A text that stays in the file must mean the same whatever units are chosen
// later.
func TestLasting(t *testing.T) {
	told := map[string]quantity.How{"units": quantity.Told, "currency": quantity.Told}
	us, metric := economics.Boat{Units: quantity.US, Currency: "$", Known: told}, economics.Boat{Units: quantity.Metric, Currency: "€", Known: told}
	for _, tt := range []struct {
		boat            economics.Boat
		key, text, want string
	}{
		{us, "box.volume", "3.2", "3.2 cu ft"},
		{us, "box.volume", "90 L", "90 L"},
		{metric, "box.volume", "90", "90 L"},
		{us, "box.foam", "1 1/2", "1 1/2 in"},
		{metric, "box.foam", "2,5 cm", "2,5 cm"},
		{us, "box.inside", "18 x 22 x 16", "18 x 22 x 16 in"},
		{us, "ice.price", "0.50", "$0.50/lb"},
		{metric, "ice.price", "1,20", "€1.20/kg"},
		{us, "power.battery", "2*105", "2*105"},
		{us, "cruising.nights", "weekends in summer", "weekends in summer"},
		{us, "food.target", "40", "40 °F"},
	} {
		row, _ := questions.Find(tt.key)
		file, err := answers.Fresh(tt.boat)
		if err != nil {
			t.Fatal(err)
		}
		talk := &conversation{Options: Options{File: file}}
		if got := talk.lasting(row, tt.text); got != tt.want {
			t.Errorf("%s %q: found %q, expected %q", tt.key, tt.text, got, tt.want)
		}
	}
}

// Every question offered for its worth must be able to move a figure of the
// reckoning; it would be a lie to call it worth something otherwise. Outside the
// long run a third of them is tried.
func TestNarrowingQuestionsMatter(t *testing.T) {
	file := fresh(t)
	// A short season and little to choose from in the search are reckoned soon.
	if err := errors.Join(file.Set("cruising.nights", "july 7"), file.Set("box.reachable", "no"), file.Set("power.max_panel", "none"), file.Set("power.solar", "50 W")); err != nil {
		t.Fatal(err)
	}
	talk := &conversation{Options: options(t, nil, file, new(string))}
	print := func(r *economics.Reckoning) string {
		var s strings.Builder
		for _, o := range r.Options {
			fmt.Fprintln(&s, o.FittedBands.Present.Low, o.FittedBands.Present.High, o.WorksOf100, o.ExpectedRegret)
		}
		return s.String()
	}
	base, err := reckon(talk.filled(), 20)
	if err != nil {
		t.Fatal(err)
	}
	tried := map[string]bool{}
	for _, in := range base.Futures.Inputs {
		for _, key := range in.SharpenedBy {
			key = strings.Replace(key, "{unit}", "small", 1)
			if tried[key] {
				continue
			}
			tried[key] = true
			if !longRun() && len(tried)%3 > 0 {
				continue
			}
			row, ok := questions.Find(key)
			if !ok {
				t.Errorf("%s is no question", key)
				continue
			}
			boats := talk.others(row)
			if text := elsewise[key]; text != "" {
				b := talk.File.Told()
				if err := questions.Set(&b, key, text); err != nil {
					t.Fatal(err)
				}
				questions.Fill(&b, talk.Book())
				boats = append(boats, b)
			}
			moved := false
			for _, b := range boats {
				if moved {
					break
				}
				r, err := reckon(b, 20)
				if err != nil {
					t.Fatal(err)
				}
				moved = print(r) != print(base)
			}
			if !moved {
				t.Errorf("%s: none of %d other answers moves a figure", key, len(boats))
			}
		}
	}
}

// elsewise gives answers to the questions that have no choices and no limits.
var elsewise = map[string]string{
	"evidence.ice_history": "ice: 10 kg; hours: 60; month: july; in_use: yes",
	"box.inside":           "50 x 70 x 50 cm",
	"cruising.nights":      "july 20",
	"ice.price":            "$2/kg",
}
