package words

import "coldreckon/economics"

// Name is an option's name as a title: "Ice alone".
func Name(id economics.OptionID) string { return Capital(names[id]) }

var names = map[economics.OptionID]string{
	economics.IceOnly: "ice alone", economics.DryStores: "dry stores",
	economics.SmallUnit: "small unit", economics.LargerUnit: "larger unit",
}

// Bare is the name without an article: "small unit".
func Bare(id economics.OptionID) string { return names[id] }

// In names an option inside a sentence: "the small unit", "dry stores".
func In(id economics.OptionID) string {
	if unit(id) {
		return "the " + names[id]
	}
	return names[id]
}

// the names an option at the head of a sentence: "The small unit", "Dry stores".
func the(id economics.OptionID) string { return Capital(In(id)) }

func unit(id economics.OptionID) bool {
	return id == economics.SmallUnit || id == economics.LargerUnit
}

// s gives the ending of a verb after the option: "dry stores cost".
func s(id economics.OptionID) string {
	if id == economics.DryStores {
		return ""
	}
	return "s"
}

// is gives "are" after dry stores.
func is(id economics.OptionID) string {
	if id == economics.DryStores {
		return "are"
	}
	return "is"
}
