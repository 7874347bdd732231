package heat

import "coldreckon/economics/quantity"

// IceTest is a weighed melt test with the lid closed.
type IceTest struct {
	Melted   quantity.Kilogram // ice melted over the timed hours
	Hours    float64
	IceMass  quantity.Kilogram // ice at the start; 0 when not weighed, and then as much as melted
	IceStart quantity.Celsius  // 0 once the ice drips, -18 from a home freezer
	WaterEnd quantity.Celsius  // temperature at which meltwater left or ended
	Water    quantity.Kilogram // meltwater that ended at WaterEnd
	Out      quantity.Celsius  // mean air outside the box
	In       quantity.Celsius  // mean air inside the box
	// Heat that warm food and the liner gave up to the ice. The liner's is zero
	// when it was chilled first or the first hours were discarded.
	FoodKJ, LinerKJ quantity.Kilojoule
}

// JugTest is a warming test with jugs of cold water and the lid closed.
type JugTest struct {
	Water      quantity.Kilogram
	Hours      float64
	Start, End quantity.Celsius // of the water
	Out        quantity.Celsius // mean air outside
	BoxAir     quantity.Celsius // mean air in the box; counts only when BoxAirRead
	BoxAirRead bool
}

// IceHistory is a remembered spell: "ten kilos lasted a day and a half in July, in use".
type IceHistory struct {
	Ice   quantity.Kilogram
	Hours float64 // until the last of it had melted
	Month int     // 1 to 12
	InUse bool    // the box was opened and food put in; else the lid stayed closed
}
