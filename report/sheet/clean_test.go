package sheet

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

func TestClean(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"plain text 123", "plain text 123"},
		{"4 °C – 12 × 3 ≈ ½ µ ² ³ ≥ ≤ − ± Δ → ₂ € £ ¥", "4 °C – 12 × 3 ≈ ½ µ ² ³ ≥ ≤ − ± Δ → ₂ € £ ¥"},
		{"Åsa Žižek Łódź Çelik Ğ", "Åsa Žižek Łódź Çelik Ğ"},
		{"Ωμέγα", "Ωμέγα"},
		{"Привет, Їжак", "Привет, Їжак"},
		{"e\u0301te\u0301", "été"},             // composed
		{"Nguyễn Thị", "Nguyên Thi"},           // as near as the faces come
		{"氷 ice", "□ ice"},                     // honest: not drawn
		{"\U0001F9CA\U0001F6A2", "□□"},         // beyond U+FFFF
		{"bad \xff byte", "bad □ byte"},        // not UTF-8
		{"a\x00b\x1bc\u200bd\ufeffe", "abcde"}, // control and invisible
		{"a\tb\nc", "a b c"},
		{"₹ 500", "INR 500"},
		{"well\u2011known", "well-known"},
		{"", ""},
	} {
		if got := Clean(c.in); got != c.want {
			t.Errorf("Clean(%q) = %q, want %q", c.in, got, c.want)
		}
	}
}

// What passes for plain is drawn as it stands and combines with nothing.
func TestPlainNeedsNoCleaning(t *testing.T) {
	for r := rune(0); r <= unicode.MaxRune; r++ {
		if s := string(r); plain(s) && (!drawable(r) || spelled[r] != "" || unicode.In(r, unicode.Cc, unicode.Cf, unicode.Mn) || norm.NFC.String(s) != s) {
			t.Errorf("%q is no plain sign", r)
		}
	}
	if plain("\xff") {
		t.Error("what is not UTF-8 is no plain sign")
	}
}

// Every letter of the main European alphabets is drawn as itself.
func TestAlphabetsAreHeld(t *testing.T) {
	for name, letters := range map[string]string{
		"German":    "ÄÖÜäöüß",
		"French":    "ÀÂÆÇÈÉÊËÎÏÔŒÙÛÜŸàâæçèéêëîïôœùûüÿ",
		"Spanish":   "ÁÉÍÑÓÚÜáéíñóúü¿¡",
		"Portugal":  "ÃÕãõ",
		"Nordic":    "ÅÆØÐÞåæøðþ",
		"Polish":    "ĄĆĘŁŃÓŚŹŻąćęłńóśźż",
		"Czech":     "ČĎĚŇŘŠŤŮŽčďěňřšťůž",
		"Hungarian": "ŐŰőű",
		"Baltic":    "ĀĒĢĪĶĻŅŪāēģīķļņūĖĮŲėįų",
		"Turkish":   "ĞİŞğış",
		"Croatian":  "ĆČĐŠŽćčđšž",
		"Greek":     "ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩαβγδεζηθικλμνξοπρσςτυφχψωάέήίόύώϊϋΐΰ",
		"Russian":   "АБВГДЕЁЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯабвгдеёжзийклмнопрстуфхцчшщъыьэюя",
		"Ukrainian": "ЄІЇҐєіїґ",
	} {
		if got := Clean(letters); got != letters {
			t.Errorf("%s: %q becomes %q", name, letters, got)
		}
	}
}

func FuzzClean(f *testing.F) {
	for _, s := range []string{"", "a\u0301", "\xff", "\U0001F9CA", "氷", "½\t", "ǅ", "\u1e9b\u0323"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c := Clean(s)
		if !utf8.ValidString(c) {
			t.Fatalf("%q is not UTF-8", c)
		}
		for _, r := range c {
			if r > 0xFFFF || !drawable(r) {
				t.Fatalf("%U cannot be drawn", r)
			}
		}
		if again := Clean(c); again != c {
			t.Fatalf("cleaned twice %q becomes %q", c, again)
		}
	})
}

func TestWrap(t *testing.T) {
	ten := Type{Size: 10}
	for _, w := range []float64{-1, 0, 3, 15, 40, 100} {
		s := "A cold box of ninety litres and a Donaudampfschifffahrtsgesellschaftskapitän aboard, 12–15 kg"
		lines := Wrap(s, ten, w)
		for _, l := range lines {
			if Width(l, ten) > w && utf8.RuneCountInString(l) > 1 {
				t.Errorf("width %v: %q is %.1f mm", w, l, Width(l, ten))
			}
		}
		squash := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if got := squash(strings.Join(lines, "")); got != squash(s) {
			t.Errorf("width %v: letters lost: %q", w, got)
		}
	}
	if got := Wrap("", ten, 50); len(got) != 1 || got[0] != "" {
		t.Errorf("nothing wraps to %q", got)
	}
	if got := Wrap("one\ntwo", ten, 50); len(got) != 2 {
		t.Errorf("a line break is lost: %q", got)
	}
	head, tail := Break("north-eastwardly", ten, Width("north-east", ten))
	if head != "north-" || tail != "eastwardly" {
		t.Errorf("broken as %q, %q", head, tail)
	}
	head, tail = Break("(1,600–2,000)", ten, Width("(1,600–2,0", ten))
	if head != "(1,600–" || tail != "2,000)" {
		t.Errorf("a range broken as %q, %q", head, tail)
	}
}

func TestShorten(t *testing.T) {
	ten := Type{Size: 10}
	if got := Shorten("short", ten, 50); got != "short" {
		t.Errorf("got %q", got)
	}
	long := strings.Repeat("long name ", 20)
	got := Shorten(long, ten, 50)
	if !strings.HasSuffix(got, "…") || Width(got, ten) > 50 || Width(got, ten) < 40 {
		t.Errorf("got %q, %.1f mm", got, Width(got, ten))
	}
}
