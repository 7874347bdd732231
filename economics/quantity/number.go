package quantity

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxText bounds the text of one quantity, in bytes; longer text is a mistake
// or an attack, and is refused before it is looked at. With so few digits no
// sum can reach the end of float64's range (1.8e308).
const maxText = 200

// maxDepth bounds the brackets and signs nested in one sum.
const maxDepth = 16

// Error says what is wrong with the text of a quantity, and what to give
// instead. Every Parse function of this package fails with one.
type Error struct {
	Wrong string // a sentence without its stop, such as: "90" has no unit
	Want  string // what to give, with an example: a volume, such as 90 L
	Hint  string // a way out, or empty
}

// Error gives the two sentences, and the hint in the second.
func (e *Error) Error() string {
	s := e.Wrong + ". Give " + e.Want
	if e.Hint != "" {
		s += "; " + e.Hint
	}
	if strings.HasSuffix(s, "?") {
		return s
	}
	return s + "."
}

// Unclear is the error of a text that cannot be told apart as what is wanted.
func Unclear(text, want string) *Error {
	return &Error{Wrong: Quoted(text) + " is not understood", Want: want}
}

// plain maps the look-alikes that keyboards, spreadsheets and word processors
// produce onto the characters that the parsers know.
var plain = strings.NewReplacer(
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\u2007", " ", "\u2002", " ", "\u2003", " ", "\t", " ",
	"−", "-", "‐", "-", "‑", "-",
	"″", `"`, "“", `"`, "”", `"`, "''", `"`, "′′", `"`, "’’", `"`,
	"′", "'", "’", "'", "‘", "'",
	"º", "°", "˚", "°",
	"·", "*", "÷", "/", "⁄", "/",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅓", " 1/3", "⅔", " 2/3",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"²", "2", "³", "3",
)

// hedge is what people put round a figure that is no exact one.
var hedge = regexp.MustCompile(`(?i)^(?:(?:about|around|roughly|approximately|approx\.?|circa|ca\.|maybe|perhaps|probably|say|nearly|almost|it is|it's)\s+|~\s*|≈\s*)*(.*?)(?:,?\s+(?:or so|approx\.?|more or less|i think|i guess))?$`)

// numerals are the figures that people write out.
var numerals = map[string]string{"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8",
	"nine": "9", "ten": "10", "eleven": "11", "twelve": "12", "fifteen": "15", "twenty": "20", "thirty": "30", "forty": "40", "fifty": "50"}

// spelled puts a figure for a numeral that begins a text.
func spelled(text string) string {
	word, rest, _ := strings.Cut(text, " ")
	if figure, ok := numerals[strings.ToLower(word)]; ok {
		return strings.TrimSpace(figure + " " + rest)
	}
	return text
}

// calendar finds a day, which a sum or a fraction would be made of.
// Source: ISO 8601-1:2019, 5.2.2; the other order is common practice, no source.
var calendar = regexp.MustCompile(`(?:^|[^\d.,])(?:(?:19|20)\d\d-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])|\d{1,2}[/.]\d{1,2}[/.](?:19|20)\d\d)(?:\D|$)`)

// tidy readies text for parsing. It refuses what no quantity can hold.
func tidy(text, expected string) (string, error) {
	if len(text) > maxText {
		return "", &Error{fmt.Sprintf("%d characters are too many", len(text)), expected, ""}
	}
	if !utf8.ValidString(text) {
		return "", &Error{"the text is not UTF-8", expected, ""}
	}
	for _, r := range text {
		if unicode.IsControl(r) && r != '\t' {
			return "", &Error{"a control character is in it", expected, ""}
		}
	}
	if calendar.MatchString(text) {
		return "", &Error{"this looks like a date", expected, ""}
	}
	tidied := spelled(hedge.ReplaceAllString(strings.TrimSpace(plain.Replace(text)), "$1"))
	if tidied == "" {
		return "", &Error{"nothing is written here", expected, ""}
	}
	return tidied, nil
}

// style tells how a comma or point before exactly three digits is read.
type style int

const (
	measured style = iota // "1.200" is 1.2; "1,200" could be either and is refused
	priced                // "1,200" is 1200; "1.200" could be either and is refused
)

// reader walks through tidied text.
type reader struct {
	rest  string
	style style
	depth int
	terms int // numbers read so far
}

func (r *reader) skip() { r.rest = strings.TrimLeft(r.rest, " ") }

func (r *reader) peek() byte {
	if r.rest == "" {
		return 0
	}
	return r.rest[0]
}

// problem is a fault inside a number; its text is a sentence without its stop.
type problem struct{ wrong, hint string }

func (p problem) Error() string { return p.wrong }

// sum reads numbers joined by + - * / and brackets. It stops before anything
// that cannot continue the sum, such as a unit.
func (r *reader) sum() (float64, error) {
	v, err := r.product()
	if err != nil {
		return 0, err
	}
	for {
		r.skip()
		op := r.peek()
		if strings.HasPrefix(r.rest, "–") || strings.HasPrefix(r.rest, "—") {
			return 0, problem{"this looks like a range", "give one figure, the likeliest"}
		}
		if op != '+' && op != '-' {
			return v, nil
		}
		first := r.terms
		r.rest = r.rest[1:]
		w, err := r.product()
		if err != nil {
			return 0, err
		}
		if op == '-' && first == 1 && r.terms == 2 && r.depth == 0 && v > 0 && w > v {
			return 0, problem{"this looks like a range", "give one figure, the likeliest"}
		}
		if op == '+' {
			v += w
		} else {
			v -= w
		}
	}
}

func (r *reader) product() (float64, error) {
	v, err := r.factor()
	if err != nil {
		return 0, err
	}
	for {
		r.skip()
		op, size := r.peek(), 1
		switch {
		case strings.HasPrefix(r.rest, "×"):
			op, size = '*', len("×")
		case (op == 'x' || op == 'X') && v != 0: // "2 x 100"; "0x10" is no such thing
			op = '*'
		}
		if op != '*' && op != '/' {
			return v, nil
		}
		after := strings.TrimLeft(r.rest[size:], " ")
		if after == "" || !startsNumber(after) {
			return v, nil // "1.10 /kg": the stroke belongs to the unit
		}
		r.rest = after
		w, err := r.factor()
		if err != nil {
			return 0, err
		}
		if op == '*' {
			v *= w
			continue
		}
		if w == 0 {
			return 0, problem{"it divides by zero", ""}
		}
		v /= w
	}
}

func startsNumber(s string) bool {
	return s[0] >= '0' && s[0] <= '9' || s[0] == '.' || s[0] == ',' || s[0] == '(' || s[0] == '-' || s[0] == '+'
}

func (r *reader) factor() (float64, error) {
	r.skip()
	switch c := r.peek(); {
	case c == '-' || c == '+' || c == '(':
		if r.depth++; r.depth > maxDepth {
			return 0, problem{"it has too many brackets or signs", ""}
		}
		defer func() { r.depth-- }()
		r.rest = r.rest[1:]
		if c == '(' {
			v, err := r.sum()
			if err != nil {
				return 0, err
			}
			r.skip()
			if r.peek() != ')' {
				return 0, problem{"a bracket is not closed", ""}
			}
			r.rest = r.rest[1:]
			return v, nil
		}
		v, err := r.factor()
		if c == '-' {
			v = -v
		}
		return v, err
	default:
		return r.mixed()
	}
}

// mixed reads a number, or a whole number and a fraction such as "1 1/2".
func (r *reader) mixed() (float64, error) {
	v, err := r.number()
	if err != nil {
		return 0, err
	}
	if v != math.Trunc(v) || !strings.HasPrefix(r.rest, " ") && !strings.HasPrefix(r.rest, "-") {
		return v, nil
	}
	over, under, size := fraction(r.rest[1:])
	if size == 0 {
		return v, nil
	}
	r.rest = r.rest[1+size:]
	return v + over/under, nil
}

// fraction reads "3/8": both parts whole, at most two digits, the upper one
// smaller. size is 0 when s starts otherwise.
func fraction(s string) (over, under float64, size int) {
	up := digits(s)
	if up == 0 || up > 2 || up >= len(s) || s[up] != '/' {
		return 0, 0, 0
	}
	down := digits(s[up+1:])
	if down == 0 || down > 2 {
		return 0, 0, 0
	}
	over, _ = strconv.ParseFloat(s[:up], 64)
	under, _ = strconv.ParseFloat(s[up+1:up+1+down], 64)
	if under == 0 || over == 0 || over >= under {
		return 0, 0, 0
	}
	return over, under, up + 1 + down
}

func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// number reads one decimal number in any of the usual ways of writing it:
// 1200, 1 200, 1,200.50, 1.200,50, 2,5, .5.
func (r *reader) number() (float64, error) {
	s := r.rest
	n := 0
	for n < len(s) {
		c := s[n]
		switch {
		case c >= '0' && c <= '9':
		case (c == '.' || c == ',') && (n+1 < len(s) && digits(s[n+1:]) > 0 || n > 0 && s[n-1] != '.' && s[n-1] != ','):
		case c == ' ' && n > 0 && groupFollows(s[:n], s[n+1:]):
		default:
			goto end
		}
		n++
	}
end:
	literal := s[:n]
	if digits(strings.TrimLeft(literal, ".,")) == 0 {
		if strings.EqualFold(firstWord(s), "nan") || strings.EqualFold(firstWord(s), "inf") || strings.EqualFold(firstWord(s), "infinity") {
			return 0, problem{Quoted(firstWord(s)) + " is no number", ""}
		}
		return 0, problem{"no number", ""}
	}
	// "7." and "7," at the end of a phrase: the mark is punctuation.
	literal = strings.TrimRight(literal, ".,")
	r.rest = s[len(literal):]
	if strings.HasPrefix(r.rest, ".") || strings.HasPrefix(r.rest, ",") {
		r.rest = r.rest[1:]
	}
	if e := r.rest; len(e) > 1 && (e[0] == 'e' || e[0] == 'E') && (digits(e[1:]) > 0 || len(e) > 2 && (e[1] == '+' || e[1] == '-') && digits(e[2:]) > 0) {
		return 0, problem{"it has a power of ten", "write the number out"}
	}
	canonical, err := r.canonical(literal)
	if err != nil {
		return 0, err
	}
	v, err := strconv.ParseFloat(canonical, 64)
	if err != nil {
		return 0, problem{Quoted(literal) + " is no number", ""}
	}
	r.terms++
	return v, nil
}

// groupFollows reports whether the space between before and after separates
// thousands: one to three digits before it, exactly three after it.
func groupFollows(before, after string) bool {
	tail := before
	if i := strings.LastIndexByte(before, ' '); i >= 0 {
		tail = before[i+1:]
		if len(tail) != 3 {
			return false
		}
	}
	return digits(tail) == len(tail) && len(tail) >= 1 && len(tail) <= 3 &&
		digits(after) == 3 && !strings.HasPrefix(after[3:], "/") && tail[0] != '0'
}

// canonical turns a number as written into one that strconv reads, or says
// that it could be read in two ways.
func (r *reader) canonical(literal string) (string, error) {
	compact := strings.ReplaceAll(literal, " ", "")
	points, commas := strings.Count(compact, "."), strings.Count(compact, ",")
	bad := problem{Quoted(literal) + " has its points and commas mixed up", "write it with one decimal point and no separators"}
	switch {
	case points == 0 && commas == 0:
		return compact, nil
	case points > 0 && commas > 0:
		group, decimal := ",", "."
		if strings.LastIndex(compact, ",") > strings.LastIndex(compact, ".") {
			group, decimal = ".", ","
		}
		if strings.Count(compact, decimal) != 1 || compact != literal {
			return "", bad
		}
		whole, part, _ := strings.Cut(compact, decimal)
		if !grouped(whole, group) {
			return "", bad
		}
		return strings.ReplaceAll(whole, group, "") + "." + part, nil
	}
	mark := "."
	if commas > 0 {
		mark = ","
	}
	if points+commas > 1 {
		if !grouped(compact, mark) || compact != literal {
			return "", bad
		}
		return strings.ReplaceAll(compact, mark, ""), nil
	}
	whole, part, _ := strings.Cut(compact, mark)
	couldGroup := compact == literal && len(part) == 3 && len(whole) >= 1 && len(whole) <= 3 && whole[0] != '0'
	if couldGroup {
		switch {
		case r.style == priced && mark == ",":
			return whole + part, nil
		case r.style == measured && mark == ".":
		default:
			return "", problem{Quoted(literal) + " can be read as " + whole + part + " or as " + whole + "." + part, "write " + whole + part + ", or a decimal point and fewer digits"}
		}
	}
	return whole + "." + part, nil
}

// grouped reports whether s is digits in threes separated by mark.
func grouped(s, mark string) bool {
	parts := strings.Split(s, mark)
	for i, p := range parts {
		if digits(p) != len(p) || len(p) == 0 || len(p) > 3 || i > 0 && len(p) != 3 {
			return false
		}
	}
	return true
}

func firstWord(s string) string {
	word, _, _ := strings.Cut(strings.TrimSpace(s), " ")
	return word
}
