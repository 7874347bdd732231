package energy

// Chemistry is the battery's kind.
type Chemistry string

// The chemistries.
const (
	Lead    Chemistry = "lead"    // flooded, AGM or gel
	Lithium Chemistry = "lithium" // lithium iron phosphate
)

// Mounting is where a solar panel sits; it sets shade and heat.
type Mounting string

// The mountings.
const (
	Arch   Mounting = "arch"
	Bimini Mounting = "bimini"
	OnDeck Mounting = "deck"
)

// Controller is the solar charge controller.
type Controller string

// The controllers.
const (
	Tracking Controller = "tracking" // follows the panel's maximum power point
	Plain    Controller = "plain"    // switches the panel onto the battery
)

// Condenser is how a unit sheds its heat.
type Condenser string

// The condensers, from the poorest to the best.
const (
	Fins      Condenser = "fins"       // still air in a shut locker
	LockerFan Condenser = "locker_fan" // a fan that stirs the locker's air: the usual built-in unit
	Fan       Condenser = "fan"        // a fan with a duct from outside the locker
	Seawater  Condenser = "seawater"   // pumped or keel-cooled
)

// Plate is the evaporator.
type Plate string

// The plates.
const (
	Thin     Plate = "thin"
	Eutectic Plate = "eutectic" // stores cold at about -10 °C
)

// Size is the class of a unit's compressor.
type Size string

// The sizes.
const (
	Small  Size = "small"
	Larger Size = "larger"
)
