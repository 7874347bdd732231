package economics

import (
	"math"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Piece names one kind of work or habit that makes an option fit.
type Piece string

// The pieces, in the order a yard would try them.
const (
	ColdStartPiece Piece = "cold_start"
	SealPiece      Piece = "seal_and_drain"
	LidPiece       Piece = "lid_foam"
	OutsidePiece   Piece = "foam_outside"
	InsidePiece    Piece = "foam_inside"
	PouredPiece    Piece = "poured_foam"
	SpacerPiece    Piece = "spacer"
	CoverPiece     Piece = "cover"
	MoreIcePiece   Piece = "more_ice"
	NoRunsPiece    Piece = "no_ice_runs"
	ByDayPiece     Piece = "by_day"
	BottlesPiece   Piece = "bottles"
	VentPiece      Piece = "condenser_air"
	PanelPiece     Piece = "panel"
	BatteryPiece   Piece = "battery"
	AlarmPiece     Piece = "alarm"
)

// Sizes of the pieces as they are sold or easily cut, and how many of them a
// search tries. Engineering judgement, from memory.
const (
	foamStep     quantity.Metre    = 0.025
	lidSizes                       = 2
	faceSizes                      = 3
	spacerStep   quantity.Fraction = 0.2
	spacerSizes                    = 2
	panelStep    quantity.Watt     = 50
	batteryStep  quantity.AmpHour  = 50
	batterySizes                   = 6
)

// iceShares are the parts of a box that a search gives to ice beside what was told.
var iceShares = [3]quantity.Fraction{1.0 / 3, 1.0 / 2, 2.0 / 3}

// FitItem is one piece of the work.
type FitItem struct {
	Piece Piece
	Size  float64 // mm of foam, share of the box or of its length, W of panel, Ah of battery; 1 for the others
	// WithoutWorksOf100 is in how many of 100 futures the option would work
	// without it.
	WithoutWorksOf100 int
	// WithoutPresent is how much the mean present cost would rise without it;
	// negative when the piece costs more than it saves.
	WithoutPresent float64
}

// items lists the pieces of a fit-out with their sizes.
func (f FitOut) items() []FitItem {
	var out []FitItem
	add := func(p Piece, size float64) {
		if size > 0 {
			out = append(out, FitItem{Piece: p, Size: size})
		}
	}
	is := func(b bool) float64 {
		if b {
			return 1
		}
		return 0
	}
	mm := func(t quantity.Metre) float64 { return math.Round(1000 * float64(t)) }
	add(ColdStartPiece, is(f.ColdStart))
	add(SealPiece, is(f.Seal || f.Drain))
	add(LidPiece, mm(f.LidFoam))
	add(OutsidePiece, mm(f.OutsideFoam))
	add(InsidePiece, mm(f.InsideFoam))
	add(PouredPiece, is(f.Poured))
	add(SpacerPiece, float64(f.Spacer))
	add(CoverPiece, is(f.Cover))
	add(MoreIcePiece, float64(f.IceShare))
	add(NoRunsPiece, is(f.NoIceRuns))
	add(ByDayPiece, is(f.ByDay))
	add(BottlesPiece, is(f.Bottles))
	add(VentPiece, is(f.Vent))
	add(PanelPiece, float64(f.PanelWp))
	add(BatteryPiece, float64(f.Battery))
	add(AlarmPiece, is(f.Alarm))
	return out
}

// without gives the fit-out less one piece.
func (f FitOut) without(p Piece) FitOut {
	switch p {
	case ColdStartPiece:
		f.ColdStart = false
	case SealPiece:
		f.Seal, f.Drain = false, false
	case LidPiece:
		f.LidFoam = 0
	case OutsidePiece:
		f.OutsideFoam = 0
	case InsidePiece:
		f.InsideFoam = 0
	case PouredPiece:
		f.Poured = false
	case SpacerPiece:
		f.Spacer = 0
	case CoverPiece:
		f.Cover = false
	case MoreIcePiece:
		f.IceShare = 0
	case NoRunsPiece:
		f.NoIceRuns = false
	case ByDayPiece:
		f.ByDay, f.Bottles = false, false
	case BottlesPiece:
		f.Bottles = false
	case VentPiece:
		f.Vent = false
	case AlarmPiece:
		f.Alarm = false
	case PanelPiece:
		f.PanelWp = 0
	case BatteryPiece:
		f.Battery = 0
	}
	return f
}

// vary gives every fit-out with another size of one piece; size 0 is as it is.
func vary(fits []FitOut, sizes int, set func(f *FitOut, size int)) []FitOut {
	out := fits
	for size := 1; size <= sizes; size++ {
		for _, f := range fits {
			set(&f, size)
			out = append(out, f)
		}
	}
	return out
}

// boxWorks lists every work on the box that makes sense for the option.
func boxWorks(b *Boat, unit *Unit) []FitOut {
	fits := []FitOut{{}}
	if unit == nil || unit.Form != FreeStanding {
		if b.Box.LidSeal != heat.GoodSeal || b.Box.Drain == heat.OpenDrain {
			fits = vary(fits, 1, func(f *FitOut, _ int) {
				f.Seal, f.Drain = b.Box.LidSeal != heat.GoodSeal, b.Box.Drain == heat.OpenDrain
			})
		}
		if b.Box.Faces[b.Box.LidSide()].Reach != NotReached {
			fits = vary(fits, lidSizes, func(f *FitOut, n int) { f.LidFoam = foamStep * quantity.Metre(n) })
		}
		if len(b.Box.Reached(FromOutside)) > 0 {
			fits = vary(fits, faceSizes, func(f *FitOut, n int) { f.OutsideFoam = foamStep * quantity.Metre(n) })
		}
		if len(b.Box.Reached(FromInside)) > 0 {
			fits = vary(fits, faceSizes, func(f *FitOut, n int) { f.InsideFoam = foamStep * quantity.Metre(n) })
		}
	}
	if unit == nil || unit.Form != FreeStanding {
		if b.Box.VoidVolume > 0 {
			fits = vary(fits, 1, func(f *FitOut, _ int) { f.Poured = true })
		}
		if b.Box.SpacerFits == quantity.Yes {
			fits = vary(fits, spacerSizes, func(f *FitOut, n int) { f.Spacer = spacerStep * quantity.Fraction(n) })
		}
	}
	if unit != nil && unit.Form == FreeStanding || b.Box.Cover != quantity.Yes {
		fits = vary(fits, 1, func(f *FitOut, _ int) { f.Cover = true })
	}
	return fits
}

// otherWorks lists every habit and every piece outside the box that makes
// sense for the option.
func otherWorks(b *Boat, option OptionID, unit *Unit) []FitOut {
	fits := []FitOut{{}}
	// Ice cannot leave a box running.
	if start := b.Cruising.BeforeTrip; start == Warm || option == IceOnly && start == Running {
		fits = vary(fits, 1, func(f *FitOut, _ int) { f.ColdStart = true })
	}
	if option == IceOnly {
		told := fits
		for _, share := range iceShares {
			if math.Abs(float64(share-b.Ice.ShareOfBox)) > 0.01 {
				for _, f := range told {
					f.IceShare = share
					fits = append(fits, f)
				}
			}
		}
		if b.Ice.Runs == quantity.Yes {
			fits = vary(fits, 1, func(f *FitOut, _ int) { f.NoIceRuns = true })
		}
		return fits
	}
	if inLocker := unit.CooledBy == energy.Fins || unit.CooledBy == energy.LockerFan; inLocker && unit.Form != FreeStanding {
		fits = vary(fits, 1, func(f *FitOut, _ int) { f.Vent = true })
	}
	if b.mayRunByDay(unit) {
		fits = vary(fits, 2, func(f *FitOut, n int) { f.ByDay, f.Bottles = true, n > 1 })
	}
	room := max(0, b.Power.MaxPanelWp-b.Power.SolarWp)
	fits = vary(fits, int(room/panelStep), func(f *FitOut, n int) { f.PanelWp = panelStep * quantity.Watt(n) })
	return vary(fits, batterySizes, func(f *FitOut, n int) { f.Battery = batteryStep * quantity.AmpHour(n) })
}

// with gives the work on the box together with the work outside it.
func (f FitOut) with(other FitOut) FitOut {
	other.Seal, other.Drain, other.LidFoam = f.Seal, f.Drain, f.LidFoam
	other.OutsideFoam, other.InsideFoam, other.Cover = f.OutsideFoam, f.InsideFoam, f.Cover
	other.Poured, other.Spacer = f.Poured, f.Spacer
	return other
}
