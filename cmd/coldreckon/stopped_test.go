//go:build unix

package main

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"
)

// reportOver is the command that writes a quick report over a file.
func reportOver(name string) *exec.Cmd {
	c := exec.Command("coldreckon", "report", "sample:turnstone", "--futures", "20", "-o", name)
	c.Env = append(os.Environ(), "SOURCE_DATE_EPOCH=1750000000")
	return c
}

// overOld writes a report over an old one once: it gives the old one, which is of
// the program's own as it replaces no other, the new one, and how long that took.
func overOld(t *testing.T, name string) (old, whole []byte, took time.Duration) {
	t.Helper()
	if err := exec.Command("coldreckon", "boxtest", "-o", name).Run(); err != nil {
		t.Fatal(err)
	}
	old, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	start := time.Now()
	if err := reportOver(name).Run(); err != nil {
		t.Fatal(err)
	}
	took = time.Since(start)
	if whole, err = os.ReadFile(name); err != nil || bytes.Equal(old, whole) {
		t.Fatalf("the old report was not replaced, %v", err)
	}
	return old, whole, took
}

// moments are at how many times of a run it is stopped.
func moments() int {
	if longRun() {
		return 24
	}
	return 4
}

// Stopped by a signal at any moment, from the first to the last, the program
// ends as interrupted or as done, with the old report or the new one, and
// leaves nothing beside it.
func TestStoppedWhileWriting(t *testing.T) {
	folder := t.TempDir()
	name := filepath.Join(folder, "report.pdf")
	old, whole, took := overOld(t, name)
	for _, stop := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP} {
		t.Run(stop.String(), func(t *testing.T) {
			moments, deaf := moments(), 0
			for i := range moments {
				if err := os.WriteFile(name, old, 0o644); err != nil {
					t.Fatal(err)
				}
				c := reportOver(name)
				var said bytes.Buffer
				c.Stderr = &said
				if err := c.Start(); err != nil {
					t.Fatal(err)
				}
				// Until the program listens, a signal ends it as it ends any
				// program: that may be seen, but not often.
				time.Sleep(took/4 + took*time.Duration(i)/time.Duration(moments))
				c.Process.Signal(stop)
				c.Wait()
				got, err := os.ReadFile(name)
				if err != nil {
					t.Fatal(err)
				}
				status := c.ProcessState.Sys().(syscall.WaitStatus)
				switch code := c.ProcessState.ExitCode(); {
				case code == exitDone:
					if !bytes.Equal(got, whole) {
						t.Errorf("moment %d: done, but found %d bytes", i, len(got))
					}
				case code == exitInterrupted:
					if !bytes.Equal(got, old) || said.String() != "error: interrupted; nothing was written\n" {
						t.Errorf("moment %d: interrupted, but found %d bytes, %q", i, len(got), said.String())
					}
				case status.Signaled() && status.Signal() == stop:
					deaf++
					if !bytes.Equal(got, old) {
						t.Errorf("moment %d: ended before it listened, but found %d bytes", i, len(got))
					}
				default:
					t.Errorf("moment %d: found exit code %d, %q", i, code, said.String())
				}
				expectOnly(t, folder, "report.pdf")
			}
			if deaf > moments/2 {
				t.Errorf("%d of %d signals came before the program listened", deaf, moments)
			}
		})
	}
}

// An answers file that vanishes during the questions is written anew with the
// next answer, with all that was answered before.
func TestAnswersFileVanishes(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	name := filepath.Join(folder, "tern.yaml")
	s := onScreen(t, folder, "ask", "tern.yaml")
	answerOnce := func(keys string) {
		t.Helper()
		if _, ok := s.prompt(); !ok {
			t.Fatalf("ended too soon:\n%s", s.since())
		}
		s.keys(keys)
	}
	for range 3 {
		answerOnce("\r")
	}
	s.prompt()
	before, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(name); err != nil {
		t.Fatal(err)
	}
	s.keys("\r")
	s.prompt()
	after, err := os.ReadFile(name)
	if err != nil || len(after) <= len(before) {
		t.Errorf("found %d bytes after %d, %v", len(after), len(before), err)
	}
	for line := range strings.Lines(string(before)) {
		if !strings.Contains(string(after), line) {
			t.Errorf("the file has lost %q", line)
		}
	}
	s.keys("\x03")
	if code := s.end(); code != exitInterrupted {
		t.Errorf("found exit code %d", code)
	}
	expectOnly(t, folder, "tern.yaml")
}

// When the folder itself vanishes, or takes no more, the questions end with one
// sentence that says so, instead of going on with answers that are lost.
func TestFolderVanishes(t *testing.T) {
	t.Parallel()
	folder := filepath.Join(t.TempDir(), "aboard")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	s := onScreen(t, folder, "ask", "tern.yaml")
	for range 3 {
		if _, ok := s.prompt(); !ok {
			t.Fatalf("ended too soon:\n%s", s.since())
		}
		s.keys("\r")
	}
	s.prompt()
	if err := os.RemoveAll(folder); err != nil {
		t.Fatal(err)
	}
	s.keys("\r")
	if code := s.end(); code != exitFailed || !strings.Contains(s.since(), "error: tern.yaml: it cannot be written (no such file or directory)") {
		t.Errorf("found exit code %d, expected %d; on the screen:\n%s", code, exitFailed, s.since())
	}
	if _, err := os.Stat(folder); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the folder is there again, %v", err)
	}
}

// A disk that fills up (a limit on the size of files stands for it) leaves the
// answers as they were: learn ends, and so do questions.
func TestFullDiskKeepsAnswers(t *testing.T) {
	complete, err := os.ReadFile("testdata/wren.yaml")
	if err != nil {
		t.Fatal(err)
	}
	there := []string{"boat.yaml"}
	entries, err := os.ReadDir("testdata/logs")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		there = append(there, e.Name())
	}
	slices.Sort(there)
	comments := strings.Repeat("# a long comment of the owner\n", 300) // some 9 kB
	for name, row := range map[string]struct {
		text    string
		command []string
	}{
		"learn": {comments + string(complete), []string{"learn", "ice.csv", "boat.yaml"}},
		"ask":   {comments + "units: us\n", []string{"ask", "--plain", "boat.yaml"}},
	} {
		t.Run(name, func(t *testing.T) {
			folder := t.TempDir()
			if err := os.CopyFS(folder, os.DirFS("testdata/logs")); err != nil {
				t.Fatal(err)
			}
			path := filepath.Join(folder, "boat.yaml")
			if err := os.WriteFile(path, []byte(row.text), 0o644); err != nil {
				t.Fatal(err)
			}
			c := exec.Command("sh", append([]string{"-c", `ulimit -f 4; exec coldreckon "$@"`, "sh"}, row.command...)...)
			c.Dir = folder
			c.Stdin = strings.NewReader(strings.Repeat("\n", 200))
			said, _ := c.CombinedOutput()
			if code := c.ProcessState.ExitCode(); code != exitFailed || !bytes.Contains(said, []byte("boat.yaml: it cannot be written (file too large)")) {
				t.Errorf("found exit code %d, expected %d\n%s", code, exitFailed, said)
			}
			if got, err := os.ReadFile(path); err != nil || string(got) != row.text {
				t.Errorf("the answers file has changed, %d bytes, %v", len(got), err)
			}
			expectOnly(t, folder, there...)
		})
	}
}
