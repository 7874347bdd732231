package economics

import (
	"fmt"
	"math"
	"slices"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Cooler is a passive cooler with thick walls that could carry ice and food in
// place of the box, which is ice alone in another form; or the drinks, beside the
// box. It needs no fitting.
type Cooler struct {
	Stands CoolerPlace
	For    CoolerUse
	Volume quantity.Litre // inside
	Wall   quantity.Metre // foam all round, lid included
	Price  quantity.Money
}

// CoolerPlace is where a cooler would stand.
type CoolerPlace string

// The places.
const (
	CoolerNowhere CoolerPlace = "none"
	CoolerInCabin CoolerPlace = "cabin"   // or in a locker
	CoolerOnDeck  CoolerPlace = "deck"    // or in the cockpit
	CoolerUnasked CoolerPlace = "unknown" // nobody said; none is shown
)

// CoolerUse is what a cooler is for.
type CoolerUse string

// The uses.
const (
	CoolerForIce    CoolerUse = "ice"    // and the food, in place of the box
	CoolerForDrinks CoolerUse = "drinks" // beside the box, whatever cools that
)

// fits tells whether the boat has a place for a cooler.
func (c Cooler) fits() bool { return c.Stands == CoolerInCabin || c.Stands == CoolerOnDeck }

// box describes a cooler as the box that it stands in for: a lid on top with a
// good seal, a drain plug, dry new foam, one neighbour all round. The crew opens
// it as often as their box.
func (c Cooler) box(as Box) Box {
	inside := heat.CubeLike(c.Volume)
	neighbour := heat.Cabin
	if c.Stands == CoolerOnDeck {
		neighbour = heat.Deck
	}
	faces := make(map[heat.Side]Face, len(heat.Sides))
	for _, side := range heat.Sides {
		faces[side] = Face{Foam: c.Wall, Material: heat.Polyurethane, State: heat.Dry, Neighbour: neighbour, Reach: NotReached}
	}
	return Box{
		Volume: c.Volume, Inside: inside, OpensPerDay: as.OpensPerDay,
		Lid: heat.TopLid, LidSeal: heat.GoodSeal, LidOpening: quantity.Dimensions{Length: inside.Length, Width: inside.Width},
		Drain: heat.TrappedDrain, Faces: faces, FittedUnit: NotFitted, CabinOffset: as.CabinOffset,
		FoamThere: quantity.Yes, Cover: quantity.No, ChestFits: as.ChestFits,
	}
}

// CoolerFigures is ice in a cooler beside ice in the box.
type CoolerFigures struct {
	Ice   OptionFigures // with the cooler in place of the box, counted by itself
	LeakW quantity.WattPerKelvin
	// LoadKg is a full load in the share of the cooler given to ice, LastsDays
	// how long it lasts in use in the hottest month aboard, at mean weather; the
	// other two are the same of the box as told. The days are infinite where the
	// load outlasts mostLasting.
	LoadKg, LastsDays       float64
	BoxLoadKg, BoxLastsDays float64
}

// mostLasting is where counting the days of a load ends.
const mostLasting = 21

// coolerLine is the id of the cooler's line in the price book, coolerLife that
// of its years.
const coolerLine, coolerLife = "cooler", "cooler_life"

// usualCoolerLife is in years. Engineering judgement, from memory.
const usualCoolerLife = 12

// one is the count of what is bought once.
type one struct{}

// Number gives 1.
func (one) Number(Facts) (float64, error) { return 1, nil }

// weighCooler works out ice in a cooler: the same boat, food, ice, weather and
// futures, with the cooler's walls, room and price in place of the box's.
func (r *Reckoning) weighCooler(s *study) error {
	b := r.Boat
	b.Box = b.Cooler.box(b.Box)
	walls, err := b.Box.spec().Conductance()
	if err != nil {
		return fmt.Errorf("cooler: %w", err)
	}
	c := s.ofCooler(&b, r.Box, walls)
	figures, err := c.variant(b, IceOnly)
	if err != nil {
		return fmt.Errorf("cooler: %w", err)
	}
	out := &CoolerFigures{Ice: *figures, LeakW: walls.Total()}
	if out.LoadKg, out.LastsDays, err = c.load(&b); err != nil {
		return err
	}
	if out.BoxLoadKg, out.BoxLastsDays, err = s.load(&r.Boat); err != nil {
		return err
	}
	r.Cooler = out
	return nil
}

// ofCooler gives the study with the cooler among its prices, and with futures in
// which the leak is as uncertain as a drawing of sound walls is, whatever is
// known of the box.
func (s *study) ofCooler(b *Boat, box BoxFigures, walls heat.Conductance) *study {
	out, book := *s, *s.book
	line := PriceLine{
		ID: coolerLine, Label: "The cooler", Unit: "each", Billing: Renewed, Quantity: one{}, Options: []OptionID{IceOnly},
		Price: quantity.Range{Low: float64(b.Cooler.Price), Typical: float64(b.Cooler.Price), High: float64(b.Cooler.Price)},
		Life:  quantity.Range{Low: usualCoolerLife, Typical: usualCoolerLife, High: usualCoolerLife},
	}
	if life, ok := book.Price(coolerLife); ok {
		line.Life = life.Price
	}
	book.Prices = append(slices.Clone(book.Prices), line)
	e := heat.Drawing(walls, true)
	drawn := quantity.Range{Low: e.Range().Low / float64(e.UA), Typical: 1, High: e.Range().High / float64(e.UA)}
	seen := quantity.Range{Low: float64(box.LeakLow / box.Leak), Typical: 1, High: float64(box.LeakHigh / box.Leak)}
	ground := *s.search
	ground.futures = respread(ground.futures, seen, drawn)
	out.book, out.scale, out.search, out.futures = &book, 1, &ground, respread(s.futures, seen, drawn)
	return &out
}

// respread gives the futures with the leak's spread changed from one range to
// another, each future keeping its rank. Walls are as told in all of them.
func respread(futures []Future, from, to quantity.Range) []Future {
	out := slices.Clone(futures)
	for k := range out {
		f := &out[k]
		f.Foam = FoamAsTold
		of, into := math.Log(from.High), math.Log(to.High)
		if f.Leak < 1 {
			of, into = math.Log(from.Low), math.Log(to.Low)
		}
		if of != 0 {
			f.Leak = math.Exp(math.Log(f.Leak) * into / of)
		}
	}
	return out
}

// load gives a full load of ice of the boat as told, kg, and the days it lasts
// in use in the hottest month aboard.
func (s *study) load(b *Boat) (kg, days float64, err error) {
	p, err := newProposal(b, s.book, s.world, s.scale, IceOnly, FitOut{})
	if err != nil {
		return 0, 0, err
	}
	kg = p.iceCapacityKg()
	if kg <= 0 {
		return 0, 0, nil
	}
	setup := p.setup(&Typical)
	return kg, setup.IceLasts(s.world.aboard, p.icing(&Typical), kg, heat.GoneShare, 24*mostLasting) / 24, nil
}
