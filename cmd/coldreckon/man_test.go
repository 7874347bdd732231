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
		page := string(text)
		pages[name] = page
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
		for line := range strings.Lines(cmd.Example) {
			if line = strings.TrimSpace(line); !strings.Contains(page, line) {
				t.Errorf("%s lacks the example %q", name, line)
			}
		}
		for _, sub := range cmd.Commands() {
			if sub.IsAvailableCommand() {
				visit(sub)
			}
		}
	}
	visit(commands(surroundings{}))
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

// Guards each mark: unescaped, it would be read as Markdown.
func TestMarkdown(t *testing.T) {
	const help = "A *b* of box_volume_l, [c], <d>, `e`\n# f\n  one   two_three\n  four\nand on\n"
	const want = "A \\*b\\* of box\\_volume\\_l, \\[c], \\<d>, \\`e\\`\n\\# f\n\n      one   two_three\n      four\n\nand on\n"
	if got := markdown(help); got != want {
		t.Errorf("found %q, expected %q", got, want)
	}
	page := &cobra.Command{Use: "x", Short: "y", Long: help, Run: func(*cobra.Command, []string) {}}
	pages, err := manualPages(page, time.Unix(0, 0))
	if err != nil || !strings.Contains(string(pages[0].text), "A *b* of box_volume_l, [c], <d>, `e`\n# f\n") ||
		!strings.Contains(string(pages[0].text), "  one   two_three\n  four\n") {
		t.Errorf("%v:\n%s", err, pages[0].text)
	}
}
