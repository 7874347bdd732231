//go:build unix

package main

import (
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/cobra"
)

// What the help and the README tell people to type must work as it stands; but
// outside the long run one example of each command, with the boat that is reckoned
// soonest, where it has the same currency.
func TestExamplesWork(t *testing.T) {
	lines := map[string]bool{}
	var visit func(*cobra.Command)
	visit = func(cmd *cobra.Command) {
		if library := strings.Fields(cmd.CommandPath() + " -")[1]; cmd.Example == "" && !cmd.HasSubCommands() && library != "help" && library != "completion" {
			t.Errorf("%s has no example", cmd.CommandPath())
		}
		for line := range strings.Lines(cmd.Example) {
			lines[strings.TrimSpace(line)] = true
		}
		for _, sub := range cmd.Commands() {
			visit(sub)
		}
	}
	visit(commands(environment{}))
	readme, err := os.ReadFile(filepath.Join(moduleRoot, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(readme)) {
		if command, indented := strings.CutPrefix(line, "    "); indented && strings.Contains(command, "coldreckon ") {
			lines[strings.TrimSpace(strings.Replace(command, "go run ./cmd/coldreckon", "coldreckon", 1))] = true
		}
	}
	tried, named := 0, map[string]bool{}
	for _, line := range slices.Sorted(maps.Keys(lines)) {
		if line == "coldreckon" || strings.HasPrefix(line, "coldreckon ask") || !strings.HasPrefix(line, "coldreckon ") {
			continue // needs a terminal; its stories are told elsewhere
		}
		command := strings.Fields(line)[1]
		if named[command] && !longRun() {
			continue
		}
		named[command] = true
		tried++
		t.Run(line, func(t *testing.T) {
			folder := t.TempDir()
			boat, err := sampleNamed("turnstone")
			if err != nil {
				t.Fatal(err)
			}
			for name, text := range map[string]string{
				"boat.yaml":        boat.Text,
				"offers.yaml":      boat.Text + "\nquotations:\n  - {name: Quayside, price: 1350}\n  - {name: Upriver, price: 1780, rated_cooling: 70 W}\n",
				"buyer.yaml":       "cruising:\n  ground: chesapeake-bay\n",
				"club.yaml":        "kind: own-prices\nprices:\n  - {id: ice_block, low: 1, typical: 2, high: 3}\n",
				"club-prices.yaml": "kind: own-prices\nprices:\n  - {id: ice_block, low: 1, typical: 2, high: 3}\n",
			} {
				if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			if err := os.CopyFS(folder, os.DirFS("testdata/logs")); err != nil {
				t.Fatal(err)
			}
			quick := line
			if command == "figures" || command == "report" || command == "compare" || command == "units" || command == "ailing" {
				quick += " --futures 20"
			}
			if !longRun() && !strings.Contains(line, "$") {
				quick = anySample.ReplaceAllString(quick, "sample:turnstone")
			}
			if !longRun() && strings.HasSuffix(quick, "--futures 20") && !strings.Contains(line, "compare") {
				quick += " --set 'cruising.nights=july 8'"
			}
			shell := exec.Command("sh", "-c", quick)
			shell.Dir = folder
			if out, err := shell.CombinedOutput(); err != nil {
				t.Errorf("%v\n%s", err, out)
			}
		})
	}
	if tried < 10 {
		t.Errorf("found only %d examples", tried)
	}
}

var anySample = regexp.MustCompile(`sample:\w+`)

// The README shows the report as it is.
func TestREADMEQuotesTheReport(t *testing.T) {
	readme, err := os.ReadFile(filepath.Join(moduleRoot, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	var quoted strings.Builder
	for line := range strings.Lines(string(readme)) {
		if text, ok := strings.CutPrefix(line, ">"); ok {
			quoted.WriteString(text)
		}
	}
	oneSpaced := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	report, paragraphs := oneSpaced(strings.NewReplacer("# ", "", "**", "").Replace(runOf(t, "dunlin").report)), strings.Split(quoted.String(), "\n\n")
	if len(paragraphs) != 3 {
		t.Errorf("%d paragraphs quoted, want 3", len(paragraphs))
	}
	for _, p := range paragraphs {
		if !strings.Contains(report, oneSpaced(p)) {
			t.Errorf("the report does not say:\n%s", p)
		}
	}
}
