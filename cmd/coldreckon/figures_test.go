package main

import (
	"crypto/sha256"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"coldreckon/wizard/answers"
)

// keptFigures are the parts of the figures that are kept: what was worked out,
// neither what went in nor what was said of it.
var keptFigures = []string{"box", "months", "unit_figures", "options", "money", "break_even", "repair", "futures", "answer", "verdict"}

// spelled are the texts among them that are answers.
var spelled = []string{"id", "piece", "option", "preferred", "runner", "runner_up", "switch_to", "way", "case"}

// TestFiguresOfTheSamples holds the samples' figures to those kept in
// testdata/figures, to a thousandth: processors differ in the last digits, and
// no more. Each change needs its reason: reasons.txt has a line for every state
// that was kept, the newest last, begun with the digest of the kept files.
//
// With -update the files are written anew, and a line is added that waits for its
// reason.
func TestFiguresOfTheSamples(t *testing.T) {
	folder := filepath.Join("testdata", "figures")
	digest := sha256.New()
	for _, sample := range answers.Samples() {
		name := filepath.Join(folder, sample.Name+".txt")
		run := runOf(t, sample.Name)
		got := map[string]string{}
		for _, part := range keptFigures {
			if run.sheet[part] == nil {
				t.Errorf("%s: no %s among the figures", sample.Name, part)
			}
			flatten(part, run.sheet[part], got)
		}
		if *update {
			if err := os.WriteFile(name, []byte(listed(got)), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		kept, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		digest.Write(kept)
		differ := 0
		for line := range strings.Lines(string(kept)) {
			key, want, _ := strings.Cut(strings.TrimSuffix(line, "\n"), " = ")
			value, found := got[key]
			delete(got, key)
			if (!found || !alike(value, want)) && differ < 20 {
				t.Errorf("%s: %s is %q, kept as %q", sample.Name, key, value, want)
				differ++
			}
		}
		for key, value := range got {
			t.Errorf("%s: %s, %s, is not among the kept figures", sample.Name, key, value)
		}
	}

	const unsaid = "the reason stands here"
	name, state := filepath.Join(folder, "reasons.txt"), fmt.Sprintf("%x", digest.Sum(nil)[:6])
	reasons, err := os.ReadFile(name)
	if err != nil && !*update {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(reasons)), "\n")
	last, reason, _ := strings.Cut(lines[len(lines)-1], " ")
	if last != state && *update {
		if err := os.WriteFile(name, append(reasons, state+" "+unsaid+"\n"...), 0o644); err != nil {
			t.Fatal(err)
		}
		last, reason = state, unsaid
	}
	if last != state || len(reason) < 20 || reason == unsaid {
		t.Errorf("the kept figures are at %s; %s ends with %q, and every state needs its reason", state, name, last+" "+reason)
	}
}

// flatten names every figure by its path. Long runs, which are drawings, are
// left out.
func flatten(path string, value any, into map[string]string) {
	const longest = 24
	switch v := value.(type) {
	case map[string]any:
		for key, part := range v {
			flatten(path+"."+key, part, into)
		}
	case []any:
		if len(v) <= longest {
			for i, part := range v {
				flatten(fmt.Sprintf("%s.%d", path, i), part, into)
			}
		}
	case float64:
		into[path] = strconv.FormatFloat(v, 'g', 5, 64)
	case string:
		if slices.Contains(spelled, path[strings.LastIndex(path, ".")+1:]) {
			into[path] = v
		}
	default:
		into[path] = fmt.Sprint(v)
	}
}

func listed(figures map[string]string) string {
	var lines []string
	for key, value := range figures {
		lines = append(lines, key+" = "+value+"\n")
	}
	slices.Sort(lines)
	return strings.Join(lines, "")
}

// alike tells whether two figures differ by no more than a thousandth.
func alike(got, want string) bool {
	a, errA := strconv.ParseFloat(got, 64)
	b, errB := strconv.ParseFloat(want, 64)
	if errA != nil || errB != nil {
		return got == want
	}
	return math.Abs(a-b) <= 1e-3*math.Abs(b)+1e-6
}
