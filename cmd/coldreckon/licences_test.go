package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// licenceMarks are sentences of a licence's text, and those it must lack.
// Source: the texts at spdx.org/licenses.
var licenceMarks = map[string]struct{ has, lacks []string }{
	"MIT":          {has: []string{"Permission is hereby granted, free of charge"}},
	"BSD-3-Clause": {has: []string{"Redistribution and use in source and binary forms", "to endorse or promote products"}},
	"BSD-2-Clause": {
		has:   []string{"Redistribution and use in source and binary forms"},
		lacks: []string{"to endorse or promote products"},
	},
	"Apache-2.0":         {has: []string{"Apache License", "Version 2.0"}},
	"MIT and Apache-2.0": {has: []string{"Permission is hereby granted, free of charge", "Apache License, Version 2.0"}},
}

// The table of licences has one row for each module that go.mod requires, and
// says what the licence file of the module says, and whether only tests use it.
// It needs no network, and no module but those that building this test fetched.
func TestLicencesAreListed(t *testing.T) {
	_, section, found := strings.Cut(developersText(t), "\n## Licences")
	if !found {
		t.Fatal("DEVELOPERS.md has no section of licences")
	}
	listed, usedBy := map[string]string{}, map[string]string{}
	last := ""
	for _, row := range regexp.MustCompile(`(?m)^\| ([\w.-]+\.[\w-]+/\S+) \| ([^|]+) \| ([^|]+) \|$`).FindAllStringSubmatch(section, -1) {
		module, licence := row[1], row[2]
		usedBy[module] = row[3]
		if module <= last {
			t.Errorf("%s stands after %s", module, last)
		}
		listed[module], last = licence, module
	}
	required := requiredModules(t)
	for _, module := range required {
		if listed[module] == "" {
			t.Errorf("%s is required, and has no row", module)
		}
	}
	if len(required) < 20 || len(listed) > len(required) {
		t.Errorf("found %d rows for %d modules", len(listed), len(required))
	}
	shipped, folders := moduleFolders(t, "./cmd/coldreckon"), moduleFolders(t, "-test", "./...")
	for module, folder := range shipped {
		if folder == "" || listed[module] == "" {
			t.Errorf("%s is in the program, but its licence in %q was not looked at", module, folder)
		}
	}
	if len(shipped) < 10 {
		t.Errorf("found only %d modules in the program", len(shipped))
	}
	for module, licence := range listed {
		_, ships := shipped[module]
		if elsewhere := regexp.MustCompile(`\b(tests|Windows)$`).MatchString(usedBy[module]); ships == elsewhere {
			t.Errorf("%s is listed as used by %q; in the program of this machine: %t", module, usedBy[module], ships)
		}
		marks, known := licenceMarks[licence]
		if !known {
			t.Errorf("%s: licence %q is none of those looked at", module, licence)
		}
		if folders[module] == "" {
			continue // needed by other packages' tests or another system, so not fetched
		}
		files, err := filepath.Glob(filepath.Join(folders[module], "LICENSE*"))
		if err != nil || len(files) == 0 {
			t.Errorf("%s: no licence in %s, %v", module, folders[module], err)
			continue
		}
		text, err := os.ReadFile(files[0])
		if err != nil {
			t.Error(err)
		}
		words := strings.ReplaceAll(strings.Join(strings.Fields(string(text)), " "), "> ", "")
		for _, mark := range marks.has {
			if !strings.Contains(words, mark) {
				t.Errorf("%s: listed as %s, but its licence lacks %q", module, licence, mark)
			}
		}
		for _, mark := range marks.lacks {
			if strings.Contains(words, mark) {
				t.Errorf("%s: listed as %s, but its licence has %q", module, licence, mark)
			}
		}
	}
}

// requiredModules are those of go.mod.
func requiredModules(t *testing.T) []string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(moduleRoot, "go.mod"))
	if err != nil {
		t.Fatal(err)
	}
	var modules []string
	for _, m := range regexp.MustCompile(`(?m)^(?:require\s+|\t)(\S+) v\S+`).FindAllStringSubmatch(string(text), -1) {
		modules = append(modules, m[1])
	}
	return modules
}

// moduleFolders gives, for each module of another author that go list finds
// among what the arguments need, where the tool chain keeps it. What it has not
// fetched is left out: another module's tests may need it, this build does not.
func moduleFolders(t *testing.T, args ...string) map[string]string {
	t.Helper()
	list := exec.Command("go", append([]string{"list", "-e", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Dir}}{{end}}{{end}}"}, args...)...)
	list.Env = append(os.Environ(), "GOPROXY=off")
	list.Dir = moduleRoot
	out, err := list.Output()
	if err != nil {
		t.Fatal(err)
	}
	folders := map[string]string{}
	for line := range strings.Lines(string(out)) {
		if module, folder, found := strings.Cut(strings.TrimSpace(line), " "); found {
			folders[module] = folder
		}
	}
	return folders
}

// Figures of another work are listed with its licence, which the head of their
// file names too.
func TestBorrowedFiguresAreListed(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(moduleRoot, "economics/*/testdata/*.csv"))
	if err != nil {
		t.Fatal(err)
	}
	borrowed := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		head, _, _ := strings.Cut(string(text), "\n")
		m := regexp.MustCompile(`^# .* by (\S+) .*, (\S+) licence`).FindStringSubmatch(head)
		if m == nil {
			continue
		}
		borrowed++
		name, err := filepath.Rel(moduleRoot, file)
		if err != nil {
			t.Fatal(err)
		}
		if row := "| `" + filepath.ToSlash(name) + "` | " + m[1] + " | " + m[2] + " |"; !strings.Contains(developersText(t), row) {
			t.Errorf("DEVELOPERS.md lacks the row %q", row)
		}
	}
	if borrowed < 2 {
		t.Errorf("found only %d files that name another work", borrowed)
	}
}
