package economics

// Kind is the type of a fact's value.
type Kind string

// The kinds, and the Go type each stands for in Facts.
const (
	Number Kind = "number" // float64, always finite
	Truth  Kind = "truth"  // bool
	Word   Kind = "word"   // string, one of a fixed set
)

// Fact documents one name that rules and price-book quantities may use.
type Fact struct {
	Name string
	Kind Kind
	Unit string // of a Number; the fixed set of a Word
	Doc  string
}

// Vocabulary lists every fact, in the order of the reference page. One set of
// facts describes one option, as told or fitted.
func Vocabulary() []Fact { return vocabulary[:] }

var vocabulary = [...]Fact{
	{"option", Word, "ice dry small larger", "the option these facts describe"},
	{"fitted", Truth, "", "whether the option is reckoned with its fit-out, not as told"},

	{"nights_per_year", Number, "nights", "nights aboard in a year"},
	{"trip_nights", Number, "nights", "nights of one trip"},
	{"shop_every_days", Number, "days", "days between stops where food is bought"},
	{"shore_power_share", Number, "0 to 1", "share of nights on shore power"},
	{"before_trip", Word, "warm precooled running", "state of the box when a trip starts"},
	{"crew", Number, "people", "people aboard"},
	{"person_nights_per_year", Number, "person-nights", "crew times nights"},

	{"box_volume_l", Number, "L", "inside volume of the box, or of a free-standing unit's own chest"},
	{"box_leak_w_per_k", Number, "W/K", "heat that leaks in per degree, work done included"},
	{"foam_thinnest_mm", Number, "mm", "thinnest foam of any face"},
	{"worst_state", Word, "dry damp wet soaked missing", "worst state of the foam of any face"},
	{"lid", Word, "top front", "how the box is opened"},
	{"drain", Word, "open trapped none", "the box's drain"},
	{"fitted_unit", Word, "none works dead unknown", "refrigeration already in the box"},
	{"cabin_hottest_c", Number, "°C", "mean cabin air of the hottest month aboard"},
	{"heat_gain_hottest_w", Number, "W", "mean heat gain in that month, use included"},

	{"food_target_c", Number, "°C", "food temperature aimed for"},
	{"cold_days_wanted", Number, "0 to 1", "share of days that must be cold"},
	{"must_be_cold_share", Number, "0 to 1", "share of the food that needs cooling"},
	{"cool_is_enough", Truth, "", "whether the owner goes by cool days, for drinks, butter and the like"},
	{"medicine", Word, "yes no unknown", "medicine aboard that needs 2 to 8 °C"},
	{"vulnerable", Word, "yes no unknown", "infants, pregnant, old or immune-weakened crew"},

	{"cold_share", Number, "0 to 1", "share of days aboard on which the food was above 5 °C for two hours at most"},
	{"cool_share", Number, "0 to 1", "the same with 10 °C"},
	{"kept_share", Number, "0 to 1", "the one of the two that the owner goes by"},
	{"warm_days_per_year", Number, "days", "days aboard that fail it"},
	{"warmest_food_c", Number, "°C", "food temperature passed in 2 of 100 hours aboard, after the first day of a trip"},
	{"hours_over_5c", Number, "hours", "hours a year with food above 5 °C"},
	{"hours_off_longest", Number, "hours", "longest run without any cooling: no ice left, or the unit cut off"},
	{"room_for_food_l", Number, "L", "room left beside ice or plate"},
	{"food_to_keep_l", Number, "L", "room that the food of one gap between stops, a day's drinks and what lives in the box need"},
	{"ice_per_day_hottest_kg", Number, "kg/day", "ice melted a day in the hottest month"},
	{"ice_capacity_kg", Number, "kg", "ice the box can hold"},
	{"ice_gap_days", Number, "days", "days between stops that sell ice"},
	{"ice_found_at_stops", Number, "0 to 1", "share of stops that sell ice"},
	{"ice_bought_kg_per_year", Number, "kg", "ice billed in a year"},
	{"ice_errands_per_year", Number, "errands", "extra errands for ice in a year"},
	{"run_share_hottest", Number, "0 or more", "share of the hottest month the unit runs; over 1 it cannot hold the target"},
	{"unit_wh_per_day_hottest", Number, "Wh/day", "electricity the unit takes in the hottest month"},
	{"unit_form", Word, "none built_in free_standing", "how the unit comes; none for ice and dry stores"},
	{"cooled_by", Word, "none fins locker_fan fan seawater", "how the unit sheds its heat"},
	{"plate", Word, "none thin eutectic", "the unit's plate"},
	{"plate_c", Number, "°C", "temperature of the plate, or of the ice"},
	{"cable_drop_share", Number, "0 to 1", "voltage lost on the way to the unit; 0 when its cable is not known"},
	{"cable_known", Truth, "", "whether run and size of the cable are known"},

	{"volts", Number, "V", "system voltage"},
	{"battery_ah", Number, "Ah", "nominal battery, additions included"},
	{"battery_kwh", Number, "kWh", "the same as energy"},
	{"chemistry", Word, "lead lithium", "the battery's kind"},
	{"solar_wp", Number, "W", "panel, additions included"},
	{"engine_hours_per_day", Number, "hours", "engine running to charge or move"},
	{"battery_lowest_share", Number, "0 to 1", "lowest charge above the cut-off, as a share of the usable part"},

	{"seal_renewed", Truth, "", "fit-out: new lid gasket"},
	{"drain_trapped", Truth, "", "fit-out: drain trapped"},
	{"lid_insulated", Truth, "", "fit-out: foam added to the lid"},
	{"foam_added_m2", Number, "m²", "fit-out: area of foam added, lid included"},
	{"foam_outside_m2", Number, "m²", "fit-out: the part of it put in from outside"},
	{"foam_added_mm", Number, "mm", "fit-out: thickness of foam added"},
	{"cover_added", Truth, "", "fit-out: insulating cover over the contents"},
	{"vent_added", Truth, "", "fit-out: ducted air for the condenser"},
	{"panel_added_wp", Number, "W", "fit-out: panel added"},
	{"battery_added_ah", Number, "Ah", "fit-out: battery added"},
	{"battery_added_kwh", Number, "kWh", "the same as energy"},
	{"unit_added", Truth, "", "whether a unit is bought"},
	{"holes_below_waterline", Truth, "", "whether the hull is pierced below the heeled waterline"},

	{"shore_kwh_per_year", Number, "kWh", "shore electricity used because of the option"},
	{"shore_nights_per_year", Number, "nights", "nights on shore power"},
	{"engine_kwh_per_year", Number, "kWh", "engine-made electricity the unit used"},
	{"battery_wear_kwh_per_year", Number, "kWh", "energy through the battery because of the option"},
	{"perishables_aboard_kg", Number, "kg", "food aboard that needs cooling, mean between stops"},

	{"first_cost", Number, "money", "first outlay, typical prices; price lines do not know it"},
	{"budget", Number, "money", "most the owner would spend at first"},
	{"budget_given", Truth, "", "whether a budget was told"},
	{"fitted_by", Word, "self yard", "who does the work"},
	{"will_sell", Word, "yes no unknown", "whether the owner will sell within the horizon"},

	{"fuel_vapour_space", Word, "yes no unknown", "petrol or gas vapour could reach where the unit would sit"},
	{"co_alarm", Word, "yes no unknown", "carbon monoxide alarm aboard"},
	{"lithium", Word, "yes no unknown", "lithium battery aboard or planned"},
	{"drain_to", Word, "bilge sump overboard none unknown", "where meltwater goes"},
	{"children", Word, "yes no unknown", "children aboard or near the stored boat"},
	{"latch_opens_inside", Word, "yes no unknown", "whether the lid can be pushed open from inside"},
	{"dry_ice", Word, "yes no unknown", "dry ice carried"},
	{"fish", Word, "yes no unknown", "catch kept aboard"},
	{"eggs", Word, "washed unwashed unknown none", "how eggs are sold where the boat shops"},
	{"wiring_known", Word, "yes no unknown", "wiring seen and known to be sound"},
	{"left_unattended", Word, "yes no unknown", "unit left running with nobody aboard"},
}
