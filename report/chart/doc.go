// Package chart draws the report's figures on a Sheet.
//
// Every chart is a plain value with a Draw method: data in, lines out. Each
// opens with a finding, one sentence by the caller that says what the chart
// shows; a chart without a finding is refused. Shades of grey, dashes,
// hatches and markers tell things apart, never colour, and names stand beside
// what they name wherever there is room. Bars start from zero.
//
// Values must be finite and below 1e15 in size; others are refused with the
// figure's name. Charts without data say so in words.
package chart
