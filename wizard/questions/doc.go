// Package questions is the one table of everything an owner can be asked.
//
// Each Row is one key of the answers file: its words, its help, how its text
// is read and printed, what is impossible and what is merely unusual, and
// what is taken when nobody answers. The guided questions, the answers file,
// single settings from the command line, the reference page and the blank
// worksheet are all driven by the same rows, so a key means the same wherever
// it is met. The package asks nothing itself: it knows no terminal and no file.
//
// A boat comes about in three steps. Set and Accept put answers into an empty
// economics.Boat; Check looks whether they fit each other; Fill gives every
// unanswered row its default and lists it as an assumption. What is wrong with
// an answer is a Fault.
//
//	the table     row.go, and rows_*.go by subject
//	reading       set.go, kind.go, months.go, structured.go, records.go, fault.go
//	the whole     fill.go
//	in print      reference.go, limits.go
package questions
