package economics

import (
	"fmt"

	"coldreckon/economics/quantity"
)

// study is the ground on which the ways of one boat are compared: her climate,
// the futures of the search and those of the answer, and the typical years.
type study struct {
	book    *Book
	world   *world
	scale   float64 // measured over drawn leak
	inputs  []Input
	search  *trialGround
	futures []Future
	seed    uint64
	air     weatherYears
	base    *baseLoads
}

func newStudy(b *Boat, book *Book, w *world, box *BoxFigures, set Settings) *study {
	s := &study{book: book, world: w, scale: box.leakScale(), seed: set.Seed, base: &baseLoads{}, inputs: inputs(b, book, w, box)}
	bare := mayBeBare(b, box)
	s.search = newTrialGround(b, w, draw(s.inputs, bare, set.searchFutures(), searchSeed), searchSeed)
	if set.Quick() {
		s.search.alike = alikeAtAGlance
	}
	s.futures = draw(s.inputs, bare, set.Futures, set.Seed)
	s.air.fill(b, w, &Typical, stream{set.Seed, 0}, set.typicalYears(len(w.plan.Nights)))
	return s
}

// studied is an option as told and fitted, with the search that found its work.
type studied struct {
	told, fitted *proposal
	search       *searcher // nil for dry stores
	figures      OptionFigures
}

// study fits an option out and puts it through the typical years. The boat is
// that of the study, or one that differs in nothing that the weather meets.
func (s *study) study(b *Boat, id OptionID) (*studied, error) {
	out := &studied{figures: OptionFigures{ID: id}}
	if err := out.study(s, b, id); err != nil {
		return nil, fmt.Errorf("%s: %w", id, err)
	}
	return out, nil
}

func (c *studied) study(s *study, b *Boat, id OptionID) (err error) {
	if c.told, err = newProposal(b, s.book, s.world, s.scale, id, FitOut{}); err != nil {
		return err
	}
	if id == DryStores { // they need no work
		if c.fitted, err = newProposal(b, s.book, s.world, s.scale, id, FitOut{}); err != nil {
			return err
		}
		return c.figures.live(c.told, c.fitted, &s.air, s.base)
	}
	c.search = newSearcher(b, s.book, s.world, s.scale, id, s.search)
	if c.figures.Fit, c.fitted, err = findFit(c.search); err != nil {
		return err
	}
	if c.figures.PieceCosts, err = c.fitted.pieceCosts(); err != nil {
		return err
	}
	return c.figures.live(c.told, c.fitted, &s.air, s.base)
}

// part gives the first of all futures, one in asToldPart: enough to say how often
// what stands beside the four options works.
func (s *study) part() []Future { return s.futures[:max(1, len(s.futures)/asToldPart)] }

// variant studies one option of a boat told otherwise, and counts it over a part
// of the futures.
func (s *study) variant(b Boat, id OptionID) (*OptionFigures, error) {
	c, err := s.study(&b, id)
	if err != nil {
		return nil, err
	}
	rows, _, err := trials([]*proposal{c.fitted}, s.part(), s.seed)
	if err != nil {
		return nil, err
	}
	c.figures.count(rows[0])
	return &c.figures, nil
}

// weighVariants works out what stands beside the four options where it matters.
func (r *Reckoning) weighVariants(s *study, fitted []*proposal) (err error) {
	if r.coolIsAsked() {
		b := r.Boat
		b.Food.CoolIsEnough = quantity.Yes
		if r.Cool, err = s.variant(b, IceOnly); err != nil {
			return err
		}
	}
	if b := r.Boat; b.Box.ChestFits == quantity.Yes && b.Small.Form == BuiltIn {
		b.Small = b.chestOf(s.book)
		b = b.withoutOffer(SmallUnit)
		if r.Chest, err = s.variant(b, SmallUnit); err != nil {
			return err
		}
	}
	if len(s.world.plan.Nights) > 0 {
		if err := r.weighFreezing(s); err != nil {
			return err
		}
	}
	if r.Boat.mayRunByDay(&r.Boat.Small) {
		if err := r.weighByDay(s); err != nil {
			return err
		}
	}
	if r.Boat.Cooler.fits() && len(s.world.plan.Nights) > 0 {
		if r.Boat.drinksApart() {
			err = r.weighDrinks(s, fitted)
		} else {
			err = r.weighCooler(s)
		}
		if err != nil {
			return err
		}
	}
	if b := r.Boat; (b.Box.FittedUnit == UnitDead || b.Box.FittedUnit == UnitUnknown) && b.Small.Form == BuiltIn {
		return r.weighRepair(s)
	}
	return nil
}

// coolIsAsked tells whether nothing keeps food cold enough, so that it matters
// what ice keeps cool.
func (r *Reckoning) coolIsAsked() bool {
	if r.Boat.CoolDecides() {
		return false
	}
	for _, id := range cold {
		if r.Of(id).WorksOf100 >= nearlyOf100 {
			return false
		}
	}
	return true
}

// chestOf gives the free-standing chest that a boat would be offered in place
// of her small unit, at the book's prices.
func (b *Boat) chestOf(book *Book) Unit {
	chest := b.Small
	chest.Form, chest.Fitting, chest.RatedAmps, chest.RatedBox = FreeStanding, 0, 0, 0
	if chest.ChestVolume == 0 {
		chest.ChestVolume = usualChest
	}
	chest.Price = quantity.Money(book.typical("small_unit_free_standing", float64(chest.Price)))
	chest.Life = quantity.Year(book.typical("chest_life", float64(chest.Life)))
	return chest
}

// usualChest is the volume of a free-standing chest where none is told.
// Engineering judgement, from memory.
const usualChest quantity.Litre = 45

// weighRepair compares a new small unit with the one aboard brought back to
// life, which has part of its life behind it.
func (r *Reckoning) weighRepair(s *study) error {
	b := r.Boat.withoutOffer(SmallUnit)
	b.Box.FittedUnit = UnitWorks
	p, err := newProposal(&b, s.book, s.world, s.scale, SmallUnit, FitOut{})
	if err != nil {
		return err
	}
	kept, err := p.calculator().outcome(&Typical, p.live(&Typical, &s.air, s.base, nil))
	if err != nil {
		return err
	}
	r.RepairWorth, r.HasRepair = max(0, r.Of(SmallUnit).AsTold.Present-kept.Present), true
	return nil
}
