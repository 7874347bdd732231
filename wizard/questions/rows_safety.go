package questions

import (
	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

const cautious = "not answered, so the caution is kept"

// unanswered marks a safety question left open.
var unanswered = always(quantity.Unknown, cautious)

func safetyRows() []Row {
	ask := func(item, label, question, help string, field func(*economics.Safety) *quantity.Tri) Row {
		return Row{
			Key: "safety." + item, Group: OfSafety, Label: label, Kind: YesNoUnknown, Safety: true, Ask: question, Help: help,
			Field:   func(b *economics.Boat) Slot { return at(field(&b.Safety)) },
			Default: unanswered,
		}
	}
	return []Row{
		ask("fuel_vapour_space", "Fuel vapour where a unit would sit",
			"Could petrol or cooking gas vapour reach the place where a unit would sit?",
			"Typical: no with diesel and gas in its own drained locker; yes beside a petrol tank, an outboard well or a gas bottle.",
			func(s *economics.Safety) *quantity.Tri { return &s.FuelVapourSpace }),
		ask("co_alarm", "Carbon monoxide alarm",
			"Is there a working carbon monoxide alarm in the cabin?",
			"Typical: no on older boats. Press its test button; most must be replaced after 5 to 10 years.",
			func(s *economics.Safety) *quantity.Tri { return &s.COAlarm }),
		ask("lithium", "Lithium battery",
			"Is a lithium battery aboard or planned?",
			"Typical: no. Yes too for a bank that others fitted and you have not seen.",
			func(s *economics.Safety) *quantity.Tri { return &s.Lithium }),
		{
			Key: "safety.drain_to", Group: OfSafety, Label: "Where meltwater goes", Kind: Choice, Safety: true,
			Ask:  "Where does the box's meltwater go?",
			Help: "Typical: the bilge on older boats. Pour a cup in and watch.",
			Options: []Option{{"bilge", "into the bilge", ""}, {"sump", "into a sump or tank of its own", "tank"}, {"overboard", "overboard", "sea"},
				{"none", "nowhere: it is baled or mopped", "nowhere|no drain"}, {"unknown", "not known", ""}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Safety.DrainTo) },
			Default: always(economics.ToUnknown, cautious),
		},
		ask("children", "Children",
			"Are children ever aboard, or near the boat when she is laid up?",
			"Typical: yes, if you count visitors and the yard. A child can shut itself into a large box.",
			func(s *economics.Safety) *quantity.Tri { return &s.Children }),
		ask("latch_opens_inside", "Lid opens from inside",
			"Can the lid be pushed open from inside?",
			"Typical: yes for a loose lid, no for one with a latch. Try it with your hand inside.",
			func(s *economics.Safety) *quantity.Tri { return &s.LatchOpensInside }),
		ask("dry_ice", "Dry ice",
			"Do you ever carry dry ice?",
			"Typical: no. It gives off gas that can suffocate in a closed cabin.",
			func(s *economics.Safety) *quantity.Tri { return &s.DryIce }),
		ask("fish", "Catch kept aboard",
			"Do you keep fish that you catch?",
			"Typical: now and then counts as yes. Some fish turn poisonous within hours if not chilled.",
			func(s *economics.Safety) *quantity.Tri { return &s.Fish }),
		{
			Key: "safety.eggs", Group: OfSafety, Label: "Eggs", Kind: Choice, Safety: true,
			Ask:  "How are eggs sold where you shop?",
			Help: "Typical: washed and chilled in the USA, unwashed on an open shelf in Europe.",
			Options: []Option{{"washed", "washed, from a cooled shelf", "chilled|refrigerated"}, {"unwashed", "unwashed, from an open shelf", "open shelf|shelf"},
				{"none", "we eat none", "no eggs|no"}, {"unknown", "not known", ""}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Safety.Eggs) },
			Default: always(economics.UnknownEggs, cautious),
		},
		ask("wiring_known", "Wiring known to be sound",
			"Have you seen the boat's wiring and found it sound?",
			"Typical: no on a boat bought lately. Look for fuses at the battery and no green copper.",
			func(s *economics.Safety) *quantity.Tri { return &s.WiringKnown }),
		ask("left_unattended", "Unit left running alone",
			"Would a unit be left running with nobody aboard?",
			"Typical: no between trips; yes if the box is to be cold when you come down on a Friday.",
			func(s *economics.Safety) *quantity.Tri { return &s.LeftUnattended }),
	}
}
