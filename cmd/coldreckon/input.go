package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"
)

// A kind of file has a size that none of its kind surpasses, and a hint for
// whoever names one that is not there.
type kind struct {
	mostBytes int
	hint      string
}

// The kinds of files. An answers file with every key and long comments has some
// 20 kB, the largest built-in rule file some 40 kB, a log of ten years, hour by
// hour, some 5 MB.
var (
	answersFile = kind{1 << 20, "'coldreckon ask' makes an answers file; 'coldreckon sample' lists built-in ones."}
	ruleFile    = kind{1 << 20, "'coldreckon rules show' lists what a rule file can hold."}
	logFile     = kind{8 << 20, logHint}
)

// read gives the content of the named file, or of standard input for "-".
func (out surroundings) read(name string, of kind) ([]byte, error) {
	in := out.stdin
	switch name {
	case "":
		return nil, misuse(of.hint, "found an empty name, expected that of a file")
	case "-":
	default:
		f, err := os.Open(name)
		if err != nil {
			return nil, explainRead(name, of, err)
		}
		defer f.Close()
		in = f
	}
	data, err := io.ReadAll(io.LimitReader(in, int64(of.mostBytes)+1))
	if err != nil {
		return nil, explainRead(name, of, err)
	}
	if len(data) > of.mostBytes {
		return nil, misuse("", "%s: found more than %d bytes, expected a smaller text file", name, of.mostBytes)
	}
	return data, nil
}

// explainRead puts an operating system's error in the words of the program. A
// name that stands for nothing is the user's slip, the rest is not.
func explainRead(name string, of kind, err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return misuse(of.hint, "%s: found no such file, expected one", name)
	}
	if info, statErr := os.Stat(name); statErr == nil && info.IsDir() {
		return misuse("Give the name of a file in it.", "%s: found a folder, expected a file", filepath.Clean(name))
	}
	return failure("", "%s: found that it cannot be read (%v), expected a readable file", name, cause(err))
}

// completeFirst offers words for a command's first argument only.
func completeFirst(words func() []string) func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		if len(args) > 0 {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		return words(), cobra.ShellCompDirectiveNoFileComp
	}
}
