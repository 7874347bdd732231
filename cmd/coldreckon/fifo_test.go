//go:build unix

package main

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// A report into a pipe that nobody reads to its end waits for ever; a signal
// must end that. Guards inBackground in the printer: writing straight to the pipe
// leaves the program deaf, and this runs into its limit.
func TestStoppedWhileAPipeIsFull(t *testing.T) {
	t.Parallel()
	name := filepath.Join(t.TempDir(), "pipe")
	if err := syscall.Mkfifo(name, 0o600); err != nil {
		t.Skip(err)
	}
	// Both ends held open and nothing read: the pipe fills and stays full.
	reader, err := os.OpenFile(name, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer reader.Close()
	c := exec.Command("coldreckon", "report", "sample:turnstone", "--futures", "20", "--full", "-o", name)
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan error, 1)
	go func() { ended <- c.Wait() }()
	limit := time.After(60 * time.Second)
	for {
		select {
		case <-ended:
			if code := c.ProcessState.ExitCode(); code != 130 && code != -1 {
				t.Errorf("exit code %d, want 130, or the signal itself before the program listens", code)
			}
			return
		case <-limit:
			c.Process.Kill()
			t.Fatal("still writing into the full pipe after a minute of signals")
		case <-time.After(2 * time.Second):
			c.Process.Signal(syscall.SIGTERM)
		}
	}
}

// A file that is a pipe into which nobody writes keeps no command from heeding
// a signal at once. Guards the reading, which would hold it for as long as
// heeded is patient.
func TestStoppedWhileReadingAnEmptyPipe(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	name := filepath.Join(folder, "pipe")
	if err := syscall.Mkfifo(name, 0o600); err != nil {
		t.Skip(err)
	}
	for _, args := range [][]string{
		{"rules", "check", name}, {"figures", "sample:dunlin", "--prices", name}, {"learn", name, "sample:dunlin", "--dry-run"},
		{"compare", "--buyer", name, "sample:dunlin"}, {"ask", name, "--plain"},
	} {
		t.Run(args[0], func(t *testing.T) {
			t.Parallel()
			// Told too soon, the program does not listen yet; a busy machine takes long
			// for everything.
			for wait := time.Second; ; wait *= 2 {
				code, took := interrupted(t, folder, args, wait)
				if code == exitInterrupted && took < grace {
					return
				}
				if wait > 10*time.Second {
					t.Fatalf("exit code %d after %v; want %d before a deaf command is left, %v", code, took, exitInterrupted, grace)
				}
			}
		})
	}
}

// interrupted gives the exit code of a run that is told to stop after the time to wait,
// -1 where it did not listen yet, and how long that took.
func interrupted(t *testing.T, folder string, args []string, wait time.Duration) (code int, took time.Duration) {
	t.Helper()
	c := exec.Command("coldreckon", args...)
	c.Dir = folder
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan error, 1)
	go func() { ended <- c.Wait() }()
	time.Sleep(wait)
	told := time.Now()
	c.Process.Signal(syscall.SIGINT)
	select {
	case <-ended:
	case <-time.After(30 * time.Second):
		c.Process.Kill()
		t.Fatal("still reading half a minute after the signal")
	}
	return c.ProcessState.ExitCode(), time.Since(told)
}

// A pipe into which nobody writes is not waited for without end; one that is
// written to is read. Guards pipeLimit.
func TestEmptyPipeIsTold(t *testing.T) {
	t.Parallel()
	name := filepath.Join(t.TempDir(), "pipe")
	if err := syscall.Mkfifo(name, 0o600); err != nil {
		t.Skip(err)
	}
	var said bytes.Buffer
	start := time.Now()
	env := func(string) string { return "" }
	if code := Main([]string{"rules", "check", name}, env, strings.NewReader(""), io.Discard, &said); code != exitBadInput {
		t.Errorf("exit code %d", code)
	}
	if took := time.Since(start); took < unwritten || !strings.Contains(said.String(), "nobody writes into this pipe") {
		t.Errorf("after %v: %s", took, said.String())
	}
	// Another pipe: the reading given up above still waits at the first one, and
	// would take what is written there.
	name = filepath.Join(filepath.Dir(name), "written")
	if err := syscall.Mkfifo(name, 0o600); err != nil {
		t.Fatal(err)
	}
	go os.WriteFile(name, []byte("kind: nothing\n"), 0)
	said.Reset()
	if Main([]string{"rules", "check", name}, env, strings.NewReader(""), io.Discard, &said); !strings.Contains(said.String(), "written:1:") {
		t.Errorf("of what was written: %s", said.String())
	}
}
