package economics_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// A free-standing chest stands beside the four ways where it has a place: it is
// bought without fitting, keeps its own box, and changes none of their figures.
func TestChestIsNeverSwappedIn(t *testing.T) {
	b := economics.Dunlin()
	b.Box.ChestFits = quantity.Yes
	with := economics.Comparable(reckon(t, b, few))
	b.Box.ChestFits = quantity.No
	without := economics.Comparable(reckon(t, b, few))
	if with.Chest == nil || without.Chest != nil {
		t.Fatalf("a chest with a place gives %v, one without %v", with.Chest, without.Chest)
	}
	if !reflect.DeepEqual(with.Options, without.Options) || !reflect.DeepEqual(with.Answer, without.Answer) {
		t.Error("the four ways or the answer differ with a chest beside them")
	}
	chest := &with.Chest.Fitted
	if litres := chest.Facts["box_volume_l"]; litres == with.Of(economics.SmallUnit).Fitted.Facts["box_volume_l"] {
		t.Errorf("the chest has the %v L of the built-in box", litres)
	}
	if slices.ContainsFunc(chest.Lines, func(l economics.CostLine) bool { return strings.Contains(l.ID, "fitting") && l.First > 0 }) {
		t.Errorf("a chest that is fitted: %v", chest.Lines)
	}
}
