package chart

import (
	"errors"
	"fmt"
	"math"

	"coldreckon/report/sheet"
)

// Head is what every chart opens with.
type Head struct {
	Name    string // which figure this is, for error messages
	Finding string // what it shows, one sentence
	Caption string // what is drawn, with its unit; may be empty
	Empty   string // what is said when there is nothing to draw
}

// The type in charts.
var (
	findingType = sheet.Type{Size: 10, Face: sheet.Bold}
	labelType   = sheet.Type{Size: 8.5}
	quietType   = sheet.Type{Size: 8.5, Grey: sheet.Dark}
	tickType    = sheet.Type{Size: 8, Grey: sheet.Dark}
)

// pitch is the distance from line to line, mm.
func pitch(t sheet.Type) float64 { return 1.3 * t.Size * sheet.MMPerPoint }

// lead is where the first line of a block stands below the block's top.
func lead(t sheet.Type) float64 { return (pitch(t)-t.Ascent()-t.Descent())/2 + t.Ascent() }

// middle is the baseline of a line of text centred on y.
func middle(y float64, t sheet.Type) float64 { return y + (t.Ascent()-t.Descent()*0.6)/2 }

// begin names the figure on the sheet, writes the head and gives what is left
// of the rectangle.
func (h Head) begin(s sheet.Sheet, r sheet.Rect) (sheet.Rect, error) {
	s.Picture(h.Name)
	if h.Finding == "" {
		return r, errors.New("the figure has no finding; it needs one sentence that says what it shows")
	}
	if err := roomy(r); err != nil {
		return r, err
	}
	y := r.Y
	put := func(text string, t sheet.Type) {
		for _, line := range sheet.Wrap(text, t, r.W) {
			s.Text(r.X, y+lead(t), line, t)
			y += pitch(t)
		}
	}
	put(h.Finding, findingType)
	if h.Caption != "" {
		put(h.Caption, quietType)
	}
	return r.Inset(0, y-r.Y+2, 0, 0), nil
}

// end returns a chart's error with the figure's name, or the sheet's.
func (h Head) end(s sheet.Sheet, err error) error {
	if err != nil {
		return fmt.Errorf("picture %q: %w", h.Name, err)
	}
	return s.Err()
}

// nothing says that there is nothing to draw.
func (h Head) nothing(s sheet.Sheet, r sheet.Rect) {
	text := h.Empty
	if text == "" {
		text = "There is nothing to draw here."
	}
	for i, line := range sheet.Wrap(text, quietType, r.W) {
		s.Text(r.X, r.Y+2+lead(quietType)+float64(i)*pitch(quietType), line, quietType)
	}
}

// roomy refuses a plot too small to be read.
func roomy(plot sheet.Rect) error {
	const leastW, leastH = 25.0, 10.0
	if plot.W < leastW || plot.H < leastH {
		return fmt.Errorf("%.0f x %.0f mm are left to draw in; %.0f x %.0f are the least", plot.W, plot.H, leastW, leastH)
	}
	return nil
}

// sound refuses values that cannot be drawn.
func sound(what string, values ...float64) error {
	const most = 1e15
	for i, v := range values {
		if math.IsNaN(v) || math.Abs(v) > most {
			return fmt.Errorf("value %d of %s is %v; a finite number below 1e15 is needed", i+1, what, v)
		}
	}
	return nil
}
