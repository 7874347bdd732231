// Package wizard asks an owner about the boat, and no more than it needs to.
//
// Run is the conversation. It leads with the few questions that carry a first
// answer, then asks, one at a time, what is worth most to the decision, and
// offers to stop when nothing left is likely to change it. What to ask comes
// from the table in package questions; what an answer is worth comes from
// economics. Run knows no terminal, no file and no clock: it talks through a
// Prompter and hands every answer to a function that saves it.
//
// In go the answers so far, which may be none, a price book, and a function that
// reckons a boat; out comes the same file, complete and confirmed.
//
// There are two prompters. The one on package survey (survey.go and menu.go
// alone know of it) has lists to move in and is for ordinary terminals.
// The plain one reads and writes lines, and is for pipes, screen readers and
// simple terminals. NewPrompter chooses between them.
//
//	what comes next      flow.go, worth.go, trial.go
//	one question         ask.go, history.go, dayworth.go, follow.go
//	what is said         tell.go, feedback.go, review.go
//	prompters            prompter.go, survey.go, menu.go, plain.go, match.go, wrap.go
package wizard
