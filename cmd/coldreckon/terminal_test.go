//go:build unix

package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"
	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
)

// A screen is the program on a pseudo-terminal of 80 by 40.
type screen struct {
	t      *testing.T
	cmd    *exec.Cmd
	tty    *os.File
	output chan []byte
	shown  bytes.Buffer // everything so far
	unread int          // where in shown the last answer was given
	told   int          // where in shown the cursor was last told
}

// onScreen starts coldreckon in a folder.
func onScreen(t *testing.T, folder string, args ...string) *screen {
	t.Helper()
	s := &screen{t: t, cmd: exec.Command("coldreckon", args...), output: make(chan []byte)}
	s.cmd.Dir = folder
	s.cmd.Env = append(os.Environ(), "TERM=xterm", "NO_COLOR=1", "ACCESSIBLE=", "SOURCE_DATE_EPOCH=1750000000")
	tty, err := pty.StartWithSize(s.cmd, &pty.Winsize{Rows: 40, Cols: 80})
	if err != nil {
		t.Fatal(err)
	}
	s.tty = tty
	t.Cleanup(func() { s.cmd.Process.Kill(); tty.Close() })
	go func() {
		defer close(s.output)
		for {
			chunk := make([]byte, 4096)
			n, err := tty.Read(chunk)
			if n > 0 {
				s.output <- chunk[:n]
			}
			if err != nil {
				return // the other end is closed
			}
		}
	}()
	return s
}

// patience is for how long a screen is waited for: longer than a busy machine takes,
// and shorter than the tests may.
const patience = 4 * time.Minute

const asksForCursor = "\x1b[6n"

// hintBeside matches the note on "?" that stands beside every question.
var hintBeside = regexp.MustCompile(`\[[^]\n]*\? [a-z]`)

// prompt waits for the next question and gives what was shown since the last
// answer; ok is false when the program ended instead.
func (s *screen) prompt() (text string, ok bool) {
	s.t.Helper()
	deadline := time.After(patience)
	var settled <-chan time.Time
	for {
		select {
		case chunk, open := <-s.output:
			if !open {
				return s.since(), false
			}
			s.shown.Write(chunk)
			s.tellCursor()
			hint := hintBeside.FindString(s.since())
			// A line to edit takes what comes before the cursor is told for the cursor.
			if hint != "" && (strings.Contains(hint, "arrows") || s.told > s.unread) {
				settled = time.After(100 * time.Millisecond)
			}
		case <-settled:
			text := s.since()
			s.unread = s.shown.Len()
			return text, true
		case <-deadline:
			s.t.Fatalf("no question and no end; on the screen:\n%s", s.since())
		}
	}
}

// tellCursor answers a terminal's question that came since it was last answered,
// in however many pieces.
func (s *screen) tellCursor() {
	s.t.Helper()
	for {
		at := bytes.Index(s.shown.Bytes()[s.told:], []byte(asksForCursor))
		if at < 0 {
			return
		}
		s.told += at + len(asksForCursor)
		s.keys("\x1b[1;1R")
	}
}

var controls = regexp.MustCompile(`\x1b(?:\[[0-9;?]*[A-Za-z]|[78])|\r`)

// since gives what was shown since the last answer, without control sequences.
func (s *screen) since() string {
	return controls.ReplaceAllString(string(s.shown.Bytes()[s.unread:]), "")
}

// keys presses keys.
func (s *screen) keys(keys string) {
	s.t.Helper()
	if _, err := io.WriteString(s.tty, keys); err != nil {
		s.t.Fatal(err)
	}
}

// end waits for the program to end and gives its exit code.
func (s *screen) end() int {
	s.t.Helper()
	deadline := time.After(patience)
	for open := true; open; {
		select {
		case chunk, more := <-s.output:
			open = more
			s.shown.Write(chunk)
		case <-deadline:
			s.t.Fatalf("no end; on the screen:\n%s", s.since())
		}
	}
	err := s.cmd.Wait()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		s.t.Fatal(err)
	}
	return s.cmd.ProcessState.ExitCode()
}

// answer answers questions as said maps their words to keys, Enter to all
// others, until the program ends; it gives the questions it met.
func (s *screen) answer(said map[string]string) []string {
	s.t.Helper()
	var met []string
	for len(met) < 100 {
		text, ok := s.prompt()
		if !ok {
			break
		}
		met = append(met, text)
		keys := "\r"
		for words, reply := range said {
			if strings.Contains(text, words) {
				keys = reply
			}
		}
		s.keys(keys)
	}
	return met
}

// The whole way of an owner, on a real terminal, from the first question to a
// report that an independent reader finds sound; outside the long run of few
// nights, and by a quick look.
func TestFromFirstQuestionToReport(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	var args []string
	if !longRun() { // and she has no work to look for
		args = []string{"ask", "boat.yaml", "--futures", "20"}
		began := "box:\n  reachable: no\n  lid_seal: good\n  drain: trapped\n  cover: yes\npower:\n  max_panel: 30 W\n"
		if err := os.WriteFile(filepath.Join(folder, "boat.yaml"), []byte(began), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	s := onScreen(t, folder, args...)
	said := map[string]string{
		"How much does the ice box hold?": "3.2 cu ft\r",
		"What do you pay for ice":         "0.90 /lb\r",
	}
	if !longRun() {
		said["When do you sleep aboard"] = "14 nights in july\r"
	}
	met := s.answer(said)
	if code := s.end(); code != exitDone {
		t.Fatalf("found exit code %d, expected %d; on the screen:\n%s", code, exitDone, controls.ReplaceAllString(s.shown.String(), ""))
	}
	if len(met) < 12 {
		t.Errorf("found %d questions, expected a dozen at least", len(met))
	}
	text, err := os.ReadFile(filepath.Join(folder, "boat.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{"volume: 3.2 cu ft", "price: 0.90 /lb"} {
		if !strings.Contains(string(text), line) {
			t.Errorf("the answers file lacks %q:\n%s", line, text)
		}
	}
	soundPDF(t, filepath.Join(folder, "boat.pdf"))
	expectOnly(t, folder, "boat.pdf", "boat.yaml")
}

// soundPDF has a PDF read by an independent reader.
func soundPDF(t *testing.T, name string) {
	t.Helper()
	settings := model.NewDefaultConfiguration()
	if err := api.ValidateFile(name, settings); err != nil {
		t.Errorf("%s is not sound: %v", filepath.Base(name), err)
	}
	if pages, err := api.PageCountFile(name); err != nil || pages < 4 {
		t.Errorf("found %d pages, %v; expected four and an appendix", pages, err)
	}
}

// Ctrl-C keeps what was answered, says how to go on, and the next start does.
func TestBrokenOffAndTakenUp(t *testing.T) {
	t.Parallel()
	for how, stop := range map[string]func(s *screen){
		"Ctrl-C": func(s *screen) { s.keys("\x03") },
		"TERM":   func(s *screen) { s.cmd.Process.Signal(syscall.SIGTERM) },
		"KILL":   func(s *screen) { s.cmd.Process.Kill() },
	} {
		t.Run(how, func(t *testing.T) {
			t.Parallel()
			folder := t.TempDir()
			s := onScreen(t, folder, "ask", "tern.yaml")
			for range 5 {
				if _, ok := s.prompt(); !ok {
					t.Fatalf("ended too soon:\n%s", s.since())
				}
				s.keys("\r")
			}
			s.prompt()
			stop(s)
			code := s.end()
			if how != "KILL" {
				if code != exitInterrupted {
					t.Errorf("found exit code %d, expected %d", code, exitInterrupted)
				}
				if !strings.Contains(s.since(), "'coldreckon ask tern.yaml' goes on") {
					t.Errorf("nothing tells how to go on:\n%s", s.since())
				}
			}
			before, err := os.ReadFile(filepath.Join(folder, "tern.yaml"))
			if err != nil {
				t.Fatal(err)
			}
			expectOnly(t, folder, "tern.yaml")

			again := onScreen(t, folder, "ask", "tern.yaml")
			text, ok := again.prompt()
			if !ok || !strings.Contains(text, "tern.yaml holds 5 answers already") {
				t.Errorf("the questions did not go on:\n%s", text)
			}
			again.keys("\x03")
			again.end()
			after, err := os.ReadFile(filepath.Join(folder, "tern.yaml"))
			if err != nil || !bytes.Equal(before, after) {
				t.Errorf("the file changed without an answer, %v", err)
			}
		})
	}
}

// An existing report is written over only when that is wanted.
func TestOldReportIsAskedAbout(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	complete, err := sampleNamed("dunlin")
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{"boat.yaml": complete.Text, "boat.pdf": "old"} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	s := onScreen(t, folder)
	met := s.answer(map[string]string{"Write the new report over it?": "\x1b[B\r"}) // down to "No"
	if code := s.end(); code != exitDone {
		t.Errorf("found exit code %d", code)
	}
	if last := met[len(met)-1]; !strings.Contains(last, "boat.pdf is there already") {
		t.Errorf("was not asked about boat.pdf, but at last:\n%s", last)
	}
	if got, _ := os.ReadFile(filepath.Join(folder, "boat.pdf")); string(got) != "old" {
		t.Errorf("boat.pdf was written over, %d bytes", len(got))
	}
}

func TestNoPDFToATerminal(t *testing.T) {
	t.Parallel()
	s := onScreen(t, t.TempDir(), "report", "sample:dunlin")
	if code := s.end(); code != exitBadInput {
		t.Errorf("found exit code %d, expected %d", code, exitBadInput)
	}
	if !strings.Contains(s.since(), "error: standard output: a PDF is not for a terminal") {
		t.Errorf("found on the screen:\n%s", s.since())
	}
}

// Killed at any moment, the program leaves the old report or the new one.
func TestKilledWhileWriting(t *testing.T) {
	name := filepath.Join(t.TempDir(), "report.pdf")
	old, whole, took := overOld(t, name)
	moments := moments()
	for i := range moments {
		if err := os.WriteFile(name, old, 0o644); err != nil {
			t.Fatal(err)
		}
		c := reportOver(name)
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(took * time.Duration(i+1) / time.Duration(moments))
		c.Process.Kill()
		c.Wait()
		if got, err := os.ReadFile(name); err != nil || !bytes.Equal(got, old) && !bytes.Equal(got, whole) {
			t.Errorf("killed after %d/%d of the way: found %d bytes, %v", i+1, moments, len(got), err)
		}
	}
}

// A signal ends the wait for standard input too.
func TestBrokenOffWhileReading(t *testing.T) {
	t.Parallel()
	for wait := time.Second; ; wait *= 2 { // a busy machine takes long until it listens
		c := exec.Command("coldreckon", "figures", "-")
		held, err := c.StdinPipe()
		if err != nil {
			t.Fatal(err)
		}
		defer held.Close()
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(wait)
		c.Process.Signal(syscall.SIGTERM)
		c.Wait()
		code := c.ProcessState.ExitCode()
		if code == exitInterrupted {
			return
		}
		if wait > 10*time.Second {
			t.Fatalf("found exit code %d, expected %d", code, exitInterrupted)
		}
	}
}

// What is no file, such as a named pipe, is written to and stays what it is.
func TestSaveWritesToAPipe(t *testing.T) {
	name := filepath.Join(t.TempDir(), "pipe")
	if err := syscall.Mkfifo(name, 0o644); err != nil {
		t.Skip(err)
	}
	read := make(chan string, 1)
	go func() {
		text, err := os.ReadFile(name)
		read <- fmt.Sprint(string(text), err)
	}()
	if err := save(name, []byte("through")); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(name); err != nil || info.Mode()&os.ModeNamedPipe == 0 {
		t.Fatalf("the pipe has become %v, %v", info.Mode(), err)
	}
	if got := <-read; got != "through<nil>" {
		t.Errorf("found %q at the other end", got)
	}
}
