package sheet

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// Fallback stands for a character the faces cannot draw. It is visible on
// purpose: a lost letter must not go unnoticed.
const Fallback = '□'

// spelled writes out signs that the faces lack but that readers know by
// another spelling: currency signs by their ISO 4217 codes, spaces and
// hyphens by their plain forms.
var spelled = map[rune]string{
	'₹': "INR", '₽': "RUB", '₺': "TRY", '₩': "KRW", '₪': "ILS", '₫': "VND", '₱': "PHP", '₴': "UAH", '₦': "NGN", '฿': "THB",
	'ẞ': "SS", '⅓': "1/3", '⅔': "2/3", '⅕': "1/5",
	'\u2010': "-", '\u2011': "-", '\u2015': "—", '\u2043': "-",
	'\u2000': " ", '\u2001': " ", '\u2002': " ", '\u2003': " ", '\u2004': " ", '\u2005': " ",
	'\u2006': " ", '\u2007': "\u00a0", '\u2008': " ", '\u2009': " ", '\u200a': " ", '\u202f': "\u00a0",
	'\u3000': " ", '\t': " ", '\n': " ", '\r': " ", '\u2028': " ", '\u2029': " ",
}

// Clean makes owners' text drawable: valid UTF-8, composed, without control
// and invisible characters, and made only of characters the faces hold. An
// accented letter that is missing loses its accent; anything else that is
// missing becomes Fallback. Characters beyond U+FFFF are always replaced: the
// PDF library cannot take them. Clean(Clean(s)) = Clean(s).
func Clean(s string) string {
	if plain(s) {
		return s
	}
	var b strings.Builder
	for _, r := range norm.NFC.String(strings.ToValidUTF8(s, string(Fallback))) {
		switch {
		case spelled[r] != "":
			b.WriteString(spelled[r])
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Variation_Selector, r):
			// invisible: dropped
		case drawable(r):
			b.WriteRune(r)
		case unicode.Is(unicode.Mn, r):
			// an accent that would not compose: dropped, its letter stays
		default:
			b.WriteRune(bare(r))
		}
	}
	return b.String()
}

// bare takes accents off a letter, the last one first, until the faces hold
// what is left; or it gives up.
func bare(r rune) rune {
	parts := []rune(norm.NFD.String(string(r)))
	for n := len(parts) - 1; n > 0 && unicode.Is(unicode.Mn, parts[n]); n-- {
		if c := []rune(norm.NFC.String(string(parts[:n]))); len(c) == 1 && drawable(c[0]) {
			return c[0]
		}
	}
	return Fallback
}

// plain reports the common case, nothing to clean: the printable signs of ASCII and
// Latin-1 and the marks that reports use, each one sign by itself.
func plain(s string) bool {
	for _, r := range s {
		if (r < ' ' || r > '~') && (r < '\u00a0' || r > 'ÿ' || r == '\u00ad') && !strings.ContainsRune("–—‘’“”…€→", r) {
			return false
		}
	}
	return true
}
