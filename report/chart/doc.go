// Package chart draws the report's pictures on a Sheet.
//
// A Drawing knows how high it must be and leaves its words to layout.Picture:
// TenByTen draws chances, PriceOfCold what a cold day costs, BoxSections and Room
// the ice box, Season and Power the months aboard, CutList what is cut from
// board, Against what was measured. Fills mean the same in all of them: solid the
// good or recommended, hatched the second or what is added, dotted what is left
// over, white none. They take plain figures and words and are drawn for a
// telephone as for paper.
//
// Shades of grey, dashes and hatches tell things apart, never colour, and names
// stand beside what they name wherever there is room. Bars start from zero.
//
// Values may be in any unit, as the caption says, but must be finite and of a
// size up to 1e15; others are refused with the picture's name, as is a rectangle
// lower than Height.
package chart
