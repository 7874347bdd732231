package heat

import (
	"fmt"

	"coldreckon/economics/quantity"
)

// Water and ice.
const (
	// FusionKJPerKg is the heat that melts ice at 0 °C. From memory; textbooks
	// print 333.4 to 335.
	FusionKJPerKg = 333.6
	// IceKJPerKgK is the heat capacity of ice. From memory; Earle, appendix 7,
	// has 2.05; it is 2.12 at 0 °C and 1.98 at -18 °C.
	IceKJPerKgK = 2.1
	// WaterKJPerKgK is the heat capacity of water. Earle, appendix 7.
	WaterKJPerKgK = 4.19
	// DrainCelsius is the temperature at which meltwater leaves a drained box.
	// Engineering judgement, from memory.
	DrainCelsius quantity.Celsius = 2
	// FreezerCelsius is the temperature of ice from a home freezer. Common practice, no source.
	FreezerCelsius quantity.Celsius = -18
)

// What stands in the box.
const (
	// PerishableKJPerKgK is the heat capacity of food that must be kept cold.
	// Engineering judgement, from memory, inside the 3.2 to 3.9 that Earle,
	// appendix 7, lists for meat, fish, milk and vegetables.
	PerishableKJPerKgK = 3.5
	// JarsKJPerKPerL is the heat capacity of what lives in a box whatever is
	// bought (jars, bottles, butter), per litre of the box as told: 0.1 kg of
	// water a litre, jarsMostKJPerK at most. Engineering judgement, from memory.
	JarsKJPerKPerL = 0.40
	jarsMostKJPerK = 40
	// BareKJPerKPerL is the heat capacity per litre of an empty box: 3 mm of laminate (1,600 kg/m³,
	// 1.2 kJ/kg·K) and the inner 15 mm of foam (35 kg/m³, 1.4 kJ/kg·K) on
	// 0.15 m² of wall for 10 L come to 1 kJ/K; half as much again for lid, rim
	// and shelf. Densities and heat capacities from memory.
	BareKJPerKPerL = 0.15
	// jugFilmWPerKPerKg is the conductance between standing jugs of water and
	// the box's air, about 1.8 W/K for 10 L. Engineering judgement, from memory.
	jugFilmWPerKPerKg = 0.18
)

// Surface films, W/m²·K.
const (
	filmVerticalWPerM2K = 8.3 // still air at a wall. ASHRAE Fundamentals (8.29), from memory
	filmDownWPerM2K     = 6.1 // still air, heat flowing down. ASHRAE Fundamentals (6.13), from memory
	filmUpWPerM2K       = 9.3 // still air, heat flowing up. ASHRAE Fundamentals (9.26), from memory
	filmWaterWPerM2K    = 500 // sea along a hull. Engineering judgement, from memory
)

// Shape factors of a box's rim: Langmuir, Adams and Meikle 1913; Holman,
// Heat Transfer, ch. 3; Incropera, table 4.1. They hold while every inside
// length is over a fifth of the wall's thickness.
const (
	edgeShape          = 0.54   // per length of inside edge
	cornerShape        = 0.15   // per thickness of wall
	shapeLengthPerWall = 1 / 5. // least inside length per wall thickness
	// Edges and corners count in full from fullRimM of foam on and not at all
	// up to noRimM: films rule there, and the shape factors do not know them.
	// Engineering judgement, from memory.
	noRimM, fullRimM = 0.010, 0.020
)

// Neighbours warmer than the cabin. Engineering judgement, from memory.
const (
	engineOverCabin quantity.Kelvin = 8 // engine space while motoring
	deckOverCabin   quantity.Kelvin = 3 // deck in sun, as a mean over the day
)

// Figure is a constant that is not the same in every boat: a range, and where
// the range comes from.
type Figure struct {
	Name   string // in plain words
	Unit   string
	Range  quantity.Range
	Source string
}

const judgement = "engineering judgement, from memory"

// figureOf finds the figure of a kind, which is to be one of those wanted.
func figureOf[K ~string](what string, kind K, figures map[K]Figure, want string) (Figure, error) {
	f, known := figures[kind]
	if !known {
		return Figure{}, fmt.Errorf("%s %q is not known; want %s", what, kind, want)
	}
	return f, nil
}

// Conductivity gives the dry conductivity of a filling, W/m·K. An unknown
// material is an error.
func Conductivity(m Material) (Figure, error) {
	return figureOf("material", m, conductivities, "old_polyurethane, polyurethane, xps, eps or cork")
}

var conductivities = map[Material]Figure{
	OldPolyurethane: {"conductivity of old polyurethane foam, dry", "W/m·K", quantity.Range{Low: 0.025, Typical: 0.028, High: 0.033},
		judgement + "; CIBSE Guide A has 0.028 for board and 0.030 for older gas-blown foam in use"},
	Polyurethane: {"conductivity of new polyurethane foam, dry", "W/m·K", quantity.Range{Low: 0.022, Typical: 0.024, High: 0.026},
		"cold-store wall table (Dossat) 0.025; two fish-box studies measured 0.023 and 0.026"},
	XPS: {"conductivity of extruded polystyrene, dry", "W/m·K", quantity.Range{Low: 0.029, Typical: 0.033, High: 0.035},
		"cold-store wall table (Dossat) 0.029; EN 13164 data sheets 0.033 to 0.035"},
	EPS: {"conductivity of bead board, dry", "W/m·K", quantity.Range{Low: 0.033, Typical: 0.036, High: 0.040},
		"cold-store wall table (Dossat) 0.036; Çengel, problem 3-162, 0.033; upper end " + judgement},
	Cork: {"conductivity of cork board, dry", "W/m·K", quantity.Range{Low: 0.041, Typical: 0.043, High: 0.050},
		"cold-store wall table (Dossat) and Geankoplis, example 4.3-1, 0.0433; dense cork 0.05"},
}

// ChestFoam gives the foam all round a free-standing 12 V chest, m. Nine chests
// of 35 to 50 L measured in a laboratory fit it together with energy.ChestEta.
func ChestFoam() Figure {
	return Figure{"foam of a free-standing chest", "m", quantity.Range{Low: 0.018, Typical: 0.025, High: 0.035}, judgement}
}

// soakedConductivity gives the conductivity of waterlogged foam of any kind, W/m·K.
func soakedConductivity() Figure {
	return Figure{"conductivity of soaked foam", "W/m·K", quantity.Range{Low: 0.10, Typical: 0.20, High: 0.30}, judgement}
}

// WaterContent gives the water in a filling as a share of its volume. Soaked
// foam has a conductivity of its own, and missing foam none: both are errors
// here, as is an unknown state.
func WaterContent(s State) (quantity.Fraction, error) {
	if water, known := waterContents[s]; known {
		return water, nil
	}
	return 0, fmt.Errorf("state %q has no water content; want dry, damp or wet", s)
}

// waterContents are engineering judgement, from memory.
var waterContents = map[State]quantity.Fraction{Dry: 0, Damp: 0.04, Wet: 0.12}

// MoistureFactor gives f of EN ISO 10456, k = k_dry·exp(f·w), w the water as a
// share of the volume; values from memory. The standard uses it to about
// w = 0.10 (0.15 for polyurethane). An unknown material is an error.
func MoistureFactor(m Material) (float64, error) {
	if factor, known := moistureFactors[m]; known {
		return factor, nil
	}
	return 0, fmt.Errorf("material %q is not known; want old_polyurethane, polyurethane, xps, eps or cork", m)
}

var moistureFactors = map[Material]float64{OldPolyurethane: 6, Polyurethane: 6, Cork: 6, EPS: 4, XPS: 2.5}

// SealLoss gives the heat that passes a lid's seal, W/K per metre of its
// length. An unknown seal is an error.
func SealLoss(s Seal) (Figure, error) {
	return figureOf("lid seal", s, sealLosses, "good, worn or rests")
}

var sealLosses = map[Seal]Figure{
	GoodSeal: {"heat past a good lid seal", "W/m·K", quantity.Range{Low: 0.05, Typical: 0.08, High: 0.15}, judgement},
	PoorSeal: {"heat past a worn lid seal", "W/m·K", quantity.Range{Low: 0.10, Typical: 0.20, High: 0.35}, judgement},
	NoSeal:   {"heat past a lid that only rests", "W/m·K", quantity.Range{Low: 0.20, Typical: 0.35, High: 0.50}, judgement},
}

// DrainLoss gives the heat that air carries in through a drain, W/K. An
// unknown drain is an error.
func DrainLoss(d Drain) (Figure, error) {
	return figureOf("drain", d, drainLosses, "open, trapped or none")
}

var drainLosses = map[Drain]Figure{
	OpenDrain:    {"heat through an open drain", "W/K", quantity.Range{Low: 0.05, Typical: 0.15, High: 0.40}, judgement},
	TrappedDrain: {"heat through a trapped drain", "W/K", quantity.Exactly(0), judgement},
	NoDrain:      {"heat through a trapped drain", "W/K", quantity.Exactly(0), judgement},
}

// IceFilm gives what a square metre of ice takes up per kelvin of food over it,
// W/m²·K, with food up to 5 °C: radiation and still air alone are 7, contact is
// the rest. Ice that lies under the food is at the low end.
func IceFilm() Figure {
	return Figure{"heat that ice takes up through its surface", "W/m²·K", quantity.Range{Low: 6, Typical: 9, High: 14}, judgement}
}

// iceKinds are those that there are.
const iceKinds = "block, cubes or crushed"

// LumpDensity gives the density, kg/m³, of the lump as which ice of a kind
// cools: pieces that touch count as one, with the air between them (for up to
// eight pieces 0.83 to 1.08 of that). An unknown kind is an error.
func LumpDensity(k IceKind) (Figure, error) { return figureOf("ice kind", k, lumpDensities, iceKinds) }

var (
	looseIce      = Figure{"density of a heap of loose ice", "kg/m³", quantity.Exactly(560), paper436}
	lumpDensities = map[IceKind]Figure{
		Block:   {"density of block ice", "kg/m³", quantity.Exactly(920), "0.917 kg/L at 0 °C, any handbook; from memory"},
		Crushed: looseIce,
		Cubes:   looseIce,
	}
)

const paper436 = "FAO Fisheries Technical Paper 436 (2003), table 2.1, from memory"

// SwapShare gives the part of the box's free air that one opening exchanges,
// 0 to 1. Cold air stays in a box opened from above. An unknown lid is an error.
func SwapShare(l Lid) (Figure, error) { return figureOf("lid", l, swapShares, "top or front") }

var swapShares = map[Lid]Figure{
	TopLid:    {"air lost at one opening, top lid", "share", quantity.Range{Low: 0.2, Typical: 0.3, High: 0.6}, judgement},
	FrontDoor: {"air lost at one opening, front door", "share", quantity.Range{Low: 0.6, Typical: 0.8, High: 1.0}, judgement},
}

// BulkDensity gives the ice that stows in a litre, kg/L. An unknown kind is an error.
func BulkDensity(k IceKind) (Figure, error) { return figureOf("ice kind", k, bulkDensities, iceKinds) }

var bulkDensities = map[IceKind]Figure{
	Block:   {"ice in a litre, block", "kg/L", quantity.Range{Low: 0.85, Typical: 0.92, High: 0.92}, paper436},
	Crushed: {"ice in a litre, crushed", "kg/L", quantity.Range{Low: 0.66, Typical: 0.68, High: 0.71}, paper436},
	Cubes:   {"ice in a litre, cubes", "kg/L", quantity.Range{Low: 0.50, Typical: 0.56, High: 0.62}, paper436},
}
