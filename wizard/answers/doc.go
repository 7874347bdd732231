// Package answers is the codec of the answers file: a boat as her owner told
// it, in YAML, with the owner's own comments and units.
//
// Read is strict: a key that means nothing, a unit that does not fit, a figure
// that cannot be, a key twice, nothing where an answer should stand, and every
// YAML device that hides what is written (anchors, aliases, tags) is a Fault
// with its line, what is wrong and what to write instead. All faults of a file are
// reported at once. "don't know" is an answer.
//
// A File is kept as text. Setting an answer rewrites the lines of that answer
// and no others, so comments, blank lines, order and line ends stay as the
// owner left them.
//
// In comes text, by Read, or a boat, by Fresh, which writes a file with a
// comment for every answer. Out goes text, by Write, or a boat: Told with the
// answers alone, Boat with everything filled in, ready to be reckoned.
//
//	read.go               text to answers
//	edit.go, render.go    answers to text
//	fresh.go, samples.go  files to begin with
package answers
