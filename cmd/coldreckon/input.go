package main

import (
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"coldreckon/rules/strict"
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
	answersFile = kind{strict.MostBytes, "'coldreckon ask' makes an answers file; 'coldreckon sample' lists built-in ones."}
	ruleFile    = kind{strict.MostBytes, "'coldreckon rules show' lists what a rule file can hold."}
	logFile     = kind{8 << 20, logHint}
)

// unwritten is how long the first byte of a named pipe is waited for.
const unwritten = 10 * time.Second

// read gives the content of the named file, or of standard input for "-". It
// ends when the program is told to stop, whatever it waits for.
func (out environment) read(name string, of kind) ([]byte, error) {
	if name == "" {
		return nil, misuse(of.hint, "the name of the file is empty")
	}
	ctx := out.stopped
	if ctx == nil {
		ctx = context.Background()
	}
	opened := func() (io.ReadCloser, error) { return io.NopCloser(out.stdin), nil }
	if name != "-" {
		opened = func() (io.ReadCloser, error) { return os.Open(name) }
	}
	in, err := inBackground(pipeLimit(ctx, name), opened)
	if err != nil {
		if ctx.Err() == nil && errors.Is(err, context.DeadlineExceeded) {
			return nil, misuse("", "%s: nobody writes into this pipe. Give a file.", name)
		}
		return nil, explainRead(name, of, err)
	}
	data, err := inBackground(ctx, func() ([]byte, error) {
		defer in.Close()
		return io.ReadAll(io.LimitReader(in, int64(of.mostBytes)+1))
	})
	if err != nil {
		return nil, explainRead(name, of, err)
	}
	if len(data) > of.mostBytes {
		return nil, misuse("", "%s: the file is larger than %d kB. Give a smaller text file.", name, of.mostBytes>>10)
	}
	return data, nil
}

// pipeLimit bounds the opening of a named pipe, which waits for a writer.
func pipeLimit(ctx context.Context, name string) context.Context {
	if info, err := os.Stat(name); err != nil || info.Mode()&fs.ModeNamedPipe == 0 {
		return ctx
	}
	bounded, cancel := context.WithTimeout(ctx, unwritten)
	context.AfterFunc(bounded, cancel)
	return bounded
}

// explainRead puts an operating system's error in the words of the program. A
// name that stands for nothing is the user's slip, the rest is not.
func explainRead(name string, of kind, err error) error {
	switch {
	case errors.Is(err, context.Canceled):
		return err
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, syscall.ENOTDIR):
		return misuse(of.hint, "%s: there is no such file", name)
	case errors.Is(err, syscall.ELOOP):
		return misuse(of.hint, "%s: this link leads to itself. Give a file.", name)
	case errors.Is(err, syscall.ENAMETOOLONG):
		return misuse(of.hint, "%s: it cannot be read (%v)", name, cause(err))
	}
	if info, statErr := os.Stat(name); statErr == nil && info.IsDir() {
		return misuse("Give the name of a file in it.", "%s: this is a folder, not a file", filepath.Clean(name))
	}
	return failure("", "%s: it cannot be read (%v)", name, cause(err))
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
