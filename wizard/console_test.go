package wizard

import (
	"bytes"
	"os"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/creack/pty"
)

// console is a person at a terminal: a pseudo-terminal, what it has shown, and
// the answer that a real one gives when asked where its cursor is.
type console struct {
	t       *testing.T
	master  *os.File
	tty     *os.File
	mu      sync.Mutex
	shown   bytes.Buffer
	heeded  int // bytes of shown that were waited for
	told    int // bytes of shown when it was last said where the cursor is
	changed chan struct{}
}

func newConsole(t *testing.T, columns uint16) *console {
	master, tty, err := pty.Open()
	if err != nil {
		t.Skipf("no pseudo-terminal: %v", err)
	}
	if err := pty.Setsize(master, &pty.Winsize{Rows: 40, Cols: columns}); err != nil {
		t.Fatal(err)
	}
	c := &console{t: t, master: master, tty: tty, changed: make(chan struct{}, 1)}
	go c.listen()
	t.Cleanup(func() { tty.Close(); master.Close() })
	return c
}

func (c *console) listen() {
	block := make([]byte, 4096)
	for {
		n, err := c.master.Read(block)
		if err != nil {
			return
		}
		c.mu.Lock()
		c.shown.Write(block[:n])
		cursor := []byte("\x1b[6n") // which may come in pieces
		for at := bytes.Index(c.shown.Bytes()[c.told:], cursor); at >= 0; at = bytes.Index(c.shown.Bytes()[c.told:], cursor) {
			c.told += at + 1
			c.master.Write([]byte("\x1b[1;1R"))
		}
		c.mu.Unlock()
		select {
		case c.changed <- struct{}{}:
		default:
		}
	}
}

var escapes = regexp.MustCompile("\x1b\\[[0-9;?]*[A-Za-z]|\x1b[78]")

// text gives what was shown from a byte on, without what moves and colours it.
func (c *console) text(from int) string {
	c.mu.Lock()
	defer c.mu.Unlock()
	return unwrapped(escapes.ReplaceAllString(c.shown.String()[from:], " "))
}

// expect waits until something is shown that was not there before, and then
// for quiet, as a person does. Keys struck at a line before the cursor was asked
// for are lost, so that is waited for too.
func (c *console) expect(words string) {
	c.t.Helper()
	asked := func() bool {
		c.mu.Lock()
		defer c.mu.Unlock()
		line := bytes.LastIndex(c.shown.Bytes(), []byte("["+asksHelp+" explains]"))
		return line < c.heeded || c.told > line
	}
	c.waits(words, func() bool { return strings.Contains(c.text(c.heeded), words) && asked() })
	for quiet := false; !quiet; {
		select {
		case <-c.changed:
		case <-time.After(60 * time.Millisecond):
			quiet = true
		}
	}
	c.mu.Lock()
	c.heeded = c.shown.Len()
	c.mu.Unlock()
}

// patience is for how long a screen is waited for: longer than a busy machine takes,
// and shorter than the tests may.
const patience = 4 * time.Minute

// waits waits until the screen is as wanted.
func (c *console) waits(wanted string, there func() bool) {
	c.t.Helper()
	deadline := time.After(patience)
	for !there() {
		select {
		case <-c.changed:
		case <-deadline:
			c.t.Fatalf("waited for %q, was shown:\n%s", wanted, c.text(c.heeded))
		}
	}
}

// ends waits until what runs on the console has ended, and reports its error.
func (c *console) ends(done <-chan error) {
	c.t.Helper()
	select {
	case err := <-done:
		if err != nil {
			c.t.Error(err)
		}
	case <-time.After(patience):
		c.t.Fatalf("not at its end:\n%s", c.text(0))
	}
}

func (c *console) send(keys string) {
	if _, err := c.master.Write([]byte(keys)); err != nil {
		c.t.Fatal(err)
	}
}

func (c *console) prompter(env map[string]string) Prompter {
	p, err := NewPrompter(c.tty, c.tty, Terminal{Getenv: func(name string) string { return env[name] }})
	if err != nil {
		c.t.Fatal(err)
	}
	return p
}
