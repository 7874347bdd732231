package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
)

const moduleRoot = "../.."

// house is the plan of the module: for each package, which others of the
// module and which libraries it may import besides the standard library. A
// package that is not in it must not exist. DEVELOPERS.md draws the same plan.
var house = map[string]room{
	"economics/quantity": {},
	"economics/chance":   {inside: "economics/quantity", libraries: "gonum.org/v1/gonum"},
	"economics/climate":  {inside: "economics/quantity", libraries: "gonum.org/v1/gonum"},
	"economics/heat":     {inside: "economics/quantity", libraries: "gonum.org/v1/gonum"},
	"economics/energy":   {inside: "economics/quantity", libraries: "gonum.org/v1/gonum"},
	"economics/cost":     {inside: "economics/quantity", libraries: "gonum.org/v1/gonum"},
	"economics/measured": {inside: "economics/quantity economics/heat economics/energy"},
	"economics/season": {
		inside:    "economics/quantity economics/chance economics/climate economics/heat economics/energy economics/cost",
		libraries: "gonum.org/v1/gonum",
	},
	"economics": {
		inside:    "economics/quantity economics/chance economics/climate economics/heat economics/energy economics/cost economics/season",
		libraries: "gonum.org/v1/gonum",
	},
	"rules/strict":     {inside: "economics/quantity", libraries: "gopkg.in/yaml.v3"},
	"rules":            {inside: "economics economics/* rules/strict", libraries: "github.com/Knetic/govaluate gopkg.in/yaml.v3"},
	"wizard/questions": {inside: "economics economics/* rules/strict"},
	"wizard/answers":   {inside: "economics economics/* rules/strict wizard/questions", libraries: "gopkg.in/yaml.v3"},
	"wizard": {
		inside:    "economics economics/* wizard/questions wizard/answers",
		libraries: "github.com/AlecAivazis/survey/v2 golang.org/x/term golang.org/x/text",
	},
	"report/sheet":   {libraries: "github.com/jung-kurt/gofpdf golang.org/x/image golang.org/x/text"},
	"report/layout":  {inside: "report/sheet"},
	"report/chart":   {inside: "report/sheet report/layout"},
	"report/forms":   {inside: "report/sheet report/layout"},
	"report/words":   {inside: "economics economics/* rules"},
	"report/figures": {inside: "economics economics/* rules report/words report/layout wizard/questions"},
	"report/boxtest": {inside: "economics/quantity economics/heat report/sheet report/layout report/forms"},
	"report/compare": {inside: "economics economics/* rules report/*"},
	"report/handout": {inside: "economics economics/* rules report/*"},
	"report":         {inside: "economics economics/* rules report/*"},
	"cmd/coldreckon": {
		inside:    "economics economics/* rules/strict rules wizard wizard/* report report/*",
		libraries: "github.com/spf13/cobra github.com/spf13/pflag golang.org/x/term",
	},
}

// A room is one package of the plan. Names are separated by spaces; "x/*"
// stands for every package directly in x, and a library for all its packages.
type room struct{ inside, libraries string }

// forTests are the libraries that only tests may import, anywhere.
var forTests = strings.Fields("github.com/pdfcpu/pdfcpu github.com/rogpeppe/go-internal github.com/creack/pty gopkg.in/yaml.v3")

// testsMay are the packages that a package's tests may import beside those of
// the plan: the kept conversations say the answer as the command does.
var testsMay = map[string]string{"wizard": "report/words"}

func TestImportsRunOneWay(t *testing.T) {
	eachGoFile(t, func(name string, file *ast.File, _ *token.FileSet) {
		pkg := path.Dir(name)
		plan, known := house[pkg]
		if !known {
			t.Errorf("%s: package %s is not in the plan of the house", name, pkg)
			return
		}
		for _, spec := range file.Imports {
			imported := strings.Trim(spec.Path.Value, `"`)
			isTest := strings.HasSuffix(name, "_test.go")
			if !allowed(plan, pkg, imported, isTest) {
				t.Errorf("%s must not import %s", name, imported)
			}
		}
	})
}

// allowed reports whether a file of pkg may import a path.
func allowed(plan room, pkg, imported string, isTest bool) bool {
	local, isLocal := strings.CutPrefix(imported, "coldreckon/")
	switch {
	case isLocal && isTest && (local == pkg || local == testsMay[pkg]): // its own external test
		return true
	case isLocal:
		return slices.ContainsFunc(strings.Fields(plan.inside), func(p string) bool {
			folder, all := strings.CutSuffix(p, "/*")
			return p == local || all && path.Dir(local) == folder
		})
	case !strings.Contains(strings.Split(imported, "/")[0], "."): // the standard library
		return imported != "unsafe" && imported != "C"
	}
	libraries := strings.Fields(plan.libraries)
	if isTest {
		libraries = append(libraries, forTests...)
	}
	return slices.ContainsFunc(libraries, func(l string) bool {
		return imported == l || strings.HasPrefix(imported, l+"/")
	})
}

// Only the outermost ring reads files, the clock and the environment, and
// nothing draws from the shared source of random numbers.
func TestOnlyTheCommandTouchesTheWorld(t *testing.T) {
	banned := map[string][]string{
		"time": {"Now", "Since", "Until"},
		"os": {"Create", "CreateTemp", "OpenFile", "WriteFile", "Remove", "RemoveAll", "Rename", "Mkdir", "MkdirAll",
			"MkdirTemp", "Chmod", "Truncate", "Getenv", "LookupEnv", "Exit"},
		"math/rand/v2": {"Float64", "Int", "IntN", "Uint64", "NormFloat64", "ExpFloat64", "Perm", "Shuffle", "N"},
		"math/rand":    {"Float64", "Int", "Intn", "Uint64", "NormFloat64", "ExpFloat64", "Perm", "Shuffle"},
	}
	mayTouch := func(name, imported, selector string) bool {
		switch imported {
		case "time":
			return name == "cmd/coldreckon/date.go" || name == "cmd/coldreckon/save.go" // the day; a leftover's age
		case "os":
			return name == "cmd/coldreckon/save.go" || name == "cmd/coldreckon/main.go"
		}
		return false
	}
	eachGoFile(t, func(name string, file *ast.File, positions *token.FileSet) {
		if strings.HasSuffix(name, "_test.go") {
			return
		}
		imports := map[string]string{}
		for _, spec := range file.Imports {
			imported := strings.Trim(spec.Path.Value, `"`)
			local := path.Base(strings.TrimSuffix(imported, "/v2"))
			if spec.Name != nil {
				local = spec.Name.Name
			}
			imports[local] = imported
		}
		ast.Inspect(file, func(n ast.Node) bool {
			s, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			x, ok := s.X.(*ast.Ident)
			if !ok {
				return true
			}
			imported := imports[x.Name]
			if slices.Contains(banned[imported], s.Sel.Name) && !mayTouch(name, imported, s.Sel.Name) {
				t.Errorf("%s: %s.%s has no business here", positions.Position(s.Pos()), imported, s.Sel.Name)
			}
			return true
		})
	})
}

func TestNothingElseAtTheTop(t *testing.T) {
	plan := strings.Fields("cmd wizard economics report rules README.md DEVELOPERS.md go.mod go.sum LICENSE .ci .gitignore .git")
	entries, err := os.ReadDir(moduleRoot)
	if err != nil {
		t.Fatal(err)
	}
	var found []string
	for _, e := range entries {
		if !slices.Contains(plan, e.Name()) && e.Name() != "coldreckon" && !strings.HasSuffix(e.Name(), ".pdf") { // .gitignore names these
			t.Errorf("%s does not belong at the top of the module", e.Name())
		}
		found = append(found, e.Name())
	}
	for _, name := range plan {
		if name != ".git" && !slices.Contains(found, name) {
			t.Errorf("%s is missing from the top of the module", name)
		}
	}
}

func TestEveryExportedNameIsExplained(t *testing.T) {
	eachGoFile(t, func(name string, file *ast.File, positions *token.FileSet) {
		if strings.HasSuffix(name, "_test.go") {
			return
		}
		missing := func(id *ast.Ident) {
			t.Errorf("%s: %s has no doc comment", positions.Position(id.Pos()), id.Name)
		}
		for _, decl := range file.Decls {
			switch d := decl.(type) {
			case *ast.FuncDecl:
				if d.Name.IsExported() && d.Doc == nil && exportedReceiver(d) && !speaksForItself(d.Name.Name) {
					missing(d.Name)
				}
			case *ast.GenDecl:
				for _, spec := range d.Specs {
					switch s := spec.(type) {
					case *ast.TypeSpec:
						if s.Name.IsExported() && s.Doc == nil && d.Doc == nil {
							missing(s.Name)
						}
					case *ast.ValueSpec:
						for _, id := range s.Names {
							if id.IsExported() && s.Doc == nil && s.Comment == nil && d.Doc == nil {
								missing(id)
							}
						}
					}
				}
			}
		}
	})
}

// exportedReceiver reports whether a function is no method, or one of an
// exported type.
func exportedReceiver(d *ast.FuncDecl) bool {
	if d.Recv == nil {
		return true
	}
	t := d.Recv.List[0].Type
	if star, ok := t.(*ast.StarExpr); ok {
		t = star.X
	}
	id, ok := t.(*ast.Ident)
	return !ok || id.IsExported()
}

// speaksForItself reports whether a method is one of the standard library's
// well-known ones.
func speaksForItself(method string) bool { return method == "Error" || method == "String" }

func TestEveryPackageIsIntroduced(t *testing.T) {
	introduced := map[string]bool{}
	eachGoFile(t, func(name string, file *ast.File, _ *token.FileSet) {
		if !strings.HasSuffix(name, "_test.go") {
			introduced[path.Dir(name)] = introduced[path.Dir(name)] || file.Doc != nil
		}
	})
	for pkg, ok := range introduced {
		if !ok {
			t.Errorf("package %s has no package comment", pkg)
		}
	}
}

func TestFilesStayShort(t *testing.T) {
	const most = 450 // lines
	eachGoFile(t, func(name string, file *ast.File, positions *token.FileSet) {
		if lines := positions.File(file.Pos()).LineCount(); lines > most {
			t.Errorf("%s has %d lines, more than %d: it has more than one subject", name, lines, most)
		}
	})
}

// A goFile is a file of the module, named by its path from the top.
type goFile struct {
	name      string
	parsed    *ast.File
	positions *token.FileSet
}

// goFiles are all files of the module, parsed once.
var goFiles = sync.OnceValues(func() (files []goFile, err error) {
	err = filepath.WalkDir(moduleRoot, func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && p != moduleRoot && (strings.HasPrefix(d.Name(), ".") || d.Name() == "testdata") {
			return filepath.SkipDir
		}
		if d.IsDir() || filepath.Ext(p) != ".go" {
			return nil
		}
		rel, err := filepath.Rel(moduleRoot, p)
		if err != nil {
			return err
		}
		positions := token.NewFileSet()
		file, err := parser.ParseFile(positions, p, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		files = append(files, goFile{filepath.ToSlash(rel), file, positions})
		return nil
	})
	return files, err
})

// eachGoFile visits every Go file of the module.
func eachGoFile(t *testing.T, visit func(name string, file *ast.File, positions *token.FileSet)) {
	t.Helper()
	files, err := goFiles()
	if err != nil {
		t.Fatal(err)
	}
	if len(files) < 50 {
		t.Fatalf("found %d Go files; the walk has missed the module", len(files))
	}
	for _, f := range files {
		visit(f.name, f.parsed, f.positions)
	}
}
