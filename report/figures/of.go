package figures

import (
	"coldreckon/economics"
	"coldreckon/economics/cost"
	"coldreckon/economics/quantity"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// Of makes the sheet of a reckoning. It fails when a criterion's reason names
// a fact that the reckoning lacks.
func Of(in Input) (Sheet, error) {
	r := in.Reckoning
	b := &r.Boat
	s := Sheet{
		Schema: Schema, Version: in.Version, RulesBook: in.Book.Identity, Boat: b.Name, Units: string(b.Units), Guidance: in.Guidance,
		Inputs: inputsOf(b), Ground: groundOf(r), Box: boxOf(r), Months: monthsOf(r), UnitFigures: unitsOf(r), Quotations: quotationsOf(r),
		Money:  Money{Number(b.Money.Discount), int(b.Money.Years), b.Currency},
		Repair: Repair{when(r.HasRepair, r.RepairWorth)}, Beside: besideOf(r, in.Book), Futures: futuresOf(r), Answer: answerOf(in), Verdict: verdictOf(in), Caution: []Caution{}, Even: []BreakEven{}, Assumed: []economics.Assumption{},
	}
	for i := range r.Options {
		o, err := optionOf(in, &r.Options[i])
		if err != nil {
			return Sheet{}, err
		}
		s.Options = append(s.Options, o)
	}
	for _, e := range r.BreakEven {
		s.Even = append(s.Even, BreakEven{string(e.Option), when(e.Known, e.Nights), e.UnitCheaper})
	}
	for _, f := range in.Findings {
		c := Caution{ID: f.ID, Grade: string(f.Grade), Text: f.Text, Source: f.Source, Options: []string{}}
		for _, id := range f.Options {
			c.Options = append(c.Options, string(id))
		}
		if len(c.Options) > 0 {
			c.Option = c.Options[0]
		}
		s.Caution = append(s.Caution, c)
	}
	s.Assumed = append(s.Assumed, b.Assumptions...)
	for _, g := range economics.Granted(*b) {
		s.Assumed = append(s.Assumed, g.Assumption())
	}
	return s, nil
}

func groundOf(r *economics.Reckoning) Ground {
	g := Ground{ID: r.Ground.ID, Name: r.Ground.Name, LatDeg: Number(r.Ground.LatDeg)}
	for i, m := range r.Ground.Months {
		g.Months = append(g.Months, GroundMonth{
			Month: i + 1, AirMeanC: Number(m.AirMean), AirMinC: Number(m.AirMin), AirMaxC: Number(m.AirMax), SeaC: Number(m.Sea),
			Sun: Number(m.Sun), Humidity: Number(m.HumidityRatio),
			Provenance: Provenance{m.Provenance.Air, m.Provenance.AirRange, m.Provenance.Sea, m.Provenance.Sun},
		})
	}
	return g
}

func boxOf(r *economics.Reckoning) Box {
	b := r.Box
	out := Box{
		VolumeL: Number(b.Volume), UA: Number(b.Leak), UALow: Number(b.LeakLow), UAHigh: Number(b.LeakHigh),
		UADrawn: Number(b.Drawn.Total()), UALogSD: Number(b.Evidence.LogSD), IceKg: Number(b.IceKg),
		Disagree: b.Evidence.Disagree, Why: b.Evidence.Why, Parts: []Part{}, Doubts: append([]string{}, b.Drawn.Notes...), HeatGainW: None,
	}
	for _, e := range b.Evidence.Used {
		out.Evidence = append(out.Evidence, Estimate{string(e.Source), Number(e.UA), Number(e.Range().Low), Number(e.Range().High), true})
	}
	for _, e := range b.Evidence.Dropped {
		out.Evidence = append(out.Evidence, Estimate{string(e.Source), Number(e.UA), Number(e.Range().Low), Number(e.Range().High), false})
	}
	told, err := r.Case(r.Of(economics.IceOnly), false)
	if err == nil && len(r.Months) > 0 {
		out.PartsOf, out.HeatGainW = told.Month, Number(told.HeatW)
		for _, s := range told.Heat {
			out.Parts = append(out.Parts, Part{s.Name(), when(s.Leak > 0, s.Leak), Number(s.HeatW)})
		}
	}
	return out
}

func monthsOf(r *economics.Reckoning) []Month {
	out := []Month{}
	for _, m := range r.Months {
		out = append(out, Month{
			Month: m.Month, Nights: m.Nights, CabinC: Number(m.CabinC), SeaC: Number(m.SeaC),
			LeakW: Number(m.LeakW), OpeningsW: Number(m.OpeningsW), GoodsW: Number(m.GoodsW), HeatGainW: Number(m.HeatGainW),
			IceKgPerDay: Number(m.IceKgPerDay), Sun: Number(m.SunKWhM2Day), SolarWhPerDay: Number(m.SolarWhPerDay),
			HouseWhPerDay: Number(m.HouseWhPerDay), SmallWhPerDay: Number(m.SmallWhPerDay), LargerWhPerDay: Number(m.LargerWhPerDay),
			SmallRun: Number(m.SmallRunShare), LargerRun: Number(m.LargerRunShare),
			SmallHeldC: Number(m.SmallHeldC), LargerHeldC: Number(m.LargerHeldC),
		})
	}
	return out
}

func optionOf(in Input, o *economics.OptionFigures) (Option, error) {
	ice := in.Reckoning.Of(economics.IceOnly)
	told, err := caseOf(in, &o.AsTold, &ice.AsTold, o.AsToldWorksOf100)
	if err != nil {
		return Option{}, err
	}
	fitted, err := caseOf(in, &o.Fitted, &ice.Fitted, o.WorksOf100)
	if err != nil {
		return Option{}, err
	}
	out := Option{
		ID: string(o.ID), Name: words.Name(o.ID), AsTold: Told{told, bandsOf(o.AsToldBands)},
		Fitted:    Fitted{Case: fitted, FitOut: []FitItem{}, Pieces: []Piece{}, Reached: o.Fit.Reached, Searched: o.Fit.SearchFutures, SearchWorks: Number(o.Fit.SearchWorks)},
		ToldWorks: o.AsToldWorksOf100, ToldFutures: o.AsToldFutures, Workable: o.WorksOf100, Best: o.BestOf100,
		Price: Price{Number(o.PriceOfCold.Low), Number(o.PriceOfCold.Typical), Number(o.PriceOfCold.High)},
		Bands: bandsOf(o.FittedBands), Regret: Number(o.ExpectedRegret), Worst: fortnightOf(o),
	}
	work := words.Of(in.Reckoning, in.Book).Work(o.ID)
	for i, item := range o.Fit.Items {
		out.Fitted.FitOut = append(out.Fitted.FitOut, FitItem{
			Piece: string(item.Piece), What: work[i].What, Size: Number(item.Size), Unit: pieceUnits[item.Piece],
			WithoutWorks: item.WithoutWorksOf100, WithoutPresent: Number(item.WithoutPresent),
		})
		piece := Piece{ID: string(item.Piece), Size: Number(item.Size)}
		for _, c := range o.PieceCosts {
			if c.Piece == item.Piece {
				piece.Low, piece.Typical, piece.High = Number(c.Cost.Low), Number(c.Cost.Typical), Number(c.Cost.High)
				piece.HoursLow, piece.HoursHigh = Number(c.Hours.Low), Number(c.Hours.High)
			}
		}
		out.Fitted.Pieces = append(out.Fitted.Pieces, piece)
	}
	return out, nil
}

func bandsOf(b economics.Bands) Bands {
	return Bands{Number(b.First.Low), Number(b.First.High), Number(b.PerYear.Low), Number(b.PerYear.High),
		Number(b.Present.Low), Number(b.Present.High), Number(b.Yearly.Low), Number(b.Yearly.High)}
}

var pieceUnits = map[economics.Piece]string{
	economics.LidPiece: "mm", economics.InsidePiece: "mm", economics.OutsidePiece: "mm", economics.MoreIcePiece: "share of the box", economics.SpacerPiece: "share of the length", economics.PanelPiece: "W", economics.BatteryPiece: "Ah",
}

func caseOf(in Input, o, ice *economics.Outcome, works int) (Case, error) {
	b := &in.Reckoning.Boat
	out := Case{
		Workable: o.Works(), Works: works, Reasons: []string{}, ColdShare: fact(o, "cold_share"), CoolShare: fact(o, "cool_share"),
		IceBought: None, IceLost: None, Litres: fact(o, "room_for_food_l"), OverLimit: None, ColdDays: Number(o.ColdDays),
		First: Number(o.First), PerYear: Number(o.PerYear), Present: Number(o.Present), Yearly: Number(o.Yearly),
		CashFlows: []Number{}, CostLines: []CostLine{}, Season: seasonOf(o),
	}
	if o.Facts["option"] == string(economics.IceOnly) {
		kg, lost := o.IceBoughtKg()
		out.IceBought, out.IceLost = Number(kg), when(kg > 0, lost)
	}
	if b.Known["money.budget"] == quantity.Told && b.Money.Budget > 0 {
		out.OverLimit = Number(max(0, o.First-float64(b.Money.Budget)))
	}
	for _, c := range o.Failing {
		text, err := rules.Fill(c.Reason, o.Facts, b.Units, b.Currency)
		if err != nil {
			return Case{}, err
		}
		out.Reasons = append(out.Reasons, text)
	}
	for _, x := range o.Flows {
		out.CashFlows = append(out.CashFlows, Number(x))
	}
	for _, l := range o.Lines {
		out.CostLines = append(out.CostLines, CostLine{l.ID, l.Label, Number(l.Count), l.Unit, Number(l.First), Number(l.Yearly),
			when(l.Life > 0, l.Life), Number(l.Renew), Number(l.Resale)})
	}
	if o.Facts["option"] != string(economics.IceOnly) {
		c := cost.Compare(ledger(ice.Lines), ledger(o.Lines), int(b.Money.Years), cost.Rate(b.Money.Discount))
		a := AgainstIce{NetSavings: Number(c.NetSavings())}
		ratio, ok := c.SavingsToInvestment()
		a.Ratio = when(ok, ratio)
		back, ok := c.AdjustedReturn()
		a.Return = when(ok, float64(back))
		years, ok := c.DiscountedPayback()
		a.PaybackY = when(ok, float64(years))
		out.Comparison = &a
	}
	return out, nil
}

func ledger(lines []economics.CostLine) []cost.Line {
	var out []cost.Line
	for _, l := range lines {
		out = append(out, cost.Line{Name: l.Label, First: quantity.Money(l.First), Yearly: quantity.Money(l.Yearly),
			Life: quantity.Year(l.Life), Used: quantity.Year(l.Used), Renewal: quantity.Money(l.Renew), Resale: quantity.Fraction(l.Resale)})
	}
	return out
}

// fact reads a number fact, null when the option has none.
func fact(o *economics.Outcome, name string) Number {
	x, ok := o.Facts[name].(float64)
	return when(ok, x)
}

func seasonOf(o *economics.Outcome) Season {
	is := func(id economics.OptionID) bool { return o.Facts["option"] == string(id) }
	ice := is(economics.IceOnly)
	unit := is(economics.SmallUnit) || is(economics.LargerUnit)
	only := func(yes bool, name string) Number {
		if !yes {
			return None
		}
		return fact(o, name)
	}
	known, _ := o.Facts["cable_known"].(bool)
	return Season{
		WarmestC: only(ice || unit, "warmest_food_c"), HoursOver5C: only(ice || unit, "hours_over_5c"), LongestOffH: only(ice || unit, "hours_off_longest"),
		RoomL: fact(o, "room_for_food_l"), NeedL: fact(o, "food_to_keep_l"), BoxL: fact(o, "box_volume_l"), LeakWPerK: fact(o, "box_leak_w_per_k"),
		IceKgPerDay: only(ice, "ice_per_day_hottest_kg"), IceKgPerYear: only(ice, "ice_bought_kg_per_year"), IceErrands: only(ice, "ice_errands_per_year"),
		UnitWhPerDay: only(unit, "unit_wh_per_day_hottest"), UnitRunShare: only(unit, "run_share_hottest"), PlateC: only(unit, "plate_c"),
		LowestCharge: fact(o, "battery_lowest_share"), ShoreKWh: fact(o, "shore_kwh_per_year"), EngineKWh: fact(o, "engine_kwh_per_year"),
		BatteryWearKWh: fact(o, "battery_wear_kwh_per_year"), CableDrop: only(unit && known, "cable_drop_share"),
	}
}

func futuresOf(r *economics.Reckoning) Futures {
	f := r.Futures
	out := Futures{
		Count: f.Count, Seed: f.Seed,
		Preferred: string(f.Preferred), Runner: string(f.Runner),
		EVPI: Number(f.EVPI), EVPIError: Number(f.EVPIError), Inputs: []Uncertain{}, Paid: []Cumulative{},
	}
	for _, in := range f.Inputs {
		u := Uncertain{
			Name: in.Name, Label: in.Label, Unit: in.Unit, Low: Number(in.Low), Typical: Number(in.Typical), High: Number(in.High), EVPPI: Number(in.EVPPI),
			SwitchAt: when(in.SwitchKnown, in.SwitchAt), ChanceBeyond: when(in.SwitchKnown, in.ChanceBeyond),
			SwingLow: Number(in.SwingLow), SwingHigh: Number(in.SwingHigh), Taste: in.Taste,
		}
		if in.SwitchKnown {
			u.SwitchSide = map[bool]string{true: "above", false: "below"}[in.SwitchAbove]
			u.SwitchTo = name(in.SwitchTo != "", in.SwitchTo)
		}
		out.Inputs = append(out.Inputs, u)
	}
	for i, id := range economics.Options {
		c := Cumulative{Option: string(id), Low: []Number{}, Typical: []Number{}, High: []Number{}}
		for _, paid := range f.Paid[i] {
			c.Low, c.Typical, c.High = append(c.Low, Number(paid.Low)), append(c.Typical, Number(paid.Typical)), append(c.High, Number(paid.High))
		}
		out.Paid = append(out.Paid, c)
	}
	return out
}

func answerOf(in Input) Answer {
	a := &in.Reckoning.Answer
	out := Answer{Case: string(a.Case), Headline: words.Of(in.Reckoning, in.Book).Answer(), Way: name(a.Way() != "", a.Way()), WayOf100: a.WayOf100,
		NoWorth: when(a.Way() != "", a.NoWorth), YesWorth: when(a.Way() != "", a.YesWorth), Told: None, Counts: []WorthCount{}, Grade: string(in.Reckoning.Boat.EvidenceGrade())}
	if in.Reckoning.Boat.Known["money.cold_day_worth"] == quantity.Told && a.Way() != "" {
		out.Told, out.Yes = Number(a.Worth.Low), &a.YesOf100[0]
	}
	for _, c := range a.Counts {
		out.Counts = append(out.Counts, WorthCount{Number(c.Worth), c.Of100})
	}
	return out
}

func verdictOf(in Input) Verdict {
	v := words.Of(in.Reckoning, in.Book)
	out := Verdict{Reasons: v.Reasons(), Flips: []string{}, Sure: []string{}}
	for _, f := range v.Flips() {
		out.Flips = append(out.Flips, f.Text)
	}
	for _, text := range append([]string{v.Medicine(), v.Grade(), v.Counts()}, v.Also()...) {
		if text != "" {
			out.Sure = append(out.Sure, text)
		}
	}
	measured, told, assumed := in.Reckoning.Boat.EvidenceCounts()
	out.Evidence = Evidence{measured, told, assumed, string(in.Reckoning.Boat.EvidenceGrade())}
	return out
}

func name(known bool, id economics.OptionID) *string {
	if !known {
		return nil
	}
	s := string(id)
	return &s
}
