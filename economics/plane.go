package economics

// WinnerAt tells which fitted option has the least yearly equivalent with so
// many nights a year, 0 or above, at a price of ice in money per kilogram, among
// those that work at typical inputs. Everything billed by the night is scaled;
// the pattern of the season stays. ok is false when none works or the boat has
// no nights to scale.
func (r *Reckoning) WinnerAt(nights, icePrice float64) (id OptionID, ok bool) {
	best := 0.0
	for i := range r.Options {
		o := &r.Options[i]
		if !o.Fitted.Works() {
			continue
		}
		cost, known := o.costAt(nights, icePrice, float64(r.Boat.Ice.Price))
		if known && (!ok || cost < best) {
			best, id, ok = cost, o.ID, true
		}
	}
	return id, ok
}

// costAt scales the yearly cost of the fitted option to other nights and
// another price of ice.
func (o *OptionFigures) costAt(nights, icePrice, toldPrice float64) (cost float64, ok bool) {
	if o.Fitted.year.nights < 0.5 {
		return 0, false
	}
	fixed, nightly := split(&o.Fitted)
	for _, l := range o.Fitted.Lines {
		if l.ID == lineIce && toldPrice > 0 {
			nightly += l.Yearly * (icePrice/toldPrice - 1)
		}
	}
	return fixed + nightly*nights/o.Fitted.year.nights, true
}
