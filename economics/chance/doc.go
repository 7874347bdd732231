// Package chance reckons with what is not known exactly.
//
// An uncertain figure is told as a range: low and high are its 10th and 90th
// percentiles, typical its median. LatinHypercube spreads a fixed number of
// futures evenly over all such figures; SplitLogNormal turns a future's place
// between 0 and 1 into a figure. The same futures serve every option, so that
// what all options share cancels in their differences.
//
// Outcomes gathers what each option costs in each future and whether it works
// there. From it come the counts of 100 futures, the expected regret, what
// knowing everything would be worth, what knowing one figure would be worth,
// and the value of that figure at which the decision turns.
//
// In the words of decision analysis, L being the loss of an option in a future
// and E the mean over the futures:
//
//	expected regret of an option   E[L - least L of any option]
//	preferred                      the option with the least expected regret
//	EVPI                           its expected regret: what knowing all would save
//	EVPPI of one input             what knowing that input alone would save
//	switching value                the input at which another option is preferred
//
//	spread.go     ranges as distributions (Fit, SplitLogNormal, NormalQuantile)
//	sample.go     futures (LatinHypercube)
//	outcomes.go   the table of outcomes, and the judgement (Outcomes.Judge)
//	learning.go   what one input is worth knowing, and where it turns the choice
//	count.go      counts of 100 that add up; means with their errors
//
// Left out: inputs that depend on each other, which a caller makes from
// independent ones, and a dislike of risk beyond the mean loss.
//
// Everything is a pure function of its arguments and of a stated seed.
package chance
