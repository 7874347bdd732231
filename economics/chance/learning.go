package chance

import (
	"cmp"
	"math"
	"slices"

	"coldreckon/economics/quantity"
)

// The mean of a loss over an input is drawn as a smooth curve of so many bends,
// and what that leaves over as steps on so many equal parts of the futures:
// the bends follow prices and leaks, the steps a limit that is met or missed.
// Chosen by trial on functions of both kinds with a known answer.
const (
	bends = 3
	parts = 20
)

// A bend must measure this many standard errors to be believed: with three
// bends and three rivals an input of no account passes one in 40 times.
const believable = 3

// What an F statistic of that many parts stays below in 19 of 20 cases when
// the parts differ by scatter only (table of the F distribution, 19 and many
// degrees of freedom, from memory). Steps are shrunk by it over theirs.
const scatterF = 1.6

// EVPPI is the expected value of partial perfect information of one input:
// what knowing it alone before deciding would save on average, given its
// finite value in each future. It is 0 or above and at most EVPI. The figures
// of several inputs do not add up.
//
// It is estimated from the one set of futures by regression: each rival's mean
// loss, less the preferred option's, is drawn over the input, and the best
// option at each place is compared with the preferred (Strong, Oakley and
// Brennan, Medical Decision Making 34, 2014; from memory). Without the tests
// for scatter an input of no account would seem worth knowing, for the best of
// several scattered means is below the best mean. Where a loss jumps at one
// value of the input the figure comes out low, by up to about a twelfth.
func (j *Judgement) EVPPI(input []float64) quantity.Money {
	margin, _ := j.margin(input)
	saved := 0.0
	for _, m := range margin {
		saved -= min(m, 0)
	}
	return min(quantity.Money(saved/float64(len(margin))), j.EVPI)
}

// Switch is where a decision turns.
type Switch struct {
	At     float64           // the input's value
	Above  bool              // whether the other choice lies above At, else below
	Beyond quantity.Fraction // share of futures on that side
}

// leastBeyond is the share of futures that must lie beyond a switching value;
// wavering the most, as a share of those beyond, that may lie on the wrong side
// of it. Where the curve crosses zero its steps may carry it back a little; a
// curve that goes back for more turns nowhere. Engineering judgement, from memory.
const leastBeyond, wavering = 0.05, 0.2

// SwitchingValue is the value of one input, given by future as for EVPPI, at
// which another option becomes preferred, on the same curves: where fewest
// futures lie on the wrong side. There is none when fewer than one in twenty
// futures lie beyond, nor where the curve goes back and forth, which is scatter
// and not a turn.
func (j *Judgement) SwitchingValue(input []float64) (s Switch, ok bool) {
	margin, order := j.margin(input)
	n, others := len(order), 0 // others: futures in which the other choice is preferred
	for _, m := range margin {
		if m < 0 {
			others++
		}
	}
	fewest, before := n+1, 0 // before: of those, the ones passed
	for i := 1; i < n; i++ {
		m, next := margin[order[i-1]], margin[order[i]]
		if m < 0 {
			before++
		}
		if (m < 0) == (next < 0) {
			continue
		}
		beyond, wrong := n-i, before+(n-i)-(others-before)
		if m < 0 {
			beyond, wrong = i, (i-before)+(others-before)
		}
		if wrong >= fewest {
			continue
		}
		fewest = wrong
		x, xNext := input[order[i-1]], input[order[i]]
		s = Switch{
			At:     x + (xNext-x)*m/(m-next),
			Above:  next < 0,
			Beyond: quantity.Fraction(float64(beyond) / float64(n)),
		}
		ok = s.Beyond >= leastBeyond && float64(wrong) <= wavering*float64(beyond)
	}
	if !ok {
		return Switch{}, false
	}
	return s, true
}

// margin gives for each future how much more the best rival is expected to
// lose than the preferred option, knowing the input only, and the futures in
// ascending order of the input.
func (j *Judgement) margin(input []float64) (margin []float64, order []int) {
	order = make([]int, j.futures)
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(input[a], input[b]), a-b) })
	curves := orthonormal(normalScores(input, order))
	margin = make([]float64, j.futures)
	for i := range margin {
		margin[i] = math.Inf(1)
	}
	sections := sectionsOf(input, order)
	left, mean := make([]float64, j.futures), make([]float64, j.futures)
	for _, rival := range j.rivals {
		copy(left, rival)
		clear(mean)
		takeCurve(left, mean, curves)
		takeSteps(left, mean, sections)
		for i := range margin {
			margin[i] = min(margin[i], mean[i])
		}
	}
	return margin, order
}

// normalScores gives each future the normal score of its rank; equal inputs
// share their middle rank.
func normalScores(input []float64, order []int) []float64 {
	scores := make([]float64, len(order))
	for first := 0; first < len(order); {
		last := first
		for last+1 < len(order) && input[order[last+1]] == input[order[first]] {
			last++
		}
		score := NormalQuantile((float64(first+last)/2 + 0.5) / float64(len(order)))
		for _, future := range order[first : last+1] {
			scores[future] = score
		}
		first = last + 1
	}
	return scores
}

// orthonormal gives polynomials of the scores, of degree 1 upwards, with mean 0,
// mean square 1 and mean products 0 over the futures. An input with few
// distinct values has fewer of them, one that never varies has none.
func orthonormal(scores []float64) [][]float64 {
	n := float64(len(scores))
	one := make([]float64, len(scores))
	for i := range one {
		one[i] = 1
	}
	curves := [][]float64{one}
	for range bends {
		next := make([]float64, len(scores))
		for i, previous := range curves[len(curves)-1] {
			next[i] = previous * scores[i]
		}
		for _, curve := range curves {
			share := dot(next, curve) / n
			for i := range next {
				next[i] -= float64(share * curve[i])
			}
		}
		size := math.Sqrt(dot(next, next) / n)
		if size < 1e-6 {
			break
		}
		for i := range next {
			next[i] /= size
		}
		curves = append(curves, next)
	}
	return curves[1:]
}

// takeCurve moves the mean and the believable bends from left to mean.
func takeCurve(left, mean []float64, curves [][]float64) {
	n := float64(len(left))
	level, _ := Mean(left)
	for i := range left {
		left[i] -= level
		mean[i] += level
	}
	scatter := dot(left, left) / n
	sizes := make([]float64, len(curves))
	for k, curve := range curves {
		sizes[k] = dot(left, curve) / n
		scatter -= float64(sizes[k] * sizes[k])
	}
	standardError := math.Sqrt(max(scatter, 0) / max(n-1-float64(len(curves)), 1))
	for k, curve := range curves {
		if math.Abs(sizes[k]) <= believable*standardError {
			continue
		}
		for i := range left {
			move := float64(sizes[k] * curve[i])
			left[i] -= move
			mean[i] += move
		}
	}
}

// sectionsOf cuts the futures, in ascending order of the input, into about
// equal parts; equal inputs stay together. There is no use in cutting when too
// few would be in a part to tell a step from scatter.
func sectionsOf(input []float64, order []int) (sections [][]int) {
	n := len(order)
	if n < 5*parts {
		return nil
	}
	start := 0
	for k := 1; k <= parts; k++ {
		end := k * n / parts
		for end > 0 && end < n && input[order[end]] == input[order[end-1]] {
			end++
		}
		if end > start {
			sections = append(sections, order[start:end])
			start = end
		}
	}
	return sections
}

// takeSteps adds to mean what is left in each section, shrunk by the share of
// it that scatter alone would bring (positive-part shrinkage after James and
// Stein 1961, from memory).
func takeSteps(left, mean []float64, sections [][]int) {
	if len(sections) < 2 {
		return
	}
	steps := make([]float64, len(sections))
	between := 0.0
	for k, section := range sections {
		sum := 0.0
		for _, i := range section {
			sum += left[i]
		}
		steps[k] = sum / float64(len(section))
		between += float64(sum * steps[k])
	}
	if between <= 0 {
		return
	}
	within := max(dot(left, left)-between, 0)
	scatter := within / float64(len(left)-len(sections)) / (between / float64(len(sections)-1)) // 1/F
	kept := max(1-scatterF*scatter, 0)
	for k, section := range sections {
		for _, i := range section {
			mean[i] += float64(kept * steps[k])
		}
	}
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += float64(a[i] * b[i])
	}
	return sum
}
