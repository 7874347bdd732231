// Command mutate breaks one line of a package at a time and tells which breaks
// its tests do not notice. Run it by hand, from the module's root:
//
//	go run ./.ci/mutate -n 80 -seed 1 ./economics/heat ./economics/energy
//	go run ./.ci/mutate -n 40 -files 'answer.go' -tests 'Answer|Worth' ./economics
//
// A break swaps an operator, moves a number by a tenth, turns a condition
// round, or swaps min and max. The changed file is handed to the compiler as an
// overlay, so that no source is ever written. Breaks that do not compile do not
// count. Survivors are listed as file:line, before and after; the status is 1
// where there are any.
package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// breakage is one edit: bytes from to to of a file become text.
type breakage struct {
	file     string
	line     int
	from, to int
	text     string
}

var swaps = map[token.Token]token.Token{
	token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL,
	token.LSS: token.GEQ, token.GEQ: token.LSS, token.GTR: token.LEQ, token.LEQ: token.GTR,
	token.EQL: token.NEQ, token.NEQ: token.EQL, token.LAND: token.LOR, token.LOR: token.LAND,
	token.ADD_ASSIGN: token.SUB_ASSIGN, token.SUB_ASSIGN: token.ADD_ASSIGN,
	token.MUL_ASSIGN: token.QUO_ASSIGN, token.QUO_ASSIGN: token.MUL_ASSIGN,
}

func main() {
	n := flag.Int("n", 50, "lines to break in each package")
	seed := flag.Uint64("seed", 1, "which lines, and how")
	skip := flag.String("skip", "", "leave out lines that match this regular expression")
	limit := flag.Duration("limit", time.Minute, "after which a test run counts as having noticed")
	files := flag.String("files", "*.go", "break lines of the files that match this pattern")
	tests := flag.String("tests", "", "run the tests that match this regular expression alone")
	flag.Parse()
	var leave *regexp.Regexp
	if *skip != "" {
		leave = regexp.MustCompile(*skip)
	}
	survivors := 0
	for _, dir := range flag.Args() {
		alive, err := mutate(dir, *files, *n, *seed, leave, tester{*tests, *limit})
		if err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(2)
		}
		survivors += alive
	}
	if survivors > 0 {
		os.Exit(1)
	}
}

func mutate(dir, files string, n int, seed uint64, leave *regexp.Regexp, t tester) (alive int, err error) {
	byLine := map[string][]breakage{}
	source := map[string][]byte{}
	names, err := filepath.Glob(filepath.Join(dir, files))
	if err != nil {
		return 0, err
	}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		text, err := os.ReadFile(name)
		if err != nil {
			return 0, err
		}
		source[name] = text
		all, err := breakages(name, text)
		if err != nil {
			return 0, err
		}
		lines := strings.Split(string(text), "\n")
		for _, b := range all {
			if leave != nil && leave.MatchString(lines[b.line-1]) {
				continue
			}
			key := fmt.Sprintf("%s:%06d", b.file, b.line)
			byLine[key] = append(byLine[key], b)
		}
	}
	r := rand.New(rand.NewPCG(seed, 1))
	var keys []string
	for key := range byLine {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	r.Shuffle(len(keys), func(i, j int) { keys[i], keys[j] = keys[j], keys[i] })

	if noticed, built := t.run(dir, "", nil); noticed || !built {
		return 0, fmt.Errorf("%s: the tests fail before anything is broken", dir)
	}
	tried := 0
	for _, key := range keys {
		if tried == n {
			break
		}
		choices := byLine[key]
		b := choices[r.IntN(len(choices))]
		text := source[b.file]
		broken := slices.Concat(text[:b.from], []byte(b.text), text[b.to:])
		noticed, built := t.run(dir, b.file, broken)
		if !built {
			continue
		}
		tried++
		if !noticed {
			alive++
			fmt.Printf("%s:%d: %s\n\t%s\n\t%s\n", b.file, b.line, "survives", lineAt(text, b.line), lineAt(broken, b.line))
		}
	}
	fmt.Printf("%s: %d of %d broken lines survive (%d lines could be broken)\n", dir, alive, tried, len(keys))
	return alive, nil
}

func lineAt(text []byte, line int) string {
	return strings.TrimSpace(strings.Split(string(text), "\n")[line-1])
}

// breakages lists every edit of a file that keeps to one line.
func breakages(name string, text []byte) ([]breakage, error) {
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, name, text, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	var out []breakage
	edit := func(pos token.Pos, old, text string) {
		at := set.Position(pos)
		out = append(out, breakage{name, at.Line, at.Offset, at.Offset + len(old), text})
	}
	ast.Inspect(file, func(node ast.Node) bool {
		switch x := node.(type) {
		case *ast.ImportSpec, *ast.ArrayType: // a longer array is no worse
			return false
		case *ast.ReturnStmt:
			if fails(x) {
				return false
			}
		case *ast.BinaryExpr:
			if to, ok := swaps[x.Op]; ok {
				edit(x.OpPos, x.Op.String(), to.String())
			}
		case *ast.AssignStmt:
			if to, ok := swaps[x.Tok]; ok {
				edit(x.TokPos, x.Tok.String(), to.String())
			}
		case *ast.BasicLit:
			if moved, ok := move(x); ok {
				edit(x.Pos(), x.Value, moved)
			}
		case *ast.CallExpr:
			if f, ok := x.Fun.(*ast.Ident); ok && (f.Name == "min" || f.Name == "max") {
				edit(f.Pos(), f.Name, map[string]string{"min": "max", "max": "min"}[f.Name])
			}
		case *ast.UnaryExpr:
			if x.Op == token.NOT || x.Op == token.SUB {
				edit(x.OpPos, x.Op.String(), "")
			}
		}
		return true
	})
	return out, nil
}

// fails tells whether a return hands out an error: what stands beside it, and
// the figures of its message, are not looked at.
func fails(r *ast.ReturnStmt) bool {
	if len(r.Results) == 0 {
		return false
	}
	switch last := r.Results[len(r.Results)-1].(type) {
	case *ast.Ident:
		return last.Name == "err"
	case *ast.CallExpr:
		f, ok := last.Fun.(*ast.SelectorExpr)
		return ok && (f.Sel.Name == "Errorf" || f.Sel.Name == "New")
	}
	return false
}

// move gives a number a tenth more, a whole number at least one more.
func move(lit *ast.BasicLit) (string, bool) {
	v, err := strconv.ParseFloat(lit.Value, 64)
	if err != nil {
		return "", false
	}
	switch lit.Kind {
	case token.INT:
		return strconv.Itoa(int(v) + max(1, int(v)/10)), true
	case token.FLOAT:
		if v == 0 {
			return "0.1", true
		}
		return strconv.FormatFloat(v*1.1, 'g', -1, 64), true
	}
	return "", false
}

// tester runs the tests whose names match, all where none is said, for so long
// at most.
type tester struct {
	tests string
	limit time.Duration
}

// run tests the package with one file in another text. built is false where
// that does not compile; a run over the limit counts as noticed.
func (t tester) run(dir, file string, text []byte) (noticed, built bool) {
	args := []string{"test", "-count=1", "-failfast", "-vet=off", "-p=1", "-run=" + t.tests}
	if file != "" {
		work, err := os.MkdirTemp("", "mutate")
		if err != nil {
			return false, false
		}
		defer os.RemoveAll(work)
		absolute, err := filepath.Abs(file)
		if err != nil {
			return false, false
		}
		broken, list := filepath.Join(work, "broken.go"), filepath.Join(work, "overlay.json")
		overlay, err := json.Marshal(map[string]map[string]string{"Replace": {absolute: broken}})
		if err != nil || os.WriteFile(broken, text, 0o600) != nil || os.WriteFile(list, overlay, 0o600) != nil {
			return false, false
		}
		args = append(args, "-overlay="+list)
	}
	ctx, stop := context.WithTimeout(context.Background(), t.limit)
	defer stop()
	command := exec.CommandContext(ctx, "go", append(args, "./"+filepath.Clean(dir))...)
	command.WaitDelay = time.Second
	out, err := command.CombinedOutput()
	switch {
	case err == nil:
		return false, true
	case errors.Is(ctx.Err(), context.DeadlineExceeded):
		return true, true
	}
	return true, !strings.Contains(string(out), "[build failed]") && !strings.Contains(string(out), "[setup failed]")
}
