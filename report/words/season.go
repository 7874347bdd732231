package words

import (
	"fmt"

	"coldreckon/economics"
)

// NoWork says why an option has no work listed.
func (v Voice) NoWork(o *economics.OptionFigures) string {
	switch {
	case v.Nights() == 0:
		return "Without nights aboard there is nothing that work could make better."
	case o.ID == economics.DryStores:
		return "Dry stores need no work, only lockers that stay dry."
	case o.WorksOf100 >= 90:
		return fmt.Sprintf("%s needs none: it works as she is in %s futures.", the(o.ID), of100(o.AsToldWorksOf100))
	}
	return fmt.Sprintf("No work was found that makes %s do: it works in %s futures.%s", In(o.ID), few100(o.WorksOf100), v.because(&o.Fitted))
}

// NotEnough says why the work found for an option does not do.
func (v Voice) NotEnough(o *economics.OptionFigures) string {
	return fmt.Sprintf("With all this %s work%s in %s futures.%s", In(o.ID), s(o.ID), few100(o.WorksOf100), v.because(&o.Fitted))
}
