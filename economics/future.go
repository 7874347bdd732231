package economics

// Future is one way the uncertain inputs may turn out. Every field is a factor
// on a typical value, 0 or above, but CabinK, a difference in kelvin. The same
// future is put to every option.
type Future struct {
	Leak      float64 // of the box, fit-out included
	Use       float64 // lid openings and food brought aboard
	CabinK    float64 // cabin warmer than reckoned
	Nights    float64 // nights aboard a year, for everything billed by the night
	IcePrice  float64 // of bought ice
	Errand    float64 // cost of fetching ice
	Unit      float64 // price of a unit
	Fitting   float64 // cost of fitting it, and of work on box and boat
	Life      float64 // of a unit
	Upkeep    float64 // of a unit
	Eta       float64 // a unit's efficiency
	Capacity  float64 // a unit's cooling power
	House     float64 // other electrical loads
	Sun       float64 // panel yield: shade, dirt and the year
	Battery   float64 // what age has left of the bank
	Spoilage  float64 // what food spoiled on warm days costs
	Materials float64 // every other line of the price book
	Drinks    float64 // wanted cold
	Film      float64 // how well ice cools what lies beside it
	Stow      float64 // heat that the box and what lives in it hold
	Stops     float64 // of a unit that nobody sees in time
	Sky       float64 // sun of a ground whose sun is estimated
	Foam      FoamCase
}

// FoamCase is what turns out to be behind the liner of a box that nobody has
// looked into.
type FoamCase int

// The cases.
const (
	FoamAsTold FoamCase = iota
	BareBottom          // no foam under the bottom
	BareAllRound
	foamCases
)
