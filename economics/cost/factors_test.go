package cost

import (
	"math"
	"math/rand/v2"
	"testing"

	"coldreckon/economics/quantity"
)

// near fails unless got is within tolerance of want.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

// Guards the bodies of SPV, UPV, ModifiedUPV, CRF and netOf: with -n for n in
// SPV, without the minus in UPV, with d and e exchanged in netOf, or with UPV
// for 1/UPV in CRF, rows below fail.
//
// Source of every row: NIST Handbook 135 (Fuller and Petersen, 1995),
// appendix D, the formulas of SPV, UPV, UPV* and UCR (from memory), worked to
// the four decimals (five for CRF) of the published tables with a separate
// tool.
func TestFactorTable(t *testing.T) {
	for _, row := range []struct {
		d                       Rate
		n                       quantity.Year
		spv, upv, up1, up2, dn1 float64 // UPV* at e = 1 %, 2 %, -1 %
		crf                     float64
	}{
		{0.03, 1, 0.9709, 0.9709, 0.9806, 0.9903, 0.9612, 1.03000},
		{0.03, 5, 0.8626, 4.5797, 4.7162, 4.8562, 4.4468, 0.21835},
		{0.03, 10, 0.7441, 8.5302, 8.9919, 9.4813, 8.0946, 0.11723},
		{0.03, 15, 0.6419, 11.9379, 12.8683, 13.8861, 11.0870, 0.08377},
		{0.03, 20, 0.5537, 14.8775, 16.3827, 18.0812, 13.5418, 0.06722},
		{0.035, 1, 0.9662, 0.9662, 0.9758, 0.9855, 0.9565, 1.03500},
		{0.035, 5, 0.8420, 4.5151, 4.6491, 4.7868, 4.3844, 0.22148},
		{0.035, 10, 0.7089, 8.3166, 8.7633, 9.2366, 7.8951, 0.12024},
		{0.035, 15, 0.5969, 11.5174, 12.4040, 13.3731, 10.7061, 0.08683},
		{0.035, 20, 0.5026, 14.2124, 15.6257, 17.2185, 12.9569, 0.07036},
		{0.05, 1, 0.9524, 0.9524, 0.9619, 0.9714, 0.9429, 1.05000},
		{0.05, 5, 0.7835, 4.3295, 4.4568, 4.5874, 4.2054, 0.23097},
		{0.05, 10, 0.6139, 7.7217, 8.1269, 8.5559, 7.3390, 0.12950},
		{0.05, 15, 0.4810, 10.3797, 11.1492, 11.9889, 9.6739, 0.09634},
		{0.05, 20, 0.3769, 12.4622, 13.6381, 14.9587, 11.4137, 0.08024},
		{0.07, 1, 0.9346, 0.9346, 0.9439, 0.9533, 0.9252, 1.07000},
		{0.07, 5, 0.7130, 4.1002, 4.2192, 4.3412, 3.9842, 0.24389},
		{0.07, 10, 0.5083, 7.0236, 7.3808, 7.7586, 6.6857, 0.14238},
		{0.07, 15, 0.3624, 9.1079, 9.7501, 10.4488, 8.5174, 0.10979},
		{0.07, 20, 0.2584, 10.5940, 11.5254, 12.5665, 9.7594, 0.09439},
		{0.10, 1, 0.9091, 0.9091, 0.9182, 0.9273, 0.9000, 1.10000},
		{0.10, 5, 0.6209, 3.7908, 3.8987, 4.0093, 3.6856, 0.26380},
		{0.10, 10, 0.3855, 6.1446, 6.4429, 6.7578, 5.8619, 0.16275},
		{0.10, 15, 0.2394, 7.6061, 8.1033, 8.6421, 7.1470, 0.13147},
		{0.10, 20, 0.1486, 8.5136, 9.1868, 9.9338, 7.9058, 0.11746},
	} {
		near(t, "SPV", SPV(row.d, row.n), row.spv, 0.5e-4)
		near(t, "UPV", UPV(row.d, row.n), row.upv, 0.5e-4)
		near(t, "UPV* 1 %", ModifiedUPV(row.d, 0.01, row.n), row.up1, 0.5e-4)
		near(t, "UPV* 2 %", ModifiedUPV(row.d, 0.02, row.n), row.up2, 0.5e-4)
		near(t, "UPV* -1 %", ModifiedUPV(row.d, -0.01, row.n), row.dn1, 0.5e-4)
		near(t, "CRF", CRF(row.d, row.n), row.crf, 0.5e-5)
		if t.Failed() {
			t.Fatalf("at d = %v, n = %v", row.d, row.n)
		}
	}
}

func TestFactors(t *testing.T) {
	const monthly = 1.0 / 12
	for _, row := range []struct {
		name      string
		got, want float64
		tolerance float64
		source    string
	}{
		{"SPV* 3 %, 2 %, 10", ModifiedSPV(0.03, 0.02, 10), 0.90705, 0.5e-5, "NIST Handbook 135, SPV* formula, from memory"},
		{"SCA 5 %, 10", SCA(0.05, 10), 1.62889, 0.5e-5, "compound interest tables, any engineering economy text, from memory"},
		{"USF 5 %, 10", USF(0.05, 10), 0.07950, 0.5e-5, "compound interest tables, from memory"},
		{"UCA 5 %, 10", UCA(0.05, 10), 12.57789, 0.5e-5, "compound interest tables, from memory"},
		{"PMT 7.5 %/12, 180, 200000", 200000 * CRF(0.075*monthly, 180), 1854.0247200054619, 1e-8, "numpy-financial documentation, pmt"},
		{"PMT 8 %/12, 10, 10000, due at start", 10000 * CRF(0.08*monthly, 10) / (1 + 0.08*monthly), 1030.16432717797, 1e-9, "Microsoft, PMT function (DAX)"},
		{"PMT 6 %/12, 216, 0, 50000", 50000 * USF(0.06*monthly, 216), 129.081160867991, 1e-10, "Microsoft, PMT function (DAX)"},
		{"FV 5 %/12, 120, -100, -100", 100*UCA(0.05*monthly, 120) + 100*SCA(0.05*monthly, 120), 15692.928894335748, 1e-8, "numpy-financial documentation, fv"},
		{"NPER 7 %/12, -150, 8000 = 64.07335", 150 * UPV(0.07*monthly, 64.07335), 8000, 1e-3, "numpy-financial documentation, nper: at that many months the payments are worth the loan"},
		{"RATE 48, -200, 8000 = 0.770147 %", 200 * UPV(0.00770147248820137, 48), 8000, 1e-8, "Microsoft, RATE function (DAX): at that rate the payments are worth the loan"},
		{"inflation in 6.1 % nominal, 4.0 % real", float64(Real(0.061, 0.04)), 0.0202, 0.5e-4, "OMB Circular A-94 appendix C, January 2000, 10 years"},
		{"6.1 % nominal back again", float64(Nominal(Real(0.061, 0.04), 0.04)), 0.061, 1e-15, "definition"},
	} {
		near(t, row.name+" ("+row.source+")", row.got, row.want, row.tolerance)
	}
}

// Guards the branch for d == 0 in UPV and the use of expm1 there: with the
// branch removed the first rows are not numbers; with math.Exp(x)-1 the row at
// a rate of 1e-12 loses all but four digits.
func TestFactorEdges(t *testing.T) {
	for _, row := range []struct {
		name      string
		got, want float64
	}{
		{"UPV d=0", UPV(0, 7), 7},
		{"CRF d=0", CRF(0, 8), 0.125},
		{"UPV* e=d", ModifiedUPV(0.04, 0.04, 9), 9},
		{"UPV* e>d", ModifiedUPV(0, 1, 3), 2 + 4 + 8},
		{"SPV n=0", SPV(0.05, 0), 1},
		{"UPV n=0", UPV(0.05, 0), 0},
		{"SPV d<0", SPV(-0.5, 2), 4},
		{"UPV d<0", UPV(-0.5, 3), 2 + 4 + 8},
		{"UCA d=0", UCA(0, 6), 6},
		{"UPV d tiny", UPV(1e-12, 10), 10 * (1 - 5.5e-12)},
		{"UPV d smallest", UPV(5e-324, 10), 10},
	} {
		near(t, row.name, row.got, row.want, 1e-13*math.Abs(row.want))
	}
}

func TestFactorsAgreeWithSums(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	for range 500 {
		d, e := Rate(random.Float64()*0.5-0.2), Rate(random.Float64()*0.3-0.15)
		years := 1 + random.IntN(30)
		n := quantity.Year(years)
		upv, modified := 0.0, 0.0
		for year := 1; year <= years; year++ {
			upv += 1 / math.Pow(1+float64(d), float64(year))
			modified += math.Pow((1+float64(e))/(1+float64(d)), float64(year))
		}
		near(t, "UPV", UPV(d, n), upv, 1e-11*upv)
		near(t, "UPV*", ModifiedUPV(d, e, n), modified, 1e-11*modified)
		near(t, "CRF - USF", CRF(d, n)-USF(d, n), float64(d), 1e-12)
	}
}
