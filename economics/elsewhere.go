package economics

// GroundShare is the part of the year on one of two grounds, with a way's work.
type GroundShare struct {
	ID, Name string
	Nights   int
	// KeptShare is the share of its days, 0 to 1, that the way keeps as the owner
	// goes by.
	KeptShare float64
}

// nearlyAlike is by how much of its days one ground must keep less than the other
// to decide. Engineering judgement, from memory.
const nearlyAlike = 0.02

// Grounds parts the year of a way that cools between the first and the second
// ground, and says which decides: 0 or 1, the one where it keeps clearly less, or
// -1 for neither. There are no parts for a boat without nights on both, nor for
// dry stores.
func (r *Reckoning) Grounds(id OptionID) (parts []GroundShare, decides int) {
	b, o := &r.Boat, r.Of(id)
	other, err := b.elsewhere()
	if err != nil || other.ID == "" || o == nil || id == DryStores {
		return nil, -1
	}
	parts = []GroundShare{{ID: r.Ground.ID, Name: r.Ground.Name}, {ID: other.ID, Name: other.Name}}
	for _, m := range r.Months {
		part, kept := &parts[0], o.FittedMonths[m.Month-1].Cold
		if b.Cruising.IsElsewhere(m.Month - 1) {
			part = &parts[1]
		}
		if b.CoolDecides() {
			kept = o.FittedMonths[m.Month-1].Cool
		}
		part.Nights += m.Nights
		part.KeptShare += kept * float64(m.Nights)
	}
	for i := range parts {
		if parts[i].Nights == 0 {
			return nil, -1
		}
		parts[i].KeptShare /= float64(parts[i].Nights)
	}
	switch less := parts[1].KeptShare - parts[0].KeptShare; {
	case less > nearlyAlike:
		return parts, 0
	case less < -nearlyAlike:
		return parts, 1
	}
	return parts, -1
}
