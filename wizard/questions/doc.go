// Package questions is the one table of everything an owner can be asked.
//
// Each Row is one key of the answers file: its words, its help, how its text
// is read and printed, what is impossible and what is merely unusual, and
// what is taken when nobody answers. The guided questions, the answers file,
// single settings from the command line and the reference page are all driven
// by the same rows, so a key means the same wherever it is met.
//
// Set and Accept put answers into a Boat; Fill gives every unanswered row its
// default and lists it as an assumption; Check looks at the boat as a whole.
// The package asks nothing itself: it knows no terminal and no file.
package questions
