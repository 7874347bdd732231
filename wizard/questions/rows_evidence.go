package questions

import (
	"coldreckon/economics"
	"coldreckon/economics/heat"
)

func evidenceRows() []Row {
	return []Row{
		{
			Key: "evidence.ice_tests", Group: OfEvidence, Label: "Ice tests", Kind: Records, Detail: true,
			Ask:     "Have you weighed how much ice melts in the closed box?",
			Help:    "Typical: none yet. A day with the lid shut: melted: 4 kg; hours: 24; outside: 24 °C; inside: 2 °C. It says more about the box than any drawing.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Evidence.IceTests) },
			Default: always([]heat.IceTest(nil), ""),
		},
		{
			Key: "evidence.jug_tests", Group: OfEvidence, Label: "Water-jug tests", Kind: Records, Detail: true,
			Ask:     "Have you timed how fast jugs of cold water warm up in the closed box?",
			Help:    "Typical: none yet. water: 10 kg; hours: 12; start: 4 °C; end: 9 °C; outside: 24 °C; box_air: 10 °C.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Evidence.JugTests) },
			Default: always([]heat.JugTest(nil), ""),
		},
		{
			Key: "evidence.ice_history", Group: OfEvidence, Label: "How long ice has lasted", Kind: Records,
			Ask:     "How long does ice last in it now?",
			Help:    "Typical: 10 kg (22 lb) for a day and a half in July, in use. Write it as ice: 10 kg; hours: 36; month: july; in_use: yes.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Evidence.IceHistory) },
			Default: always([]heat.IceHistory(nil), ""),
		},
		{
			Key: "evidence.logs", Group: OfEvidence, Label: "Logs read in", Kind: Records, Detail: true,
			Ask:     "What have logs kept aboard shown of the box?",
			Help:    "Typical: none. 'coldreckon learn' works it out from a log of ice bought, or of temperatures.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Evidence.Logs) },
			Default: always([]heat.Learnt(nil), ""),
			When:    func(b economics.Boat) bool { return len(b.Evidence.Logs) > 0 },
		},
	}
}

// recordFields gives the parts of one record of a list, as rows whose slots
// lie in a copy of start (nil for an empty record), and the function that
// gives that copy.
func recordFields(key string, start any) (rows []Row, required []string, record func() any) {
	kg := Limits{0.05, 0.2, 60, 300}
	hours := Limits{0.5, 2, 240, 1000}
	air := Limits{-30, 0, 45, 60}
	switch key {
	case "evidence.ice_tests":
		t := copied(start, heat.IceTest{})
		return []Row{
			part("melted", "ice melted", Mass, kg, at(&t.Melted)),
			part("hours", "hours timed", Hours, hours, at(&t.Hours)),
			part("ice", "ice at the start", Mass, kg, at(&t.IceMass)),
			part("ice_start", "temperature of the ice at the start", Temperature, Limits{-40, -30, 0, 0}, at(&t.IceStart)),
			part("water_end", "temperature of the meltwater at the end", Temperature, Limits{0, 0, 15, 30}, at(&t.WaterEnd)),
			part("water", "meltwater kept to the end", Mass, Limits{0, 0, 60, 300}, at(&t.Water)),
			part("outside", "mean air outside the box", Temperature, air, at(&t.Out)),
			part("inside", "mean air inside the box", Temperature, Limits{-10, -1, 15, 30}, at(&t.In)),
			part("food_heat", "heat given up by food", Heat, Limits{0, 0, 3000, 20000}, at(&t.FoodKJ)),
			part("liner_heat", "heat given up by the liner", Heat, Limits{0, 0, 3000, 20000}, at(&t.LinerKJ)),
		}, []string{"melted", "hours", "outside", "inside"}, func() any { return *t }
	case "evidence.jug_tests":
		t := copied(start, heat.JugTest{})
		return []Row{
			part("water", "water in the jugs", Mass, Limits{0.5, 2, 60, 300}, at(&t.Water)),
			part("hours", "hours timed", Hours, hours, at(&t.Hours)),
			part("start", "water at the start", Temperature, Limits{0, 0, 20, 40}, at(&t.Start)),
			part("end", "water at the end", Temperature, Limits{0, 0, 30, 50}, at(&t.End)),
			part("outside", "mean air outside the box", Temperature, air, at(&t.Out)),
			part("box_air", "mean air in the box", Temperature, Limits{-5, 0, 35, 50}, Slot{
				Get: func() any { return t.BoxAir },
				Put: func(v any) { at(&t.BoxAir).Put(v); t.BoxAirRead = true },
			}),
		}, []string{"water", "hours", "start", "end", "outside"}, func() any { return *t }
	case "evidence.ice_history":
		t := copied(start, heat.IceHistory{InUse: true})
		return []Row{
			part("ice", "ice put in", Mass, kg, at(&t.Ice)),
			part("hours", "hours it lasted", Hours, hours, at(&t.Hours)),
			part("month", "month", Month, Limits{}, at(&t.Month)),
			part("in_use", "box in use meanwhile", YesNo, Limits{}, at(&t.InUse)),
		}, []string{"ice", "hours", "month"}, func() any { return *t }
	case "evidence.logs":
		t := copied(start, heat.Learnt{})
		of := part("of", "what was logged", Choice, Limits{}, at(&t.Of))
		of.Options = []Option{{Value: string(heat.OfIce), Label: "ice"}, {Value: string(heat.OfTemperatures), Label: "temperatures"},
			{Value: string(heat.OfRunning), Label: "running"}}
		within := Limits{0.02, 0.1, 0.6, 1}
		return []Row{
			of,
			part("from", "first day", Text, Limits{}, at(&t.From)),
			part("to", "last day", Text, Limits{}, at(&t.To)),
			part("rows", "stays of ice, or readings", Whole, Limits{1, 4, 1000, 1e6}, at(&t.Rows)),
			part("leak", "leak that fits", Leak, Limits{0.02, 0.2, 8, 50}, at(&t.UA)),
			part("leak_within", "standard error of the leak", Share, within, at(&t.LogSD)),
			part("use", "use that fits, over what the answers say", Number, Limits{0, 0.3, 3, 20}, at(&t.Use)),
			part("use_within", "standard error of the use", Share, Limits{0, 0.1, 0.6, 1}, at(&t.UseLogSD)),
		}, []string{"of", "from", "to", "leak", "leak_within"}, func() any { return *t }
	case quotationsKey:
		t := copied(start, economics.Quotation{})
		return quotationFields(t), []string{"name", "price"}, func() any { return *t }
	}
	return nil, nil, nil
}

// copied gives a pointer to a copy of start, or of empty when start is nil.
func copied[T any](start any, empty T) *T {
	if record, ok := start.(T); ok {
		return &record
	}
	return &empty
}

// part is one part of a record, in the place that a slot gives.
func part(name, label string, kind Kind, limits Limits, s Slot) Row {
	return Row{Key: name, Label: label, Kind: kind, Limits: limits, Field: func(*economics.Boat) Slot { return s }}
}
