package figures

import "coldreckon/economics"

// Sheet is the whole of the figures.
type Sheet struct {
	Schema    int    `json:"schema"` // the constant Schema
	Version   string `json:"version"`
	RulesBook string `json:"rules_and_prices"` // identity of the rule and price files
	Boat      string `json:"boat"`
	Units     string `json:"units"`
	Guidance  string `json:"guidance"`

	Inputs      Inputs                 `json:"inputs"`
	Ground      Ground                 `json:"ground"`
	Box         Box                    `json:"box"`
	Months      []Month                `json:"months"`
	UnitFigures []Unit                 `json:"unit_figures"`
	Quotations  []Quotation            `json:"quotations"` // in the order told
	Options     []Option               `json:"options"`
	Money       Money                  `json:"money"`
	Even        []BreakEven            `json:"break_even"`
	Repair      Repair                 `json:"repair"`
	Beside      Beside                 `json:"beside"`
	Futures     Futures                `json:"futures"`
	Answer      Answer                 `json:"answer"`
	Verdict     Verdict                `json:"verdict"`
	Caution     []Caution              `json:"cautions"`
	Assumed     []economics.Assumption `json:"assumptions"`
}

// Ground is the cruising ground as reckoned with.
type Ground struct {
	ID     string        `json:"id"`
	Name   string        `json:"name"`
	LatDeg Number        `json:"latitude_deg"`
	Months []GroundMonth `json:"months"`
}

// GroundMonth is a month's climate with where it comes from.
type GroundMonth struct {
	Month      int        `json:"month"`
	AirMeanC   Number     `json:"air_mean_c"`
	AirMinC    Number     `json:"air_min_c"`
	AirMaxC    Number     `json:"air_max_c"`
	SeaC       Number     `json:"sea_c"`
	Sun        Number     `json:"sun_kwh_m2_day"`
	Humidity   Number     `json:"humidity_ratio_kg_per_kg"`
	Provenance Provenance `json:"provenance"`
}

// Provenance says where a month's climate comes from.
type Provenance struct {
	Air      string `json:"air"`
	AirRange string `json:"air_range"`
	Sea      string `json:"sea"`
	Sun      string `json:"sun"`
}

// Box is the box as it stands.
type Box struct {
	VolumeL   Number     `json:"volume_l"`
	UA        Number     `json:"ua_w_per_k"`
	UALow     Number     `json:"ua_low_w_per_k"`   // 10th percentile
	UAHigh    Number     `json:"ua_high_w_per_k"`  // 90th percentile
	UADrawn   Number     `json:"ua_drawn_w_per_k"` // from the walls alone
	UALogSD   Number     `json:"ua_log_sd"`        // of its natural logarithm
	IceKg     Number     `json:"ice_capacity_kg"`
	Evidence  []Estimate `json:"evidence"`
	Disagree  bool       `json:"evidence_disagrees"` // views of the leak that cannot all be right
	Why       string     `json:"evidence_in_words"`
	Parts     []Part     `json:"heat_by_source"`
	PartsOf   int        `json:"heat_by_source_month"` // 0 when there are no nights aboard
	Doubts    []string   `json:"doubts"`
	HeatGainW Number     `json:"heat_gain_w"` // of that month
}

// Estimate is one view of the leak, with its 10th and 90th percentiles.
type Estimate struct {
	Source string `json:"source"`
	UA     Number `json:"ua_w_per_k"`
	Low    Number `json:"ua_low_w_per_k"`
	High   Number `json:"ua_high_w_per_k"`
	Used   bool   `json:"used"` // false when it was left out
}

// Part is one way for heat into the box.
type Part struct {
	Source string `json:"source"`
	UA     Number `json:"ua_w_per_k"` // null for openings and goods
	HeatW  Number `json:"heat_w"`
}

// Month is a mean day of a month with nights aboard.
type Month struct {
	Month          int    `json:"month"`
	Nights         int    `json:"nights"`
	CabinC         Number `json:"cabin_c"`
	SeaC           Number `json:"sea_c"`
	LeakW          Number `json:"leak_w"`
	OpeningsW      Number `json:"openings_w"`
	GoodsW         Number `json:"goods_w"`
	HeatGainW      Number `json:"heat_gain_w"`
	IceKgPerDay    Number `json:"ice_kg_per_day"`
	Sun            Number `json:"sun_kwh_m2_day"`
	SolarWhPerDay  Number `json:"solar_wh_per_day"`
	HouseWhPerDay  Number `json:"house_wh_per_day"`
	SmallWhPerDay  Number `json:"small_wh_per_day"`
	LargerWhPerDay Number `json:"larger_wh_per_day"`
	SmallRun       Number `json:"small_run_share"`
	LargerRun      Number `json:"larger_run_share"`
	SmallHeldC     Number `json:"small_held_c"`
	LargerHeldC    Number `json:"larger_held_c"`
}

// Option is one of the four ways.
type Option struct {
	ID          string     `json:"id"`
	Name        string     `json:"name"`
	AsTold      Told       `json:"as_told"`
	Fitted      Fitted     `json:"fitted"`
	ToldWorks   int        `json:"as_told_works_of_100"`
	ToldFutures int        `json:"as_told_futures"`
	Workable    int        `json:"workable_of_100"`
	Best        int        `json:"best_of_100"` // of the ways that were weighed; 0 for the others
	Price       Price      `json:"price_of_cold"`
	Bands                  // of the fitted case
	Regret      Number     `json:"expected_regret"` // a year, of the ways that were weighed
	Worst       *Fortnight `json:"worst_fortnight"` // of the fitted case; null for dry stores and without nights
}

// Price is what a cold day costs with the fitted case, the 10th, 50th and 90th
// percentile over the futures; null where no day is gained.
type Price struct {
	Low     Number `json:"low"`
	Typical Number `json:"typical"`
	High    Number `json:"high"`
}

// Case is an option at typical inputs.
type Case struct {
	Workable   bool        `json:"workable"`
	Works      int         `json:"works_of_100"` // futures
	Reasons    []string    `json:"reasons"`
	ColdShare  Number      `json:"cold_share"` // of days aboard
	CoolShare  Number      `json:"cool_share"`
	IceBought  Number      `json:"ice_bought_kg"`  // a year; null but for ice
	IceLost    Number      `json:"ice_lost_share"` // of it; null where none is bought
	Litres     Number      `json:"litres"`         // room left for food
	OverLimit  Number      `json:"over_limit"`     // by which the first cost exceeds the owner's limit; null where none was told
	ColdDays   Number      `json:"cold_days_per_year"`
	First      Number      `json:"first_cost"`
	PerYear    Number      `json:"per_year"`
	Present    Number      `json:"present_cost"`
	Yearly     Number      `json:"yearly_equivalent"`
	CashFlows  []Number    `json:"cash_flows"` // year 0 first, costs positive
	CostLines  []CostLine  `json:"cost_lines"`
	Season     Season      `json:"season"`
	Comparison *AgainstIce `json:"against_ice"` // null for ice itself
}

// Bands are the 10th and 90th percentiles of an option's costs over the futures.
type Bands struct {
	FirstLow    Number `json:"first_cost_low"`
	FirstHigh   Number `json:"first_cost_high"`
	PerYearLow  Number `json:"per_year_low"`
	PerYearHigh Number `json:"per_year_high"`
	PresentLow  Number `json:"present_cost_low"`
	PresentHigh Number `json:"present_cost_high"`
	YearlyLow   Number `json:"yearly_equivalent_low"`
	YearlyHigh  Number `json:"yearly_equivalent_high"`
}

// Told is an option without any work.
type Told struct {
	Case
	Bands // over as_told_futures
}

// Fitted is an option with the work found for it.
type Fitted struct {
	Case
	FitOut      []FitItem `json:"fit_out"`
	Pieces      []Piece   `json:"pieces"`  // the same pieces, with what each costs at first
	Reached     bool      `json:"reached"` // whether it works in nine of ten futures
	Searched    int       `json:"search_futures"`
	SearchWorks Number    `json:"search_works_share"`
}

// Season is what a mean year aboard takes and gives.
type Season struct {
	WarmestC       Number `json:"warmest_food_c"` // this and the next two: null for dry stores
	HoursOver5C    Number `json:"hours_over_5c_per_year"`
	LongestOffH    Number `json:"longest_off_h"`
	RoomL          Number `json:"room_for_food_l"`
	NeedL          Number `json:"food_to_keep_l"`
	BoxL           Number `json:"box_volume_l"`
	LeakWPerK      Number `json:"ua_w_per_k"`
	IceKgPerDay    Number `json:"ice_hottest_kg_per_day"` // this and the next two: null but for ice
	IceKgPerYear   Number `json:"ice_bought_kg_per_year"`
	IceErrands     Number `json:"ice_errands_per_year"`
	UnitWhPerDay   Number `json:"unit_hottest_wh_per_day"` // this and the next two: null but for units
	UnitRunShare   Number `json:"unit_hottest_run_share"`
	PlateC         Number `json:"plate_c"`
	LowestCharge   Number `json:"battery_lowest_share"`
	ShoreKWh       Number `json:"shore_kwh_per_year"`
	EngineKWh      Number `json:"engine_kwh_per_year"`
	BatteryWearKWh Number `json:"battery_wear_kwh_per_year"`
	CableDrop      Number `json:"cable_drop_share"` // null when the cable is not known
}

// CostLine is one line of a cost table.
type CostLine struct {
	ID     string `json:"id"`
	Label  string `json:"label"`
	Count  Number `json:"count"`
	Unit   string `json:"unit"`
	First  Number `json:"first"`
	Yearly Number `json:"yearly"`
	LifeY  Number `json:"life_years"` // null when it lasts
	Renew  Number `json:"renewal"`
	Resale Number `json:"resale_share"` // of the price, seen again at the end
}

// AgainstIce sets an option as told beside ice as told, or as fitted beside ice
// as fitted (ASTM E1074, E1057 and E1121). Null stands where a measure has no
// value, such as a ratio of savings to no investment.
type AgainstIce struct {
	NetSavings Number `json:"net_savings"`
	Ratio      Number `json:"savings_to_investment"`
	Return     Number `json:"adjusted_return"`
	PaybackY   Number `json:"discounted_payback_years"`
}

// FitItem is one piece of the work, with what the option would be without it.
type FitItem struct {
	Piece          string `json:"piece"`
	What           string `json:"what"`
	Size           Number `json:"size"`
	Unit           string `json:"unit"` // mm, W, Ah; "" for the rest
	WithoutWorks   int    `json:"without_works_of_100"`
	WithoutPresent Number `json:"without_present_cost_more"`
}

// Piece is one piece of the work with what it costs at first.
type Piece struct {
	ID      string `json:"id"`
	Size    Number `json:"size"` // in the unit of fit_out
	Low     Number `json:"cost_low"`
	Typical Number `json:"cost_typical"`
	High    Number `json:"cost_high"`
	// Hours of own hands' work, 0 where a yard does it.
	HoursLow  Number `json:"hours_low"`
	HoursHigh Number `json:"hours_high"`
}

// Money is the owner's terms.
type Money struct {
	Discount Number `json:"discount"`
	Years    int    `json:"years"`
	Currency string `json:"currency"`
}

// Repair is what becomes of an old unit aboard.
type Repair struct {
	WorthUpTo Number `json:"worth_up_to"` // null when there is none to repair
}

// BreakEven is the nights a year at which a unit costs what ice costs, both as told.
type BreakEven struct {
	Option      string `json:"option"`
	Nights      Number `json:"nights_per_year"` // null when they never meet within a year
	UnitCheaper bool   `json:"unit_cheaper_now"`
}

// Futures is what the uncertain inputs do to the decision.
type Futures struct {
	Count     int          `json:"count"`
	Seed      uint64       `json:"seed"`
	Preferred string       `json:"preferred"`           // of lowest mean loss; the answer goes by counts
	Runner    string       `json:"preferred_runner_up"` // of next lowest, on which the swings are measured
	EVPI      Number       `json:"evpi"`                // this and the next: a year
	EVPIError Number       `json:"evpi_standard_error"`
	Inputs    []Uncertain  `json:"inputs"`
	Paid      []Cumulative `json:"paid_by_year"`
}

// Uncertain is one uncertain input.
type Uncertain struct {
	Name         string  `json:"name"`
	Label        string  `json:"label"`
	Unit         string  `json:"unit"`
	Low          Number  `json:"low"` // 10th percentile
	Typical      Number  `json:"typical"`
	High         Number  `json:"high"`        // 90th percentile
	EVPPI        Number  `json:"evppi"`       // a year
	SwitchAt     Number  `json:"switch_at"`   // null when the choice never turns on it
	SwitchSide   string  `json:"switch_side"` // "above" or "below", "" when there is none
	SwitchTo     *string `json:"switch_to"`   // the option that is most often best beyond it
	ChanceBeyond Number  `json:"chance_beyond"`
	SwingLow     Number  `json:"swing_low"` // this and the next: a year
	SwingHigh    Number  `json:"swing_high"`
	Taste        bool    `json:"taste"`
}

// Cumulative is what a fitted option has cost by each year's end.
type Cumulative struct {
	Option  string   `json:"option"`
	Low     []Number `json:"low"`
	Typical []Number `json:"typical"`
	High    []Number `json:"high"`
}

// Answer is what to do. Money is a day.
type Answer struct {
	Case     string       `json:"case"`
	Headline string       `json:"headline"`
	Way      *string      `json:"way"` // that leads, or comes nearest; null where there is nothing to decide
	WayOf100 int          `json:"way_of_100"`
	NoWorth  Number       `json:"no_worth"`   // of a cold day, up to which the answer is no
	YesWorth Number       `json:"yes_worth"`  // from which it is yes
	Told     Number       `json:"worth_told"` // the lower end, where a range was told; null where none was
	Yes      *int         `json:"yes_of_100"` // futures in which the way is worth that; null where none was told
	Counts   []WorthCount `json:"counts"`
	Grade    string       `json:"evidence_grade"`
}

// WorthCount is in how many futures a cold day costs no more than a worth.
type WorthCount struct {
	Worth Number `json:"worth"`
	Of100 int    `json:"of_100"`
}

// Verdict is what is said beside the answer.
type Verdict struct {
	Reasons  []string `json:"reasons"`
	Flips    []string `json:"flips"`
	Sure     []string `json:"how_sure"`
	Evidence Evidence `json:"evidence"`
}

// Evidence counts how the owner's figures are known.
type Evidence struct {
	Measured int    `json:"measured"`
	Told     int    `json:"told"`
	Assumed  int    `json:"assumed"`
	Grade    string `json:"grade"`
}

// Caution is a warning that fired.
type Caution struct {
	ID      string   `json:"id"`
	Grade   string   `json:"grade"`
	Option  string   `json:"option"` // the first it concerns, in printing order
	Options []string `json:"options"`
	Text    string   `json:"text"`
	Source  string   `json:"source"`
}
