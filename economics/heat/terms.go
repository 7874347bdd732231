package heat

// Material names a wall filling.
type Material string

// The fillings, with their dry conductivity in constants.go.
const (
	OldPolyurethane Material = "old_polyurethane" // blown in place decades ago, or of unknown age
	Polyurethane    Material = "polyurethane"     // new closed-cell board or pour
	XPS             Material = "xps"              // extruded polystyrene board
	EPS             Material = "eps"              // bead board
	Cork            Material = "cork"
)

// State tells how much water a filling has taken up.
type State string

// The states, with their water content in constants.go.
const (
	Dry     State = "dry"
	Damp    State = "damp"
	Wet     State = "wet"
	Soaked  State = "soaked"
	Missing State = "missing" // no filling behind the liner
)

// Neighbour is what lies on the far side of a face.
type Neighbour string

// The neighbours.
const (
	Cabin  Neighbour = "cabin"
	Sea    Neighbour = "sea"    // hull side below or near the waterline
	Engine Neighbour = "engine" // engine space: cabin + 8 K while motoring
	Deck   Neighbour = "deck"   // deck in sun: cabin + 3 K
)

// Side names one of a box's six faces.
type Side string

// The six faces. Outboard is the face towards the hull, inboard towards the cabin.
const (
	Top      Side = "top"
	Bottom   Side = "bottom"
	Inboard  Side = "inboard"
	Outboard Side = "outboard"
	Fore     Side = "fore"
	Aft      Side = "aft"
)

// Sides lists the six faces in the order they are asked and printed.
var Sides = [6]Side{Top, Bottom, Inboard, Outboard, Fore, Aft}

// Lid tells how the box is opened.
type Lid string

// The lids.
const (
	TopLid    Lid = "top"
	FrontDoor Lid = "front"
)

// Seal tells how well the lid closes.
type Seal string

// The seals.
const (
	GoodSeal Seal = "good"  // compressed gasket all round
	PoorSeal Seal = "worn"  // gasket hard or gapped
	NoSeal   Seal = "rests" // the lid only rests on its rim
)

// Drain tells where the box's drain leads air.
type Drain string

// The drains.
const (
	OpenDrain    Drain = "open"
	TrappedDrain Drain = "trapped" // trapped or plugged
	NoDrain      Drain = "none"
)

// IceKind is the form ice is bought in.
type IceKind string

// The kinds.
const (
	Block   IceKind = "block"
	Cubes   IceKind = "cubes"
	Crushed IceKind = "crushed"
)
