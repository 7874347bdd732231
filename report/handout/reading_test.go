package handout

import (
	"bytes"
	"compress/zlib"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"
)

// item is a piece of text on a page of a PDF, points from the lower left.
type item struct {
	page int
	x, y float64
	text string
}

var (
	streams = regexp.MustCompile(`(?s)/Filter /FlateDecode[^>]*>>\s*stream\n(.*?)\nendstream`)
	shows   = regexp.MustCompile(`(?s)BT (-?[\d.]+) (-?[\d.]+) Td \((.*?[^\\])\) ?Tj ET`)
	escapes = strings.NewReplacer(`\\`, `\`, `\(`, `(`, `\)`, `)`, `\r`, "\r")
)

// textOf reads the text of a PDF as its writer set it: strings of UTF-16 in
// compressed page streams, in the order of the pages. It shares no code with
// the writer.
func textOf(t *testing.T, pdf []byte) []item {
	t.Helper()
	var out []item
	page := 0
	for _, m := range streams.FindAllSubmatch(pdf, -1) {
		z, err := zlib.NewReader(bytes.NewReader(m[1]))
		if err != nil {
			continue
		}
		content, err := io.ReadAll(z)
		if err != nil || !bytes.Contains(content, []byte(" Td (")) {
			continue
		}
		page++
		for _, show := range shows.FindAllStringSubmatch(string(content), -1) {
			raw := []byte(escapes.Replace(show[3]))
			var codes []uint16
			for i := 0; i+1 < len(raw); i += 2 {
				codes = append(codes, uint16(raw[i])<<8|uint16(raw[i+1]))
			}
			out = append(out, item{page, number(t, show[1]), number(t, show[2]), string(utf16.Decode(codes))})
		}
	}
	if page == 0 {
		t.Fatal("no page of text in the PDF")
	}
	return out
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(strings.Replace(strings.TrimSuffix(s, "*"), "−", "-", 1), 64)
	if err != nil {
		t.Fatalf("%q is no number", s)
	}
	return x
}

// readTable gives the rows of the table with a mark, from its title down to
// the next thing below, cells from left to right.
func readTable(t *testing.T, items []item, mark string) [][]string {
	t.Helper()
	isTitle := func(i item) bool { return regexp.MustCompile(`^[A-E]$`).MatchString(i.text) }
	at := slices.IndexFunc(items, func(i item) bool { return i.page == 2 && i.text == mark })
	if at < 0 {
		t.Fatalf("no table %s on the second page", mark)
	}
	title := items[at]
	right, below := 1e9, -1e9
	for _, i := range items {
		switch {
		case i.page != title.page || i == title:
		case isTitle(i) && i.y == title.y && i.x > title.x:
			right = min(right, i.x)
		case (isTitle(i) || strings.HasPrefix(i.text, "Clear these")) && i.y < title.y-1:
			below = max(below, i.y)
		}
	}
	lines := map[float64][]item{}
	var heights []float64
	for _, i := range items {
		if i.page == title.page && i.x >= title.x-1 && i.x < right-1 && i.y < title.y-1 && i.y > below+1 {
			if lines[i.y] == nil {
				heights = append(heights, i.y)
			}
			lines[i.y] = append(lines[i.y], i)
		}
	}
	slices.Sort(heights)
	slices.Reverse(heights)
	var rows [][]string
	for _, y := range heights {
		line := lines[y]
		slices.SortFunc(line, func(a, b item) int { return int(100 * (a.x - b.x)) })
		var row []string
		for _, i := range line {
			row = append(row, i.text)
		}
		rows = append(rows, row)
	}
	return rows
}

// grid is a table of figures under a head of figures.
type grid struct {
	across []float64
	down   []string
	cells  [][]float64
}

// readGrid reads the rows after the one that begins with a word, as long as
// they have as many cells; that one's other cells are the head.
func readGrid(t *testing.T, rows [][]string, head string) grid {
	t.Helper()
	at := slices.IndexFunc(rows, func(r []string) bool { return r[0] == head && len(r) > 2 })
	if at < 0 {
		t.Fatalf("no head %q in %q", head, rows)
	}
	var g grid
	for _, s := range rows[at][1:] {
		g.across = append(g.across, number(t, s))
	}
	for _, row := range rows[at+1:] {
		if len(row) != len(rows[at]) {
			break
		}
		g.down = append(g.down, row[0])
		var cells []float64
		for _, s := range row[1:] {
			cells = append(cells, number(t, s))
		}
		g.cells = append(g.cells, cells)
	}
	return g
}

// interpolate reads a row or a column of a table at x, in a straight line
// between two entries, and at its ends beyond them.
func interpolate(x float64, at, values []float64) float64 {
	if x <= at[0] {
		return values[0]
	}
	for i := 1; i < len(at); i++ {
		if x <= at[i] {
			return values[i-1] + (values[i]-values[i-1])*(x-at[i-1])/(at[i]-at[i-1])
		}
	}
	return values[len(values)-1]
}
