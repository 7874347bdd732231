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
// The charts beside them bring a head of their own.
//
// Every chart is a plain value with a Draw method: data in, lines out. Hundred
// draws chances as counts, Stacked sums by their parts, Months and Strips a year
// and a spell of hours, Years what adds up over time, and Swing what moves a
// difference.
//
// Each opens with a finding, one sentence by the caller that says what the chart
// shows; a chart without a finding is refused. Shades of grey, dashes,
// hatches and markers tell things apart, never colour, and names stand beside
// what they name wherever there is room. Bars start from zero.
//
// Values may be in any unit, as the caption says, but must be finite and of a
// size up to 1e15; others are refused with the figure's name. Charts without
// data say so in words. All errors name the figure; besides those that a chart
// lists, Draw fails where the finding is missing, where the rectangle is too
// small to be read, and where the sheet has a fault.
package chart
