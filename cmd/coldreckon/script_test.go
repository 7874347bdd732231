package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime/debug"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite what is expected in testdata")

// TestMain lets the scripts run this test's own binary, so that they meet the
// real Main in a process of its own: as coldreckon, and as "exits CODE ARG...",
// which succeeds when Main gives that code. Tests that wait for a terminal or a
// signal stand side by side, more of them than there are cores.
func TestMain(m *testing.M) {
	debug.SetGCPercent(400) // a fifth of the tests' time goes into rubbish otherwise
	if err := flag.Set("test.parallel", "6"); err != nil {
		panic(err) // -parallel on the command line still counts: it is read later
	}
	run := func(args []string) int { return Main(args, os.Getenv, os.Stdin, os.Stdout, os.Stderr) }
	testscript.Main(m, map[string]func(){
		"coldreckon": func() { os.Exit(run(os.Args[1:])) },
		"exits": func() {
			expected, err := strconv.Atoi(os.Args[1])
			if code := run(os.Args[2:]); err != nil || code != expected {
				fmt.Fprintf(os.Stderr, "found exit code %d, expected %s\n", code, os.Args[1])
				os.Exit(1)
			}
		},
	})
}

// TestScripts runs the stories of testdata/script: what a user types, what
// comes back on which stream, and with which exit code.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(env *testscript.Env) error {
			env.Setenv("SOURCE_DATE_EPOCH", "1750000000") // 15 June 2025
			data, err := filepath.Abs("testdata")
			env.Setenv("LOGS", filepath.Join(data, "logs"))
			env.Setenv("WREN", filepath.Join(data, "wren.yaml")) // a boat that is soon reckoned
			return err
		},
	})
}
