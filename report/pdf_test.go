package report

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
)

// textOf reads the text of each page back from a file: the strings that its
// content shows, in the order drawn. The faces are addressed in UTF-16.
func textOf(t *testing.T, file []byte) []string {
	t.Helper()
	conf := model.NewDefaultConfiguration()
	conf.Offline = true
	ctx, err := api.ReadValidateAndOptimize(bytes.NewReader(file), conf)
	if err != nil {
		t.Fatal(err)
	}
	var pages []string
	for n := 1; n <= ctx.PageCount; n++ {
		r, err := pdfcpu.ExtractPageContent(ctx, n)
		if err != nil {
			t.Fatal(err)
		}
		content, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, shown(content))
	}
	return pages
}

// shown joins the literal strings of a content stream.
func shown(content []byte) string {
	var out strings.Builder
	for i := 0; i < len(content); i++ {
		if content[i] != '(' {
			continue
		}
		var raw []byte
		for i++; i < len(content) && content[i] != ')'; i++ {
			if content[i] == '\\' {
				i++
				if content[i] == 'r' {
					raw = append(raw, '\r')
					continue
				}
			}
			raw = append(raw, content[i])
		}
		var units []uint16
		for k := 0; k+1 < len(raw); k += 2 {
			units = append(units, uint16(raw[k])<<8|uint16(raw[k+1]))
		}
		out.WriteString(strings.ReplaceAll(string(utf16.Decode(units)), "\u00a0", " ") + " ")
	}
	return strings.Join(strings.Fields(out.String()), " ")
}

// Same input, same bytes; valid by two independent readers; small.
func TestFile(t *testing.T) {
	in := inputOf(t, islander())
	file, err := printedPDF(in)
	if err != nil {
		t.Fatal(err)
	}
	if again, err := printedPDF(in); err != nil || !bytes.Equal(file, again) {
		t.Fatalf("two runs differ (%v)", err)
	}
	if len(file) > 1<<20 {
		t.Errorf("%d bytes; want under 1 MB", len(file))
	}
	conf := model.NewDefaultConfiguration()
	conf.Offline = true
	if err := api.Validate(bytes.NewReader(file), conf); err != nil {
		t.Error(err)
	}
	if qpdf, err := exec.LookPath("qpdf"); err == nil {
		path := filepath.Join(t.TempDir(), "report.pdf")
		if err := os.WriteFile(path, file, 0o600); err != nil {
			t.Fatal(err)
		}
		if out, err := exec.Command(qpdf, "--check", path).CombinedOutput(); err != nil {
			t.Errorf("qpdf: %v: %s", err, out)
		}
	}
	if _, err := printedPDF(Input{Reckoning: in.Reckoning, Pack: in.Pack, Date: in.Date, Paper: "quarto"}); err == nil {
		t.Error("a paper that is not known was accepted")
	}
	pages := textOf(t, file)
	for _, want := range []string{in.Reckoning.Boat.Name, "€", "Three reasons", "Small unit", "°C"} {
		if all := strings.Join(pages, " "); !strings.Contains(all, want) {
			t.Errorf("the file does not hold %q", want)
		}
	}
}
