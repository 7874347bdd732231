package main

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/rules"
	"coldreckon/wizard/answers"
)

// logsOf gives a folder with a boat and two logs, of ice and of a warming box.
func logsOf(t *testing.T) (folder string) {
	t.Helper()
	folder = t.TempDir()
	for name, from := range map[string]string{"boat.yaml": "wren.yaml", "ice.csv": "logs/ice.csv", "warming.csv": "logs/warming.csv"} {
		text, err := os.ReadFile(filepath.Join("testdata", from))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(folder, name), text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return folder
}

// Two programs that learn at a time lose no lesson: both are in the file, or one
// of them says that it came too late. Guards the turns of save and the guard of
// kept.save.
func TestLearningAtOneTime(t *testing.T) {
	tries := 1
	if longRun() {
		tries = 6
	}
	for range tries {
		folder := logsOf(t)
		a := exec.Command("coldreckon", "learn", "ice.csv", "boat.yaml")
		b := exec.Command("coldreckon", "learn", "warming.csv", "boat.yaml", "--water", "10 kg")
		learnt := 0
		for _, c := range []*exec.Cmd{a, b} {
			c.Dir = folder
			if err := c.Start(); err != nil {
				t.Fatal(err)
			}
		}
		for _, c := range []*exec.Cmd{a, b} {
			var exit *exec.ExitError
			switch err := c.Wait(); {
			case err == nil:
				learnt++
			case !errors.As(err, &exit) || exit.ExitCode() != exitFailed:
				t.Errorf("%v: %v", c.Args, err)
			}
		}
		text, err := os.ReadFile(filepath.Join(folder, "boat.yaml"))
		if kept := strings.Count(string(text), "- of: "); err != nil || learnt == 0 || kept != learnt {
			t.Errorf("%d say that they learnt, the file holds %d (%v)", learnt, kept, err)
		}
		expectOnly(t, folder, "boat.yaml", "ice.csv", "warming.csv")
	}
}

// A reader that leaves does not cost the lesson. Guards the order of saving and
// telling.
func TestLessonOutlivesItsReader(t *testing.T) {
	folder := logsOf(t)
	reader, writer, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	reader.Close()
	defer writer.Close()
	c := exec.Command("coldreckon", "learn", "ice.csv", "boat.yaml")
	c.Dir, c.Stdout = folder, writer
	if err := c.Run(); err == nil {
		t.Error("nobody could read it, and yet it is a success")
	}
	if text, err := os.ReadFile(filepath.Join(folder, "boat.yaml")); err != nil || !strings.Contains(string(text), "- of: ice") {
		t.Errorf("the file holds no lesson (%v)", err)
	}
}

// A log of a box that leaks three times what was thought changes an answer that
// stood; the same boat again does not.
func TestWhatALessonChanges(t *testing.T) {
	sample, err := sampleNamed("turnstone")
	if err != nil {
		t.Fatal(err)
	}
	file, faults := answers.Read("turnstone", strings.NewReader(sample.Text))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	pack, err := rules.Load()
	if err != nil {
		t.Fatal(err)
	}
	boat, faults := file.Boat(pack.Book)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	leaky := boat
	leaky.Evidence = boat.Evidence.WithLog(heat.Learnt{Of: heat.OfIce, From: "2025-06-01", To: "2025-08-30", Rows: 40, UA: 3 * 0.37, LogSD: 0.05})
	for _, tt := range []struct {
		after economics.Boat
		want  string
	}{{boat, "The answer stands."}, {leaky, "That changes the answer."}} {
		said, err := answerChanged(t.Context(), boat, tt.after, pack.Book)
		lines := strings.Split(strings.TrimSpace(said), "\n")
		if err != nil || len(lines) != 3 || !strings.HasPrefix(lines[0], "Before: leak ") || !strings.HasPrefix(lines[1], "Now:    leak ") || !strings.HasPrefix(lines[2], tt.want) {
			t.Errorf("%v, want three lines and %q:\n%s", err, tt.want, said)
		}
	}
}
