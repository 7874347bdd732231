package questions

import (
	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
)

func powerRows() []Row {
	return []Row{
		{
			Key: "power.volts", Group: OfPower, Label: "System voltage", Kind: Voltage, Detail: true,
			Ask:     "Is the boat's system 12 or 24 volts?",
			Help:    "Typical: 12 V on boats under 12 m (40 ft). The label on a lamp or the battery tells.",
			Limits:  Limits{10, 12, 24, 60},
			Field:   func(b *economics.Boat) Slot { return at(&b.Power.Volts) },
			Default: always(quantity.Volt(12), "usual on small boats"),
		},
		{
			Key: "power.battery", Group: OfPower, Label: "House battery", Kind: Charge, None: "none",
			Ask:    "How large is the battery for lights and pumps, or the only one?",
			Help:   "Typical: 100 Ah; the figure is on its label. Add up those wired side by side.",
			Limits: Limits{5, 30, 900, 3000},
			Field:  func(b *economics.Boat) Slot { return at(&b.Power.Battery) },
			Default: func(c Context) (any, string) {
				return quantity.AmpHour(100 * 12 / float64(orVolts(c.Boat.Power.Volts))), "one ordinary house battery; common practice, no source"
			},
		},
		{
			Key: "power.battery_age", Group: OfPower, Label: "Age of the battery", Kind: Years, Detail: true,
			Ask:     "How old is the house battery?",
			Help:    "Typical: 3 years. A date is stamped on the case or the terminal.",
			Limits:  Limits{0, 0, 15, 40},
			Field:   func(b *economics.Boat) Slot { return at(&b.Power.BatteryAge) },
			Default: always(quantity.Year(3), judgement),
		},
		{
			Key: "power.chemistry", Group: OfPower, Label: "Kind of battery", Kind: Choice,
			Ask:     "Is the house battery lead or lithium?",
			Help:    "Typical: lead, which covers flooded, AGM and gel. Lithium here means lithium iron phosphate.",
			Options: []Option{{"lead", "lead: flooded, AGM or gel", "agm|gel|flooded|lead acid|wet"}, {"lithium", "lithium iron phosphate", "lifepo4|lfp|li"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Power.Chemistry) },
			Default: always(energy.Lead, "usual on older boats"),
		},
		{
			Key: "power.solar", Data: "power.solar_wp", Group: OfPower, Label: "Solar panel", Kind: Power, None: "none", Said: panelSaid,
			Ask:     "How many watts of solar panel?",
			Help:    "Typical: none, 50 W or 100 W; the figure is on the panel's back. Add them up.",
			Limits:  Limits{1, 5, 1200, 5000},
			Field:   func(b *economics.Boat) Slot { return at(&b.Power.SolarWp) },
			Default: always(quantity.Watt(0), "no panel is counted that was not told"),
		},
		{
			Key: "power.mounting", Group: OfPower, Label: "Where the panel sits", Kind: Choice, Detail: true,
			Ask:     "Where does the panel sit, or where would it?",
			Help:    "Typical: on the bimini or spray hood. An arch is shaded least, the deck most.",
			Options: []Option{{"arch", "on an arch or rail at the stern", "stern|rail|gantry"}, {"bimini", "on the bimini or spray hood", "dodger|sprayhood|hood"}, {"deck", "laid on deck", "on deck|coachroof"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Power.Mounting) },
			Default: always(energy.Bimini, judgement),
		},
		{
			Key: "power.controller", Group: OfPower, Label: "Solar controller", Kind: Choice, Detail: true,
			Ask:     "Which kind of solar controller is between panel and battery?",
			Help:    "Typical: plain on small panels. MPPT on its label means tracking.",
			Options: []Option{{"plain", "plain (PWM)", "pwm|none"}, {"tracking", "tracking (MPPT)", "mppt"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Power.Controller) },
			Default: always(energy.Plain, "usual with small panels; the poorer of the two"),
		},
		{
			Key: "power.other_loads", Data: "power.other_loads_ah_per_day", Group: OfPower, Label: "Other use of electricity a day", Kind: Charge,
			Ask:    "How many ampere-hours a day does everything else use?",
			Help:   "Typical: 15 Ah at 12 V for lights, pump, radio and phones; 40 Ah with an autopilot and instruments all day.",
			Limits: Limits{0, 2, 150, 600},
			Field:  func(b *economics.Boat) Slot { return at(&b.Power.OtherLoads) },
			Default: func(c Context) (any, string) {
				return quantity.AmpHour(energy.HouseLoad().Typical * 12 / float64(orVolts(c.Boat.Power.Volts))), "lights, pump and telephones; " + judgement
			},
		},
		{
			Key: "power.engine_hours_per_day", Group: OfPower, Label: "Engine hours a day", Kind: Hours,
			Ask:     "How many hours does the engine run on a usual day aboard?",
			Help:    "Typical: 0.5 h under sail, 3 h for people who motor; only days aboard count.",
			Limits:  Limits{0, 0, 8, 24},
			Field:   func(b *economics.Boat) Slot { return at(&b.Power.EngineHoursPerDay) },
			Default: always(0.5, "in and out of an anchorage; "+judgement),
		},
		{
			Key: "power.engine_amps", Data: "power.engine_a", Group: OfPower, Label: "Charging current of the engine", Kind: Current, Detail: true, None: "none",
			Ask:     "How many amps does the engine charge with?",
			Help:    "Typical: 30 A into one battery, whatever the alternator's label says; an outboard gives 5 A.",
			Limits:  Limits{0.5, 3, 120, 400},
			Field:   func(b *economics.Boat) Slot { return at(&b.Power.EngineAmps) },
			Default: always(quantity.Ampere(30), judgement),
		},
		{
			Key: "power.max_panel", Data: "power.max_panel_wp", Group: OfPower, Label: "Most panel she could carry", Kind: Power, None: "none",
			Ask:    "How many watts of panel could the boat carry at most, with what she has?",
			Help:   "Typical: 200 W on 8 to 10 m; about 200 W to a square metre of unshaded place.",
			Limits: Limits{1, 20, 1500, 6000},
			Field:  func(b *economics.Boat) Slot { return at(&b.Power.MaxPanelWp) },
			Default: func(c Context) (any, string) {
				return max(200, c.Boat.Power.SolarWp), "room for about a square metre; " + judgement
			},
		},
		{
			Key: "power.by_day", Group: OfPower, Label: "A unit by day only", Kind: YesNoUnknown, Detail: true,
			Ask:     "Would you run a unit only while the sun is up, and leave it off at night?",
			Help:    "Typical: not thought of. It makes for quiet nights and a smaller battery. Bottles that freeze by day carry more nights, and take 7 litres (2 gallons).",
			Field:   func(b *economics.Boat) Slot { return at(&b.Power.ByDay) },
			Default: always(quantity.Unknown, "not answered, so a unit may run by night"),
		},
		{
			Key: "power.cable_run", Group: OfPower, Label: "Cable from battery to unit", Kind: Run, Detail: true,
			Ask:     "How long is the way of the cable from the battery to the box, one way?",
			Help:    "Typical: 4 m (13 ft). Follow the way a cable would really take.",
			Limits:  Limits{0.2, 1, 15, 40},
			Field:   func(b *economics.Boat) Slot { return at(&b.Power.CableRun) },
			Default: always(quantity.Metre(5), judgement),
		},
		{
			Key: "power.cable_size", Group: OfPower, Label: "Size of that cable", Kind: WireSize, Detail: true, None: "no cable",
			Ask:     "If there is a cable to the box already, what size is it?",
			Help:    "Typical: 10 AWG (6 mm²); printed on its sheath. Answer no cable if there is none.",
			Limits:  Limits{0.3, 1, 35, 120},
			Field:   func(b *economics.Boat) Slot { return at(&b.Power.CableSize) },
			Default: always(quantity.SquareMillimetre(0), "no cable is counted that was not told"),
		},
	}
}

func orVolts(v quantity.Volt) quantity.Volt {
	if v <= 0 {
		return 12
	}
	return v
}
