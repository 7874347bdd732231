package economics

// Mending is what is to be done with a unit that ails.
type Mending string

// What may be done.
const (
	Mend      Mending = "mend"
	MendUnder Mending = "mend_under" // if it is quoted under what mending is worth
	Replace   Mending = "replace"
	MendCheap Mending = "mend_cheap" // nothing is known of what mending is worth on this boat
)

// Mendings says what to do about a cause that costs low to high to mend, money,
// where mending is worth so much at most.
func Mendings(low, high, worth float64) Mending {
	switch {
	case high <= worth:
		return Mend
	case low > worth:
		return Replace
	}
	return MendUnder
}

// Mend says what to do about a cause that costs low to high to mend, by the
// figures of this boat: against a new small unit. Without an old unit aboard
// there is nothing to hold it against.
func (r *Reckoning) Mend(low, high float64) Mending {
	if !r.HasRepair {
		return MendCheap
	}
	return Mendings(low, high, r.RepairWorth)
}
