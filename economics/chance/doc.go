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
// Everything is a pure function of its arguments and of a stated seed.
package chance
