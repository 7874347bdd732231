package questions

import (
	"math"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

func boxRows() []Row {
	return []Row{
		{
			Key: "box.inside", Group: OfBox, Label: "Ice box, inside measures", Kind: Dimensions, None: "not measured",
			Ask:     "What does the box measure inside, length by width by height?",
			Help:    "Typical: 18 x 22 x 16 in (450 x 550 x 400 mm). A tape through the lid; for a box that tapers take the middle. Better than a volume, because the walls' areas follow from it.",
			Limits:  Limits{0.1, 0.2, 1.2, 2},
			Field:   func(b *economics.Boat) Slot { return at(&b.Box.Inside) },
			Default: always(quantity.Dimensions{}, ""),
		},
		{
			Key: "box.volume", Group: OfBox, Label: "Ice box, inside volume", Kind: Volume,
			Ask:    "How much does the ice box hold?",
			Help:   "Typical: 60 to 140 L (2 to 5 cu ft). Measures do too: 18 x 22 x 16 in. Or count buckets of water.",
			Limits: Limits{10, 25, 350, 1200},
			Field:  func(b *economics.Boat) Slot { return at(&b.Box.Volume) },
			Default: func(c Context) (any, string) {
				if !c.Boat.Box.Inside.Zero() {
					return c.Boat.Box.Inside.Volume(), ""
				}
				return quantity.Litre(100), "a usual box of an older boat of 8 to 9 m (25 to 30 ft); common practice, no source"
			},
		},
		{
			Key: "box.opens_per_day", Group: OfBox, Label: "Openings a day", Kind: Number, Words: []string{"a day", "per day", "times", "times a day", "day"},
			Ask:     "How often is the box opened in a day?",
			Help:    "Typical: 12 for two people. A drinks box is opened far more often.",
			Limits:  Limits{0, 2, 60, 300},
			Field:   func(b *economics.Boat) Slot { return at(&b.Box.OpensPerDay) },
			Default: always(12.0, judgement),
		},
		{
			Key: "box.lid", Group: OfBox, Label: "Lid", Kind: Choice,
			Ask:     "Does the box open at the top or at the front?",
			Help:    "Typical: top on older boats. A front door spills its cold air at every opening.",
			Options: []Option{{"top", "a lid in the top", "lid|top lid|top loading"}, {"front", "a door in the front", "door|front door|front loading"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Box.Lid) },
			Default: always(heat.TopLid, "usual on older boats"),
		},
		{
			Key: "box.lid_seal", Group: OfBox, Label: "Lid seal", Kind: Choice,
			Ask:  "How well does the lid close?",
			Help: "Typical: worn. Shut the lid on a strip of paper: if it slides out all round, the lid only rests; if it is held everywhere, the seal is good.",
			Options: []Option{{"good", "a soft gasket, pressed all round", "tight"}, {"worn", "a gasket that is hard or has gaps", "poor|hard|gapped"},
				{"rests", "it only rests on its rim", "none|no seal|no gasket"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Box.LidSeal) },
			Default: always(heat.PoorSeal, "an old gasket; "+judgement),
		},
		{
			Key: "box.lid_opening", Group: OfBox, Label: "Lid opening", Kind: Opening, Detail: true,
			Ask:    "How large is the opening under the lid, length by width?",
			Help:   "Typical: about 16 x 12 in (400 x 300 mm). Its rim is where a bad seal leaks.",
			Limits: Limits{0.08, 0.15, 1, 1.5},
			Field:  func(b *economics.Boat) Slot { return at(&b.Box.LidOpening) },
			Default: func(c Context) (any, string) {
				// A square-ish opening of a third of the top, never larger than the box.
				d := quantity.Dimensions{Length: 0.4, Width: 0.3}
				if in := c.Boat.Box.Inside; !in.Zero() {
					d.Length, d.Width = min(d.Length, in.Length), min(d.Width, in.Width)
					if c.Boat.Box.Lid == heat.FrontDoor {
						d.Width = min(0.3, in.Height)
					}
				}
				return d, judgement
			},
		},
		{
			Key: "box.drain", Group: OfBox, Label: "Drain", Kind: Choice,
			Ask:     "Is there a drain, and does it let air through?",
			Help:    "Typical: open, a bare hose from the bottom of the box. Trapped means a loop that holds water, a plug or a shut tap.",
			Options: []Option{{"open", "an open hose", "bare"}, {"trapped", "trapped, plugged or shut", "plugged|closed|trap|tap"}, {"none", "no drain", "no"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Box.Drain) },
			Default: always(heat.OpenDrain, "usual on older boats; an open drain is the worse case"),
		},
		{
			Key: "box.foam", Group: OfBox, Label: "Foam in the walls", Kind: Length, None: "none",
			Ask:     "How thick is the foam round it?",
			Help:    "Typical: 1 to 2 in (25 to 50 mm) on older boats, 4 in (100 mm) on good ones. Measure at the lid, or drill a 3 mm hole from a locker; outside less inside, halved.",
			Limits:  Limits{0.005, 0.01, 0.15, 0.3},
			Field:   spread(func(f *economics.Face) Slot { return at(&f.Foam) }, "foam"),
			Default: always(quantity.Metre(0.038), "1 1/2 in, as builders of small cruisers used to fit; common practice, no source"),
		},
		{
			Key: "box.material", Group: OfBox, Label: "Insulation", Kind: Choice,
			Ask:     "What is the insulation made of?",
			Help:    "Typical: old polyurethane, yellow to brown and crumbly. White beads are EPS, smooth blue or pink board is XPS.",
			Options: materials,
			Field:   spread(func(f *economics.Face) Slot { return at(&f.Material) }, "material"),
			Default: always(heat.OldPolyurethane, "usual in boats of the last century"),
		},
		{
			Key: "box.state", Group: OfBox, Label: "State of the insulation", Kind: Choice,
			Ask:     "Is the foam round the box dry?",
			Help:    "Typical: damp after twenty years. Drill a small hole from a locker and feel the dust; water that runs out, or frost-cold lockers round the box, mean wet or soaked.",
			Options: states,
			Field:   spread(func(f *economics.Face) Slot { return at(&f.State) }, "state"),
			Default: always(heat.Damp, "old foam has usually taken up some water; "+judgement),
		},
		{
			Key: "box.reachable", Group: OfBox, Label: "From where foam can be added", Kind: Choice, Options: reaches,
			Ask:     "From where could foam board be added to the walls of the box?",
			Help:    "Typical: from inside, which makes the box a little smaller. From a locker behind, the box keeps its room.",
			Field:   spread(func(f *economics.Face) Slot { return at(&f.Reach) }, "reachable"),
			Default: always(economics.FromInside, "board can usually be glued in from inside"),
		},
		{
			Key: "box.fitted_unit", Group: OfBox, Label: "Refrigeration already fitted", Kind: Choice,
			Ask:     "Is there a refrigerating unit in the box already?",
			Help:    "Typical: none. If there is one, run it for an hour: a plate that frosts over works. For one that does not, 'coldreckon ailing' prints what to look at first.",
			Options: []Option{{"none", "none", "no"}, {"works", "one that works", "working|yes"}, {"dead", "one that does not work", "broken"}, {"unknown", "one, not known whether it works", "untested"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Box.FittedUnit) },
			Default: always(economics.NotFitted, "none was told"),
		},
		{
			Key: "box.foam_there", Group: OfBox, Label: "Foam at all", Kind: YesNoUnknown, Detail: true,
			Ask:     "Is there any foam round the box at all?",
			Help:    "Typical: yes. Some boxes have an empty gap behind the lining, or none under the bottom: knock, or drill a small hole from a locker.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Box.FoamThere) },
			Default: always(quantity.Unknown, "not answered: 12 in 100 boxes are taken to lack foam somewhere; "+judgement),
		},
		{
			Key: "box.cover", Group: OfBox, Label: "Insulating cover over the food", Kind: YesNoUnknown, Detail: true,
			Ask:     "Does an insulating cover lie over the food in the box, under the lid?",
			Help:    "Typical: no. A quilt or a slab of soft foam counts; it keeps the cold in when the lid is open.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Box.Cover) },
			Default: always(quantity.No, "usual"),
		},
		{
			Key: "box.chest_fits", Group: OfBox, Label: "Room for a free-standing chest", Kind: YesNoUnknown,
			Ask:     "Would a 12 V chest of the size of a large suitcase find room on deck or on a berth?",
			Help:    "Typical: no on boats under 9 m (30 ft). It needs a place that is not slept in, and a strap.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Box.ChestFits) },
			Default: always(quantity.Unknown, "not answered, so no chest is shown"),
		},
		{
			Key: "box.spacer_fits", Group: OfBox, Label: "Room to spare in the box", Kind: YesNoUnknown, Detail: true,
			Ask:     "May a block of foam fill a part of the box, if that makes it cheaper to keep cold?",
			Help:    "Typical: no on a small boat. It takes a fifth or two fifths of the box, and comes out again in winter.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Box.SpacerFits) },
			Default: always(quantity.Unknown, "not answered, so all of the box is used"),
		},
		{
			Key: "box.alarm", Group: OfBox, Label: "Alarm when the box gets warm", Kind: YesNoUnknown, Detail: true,
			Ask:     "Does a thermometer aboard sound an alarm when the box gets warm?",
			Help:    "Typical: no. It tells of a unit that stops while there is still time to save the food.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Box.Alarm) },
			Default: always(quantity.No, "usual"),
		},
		{
			Key: "box.void", Group: OfBox, Label: "Empty space round the box", Kind: Volume, Detail: true,
			Ask:     "How much empty space is there between the lining of the box and the joinery, where foam could be poured in?",
			Help:    "Typical: 0, or not known. Knock and drill to find it; length times width times gap, all round.",
			Limits:  Limits{0, 0, 120, 400},
			Field:   func(b *economics.Boat) Slot { return at(&b.Box.VoidVolume) },
			Default: always(quantity.Litre(0), "none was told"),
		},
		{
			Key: "box.cabin_offset", Group: OfBox, Label: "Cabin warmer than outdoors by", Kind: TemperatureDifference, Detail: true,
			Ask:     "How much warmer than the air outside is the cabin, day and night together?",
			Help:    "Typical: 2 °C (4 °F) lived in; 0 with awning and open hatches; 6 °C (11 °F) shut in the sun.",
			Limits:  Limits{-5, -1, 8, 15},
			Field:   func(b *economics.Boat) Slot { return at(&b.Box.CabinOffset) },
			Default: always(quantity.Kelvin(2), "a cabin lived in; "+judgement),
		},
	}
}

// reaches are the sides from which foam goes in. Older answers say yes for inside.
var reaches = []Option{
	{"inside", "from inside, which takes room", "yes|from inside|in the box"}, {"outside", "from a locker behind, which takes none", "from outside|behind|from behind|locker"},
	{"no", "from neither side", "none|neither|nowhere|not at all|false"},
}

var materials = []Option{
	{"old_polyurethane", "old polyurethane foam, or not known", "old foam|foam|polyurethane old"}, {"polyurethane", "new polyurethane foam", "new foam|pu|pur|pir|polyiso"},
	{"xps", "extruded polystyrene board", "extruded|blue board|pink board|blueboard"}, {"eps", "bead board", "polystyrene|expanded polystyrene|beads"}, {"cork", "cork", ""},
}

var states = []Option{
	{"dry", "dry", ""}, {"damp", "damp", "moist"}, {"wet", "wet", ""}, {"soaked", "soaked: water runs out", "waterlogged|sodden"}, {"missing", "no insulation there", "none|empty"},
}

// sides gives each face its name in a sentence.
var sides = map[heat.Side]string{
	heat.Top: "top", heat.Bottom: "bottom", heat.Inboard: "inboard side", heat.Outboard: "outboard side", heat.Fore: "fore side", heat.Aft: "aft side",
}

// faceKey is the key of one item of one face.
func faceKey(side heat.Side, item string) string { return "box.faces." + string(side) + "." + item }

// onFace makes the slot of one item of one face.
func onFace(side heat.Side, item func(*economics.Face) Slot) func(*economics.Boat) Slot {
	return func(b *economics.Boat) Slot {
		return Slot{
			Get: func() any { f := b.Box.Faces[side]; return item(&f).Get() },
			Put: func(v any) {
				f := b.Box.Faces[side]
				item(&f).Put(v)
				if b.Box.Faces == nil {
					b.Box.Faces = map[heat.Side]economics.Face{}
				}
				b.Box.Faces[side] = f
			},
		}
	}
}

// fromWalls is the order in which the whole box is read off its faces: the top
// comes last, because its foam has a default of its own.
var fromWalls = []heat.Side{heat.Inboard, heat.Outboard, heat.Fore, heat.Aft, heat.Bottom, heat.Top}

// spread makes the slot of an item of all faces: reading gives the first
// face that was not told apart, writing leaves those that were.
func spread(item func(*economics.Face) Slot, name string) func(*economics.Boat) Slot {
	return func(b *economics.Boat) Slot {
		return Slot{
			Get: func() any {
				for _, side := range fromWalls {
					if !b.Told(faceKey(side, name)) {
						return onFace(side, item)(b).Get()
					}
				}
				return onFace(heat.Top, item)(b).Get()
			},
			Put: func(v any) {
				for _, side := range heat.Sides {
					if !b.Told(faceKey(side, name)) {
						onFace(side, item)(b).Put(v)
					}
				}
			},
		}
	}
}

// faceRows are the overrides of single faces. Their defaults are the answers
// for the whole box, already spread over the faces; only what lies behind a
// face has a default of its own.
func faceRows() []Row {
	var rows []Row
	for _, side := range heat.Sides {
		name := sides[side]
		rest := func(item func(*economics.Face) Slot) func(Context) (any, string) {
			return func(c Context) (any, string) { return onFace(side, item)(&c.Boat).Get(), "" }
		}
		foam := func(f *economics.Face) Slot { return at(&f.Foam) }
		material := func(f *economics.Face) Slot { return at(&f.Material) }
		state := func(f *economics.Face) Slot { return at(&f.State) }
		reach := func(f *economics.Face) Slot { return at(&f.Reach) }
		rows = append(rows,
			Row{
				Key: faceKey(side, "foam"), Group: OfFaces, Label: "Foam, " + name, Kind: Length, Detail: true, None: "none",
				Ask: "How thick is the insulation of the " + name + "?", Help: "Typical: as the rest of the box; the top and its lid often have less, or none.",
				Limits: Limits{0.005, 0.01, 0.15, 0.3}, Field: onFace(side, foam), Default: foamDefault(side),
			},
			Row{
				Key: faceKey(side, "material"), Group: OfFaces, Label: "Insulation, " + name, Kind: Choice, Detail: true, Options: materials,
				Ask: "What is the insulation of the " + name + " made of?", Help: "Typical: as the rest of the box.", Field: onFace(side, material), Default: rest(material),
			},
			Row{
				Key: faceKey(side, "state"), Group: OfFaces, Label: "State of the insulation, " + name, Kind: Choice, Detail: true, Options: states,
				Ask: "Is the insulation of the " + name + " dry?", Help: "Typical: as the rest of the box; the bottom is often the wettest.", Field: onFace(side, state), Default: rest(state),
			},
			Row{
				Key: faceKey(side, "reachable"), Group: OfFaces, Label: "From where foam can be added, " + name, Kind: Choice, Detail: true, Options: reaches,
				Ask: "From where could foam board be added to the " + name + "?", Help: "Typical: as the rest of the box.", Field: onFace(side, reach), Default: rest(reach),
			},
			Row{
				Key: faceKey(side, "neighbour"), Group: OfFaces, Label: "Behind the " + name, Kind: Choice, Detail: true,
				Ask: "What lies behind the " + name + " of the box?", Help: "Typical: the sea behind the outboard side, the cabin or a locker behind the others.",
				Options: []Option{{"cabin", "the cabin or a locker", "locker|air"}, {"sea", "the hull and the sea", "hull|water"}, {"engine", "the engine space", "engine space|engine room"}, {"deck", "a deck in the sun", "cockpit"}},
				Field:   onFace(side, func(f *economics.Face) Slot { return at(&f.Neighbour) }),
				Default: neighbourDefault(side),
			},
		)
	}
	return rows
}

// foamDefault is what a face has where only the walls were told: the top, lid
// included, has half of it.
func foamDefault(side heat.Side) func(Context) (any, string) {
	return func(c Context) (any, string) {
		if side != heat.Top {
			return c.Boat.Box.Faces[side].Foam, ""
		}
		return c.Boat.Box.Faces[heat.Inboard].Foam / 2, "half of the walls' foam, as lids and counters usually have; " + judgement
	}
}

func neighbourDefault(side heat.Side) func(Context) (any, string) {
	if side == heat.Outboard {
		return always(heat.Sea, "a box built against the hull; cabin air is taken behind the other faces")
	}
	return always(heat.Cabin, "")
}

// disagree reports whether two volumes of one box differ by more than tapers
// and rounding explain.
func disagree(a, b quantity.Litre) bool {
	return math.Abs(float64(a-b)) > 0.15*math.Max(float64(a), float64(b))
}
