// Package chart draws the report's figures on a Sheet.
//
// Every chart is a plain value with a Draw method: data in, lines out. Hundred
// draws chances as counts, Stacked sums by their parts, Months and Strips a year
// and a spell of hours, Years what adds up over time, Swing what moves a
// difference, and Boundary where an answer turns.
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
