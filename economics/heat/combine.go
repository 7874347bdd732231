package heat

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"coldreckon/economics/quantity"
)

// Combined is what all the estimates of a box's leak come to.
type Combined struct {
	UA       quantity.WattPerKelvin // median
	LogSD    float64                // standard deviation of ln UA
	Used     []Estimate
	Dropped  []Estimate // the drawing, where it contradicts the tests
	Disagree bool       // two of the estimates cannot both be right
	Why      string     // how it was done, in plain words
}

// Range gives the combined leak, W/K: its median, 10th and 90th percentiles.
func (c Combined) Range() quantity.Range { return quantity.Spread(float64(c.UA), c.LogSD) }

// Two estimates cannot both be right when they differ by more than a factor of
// disagreement, and by more than doubtful times their joint log-sd. Engineering
// judgement, from memory.
const (
	disagreement = 2
	doubtful     = 1.5
)

func (e Estimate) contradicts(other Estimate) bool {
	apart := math.Abs(math.Log(float64(e.UA / other.UA)))
	return apart > math.Log(disagreement) && apart > doubtful*math.Hypot(e.LogSD, other.LogSD)
}

// Combine weighs a drawing and any tests by the inverse of their variance, in
// logarithms. It lies between the least and the greatest estimate used.
//
// Where any two differ by more than a factor of 2, and by more than 1.5 times
// their joint log-sd, the drawing is dropped, the tests are kept, and the
// spread is widened: until its 10 to 90 band reaches every test kept, and by
// the factor by which the dropped drawing misses the tests beyond what both
// their spreads allow (the scale factor of Birge, Phys. Rev. 40 (1932) 207).
// Without tests the drawing stands alone. Every UA and LogSD must be over 0.
func Combine(drawing Estimate, tests ...Estimate) Combined {
	all := append([]Estimate{drawing}, tests...)
	if len(tests) == 0 {
		return Combined{UA: drawing.UA, LogSD: drawing.LogSD, Used: all,
			Why: "The leak is reckoned from the walls alone. A test with ice or jugs of water would tell more."}
	}
	if !anyContradict(all) {
		mean, sd := weigh(all)
		return Combined{UA: quantity.WattPerKelvin(math.Exp(mean)), LogSD: sd, Used: all,
			Why: fmt.Sprintf("The walls and %s agree as far as either can be trusted, so all count, the surer ones for more.", names(tests))}
	}

	mean, sd := weigh(tests)
	miss := math.Abs(math.Log(float64(drawing.UA)) - mean)
	wide := max(sd, sd*miss/math.Hypot(sd, drawing.LogSD))
	for _, t := range tests {
		wide = max(wide, math.Abs(math.Log(float64(t.UA))-mean)/quantity.NormalP90)
	}
	return Combined{
		UA: quantity.WattPerKelvin(math.Exp(mean)), LogSD: wide,
		Used: tests, Dropped: []Estimate{drawing}, Disagree: true,
		Why: explain(drawing, tests, math.Exp(mean)),
	}
}

func anyContradict(estimates []Estimate) bool {
	for i, e := range estimates {
		if slices.ContainsFunc(estimates[:i], e.contradicts) {
			return true
		}
	}
	return false
}

// weigh gives mean and standard deviation of ln UA by inverse variance.
func weigh(estimates []Estimate) (mean, sd float64) {
	var weights, sum float64
	for _, e := range estimates {
		w := 1 / (e.LogSD * e.LogSD)
		weights += w
		sum += w * math.Log(float64(e.UA))
	}
	return sum / weights, 1 / math.Sqrt(weights)
}

func spread(estimates []Estimate) (least, most float64) {
	least, most = math.Inf(1), 0
	for _, e := range estimates {
		least, most = min(least, float64(e.UA)), max(most, float64(e.UA))
	}
	return least, most
}

// explain names what usually lies behind a disagreement.
func explain(drawing Estimate, tests []Estimate, testsUA float64) string {
	var b strings.Builder
	if least, most := spread(tests); most/least > disagreement {
		fmt.Fprintf(&b, "The tests differ among themselves by a factor of %.2g, so the range is wide. ", most/least)
		b.WriteString("Usual causes: the lid was opened, warm food or a warm box took part of the ice, or hours and weights were guessed. ")
	}
	ratio := testsUA / float64(drawing.UA)
	switch {
	case ratio > disagreement:
		fmt.Fprintf(&b, "By the walls as told the box should leak less: by %s it leaks %.2g times as much. ", names(tests), ratio)
		b.WriteString("Usual causes: wet or missing foam, a lid that does not seal, an open drain. ")
	case ratio < 1/float64(disagreement):
		fmt.Fprintf(&b, "By the walls as told the box should leak more: by %s it leaks only %.2g times as much. ", names(tests), ratio)
		b.WriteString("Usual causes: foam thicker or drier than told, air outside cooler than read, or colder ice than told. ")
	}
	b.WriteString("What the box itself showed is kept; the walls as told are left out.")
	return b.String()
}

// names lists the sources of tests in plain words: "the ice test and the log".
func names(tests []Estimate) string {
	count := map[Source]int{}
	for _, t := range tests {
		count[t.Source]++
	}
	var words []string
	for _, s := range []Source{FromIceTest, FromJugTest, FromHistory, FromLog} {
		switch n := count[s]; {
		case n > 0 && s == FromHistory:
			words = append(words, "the ice you remember")
		case n == 1:
			words = append(words, "the "+string(s))
		case n > 1:
			words = append(words, "the "+string(s)+"s")
		}
	}
	return quantity.Listed(words, "and")
}
