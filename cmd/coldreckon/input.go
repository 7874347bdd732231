package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"
)

// maxFileBytes bounds what is read: an answers file with every key and long
// comments has some 20 kB, the largest built-in rule file some 40 kB.
const maxFileBytes = 1 << 20

// read gives the content of the named file, or of standard input for "-".
func (out surroundings) read(name string) ([]byte, error) {
	in := out.stdin
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, explainRead(name, err)
		}
		defer f.Close()
		in = f
	}
	data, err := io.ReadAll(io.LimitReader(in, maxFileBytes+1))
	if err != nil {
		return nil, explainRead(name, err)
	}
	if len(data) > maxFileBytes {
		return nil, misuse("", "%s: found more than %d bytes, expected a text file of some kilobytes", name, maxFileBytes)
	}
	return data, nil
}

// explainRead puts an operating system's error in the words of the program. A
// name that stands for nothing is the user's slip, the rest is not.
func explainRead(name string, err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return misuse("'coldreckon ask' makes an answers file; 'coldreckon sample' lists built-in ones.",
			"%s: found no such file, expected one", name)
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
