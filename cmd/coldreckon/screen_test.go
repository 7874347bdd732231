package main

import (
	"bytes"
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// screens are the widths of a telephone, a tablet and a desk's screen, CSS pixels.
var screens = []int{360, 768, 1280}

// webPages are the commands whose HTML is shown.
var webPages = map[string][]string{
	"report":    {"report", "sample:dunlin", "--futures", "20"},
	"metric":    {"report", "sample:turnstone", "--futures", "20"},
	"compare":   {"compare", "sample:turnstone", "sample:sandpiper", "--futures", "20"},
	"handout":   {"handout", "chesapeake-bay"},
	"box tests": {"boxtest"},
	"questions": {"questions"},
	"worksheet": {"questions", "--blank"},
}

// No page asks for scrolling sideways on any screen, as the browser lays it out.
// Source: WCAG 2.2, success criterion 1.4.10, asks for no more than 320 pixels'
// worth of content; the widths are those in common use, no source.
func TestNoPageScrollsSideways(t *testing.T) {
	if !longRun() {
		t.Skip("lays pages out in a browser: COLDRECKON_LONG=1")
	}
	browser, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("SKIPPED: there is no chromium, so nothing was laid out")
	}
	var frames strings.Builder
	var names []string
	for name, args := range webPages {
		if name == "report" || name == "metric" {
			args = append(args, fewNights...)
		}
		var out, complaints bytes.Buffer
		none := func(string) string { return "" }
		if code := Main(append(args, "--format", "html"), none, strings.NewReader(""), &out, &complaints); code != exitDone {
			t.Fatalf("%s: exit code %d: %s", name, code, &complaints)
		}
		for _, width := range screens {
			names = append(names, fmt.Sprintf("%s at %d pixels", name, width))
			fmt.Fprintf(&frames, `<iframe style="width:%dpx;height:900px;border:0" srcdoc="%s"></iframe>`, width, html.EscapeString(out.String()))
		}
	}
	// The pages themselves have no script: the one that holds them looks.
	holder := `<!DOCTYPE html><body>` + frames.String() + `<script>onload = () => { const found = [];
for (const f of document.querySelectorAll("iframe")) { const e = f.contentDocument.documentElement;
  found.push(e.clientWidth + " " + e.scrollWidth + " " + e.querySelectorAll("h1").length) }
document.body.textContent = "FOUND " + found.join(";") + ";" }</script>`
	folder := t.TempDir()
	file := filepath.Join(folder, "holder.htm")
	if err := os.WriteFile(file, []byte(holder), 0o600); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(browser, "--headless", "--no-sandbox", "--disable-gpu", "--user-data-dir="+filepath.Join(folder, "profile"),
		"--virtual-time-budget=5000", "--dump-dom", "file://"+file)
	seen, err := cmd.Output()
	if err != nil {
		t.Skipf("SKIPPED: chromium does not run here: %v", err)
	}
	found := regexp.MustCompile(`(\d+) (\d+) (\d+);`).FindAllStringSubmatch(string(seen), -1)
	if len(found) != len(names) {
		t.Fatalf("%d pages were laid out, want %d", len(found), len(names))
	}
	for i, f := range found {
		shown, _ := strconv.Atoi(f[1])
		needed, _ := strconv.Atoi(f[2])
		if needed > shown {
			t.Errorf("%s: %d are needed, %d shown", names[i], needed, shown)
		}
		if shown < 300 || f[3] == "0" {
			t.Errorf("%s: %d pixels and %s titles; the page was not laid out", names[i], shown, f[3])
		}
	}
}
