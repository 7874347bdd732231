package sheet

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/jung-kurt/gofpdf"
	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
)

// hairline is a fine pen.
var hairline = Pen{Width: 0.15, Grey: Mid}

func testInfo(paper Paper) Info {
	return Info{
		Title: "Säntis – cold food", Author: "The owner", Subject: "Refrigeration or ice",
		Lang: "en-GB", Date: time.Date(2026, 3, 1, 12, 0, 0, 0, time.FixedZone("east", 3*3600)), Paper: paper,
	}
}

func newPDF(t *testing.T, paper Paper) *PDF {
	t.Helper()
	p, err := NewPDF(testInfo(paper))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// scene draws one of everything.
func scene(s Sheet) {
	ten := Type{Size: 10}
	s.AddPage()
	s.Picture("scene")
	s.Bookmark("Über alles", 0, 20)
	s.Bookmark("Inner part", 1, 30)
	s.Text(20, 30, "Cold to 4 °C, well-kept, 12–15 kg of ice, €1,250 ≈ ½ of it ≤ 3", ten)
	s.Text(190, 40, "right", ten.In(Bold).To(Right))
	s.Text(105, 40, "middle", ten.In(Italic).To(Centre))
	s.Line(Point{20, 50}, Point{190, 50}, hairline)
	s.Polyline([]Point{{20, 60}, {60, 55}, {100, 65}}, Pen{Width: 0.4, Dash: []float64{2, 1}})
	for i, x := range []Texture{None, Solid, Rising, Dots} {
		s.Rect(Rect{20 + 20*float64(i), 80, 15, 10}, Fill{x, Mid}, hairline)
	}
	s.Polygon([]Point{{20, 120}, {40, 100}, {60, 120}}, Fill{Rising, Dark}, Pen{})
	s.AddPage()
	s.Bookmark("Second", 0, 20)
	s.Text(20, 30, "Page 2 of 2", ten)
}

func render(t *testing.T, paper Paper, draw func(Sheet)) []byte {
	t.Helper()
	p := newPDF(t, paper)
	draw(p)
	b, err := p.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestSameCallsSameBytes(t *testing.T) {
	first := render(t, A4, scene)
	for range 10 {
		if !bytes.Equal(first, render(t, A4, scene)) {
			t.Fatal("two runs differ")
		}
	}
	if len(first) > 60_000 {
		t.Errorf("%d bytes; three subset faces should stay below 60 kB", len(first))
	}
}

// The file must satisfy readers that share no code with its writer.
func TestFileIsValid(t *testing.T) {
	for _, paper := range []Paper{A4, Letter} {
		b := render(t, paper, scene)
		conf := model.NewDefaultConfiguration()
		conf.Offline = true
		if err := api.Validate(bytes.NewReader(b), conf); err != nil {
			t.Errorf("%s: pdfcpu: %v", paper, err)
		}
		path := filepath.Join(t.TempDir(), "scene.pdf")
		if err := os.WriteFile(path, b, 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := exec.LookPath("qpdf"); err == nil {
			if out, err := exec.Command("qpdf", "--check", path).CombinedOutput(); err != nil {
				t.Errorf("%s: qpdf: %v\n%s", paper, err, out)
			}
		}
		if _, err := exec.LookPath("pdftotext"); err == nil {
			out, err := exec.Command("pdftotext", path, "-").Output()
			if err != nil {
				t.Fatal(err)
			}
			for _, want := range []string{"Cold to 4 °C, well-kept, 12–15 kg of ice, €1,250 ≈ ½ of it ≤ 3", "right", "Page 2 of 2"} {
				if !strings.Contains(string(out), want) {
					t.Errorf("%s: text %q is not found in %q", paper, want, out)
				}
			}
		}
	}
}

// Alignment in the file is as another program measures it.
func TestFilePlacesAlignedText(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext is not installed")
	}
	path := filepath.Join(t.TempDir(), "scene.pdf")
	if err := os.WriteFile(path, render(t, A4, scene), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftotext", "-bbox", path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	for word, want := range map[string]func(low, high float64) float64{
		"right":  func(_, high float64) float64 { return high - 190 },
		"middle": func(low, high float64) float64 { return (low+high)/2 - 105 },
		"Page":   func(low, _ float64) float64 { return low - 20 },
	} {
		m := regexp.MustCompile(`xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)" yMax="[\d.]+">` + word + `<`).FindSubmatch(out)
		if m == nil {
			t.Errorf("no %q in the file", word)
			continue
		}
		low, _ := strconv.ParseFloat(string(m[1]), 64)
		high, _ := strconv.ParseFloat(string(m[2]), 64)
		if off := want(low*MMPerPoint, high*MMPerPoint); math.Abs(off) > 0.1 {
			t.Errorf("%q is %.2f mm off its place", word, off)
		}
	}
}

func TestFileDescribesItself(t *testing.T) {
	b := render(t, A4, scene)
	for _, want := range []string{
		"/Lang (en-GB)", "/DisplayDocTitle true", "/PageMode /UseOutlines",
		"/CreationDate (D:20260301090000)", // noon at +3 h, told in UTC
	} {
		if !bytes.Contains(b, []byte(want)) {
			t.Errorf("no %q in the file", want)
		}
	}
	if !bytes.HasPrefix(b, []byte("%PDF-1.4")) {
		t.Errorf("version is %q", b[:8])
	}
	if second := strings.Split(string(b[:64]), "\n")[1]; second != "%\xe2\xe3\xcf\xd3 coldreckon" {
		t.Errorf("the second line is %q", second)
	}
	// Each number of the table must be where its object stands.
	entries := regexp.MustCompile(`(?m)^(\d{10}) 00000 n $`).FindAllSubmatch(b[bytes.LastIndex(b, []byte("\nxref\n")):], -1)
	for i, entry := range entries {
		at, err := strconv.Atoi(string(entry[1]))
		if want := fmt.Sprintf("%d 0 obj\n", i+1); err != nil || !bytes.HasPrefix(b[at:], []byte(want)) {
			t.Errorf("object %d is said to stand at %d, where %q is (%v)", i+1, at, b[at:at+12], err)
		}
	}
	if len(entries) < 10 {
		t.Errorf("found %d entries", len(entries))
	}
	// The number after startxref must be where the table stands.
	at := bytes.LastIndex(b, []byte("startxref\n")) + len("startxref\n")
	n, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(string(b[at:])), "%%EOF")))
	if err != nil || !bytes.HasPrefix(b[n:], []byte("xref\n")) {
		t.Errorf("startxref %d leads to %q (%v)", n, b[n:n+5], err)
	}
}

func TestDescribeRefusesOtherFiles(t *testing.T) {
	good := "%PDF-1.3\n1 0 obj\n<<\n/Type /Catalog\n>>\nendobj\nxref\n0 1\nstartxref\n45\n%%EOF\n"
	if _, err := describe([]byte(good), "en"); err != nil {
		t.Fatalf("a file laid out as expected: %v", err)
	}
	for name, bad := range map[string]string{
		"empty":                "",
		"no catalogue":         strings.Replace(good, "Catalog", "Cat", 1),
		"catalogue not last":   strings.Replace(good, "endobj\n", "endobj\n2 0 obj\n", 1),
		"startxref is off":     strings.Replace(good, "45", "44", 1),
		"startxref is no sum":  strings.Replace(good, "45", "xx", 1),
		"no table":             strings.Replace(good, "\nxref\n", "\n", 1),
		"no version in a file": strings.TrimPrefix(good, "%PDF-1.3\n"),
	} {
		if _, err := describe([]byte(bad), "en"); err == nil {
			t.Errorf("%s: not refused", name)
		}
	}
}

// Layout trusts Width; it must be what the PDF library sets.
func TestWidthAgreesWithThePDF(t *testing.T) {
	texts := []string{
		"The quick brown fox jumps over the lazy dog", "0123456789", "1,234,567.89 € – ≈ ½", "WWWiiilll", "Ωμέγα Привет Łódź",
	}
	p := newPDF(t, A4)
	p.AddPage()
	for _, f := range Faces {
		p.doc.SetFont(family, style(f), 11)
		for _, s := range texts {
			own, theirs := Width(s, Type{Face: f, Size: 11}), p.doc.GetStringWidth(s)
			if math.Abs(own-theirs) > 0.01*theirs {
				t.Errorf("%s %q: %.3f mm here, %.3f mm in the PDF", f, s, own, theirs)
			}
		}
	}
}

func TestFiguresAreTabular(t *testing.T) {
	for _, f := range Faces {
		for _, d := range "123456789" {
			if a := metrics()[f]; a[d] != a['0'] {
				t.Errorf("%s: %c is %.0f wide, 0 is %.0f", f, d, a[d], a['0'])
			}
		}
	}
}

func TestHyphenIsATextHyphen(t *testing.T) {
	for _, f := range Faces {
		a := metrics()[f]
		if a['-'] >= a['–'] || a['-'] < a['.'] {
			t.Errorf("%s: the hyphen is %.0f wide, the en dash %.0f", f, a['-'], a['–'])
		}
		if a['−'] != a['+'] {
			t.Errorf("%s: the minus is %.0f wide, the plus %.0f", f, a['−'], a['+'])
		}
	}
	if _, err := withTextHyphen([]byte("no font")); err == nil {
		t.Error("no font was taken for one")
	}
}

func TestFacesHoldTheSameCharacters(t *testing.T) {
	m := metrics()
	for r, w := range m[Regular] {
		for _, f := range Faces {
			if (m[f][r] > 0) != (w > 0) {
				t.Errorf("%s does not hold %U as the regular face does", f, r)
			}
		}
	}
}

func TestFaultsAreRefusedAlike(t *testing.T) {
	ten, nan, inf := Type{Size: 10}, math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name string
		draw func(Sheet)
		want string
	}{
		{"text at NaN", func(s Sheet) { s.Text(nan, 1, "x", ten) }, "coordinate"},
		{"line to infinity", func(s Sheet) { s.Line(Point{}, Point{inf, 1}, hairline) }, "coordinate"},
		{"rect of NaN", func(s Sheet) { s.Rect(Rect{1, 1, nan, 1}, Fill{}, hairline) }, "coordinate"},
		{"polygon of NaN", func(s Sheet) { s.Polygon([]Point{{1, 1}, {2, 2}, {nan, 1}}, Shade(Mid), Pen{}) }, "coordinate"},
		{"pen of NaN", func(s Sheet) { s.Line(Point{}, Point{1, 1}, Pen{Width: nan}) }, "coordinate"},
		{"pen below zero", func(s Sheet) { s.Line(Point{}, Point{1, 1}, Pen{Width: -1}) }, "pen"},
		{"dash of nothing", func(s Sheet) { s.Line(Point{}, Point{1, 1}, Pen{Width: 1, Dash: []float64{0}}) }, "dash"},
		{"type of no size", func(s Sheet) { s.Text(1, 1, "x", Type{}) }, "type"},
		{"line of one point", func(s Sheet) { s.Polyline([]Point{{1, 1}}, hairline) }, "points"},
		{"area of two points", func(s Sheet) { s.Polygon([]Point{{1, 1}, {2, 2}}, Fill{}, hairline) }, "points"},
		{"skipped bookmark", func(s Sheet) { s.Bookmark("a", 0, 1); s.Bookmark("b", 2, 1) }, "bookmark"},
		{"first bookmark deep", func(s Sheet) { s.Bookmark("b", 1, 1) }, "bookmark"},
		{"bookmark at NaN", func(s Sheet) { s.Bookmark("b", 0, nan) }, "coordinate"},
	} {
		rec, err := NewRecording(A4)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range []Sheet{newPDF(t, A4), rec} {
			s.AddPage()
			s.Picture("money over the years")
			c.draw(s)
			err := s.Err()
			if err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "money over the years") {
				t.Errorf("%s on %T: error %v; want it to name the figure and %q", c.name, s, err, c.want)
			}
			s.Text(1, 1, "later", ten)
			if s.Err() != err {
				t.Errorf("%s on %T: a later call changed the first fault", c.name, s)
			}
			if p, ok := s.(*PDF); ok {
				if b, err := p.Bytes(); err == nil || b != nil {
					t.Errorf("%s: a faulty drawing became a file", c.name)
				}
			}
		}
	}
}

func TestNothingBeforeTheFirstPage(t *testing.T) {
	p := newPDF(t, A4)
	p.Text(1, 1, "x", Type{Size: 10})
	if p.Err() == nil {
		t.Error("text before the first page was taken")
	}
	if _, err := newPDF(t, A4).Bytes(); err == nil {
		t.Error("a document without pages was written")
	}
}

func TestNewPDFRefuses(t *testing.T) {
	for name, change := range map[string]func(*Info){
		"paper":    func(i *Info) { i.Paper = "a0" },
		"language": func(i *Info) { i.Lang = "en) /Evil (" },
		"date":     func(i *Info) { i.Date = time.Time{} },
	} {
		info := testInfo(A4)
		change(&info)
		if _, err := NewPDF(info); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: error %v", name, err)
		}
	}
	if _, err := NewRecording("a0"); err == nil {
		t.Error("recording on unknown paper")
	}
}

func TestLibraryPanicBecomesAnError(t *testing.T) {
	p := newPDF(t, A4)
	p.AddPage()
	p.do(func() { p.doc.SplitText("\U0001F9CA", 10) })
	if err := p.Err(); err == nil || !strings.Contains(err.Error(), "PDF library") {
		t.Errorf("error %v", err)
	}
	q := newPDF(t, A4)
	q.do(func() { q.doc.SetError(gofpdf.New("P", "mm", "A4", "").Error()) })
	if q.Err() != nil {
		t.Errorf("no error became %v", q.Err())
	}
	q.do(func() { q.doc.SetErrorf("kept") })
	if q.Err() == nil {
		t.Error("the library's kept error went unseen")
	}
}

func TestHatchStaysInside(t *testing.T) {
	shape := []Point{{10, 10}, {40, 12}, {30, 40}, {22, 20}, {12, 38}}
	box := around(shape)
	for _, x := range []Texture{Rising, Dots} {
		lines := hatchLines(shape, x)
		if len(lines) < 10 {
			t.Errorf("%s: only %d lines", x, len(lines))
		}
		for _, l := range lines {
			if !box.Contains(around(l[:])) {
				t.Errorf("%s: line %v leaves the shape", x, l)
			}
		}
	}
	// Rising means rising: on paper, y falls as x grows.
	for _, l := range hatchLines(shape, Rising) {
		if (l[1].X-l[0].X)*(l[1].Y-l[0].Y) > 0 {
			t.Fatalf("a rising line falls: %v", l)
		}
	}
	if n := len(hatchLines(shape, Solid)); n != 0 {
		t.Errorf("an even fill has %d lines", n)
	}
}

func TestRecordingFindsFaults(t *testing.T) {
	r, err := NewRecording(A4)
	if err != nil {
		t.Fatal(err)
	}
	r.AddPage()
	ten := Type{Size: 10}
	r.Text(20, 30, "first", ten)
	r.Text(20, 36, "second", ten)
	margins := Rect{20, 20, 170, 257}
	if n := len(r.Collisions()); n != 0 {
		t.Errorf("%d collisions of two clear lines", n)
	}
	if n := len(r.Outside(margins)); n != 0 {
		t.Errorf("%d texts outside", n)
	}
	r.Text(22, 32, "over", ten)
	if n := len(r.Collisions()); n != 1 {
		t.Errorf("%d collisions, want 1", n)
	}
	r.Text(185, 50, "too far", ten)
	if n := len(r.Outside(margins)); n != 1 {
		t.Errorf("%d texts outside, want 1", n)
	}
	r.AddPage()
	r.Text(20, 30, "first", ten)
	if n := len(r.Collisions()); n != 1 {
		t.Errorf("texts of two pages collide")
	}
}
