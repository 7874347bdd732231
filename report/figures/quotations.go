package figures

import "coldreckon/economics"

// Quotation is one offer in the boat's box with its work.
type Quotation struct {
	Name        string   `json:"name"`
	Option      string   `json:"option"` // the unit of the four ways that it would be
	Stands      bool     `json:"stands_for_it"`
	Work        []string `json:"work"` // ids of pieces
	Works       int      `json:"works_of_100_futures"`
	Cheapest    int      `json:"cheapest_that_works_of_100_futures"`
	ColdShare   Number   `json:"cold_share"`
	First       Number   `json:"first_cost"`
	Present     Number   `json:"present_cost"`
	Price       Price    `json:"price_of_a_cold_day"`
	HeldC       Number   `json:"held_c"`
	RunShare    Number   `json:"run_share"`
	AhPerDay    Number   `json:"ah_per_day"`
	AsSheAh     Number   `json:"ah_per_day_box_as_told"`
	At45F       Number   `json:"ah_per_day_at_45_f"`
	At50F       Number   `json:"ah_per_day_at_50_f"`
	Slow        Number   `json:"ah_per_day_slowest"` // null where the speed cannot be set
	PullDownH   Number   `json:"pull_down_h"`        // null when it never gets there
	ColdStoreH  Number   `json:"cold_store_h"`       // null where the box would not warm
	HasRoom     bool     `json:"has_room"`
	GoesThrough string   `json:"goes_through_lid"` // yes, no or unknown
	GoesOnWall  string   `json:"goes_on_wall"`     // likewise
	Unsaid      []string `json:"left_out"`
}

func quotationsOf(r *economics.Reckoning) []Quotation {
	out := []Quotation{}
	for i := range r.Quotations {
		q := &r.Quotations[i]
		cold, _ := q.Figures.Fitted.Shares()
		row := Quotation{
			Name: q.Quotation.Name, Option: string(q.Option), Stands: q.Stands, Work: []string{}, Works: q.Figures.WorksOf100, Cheapest: q.CheapestOf100,
			ColdShare: Number(cold), First: Number(q.Figures.Fitted.First), Present: Number(q.Figures.Fitted.Present),
			Price: Price{Number(q.Figures.PriceOfCold.Low), Number(q.Figures.PriceOfCold.Typical), Number(q.Figures.PriceOfCold.High)},
			HeldC: Number(q.Unit.HeldC), RunShare: Number(q.Unit.RunShare), AhPerDay: Number(q.Unit.AhPerDay), AsSheAh: Number(q.AsShe.AhPerDay),
			At45F: Number(q.At45FAhPerDay), At50F: Number(q.At50FAhPerDay), Slow: told(q.SlowAhPerDay),
			PullDownH: when(q.Unit.PullDownReached, q.Unit.PullDownHours), ColdStoreH: told(q.ColdStoreHours),
			HasRoom: q.HasRoom, GoesThrough: string(q.GoesThrough), GoesOnWall: string(q.GoesOnWall), Unsaid: []string{},
		}
		for _, item := range q.Figures.Fit.Items {
			row.Work = append(row.Work, string(item.Piece))
		}
		for _, u := range q.Unsaid {
			row.Unsaid = append(row.Unsaid, string(u))
		}
		out = append(out, row)
	}
	return out
}
