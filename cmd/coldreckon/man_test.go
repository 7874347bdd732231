package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/spf13/cobra"
)

// Each command that the help lists has its page, with every flag, and the same
// day gives the same bytes.
func TestManualPages(t *testing.T) {
	folder := t.TempDir()
	write := func(epoch string) {
		t.Helper()
		var said bytes.Buffer
		env := func(name string) string { return map[string]string{"SOURCE_DATE_EPOCH": epoch}[name] }
		if code := Main([]string{"man", folder}, env, strings.NewReader(""), &said, &said); code != exitDone || said.Len() > 0 {
			t.Fatalf("found exit code %d, %s", code, said.Bytes())
		}
	}
	write("1750000000") // 15 June 2025
	pages := map[string]string{}
	var names []string
	flags := 0
	var visit func(*cobra.Command)
	visit = func(cmd *cobra.Command) {
		name := strings.ReplaceAll(cmd.CommandPath(), " ", "-") + ".1"
		names = append(names, name)
		text, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Error(err)
		}
		page := plainSigns.Replace(string(text))
		pages[name] = string(text)
		for _, part := range []string{`"Jun 2025"`, ".SH NAME\n" + strings.TrimSuffix(name, ".1") + " - " + cmd.Short + "\n", ".SH DESCRIPTION"} {
			if !strings.Contains(page, part) {
				t.Errorf("%s lacks %q", name, part)
			}
		}
		for _, m := range regexp.MustCompile(`(?m)^ +(?:-\w, )?--([\w-]+)`).FindAllStringSubmatch(cmd.LocalFlags().FlagUsages(), -1) {
			flags++
			if !strings.Contains(page, `\fB--`+m[1]+`\fP`) {
				t.Errorf("%s lacks --%s", name, m[1])
			}
		}
		for line := range strings.Lines(cmd.Example + "\n" + cmd.Long) {
			if line = strings.TrimSpace(line); !strings.Contains(page, line) {
				t.Errorf("%s lacks the line %q", name, line)
			}
		}
		for _, sub := range cmd.Commands() {
			if sub.IsAvailableCommand() {
				visit(sub)
			}
		}
	}
	visit(commands(environment{}))
	if len(names) < 12 || flags < 30 {
		t.Errorf("found only %d commands and %d flags", len(names), flags)
	}
	if entries, err := os.ReadDir(folder); err != nil || len(entries) != len(names) {
		t.Errorf("found %d files, %v; expected one for each of %d commands", len(entries), err, len(names))
	}

	write("1750000000")
	for name, before := range pages {
		if again, err := os.ReadFile(filepath.Join(folder, name)); err != nil || string(again) != before {
			t.Errorf("%s differs when it is written again, %v", name, err)
		}
	}

	groff, err := exec.LookPath("groff")
	if err != nil {
		t.Log("without groff the pages are not set")
		return
	}
	for _, name := range names {
		setter := exec.Command(groff, "-man", "-Tutf8", "-ww", filepath.Join(folder, name))
		var warned bytes.Buffer
		setter.Stderr = &warned
		if set, err := setter.Output(); err != nil || warned.Len() > 0 || len(set) < 200 {
			t.Errorf("%s: %v, %d bytes set, %s", name, err, len(set), warned.Bytes())
		}
	}
}

// plainSigns reads the names that troff has for signs.
// Source: groff_char(7), "Basic Latin".
var plainSigns = strings.NewReplacer(`\-`, "-", `\(dq`, `"`, `\(ga`, "`", `\(ti`, "~", `\(ha`, "^", `\e`, `\`)

// Guards each sign: unescaped, troff would take it for a request or a name, or
// print another one. Source: groff_man_style(7), "Portability".
func TestTroff(t *testing.T) {
	page := &cobra.Command{Use: "x", Short: `a "b" c\d`, Run: func(*cobra.Command, []string) {},
		Long: ".b of box-volume\n'c `d` ^~\n\nmore\n  one   two\n  .four\nand on\n"}
	text := string(manualPages(page, time.Unix(0, 0))[0].text)
	for _, want := range []string{
		`.TH "X" "1" "Jan 1970"`, "x \\- a \\(dqb\\(dq c\\ed\n",
		".SH DESCRIPTION\n\\&.b of box\\-volume\n\\&'c \\(gad\\(ga \\(ha\\(ti\n.PP\nmore\n.PP\n.RS 4\n.nf\none   two\n\\&.four\n.fi\n.RE\n.PP\nand on\n",
		".SH OPTIONS\n.TP\n\\fB\\-h\\fP, \\fB\\-\\-help\\fP\nhelp for x\n",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the page lacks %q:\n%s", want, text)
		}
	}
}

// What the shipped program is built of: a second reader of YAML and a reader of
// Markdown came in with the manual pages once.
func TestProgramHoldsNoSecondReader(t *testing.T) {
	list, err := exec.Command("go", "list", "-deps", ".").Output()
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(list), "gopkg.in/yaml.v3\n") {
		t.Error("the list lacks the reader of answers files")
	}
	for _, module := range []string{"go.yaml.in/", "blackfriday", "md2man", "cobra/doc"} {
		if strings.Contains(string(list), module) {
			t.Errorf("the program holds %s", module)
		}
	}
}
