package sheet

import (
	"fmt"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// files are the TrueType files of the faces, made ready once. They are not
// to be written to.
var files = sync.OnceValue(func() map[Face][]byte {
	m := make(map[Face][]byte, len(Faces))
	for f, b := range map[Face][]byte{Regular: goregular.TTF, Bold: gobold.TTF, Italic: goitalic.TTF} {
		ready, err := withTextHyphen(b)
		if err != nil {
			// The fonts are compiled in: this cannot depend on any input.
			panic(fmt.Sprintf("embedded face %q: %v", f, err))
		}
		m[f] = ready
	}
	return m
})

// advances holds a face's character widths in thousandths of its size; a
// character the face lacks has none.
type advances [1 << 16]float64

// metrics are the widths of all faces, read once from the fonts themselves.
var metrics = sync.OnceValue(func() map[Face]*advances {
	m := make(map[Face]*advances, len(Faces))
	for _, f := range Faces {
		a, err := readAdvances(files()[f])
		if err != nil {
			panic(fmt.Sprintf("embedded face %q: %v", f, err)) // compiled in, as above
		}
		m[f] = a
	}
	return m
})

func readAdvances(b []byte) (*advances, error) {
	f, err := sfnt.Parse(b)
	if err != nil {
		return nil, err
	}
	var buf sfnt.Buffer
	em := f.UnitsPerEm()
	a := new(advances)
	for r := ' '; int(r) < len(a); r++ {
		g, err := f.GlyphIndex(&buf, r)
		if err != nil {
			return nil, err
		}
		if g == 0 {
			continue
		}
		w, err := f.GlyphAdvance(&buf, g, fixed.Int26_6(em)<<6, font.HintingNone)
		if err != nil {
			return nil, err
		}
		a[r] = 1000 * float64(w) / 64 / float64(em)
	}
	return a, nil
}

// drawable reports whether the faces hold a character; all three hold the same.
func drawable(r rune) bool {
	a := metrics()[Regular]
	return int(r) < len(a) && a[r] > 0
}

// Width is the length of a line of text, mm, as every Sheet sets it: cleaned as
// Clean says, without kerning.
func Width(s string, t Type) float64 {
	a := metrics()[t.Face]
	var sum float64
	for _, r := range Clean(s) {
		sum += a[r]
	}
	return sum / 1000 * t.Size * MMPerPoint
}
