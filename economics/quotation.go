package economics

import (
	"fmt"
	"maps"
	"math"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Quotation is one offer of a unit, as it lies on the owner's table. A zero
// means that the offer does not say; only Name and Price must be there.
type Quotation struct {
	Name  string         // the owner's own name for it
	Price quantity.Money // of the unit, without fitting
	// Fitting is parts and labour as quoted; it counts only when FittingQuoted.
	// Else it is what FittedBy usually takes.
	Fitting       quantity.Money
	FittingQuoted bool
	FittedBy      FittedBy
	Class         energy.Size      // small or larger, else told from its cooling
	Form          Form             // else built in
	Cooling       quantity.Watt    // at -10 °C plate and 45 °C condenser, as printed
	MeanAmps      quantity.Ampere  // average over a day, as printed
	BoxUpTo       quantity.Litre   // "boxes up to", as printed
	RunningAmps   quantity.Ampere  // while it runs, as printed
	CooledBy      energy.Condenser // else that of the boat's unit of its class
	Plate         energy.Plate     // likewise
	// PlateSize is width and height of a flat plate, as Length and Width.
	PlateSize   quantity.Dimensions
	ChestVolume quantity.Litre // of a free-standing chest
	Control     Control
	Refrigerant string
	Warranty    quantity.Year
	NoiseDB     float64       // dB(A), as printed
	Age         quantity.Year // of a second-hand unit
}

// Control is how a unit is kept from running all day.
type Control string

// The controls.
const (
	Thermostat Control = "thermostat" // on and off at one speed
	SpeedKnob  Control = "speed"      // the compressor's speed can be set, or sets itself
)

// largerFrom is the cooling from which a unit counts as larger: the mean, as
// ratios go, of the usual cooling of the two classes.
func largerFrom() quantity.Watt {
	return quantity.Watt(math.Sqrt(energy.UsualCooling(energy.Small).Typical * energy.UsualCooling(energy.Larger).Typical))
}

// cooling gives what the offer's own figures say of its cooling, 0 where they
// say nothing: the watts printed, else what the running current comes to.
func (q *Quotation) cooling(b *Boat) quantity.Watt {
	switch {
	case q.Cooling > 0:
		return q.Cooling
	case q.RunningAmps > 0:
		unit := energy.Unit{Eta: energy.EtaOf(q.Form == FreeStanding).Typical, CooledBy: q.CooledBy, Plate: q.Plate}
		watts := quantity.Watt(float64(q.RunningAmps) * float64(b.Power.Volts))
		return unit.RatedFor(watts, energy.MakerBox, quantity.Celsius(energy.MakerAmbient().Typical))
	}
	return 0
}

// Option tells whether the offer is taken for the small or the larger unit.
func (q *Quotation) Option(b *Boat) OptionID {
	if q.Class == energy.Larger || q.Class == "" && q.cooling(b) >= largerFrom() {
		return LargerUnit
	}
	return SmallUnit
}

// leastLeft is the life that a second-hand unit has left at least, years.
// Engineering judgement, from memory.
const leastLeft = 1.0

// unit gives the offer as the unit that a boat is reckoned with. What it does
// not say is that of the boat's unit of its class, and of the book.
func (q *Quotation) unit(b *Boat, book *Book) Unit {
	u, class := b.Small, "small"
	if q.Option(b) == LargerUnit {
		u, class = b.Larger, "larger"
	}
	form := q.Form
	if form == "" {
		form = BuiltIn
	}
	if form != u.Form { // figures of another kind of thing
		life := class + "_life"
		if form == FreeStanding {
			life = "chest_life"
		}
		u.Life = quantity.Year(book.typical(life, float64(u.Life)))
	}
	share := 0.0
	if u.Price > 0 {
		share = float64(u.Upkeep / u.Price)
	}
	u.Form, u.Price, u.Upkeep = form, q.Price, quantity.Money(share*float64(q.Price))
	switch {
	case form == FreeStanding:
		u.Fitting = 0
		if q.ChestVolume > 0 {
			u.ChestVolume = q.ChestVolume
		} else if u.ChestVolume == 0 {
			u.ChestVolume = usualChest
		}
	case q.FittingQuoted:
		u.Fitting = q.Fitting
	case q.FittedBy != "":
		u.Fitting = quantity.Money(book.typical(class+"_fitting_"+string(q.FittedBy), float64(u.Fitting)))
	}
	if q.CooledBy != "" {
		u.CooledBy = q.CooledBy
	}
	if q.Plate != "" {
		u.Plate = q.Plate
	}
	u.RatedAmps, u.RatedBox = q.MeanAmps, q.BoxUpTo
	size := energy.Small
	if class == "larger" {
		size = energy.Larger
	}
	u.RatedCooling = q.cooling(b)
	if u.RatedCooling == 0 {
		plate := energy.RatingPlate{BoxUpTo: q.BoxUpTo, Box: energy.MakerBox, Ambient: energy.MakerAmbient().Range,
			CooledBy: u.CooledBy, Plate: u.Plate, Size: size}
		u.RatedCooling = quantity.Watt(plate.Meaning().Cooling.Typical)
	}
	return u
}

// WithOffer gives the boat with the quotation of a name standing for the unit of
// its class, which it returns. A name that no quotation has is an error.
func (b Boat) WithOffer(name string, book *Book) (Boat, OptionID, error) {
	for i := range b.Quotations {
		if q := &b.Quotations[i]; q.Name == name {
			return b.offered(q, book), q.Option(&b), nil
		}
	}
	return b, "", fmt.Errorf("there is no unit %q. Give small, larger or the name of a quotation", name)
}

// offered gives the boat with a quotation standing for the unit of its class.
func (b Boat) offered(q *Quotation, book *Book) Boat {
	id, unit := q.Option(&b), q.unit(&b, book)
	usual := b.Small.Price
	if id == LargerUnit {
		usual = b.Larger.Price
	}
	b.Offered, b.Known = maps.Clone(b.Offered), maps.Clone(b.Known)
	if b.Offered == nil {
		b.Offered = map[OptionID]Offer{}
	}
	if b.Known == nil {
		b.Known = map[string]quantity.How{}
	}
	b.Offered[id] = Offer{*q, usual}
	if id == SmallUnit {
		b.Small = unit
	} else {
		b.Larger = unit
	}
	key := "units_considered." + string(id) + "."
	told := map[string]bool{
		"form": true, "price": true, "fitting": q.FittingQuoted, "rated_cooling": q.Cooling > 0 || q.RunningAmps > 0, "rated_amps": q.MeanAmps > 0,
		"rated_box": q.BoxUpTo > 0, "cooled_by": q.CooledBy != "", "plate": q.Plate != "", "chest_volume": q.ChestVolume > 0,
	}
	for name, is := range told {
		if is {
			b.Known[key+name] = quantity.Told
		} else {
			delete(b.Known, key+name)
		}
	}
	return b
}

// withoutOffer gives the boat with no quotation for a unit, whose figures stay.
func (b Boat) withoutOffer(id OptionID) Boat {
	b.Offered = maps.Clone(b.Offered)
	delete(b.Offered, id)
	return b
}

// Offer is a quotation that stands for a unit, with the usual price of a new one.
type Offer struct {
	Quotation
	UsualPrice quantity.Money
}

// offer gives the quotation that a proposal is, nil where it is none.
func (p *proposal) offer() *Offer {
	if q, ok := p.boat.Offered[p.option]; ok {
		return &q
	}
	return nil
}

// Unsaid names a figure that an offer leaves out.
type Unsaid string

// What an offer may leave out that decides something.
const (
	NoCooling   Unsaid = "cooling"      // watts, and at which temperatures
	NoAmps      Unsaid = "running_amps" // while it runs
	NoAmbient   Unsaid = "ambient"      // the box and the air behind an average current or a box size
	NoPlate     Unsaid = "plate_size"
	NoCondenser Unsaid = "cooled_by"
	NoWarranty  Unsaid = "warranty"
)

// Unsaid lists what the offer leaves out.
func (q *Quotation) Unsaid() []Unsaid {
	var out []Unsaid
	add := func(missing bool, what Unsaid) {
		if missing {
			out = append(out, what)
		}
	}
	add(q.Cooling == 0, NoCooling)
	add(q.RunningAmps == 0, NoAmps)
	add(q.MeanAmps > 0 || q.BoxUpTo > 0, NoAmbient)
	add(q.Form != FreeStanding && q.PlateSize.Zero(), NoPlate)
	add(q.CooledBy == "", NoCondenser)
	add(q.Warranty == 0, NoWarranty)
	return out
}

// Slack that a plate needs at an opening, and beside the corners of a wall.
// Engineering judgement, from memory.
const (
	throughSlack quantity.Metre = 0.01
	wallSlack    quantity.Metre = 0.03
)

// GoesThrough tells whether the flat plate goes on edge through the opening of
// the lid: one of its sides must not exceed the opening's diagonal. It is
// unknown where plate or opening is.
func (q *Quotation) GoesThrough(box Box) quantity.Tri {
	open := box.LidOpening
	if q.Form == FreeStanding {
		return quantity.Yes
	}
	if q.PlateSize.Zero() || open.Length <= 0 || open.Width <= 0 {
		return quantity.Unknown
	}
	narrow := math.Min(float64(q.PlateSize.Length), float64(q.PlateSize.Width))
	return tri(narrow <= math.Hypot(float64(open.Length), float64(open.Width))-float64(throughSlack))
}

// GoesOnWall tells whether an upright wall of the box, lined with so much foam
// inside, takes the flat plate. It is unknown where the plate's size or the
// box's measures are.
func (q *Quotation) GoesOnWall(box Box, lining quantity.Metre) quantity.Tri {
	if q.Form == FreeStanding {
		return quantity.Yes
	}
	in := box.Inside
	if q.PlateSize.Zero() || in.Zero() {
		return quantity.Unknown
	}
	less := 2*lining + wallSlack
	low, high := min(q.PlateSize.Length, q.PlateSize.Width), max(q.PlateSize.Length, q.PlateSize.Width)
	for _, side := range [2]quantity.Metre{in.Length, in.Width} {
		a, b := min(side, in.Height)-less, max(side, in.Height)-less
		if low <= a && high <= b {
			return quantity.Yes
		}
	}
	return quantity.No
}

func tri(is bool) quantity.Tri {
	if is {
		return quantity.Yes
	}
	return quantity.No
}

// lining is the thickness of foam that a fit-out adds on inside walls.
func (f FitOut) lining(b Box) quantity.Metre {
	for _, side := range [4]heat.Side{heat.Fore, heat.Aft, heat.Inboard, heat.Outboard} {
		if b.Faces[side].Reach == FromInside {
			return f.InsideFoam
		}
	}
	return 0
}
