package economics

import (
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Boat is everything an owner tells, or that is assumed for them: the one
// input of a reckoning besides the rule book and the climate. Every field is
// filled before reckoning, within the limits that its question has in package
// questions; Known says how each came to be known.
type Boat struct {
	Units    quantity.System
	Currency string // printed as given, e.g. "$", "EUR"
	Name     string

	Cruising Cruising
	Box      Box
	Evidence Evidence
	Food     Food
	Ice      Ice
	Cooler   Cooler
	Power    Power
	Money    Money
	Small    Unit
	Larger   Unit
	Safety   Safety

	// Quotations are the offers of units that the owner has; the best of each
	// class is reckoned with in place of Small and of Larger.
	Quotations []Quotation
	// Offered holds the quotations that stand for a unit; Reckon fills it.
	Offered map[OptionID]Offer

	// Known maps an answers key (see package questions) to how its value is
	// known. A key that is absent is Assumed.
	Known map[string]quantity.How
	// Assumptions lists every default used, in the order of the questions.
	Assumptions []Assumption
}

// Assumption is one figure the owner did not give, shown to them.
type Assumption struct {
	Key   string `json:"key"`   // the answers key, or the ledger's name of the constant
	Label string `json:"label"` // in plain words
	Value string `json:"value"` // with its unit, in the owner's system
	Why   string `json:"why"`   // where the value comes from
}

// BeforeTrip is the state of the box when a trip starts.
type BeforeTrip string

// The states of a box before a trip.
const (
	Warm      BeforeTrip = "warm"      // as warm as the cabin
	Precooled BeforeTrip = "precooled" // cooled the day before, a unit on shore power
	Running   BeforeTrip = "running"   // a unit was left on, by the boat's own panel and battery
)

// Cruising is where, when and with whom.
type Cruising struct {
	Ground          string            // id of a cruising ground, see package climate
	Nights          [12]float64       // nights aboard, January first, 0 to the days of the month
	TripNights      float64           // nights between leaving home and coming back, >= 1
	ShopEveryDays   float64           // days between stops where food is bought, >= 1
	ShorePowerShare quantity.Fraction // of nights
	BeforeTrip      BeforeTrip
	Crew            float64 // people; a child may count as half
	// Latitude and the twelve air temperatures describe a ground that is not
	// in the tables; they are used when Ground is "own".
	LatitudeDeg  float64                  // north positive
	AirMin       [12]quantity.Celsius     // mean daily lowest, January first
	AirMax       [12]quantity.Celsius     // mean daily highest
	AirOverrides map[int]quantity.Celsius // month 1-12 -> mean air temperature told by the owner
	// Elsewhere is a second ground, NoElsewhere for none. NightsElsewhere are the
	// nights there, of Nights; a month counts for it where they are half or more.
	Elsewhere       string
	NightsElsewhere [12]float64
}

// NoElsewhere is the Cruising.Elsewhere of a boat that stays on one ground.
const NoElsewhere = "none"

// IsElsewhere tells whether a month, 0 for January, counts for the second ground.
func (c *Cruising) IsElsewhere(month int) bool {
	n := c.NightsElsewhere[month]
	return c.Elsewhere != "" && c.Elsewhere != NoElsewhere && n > 0 && 2*n >= c.Nights[month]
}

// Face is what the owner tells of one face of the box.
type Face struct {
	Foam      quantity.Metre // thickness
	Material  heat.Material
	State     heat.State     // how wet the foam is; Missing counts as no foam
	Neighbour heat.Neighbour // what lies behind
	Reach     Reach          // from where foam can be added
}

// Reach is the side from which foam can be added to a face.
type Reach string

// The sides. Foam added from inside takes litres of the box, foam from outside none.
const (
	FromInside  Reach = "inside"
	FromOutside Reach = "outside"
	NotReached  Reach = "no"
)

// Box is the ice box as it stands.
type Box struct {
	Volume      quantity.Litre      // inside; derived from Inside when that is given
	Inside      quantity.Dimensions // zero when only a volume is known
	OpensPerDay float64
	Lid         heat.Lid
	LidSeal     heat.Seal
	LidOpening  quantity.Dimensions // length and width of the opening; height unused
	Drain       heat.Drain
	Faces       map[heat.Side]Face // always all six
	FittedUnit  FittedUnit
	CabinOffset quantity.Kelvin // cabin air over outdoor air
	FoamThere   quantity.Tri    // whether there is any foam; Unknown where nobody has looked
	Cover       quantity.Tri    // an insulating cover lies over the contents
	Alarm       quantity.Tri    // a thermometer aboard sounds an alarm when the box gets warm
	ChestFits   quantity.Tri    // a free-standing chest would find room on deck or a berth
	SpacerFits  quantity.Tri    // a part of the inside may be given to a loose block of foam
	VoidVolume  quantity.Litre  // empty space between liner, foam and joinery that foam can be poured into; 0 where none is told
}

// FittedUnit is the refrigeration already in the box.
type FittedUnit string

// The states of a fitted unit.
const (
	NotFitted   FittedUnit = "none"
	UnitWorks   FittedUnit = "works"
	UnitDead    FittedUnit = "dead"
	UnitUnknown FittedUnit = "unknown" // there is one, and nobody knows whether it works
)

// Evidence is what the box has shown of itself. Weigh holds it against the
// drawing of the box.
type Evidence struct {
	IceTests   []heat.IceTest
	JugTests   []heat.JugTest
	IceHistory []heat.IceHistory
	Logs       []heat.Learnt
}

// Food is what must be kept cold, and how well.
type Food struct {
	Target          quantity.Celsius  // aimed for
	KgPerPersonDay  quantity.Kilogram // food, drinks apart
	MustBeColdShare quantity.Fraction // the part of it that needs cooling
	DrinksADay      float64           // cans of 0.35 L wanted cold, a person and day
	CoolIsEnough    quantity.Tri      // only drinks, butter and the like: 10 °C will do
	ColdDaysWanted  quantity.Fraction // share of days that must be cold, or cool where CoolIsEnough
	DryPremium      quantity.Money    // what food that keeps costs more, a person and night
	Medicine        quantity.Tri      // medicine aboard that needs 2 to 8 °C
	Vulnerable      quantity.Tri      // infants, pregnant, old or immune-weakened crew
	Freeze          Freezing          // wanted frozen aboard, where a unit does the cooling
}

// FirstLoad is where a trip's first ice comes from.
type FirstLoad string

// The sources of a first load.
const (
	FromHome FirstLoad = "home"   // frozen at home at -18 °C, free
	Bought   FirstLoad = "bought" // on the way, at Ice.Price
)

// Ice is how ice is bought.
type Ice struct {
	Price        quantity.MoneyPerKg
	Kind         heat.IceKind
	UnitSize     quantity.Kilogram // one bag or block
	FoundAtStops quantity.Fraction // share of stops that sell it
	FirstLoad    FirstLoad
	HomeFreezer  quantity.Kilogram // most that the freezer at home gives a trip, when FromHome
	Runs         quantity.Tri      // they would fetch ice on days without another errand; Unknown counts as no
	TripCost     quantity.Money    // of each extra errand for ice
	FirstCarry   quantity.Kilogram // most that can be brought at a trip's start; 0 = what fits
	CarryLimit   quantity.Kilogram // most that can be brought at a later stop, by dinghy or on foot
	CarryLoss    quantity.Fraction // of what is bought, melted on the way
	ShareOfBox   quantity.Fraction // of the box given to ice
}

// Power is the boat's electrical system.
type Power struct {
	Volts             quantity.Volt    // nominal
	Battery           quantity.AmpHour // nominal, of the bank that would feed the unit
	BatteryAge        quantity.Year
	Chemistry         energy.Chemistry
	SolarWp           quantity.Watt // rated, of the panel fitted
	Mounting          energy.Mounting
	Controller        energy.Controller
	OtherLoads        quantity.AmpHour          // per day
	EngineHoursPerDay float64                   // on days aboard
	EngineAmps        quantity.Ampere           // into the battery while the engine runs
	MaxPanelWp        quantity.Watt             // most that the boat could carry, what it has included
	CableRun          quantity.Metre            // from battery to unit, one way
	CableSize         quantity.SquareMillimetre // 0 when not known
	ByDay             quantity.Tri              // the owner would run a unit by day only
}

// Bank gives her bank's kind, without its size and age.
func (p Power) Bank() energy.Bank { return energy.Bank{Volts: p.Volts, Chemistry: p.Chemistry} }

// FittedBy is who does the work.
type FittedBy string

// Those who may do it.
const (
	Self FittedBy = "self"
	Yard FittedBy = "yard" // work priced for Self is then multiplied by the book's rate "yard_factor"
)

// Money is the owner's terms.
type Money struct {
	Budget   quantity.Money    // most they would spend at first; 0 = no limit given
	Years    quantity.Year     // horizon, whole years >= 1
	WillSell quantity.Tri      // within the horizon
	Discount quantity.Fraction // a year, above inflation
	// ColdDayWorth is what a day with cold food is worth to the crew against one
	// on food that keeps, its dearer food counted in; it counts only when its
	// key is Told in Known. ColdDayWorthTo is the upper end where they told a
	// range, else 0.
	ColdDayWorth, ColdDayWorthTo quantity.Money
	FittedBy                     FittedBy
}

// Form is how a unit comes.
type Form string

// The forms of a unit.
const (
	BuiltIn      Form = "built_in"      // into the ice box
	FreeStanding Form = "free_standing" // a 12 V chest with walls of its own
)

// Unit is a refrigerating unit under consideration.
type Unit struct {
	Form         Form
	Price        quantity.Money
	Fitting      quantity.Money  // parts and labour, of whoever Money.FittedBy says
	RatedCooling quantity.Watt   // at -10 °C plate and 45 °C condenser
	RatedAmps    quantity.Ampere // average current the maker states, 0 when not told
	RatedBox     quantity.Litre  // "boxes up to", 0 when not told
	CooledBy     energy.Condenser
	Plate        energy.Plate
	Life         quantity.Year
	Upkeep       quantity.Money // per year
	ChestVolume  quantity.Litre // of a free-standing chest
}

// unit gives the unit that an option considers, nil for ice and dry stores.
func (b *Boat) unit(id OptionID) *Unit {
	switch id {
	case SmallUnit:
		return &b.Small
	case LargerUnit:
		return &b.Larger
	}
	return nil
}

// Safety holds the questions that are always asked.
type Safety struct {
	FuelVapourSpace  quantity.Tri // petrol or gas could reach where the unit would sit
	COAlarm          quantity.Tri // a working carbon monoxide alarm in the cabin
	Lithium          quantity.Tri // a lithium bank aboard or planned
	DrainTo          DrainTo
	Children         quantity.Tri // aboard, or near the boat when she is laid up
	LatchOpensInside quantity.Tri // the lid opens with a push from inside
	DryIce           quantity.Tri // ever carried
	Fish             quantity.Tri // catch kept aboard
	Eggs             Eggs
	WiringKnown      quantity.Tri // wiring seen and known to be sound
	LeftUnattended   quantity.Tri // unit left running with nobody aboard
}

// DrainTo is where meltwater goes.
type DrainTo string

// The places that meltwater may go to.
const (
	ToBilge     DrainTo = "bilge"
	ToSump      DrainTo = "sump"
	ToOverboard DrainTo = "overboard"
	ToNowhere   DrainTo = "none" // baled or mopped
	ToUnknown   DrainTo = "unknown"
)

// Eggs tells how eggs are sold where the boat shops.
type Eggs string

// The kinds of egg.
const (
	WashedEggs   Eggs = "washed"
	UnwashedEggs Eggs = "unwashed"
	UnknownEggs  Eggs = "unknown"
	NoEggs       Eggs = "none" // none are eaten
)

// CoolDecides tells whether the owner goes by cool days, at 10 °C, and not by
// cold ones, at 5 °C: they said that this is enough, or aim at more than 5 °C.
func (b *Boat) CoolDecides() bool { return b.Food.CoolIsEnough == quantity.Yes || b.Food.Target > 5 }

// EvidenceGrade is how well the figures behind an answer are known.
type EvidenceGrade string

// The grades.
const (
	Strong EvidenceGrade = "strong" // the box was measured and most figures are the owner's
	Fair   EvidenceGrade = "fair"
	Weak   EvidenceGrade = "weak" // most figures had to be assumed: a typical boat of her kind
)

// EvidenceCounts tells how many figures came from tests, were told or
// remembered, and had to be assumed.
func (b *Boat) EvidenceCounts() (measured, told, assumed int) {
	for key, how := range b.Known {
		switch {
		case how == quantity.Measured && key != "evidence.ice_history":
			measured++
		case how == quantity.Told, how == quantity.Measured: // what is remembered is told
			told++
		}
	}
	return measured, told, len(b.Assumptions)
}

// EvidenceGrade is strong when the box was measured and two thirds of the
// figures are the owner's, weak when fewer than half are, fair between.
// Engineering judgement, from memory.
func (b *Boat) EvidenceGrade() EvidenceGrade {
	measured, told, assumed := b.EvidenceCounts()
	all := float64(measured + told + assumed)
	switch own := float64(measured + told); {
	case all == 0 || own < all/2:
		return Weak
	case measured > 0 && own >= all*2/3:
		return Strong
	}
	return Fair
}
