package questions

import (
	"math"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Whatever is given as an answer to whichever question, what is kept is a
// figure that can be, and what is refused is refused at once, in one short line.
func TestHostileAnswers(t *testing.T) {
	texts := []string{"NaN", "nan L", "inf", "+Inf", "-inf", "∞", "1e309", "1e309 L", "-1", "-1 kg", "-0", "0x10", "1_000", "12,000", "12,000 Ah",
		"4.4 L", "80 °C", "220 V", "1/0", "0/0", "1 1/0 in", "1 x 1 x 1", "NaN x NaN x NaN", "june: NaN", "june: -3", "ice: NaN; hours: inf; month: 7",
		"\x00", "\xff\xfe", "a\nb", "१२", "٩ L", "9" + strings.Repeat("9", 400) + " L",
		strings.Repeat("9", 1<<20), strings.Repeat("x", 1<<20), strings.Repeat("1 x ", 1<<18), strings.Repeat("june: 8, ", 1<<17), strings.Repeat("; ", 1<<19)}
	kept, refused := 0, 0
	for _, row := range All() {
		for _, text := range texts {
			b := economics.Boat{Units: quantity.US}
			if len(text) > longestAnswer { // before it is compared with anything, which would take seconds
				if faults := Accept(&b, row.Key, Word(text)); len(faults) != 1 || !strings.HasPrefix(faults[0].Wrong, "a text of ") {
					t.Errorf("%s = %.40q: %v", row.Key, text, faults)
				}
				refused++
				continue
			}
			err := Set(&b, row.Key, text)
			if err != nil {
				refused++
				fault, ok := err.(Fault)
				if s := err.Error() + fault.Hint; !ok || len(s) > 400 || strings.ContainsAny(s, "\n\r\x00") {
					t.Errorf("%s = %.40q: %T of %d bytes: %.100q", row.Key, text, err, len(s), s)
				}
				continue
			}
			kept++
			for _, f := range figures(row.Field(&b).Get()) {
				if math.IsNaN(f) || math.IsInf(f, 0) || row.Limits != (Limits{}) && !(row.None != "" && f == 0) && !row.Limits.holds(f) {
					t.Errorf("%s = %.40q: keeps %v", row.Key, text, f)
				}
			}
		}
	}
	if kept == 0 || refused < 20*len(All()) {
		t.Errorf("%d kept, %d refused: the texts have lost their edge", kept, refused)
	}
}

// A key that nobody knows is repeated in part, and compared when it can be one.
func TestHostileKeys(t *testing.T) {
	for key, hint := range map[string]string{
		"box.volum":                "did you mean box.volume?",
		"power.cable.run":          "did you mean power.cable_run?",
		"money.discount_rate":      "did you mean money.discount?",
		"boat.year":                "", // no likeness beyond the group
		"power.inverter":           "",
		"":                         "",
		"a\nb":                     "",
		strings.Repeat("k", 1<<20): "",
		strings.Repeat(".", 1<<20): "",
	} {
		var b economics.Boat
		err := Set(&b, key, "1")
		fault, ok := err.(Fault)
		if !ok || fault.Hint != hint || len(err.Error()) > 200 || strings.Contains(err.Error(), "\n") {
			t.Errorf("%.40q: %T, hint %q, want %q: %.200q", key, err, fault.Hint, hint, err)
		}
	}
}

// A name that turns the letters round it, or steers the terminal, is
// refused, in every text.
func TestUnseenCharactersAreRefused(t *testing.T) {
	for _, key := range []string{"boat.name", "currency"} {
		for _, text := range []string{"a\u202eb", "a\x1b[2Jb", "a\u2066b"} {
			var b economics.Boat
			if err := Set(&b, key, text); err == nil {
				t.Errorf("%s = %q was taken", key, text)
			}
		}
	}
}
