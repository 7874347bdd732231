package main

import (
	"go/ast"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// developersText is DEVELOPERS.md.
func developersText(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(moduleRoot, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// What DEVELOPERS.md points to must be there: a fence without its test is no
// fence.
func TestDevelopersPointsToWhatExists(t *testing.T) {
	tests := map[string]bool{}
	eachGoFile(t, func(name string, file *ast.File, _ *token.FileSet) {
		for _, decl := range file.Decls {
			if f, ok := decl.(*ast.FuncDecl); ok && f.Recv == nil && strings.HasSuffix(name, "_test.go") {
				tests[f.Name.Name] = true
			}
		}
	})
	named := 0
	for _, m := range regexp.MustCompile("`([^`\n]+)`").FindAllStringSubmatch(developersText(t), -1) {
		word := m[1]
		switch {
		case regexp.MustCompile(`^(Test|Fuzz)[A-Z]\w+$`).MatchString(word):
			named++
			if !tests[word] {
				t.Errorf("there is no %s", word)
			}
		case regexp.MustCompile(`^[\w./*-]+\.(go|yaml|csv|md)$`).MatchString(word):
			named++
			if found, err := filepath.Glob(filepath.Join(moduleRoot, word)); err != nil || len(found) == 0 {
				t.Errorf("there is no %s", word)
			}
		}
	}
	if named < 40 {
		t.Errorf("found only %d names of tests and files; the search has gone wrong", named)
	}
}

// A search for failures that is written down must search: without a bound on
// the shrinking of each new input the tool chain spends most of a minute on it.
func TestDocumentedFuzzing(t *testing.T) {
	commands := regexp.MustCompile("`(go test [^`]* -fuzz [^`]*)`").FindAllStringSubmatch(developersText(t), -1)
	for _, m := range commands {
		if !strings.Contains(m[1], " -fuzzminimizetime 10x") {
			t.Errorf("%s does not bound the shrinking", m[1])
		}
	}
	if len(commands) == 0 {
		t.Error("no command is written down")
	}
}

// Each package of the plan is in the table that people read.
func TestDevelopersDrawsThePlan(t *testing.T) {
	text := developersText(t)
	for pkg := range house {
		if !strings.Contains(text, "`"+pkg+"`") {
			t.Errorf("package %s is not in the table of the house", pkg)
		}
	}
}
