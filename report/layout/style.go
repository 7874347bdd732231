package layout

import "coldreckon/report/sheet"

// The type in use: one family, few sizes, in points. They are not to be
// written to.
var (
	bodyType    = sheet.Type{Size: 10}
	ledeType    = sheet.Type{Size: 13}                    // the sentence a page opens with
	fineType    = sheet.Type{Size: 8.5}                   // what is looked up, not read
	smallType   = sheet.Type{Size: 8.5, Grey: sheet.Dark} // notes, sources
	stepType    = sheet.Type{Size: 9}                     // what is done, beside a form
	tinyType    = sheet.Type{Size: 8}                     // what must stand on a full form
	Cell        = sheet.Type{Size: 9}                     // tables and forms
	findingType = sheet.Type{Size: 10, Face: sheet.Bold}  // what a picture shows
	Run         = sheet.Type{Size: 8, Grey: sheet.Dark}   // running head and foot
	heads       = [3]sheet.Type{                          // headings by level
		{Size: 16, Face: sheet.Bold},
		{Size: 11.5, Face: sheet.Bold},
		{Size: 10.5, Face: sheet.Bold},
	}
)

// The air around things, mm.
const (
	measure    = 140.0 // longest line of running text: near 85 characters of Body
	leading    = 1.32  // line pitch over type size
	inTables   = 1.24  // the same in tables
	paraSpace  = 2.2
	tightSpace = 0.4
	cellPad    = 1.15 // above and below a cell
	finePad    = 0.6
	closePad   = 0.45
	cellGap    = 4.0 // between columns
	indent     = 5.0 // of list items
	pictureAir = 4.0 // above and below a picture
)

// pitch is the distance from line to line.
func pitch(t sheet.Type) float64 { return leading * t.Size * sheet.MMPerPoint }

// cellPitch is the distance from line to line in tables.
func cellPitch(t sheet.Type) float64 { return inTables * t.Size * sheet.MMPerPoint }

// baseline is where the first line stands below the top of its block.
func baseline(t sheet.Type) float64 { return baselineAt(t, pitch(t)) }

func baselineAt(t sheet.Type, pitch float64) float64 {
	return (pitch-t.Ascent()-t.Descent())/2 + t.Ascent()
}
