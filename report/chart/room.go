package chart

import (
	"fmt"
	"strings"

	"coldreckon/report/sheet"
)

// Room shows what fills the inside of a box: bars on one scale of volume.
type Room struct {
	Bars []RoomBar
	Unit string // of the volumes, such as L
	// Say prints a volume; nil prints a Number.
	Say func(float64) string
}

// RoomBar is one state of the box.
type RoomBar struct {
	Name  string
	Parts []RoomPart // from the left
}

// RoomPart is what takes so much of the room, in Room's unit, >= 0.
type RoomPart struct {
	Name   string
	Volume float64
	Use    RoomUse
}

// RoomUse says how a part is filled.
type RoomUse string

// The uses.
const (
	Free  RoomUse = ""      // white
	Food  RoomUse = "food"  // solid
	Other RoomUse = "other" // dotted: drinks, ice, the plate
	Added RoomUse = "added" // hatched: board
)

var useFills = map[RoomUse]sheet.Fill{Free: open, Food: solid, Other: dotted, Added: hatched}

const (
	roomBar   = 5.0 // height of a bar, mm
	roomGap   = 1.8
	roomWords = 0.6 // bar to the words beneath
)

func (c Room) gutter(w float64) float64 {
	longest := 0.0
	for _, b := range c.Bars {
		longest = max(longest, sheet.Width(b.Name, noteType))
	}
	return gutter(w, longest+3)
}

func (c Room) scale(w float64) float64 {
	most := 0.0
	for _, b := range c.Bars {
		sum := 0.0
		for _, p := range b.Parts {
			sum += p.Volume
		}
		most = max(most, sum)
	}
	if most == 0 {
		return 0
	}
	return (w - c.gutter(w)) / most
}

func (c Room) text(p RoomPart) string {
	return strings.TrimSpace(p.Name + " " + say(c.Say, p.Volume, 1))
}

// inside reports whether a part's words stand in it.
func (c Room) inside(p RoomPart, w float64) bool {
	return p.Use != Food && sheet.Width(c.text(p), noteType) <= p.Volume*c.scale(w)-2
}

// beneath are the words of the parts that are too small for them.
func (c Room) beneath(b RoomBar, w float64) []string {
	var out []string
	for _, p := range b.Parts {
		if p.Volume > 0 && !c.inside(p, w) {
			out = append(out, c.text(p))
		}
	}
	if len(out) == 0 {
		return nil
	}
	return sheet.Wrap(strings.Join(out, ", ")+" "+c.Unit, noteType, w-c.gutter(w))
}

func (c Room) bar(b RoomBar, w float64) float64 {
	h := roomBar + roomWords + float64(len(c.beneath(b, w)))*pitch(noteType)
	if c.gutter(w) == 0 {
		h += pitch(noteType)
	}
	return h
}

// Height implements Drawing.
func (c Room) Height(w float64) float64 {
	h := roomGap * float64(max(0, len(c.Bars)-1))
	for _, b := range c.Bars {
		h += c.bar(b, w)
	}
	return h
}

// Draw implements Drawing. Errors: a volume below 0 or none, too little room.
func (c Room) Draw(s sheet.Sheet, r sheet.Rect) error {
	const name = "room inside"
	for _, b := range c.Bars {
		for _, p := range b.Parts {
			if err := sound(p.Name, p.Volume); err != nil || p.Volume < 0 {
				return fmt.Errorf("picture %q: %s is %v; volumes are 0 or more", name, p.Name, p.Volume)
			}
		}
	}
	if err := enough(c, r, name); err != nil {
		return err
	}
	s.Picture(name)
	y, gutter := r.Y, c.gutter(r.W)
	for _, b := range c.Bars {
		if gutter == 0 {
			y = lines(s, r.X, y, []string{b.Name}, noteType)
		} else {
			s.Text(r.X, middle(y+roomBar/2, noteType), b.Name, noteType)
		}
		x := r.X + gutter
		for _, p := range b.Parts {
			at := sheet.Rect{X: x, Y: y, W: p.Volume * c.scale(r.W), H: roomBar}
			s.Rect(at, useFills[p.Use], edgePen)
			if c.inside(p, r.W) {
				patched(s, at.X+at.W/2, y+roomBar/2, c.text(p), noteType.To(sheet.Centre))
			}
			x += at.W
		}
		y = lines(s, r.X+gutter, y+roomBar+roomWords, c.beneath(b, r.W), noteType) + roomGap
	}
	return s.Err()
}
