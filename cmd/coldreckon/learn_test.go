package main

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// logsOf gives a folder with a boat and two logs, of ice and of a warming box.
func logsOf(t *testing.T) (folder string) {
	t.Helper()
	folder = t.TempDir()
	dunlin, err := sampleNamed("dunlin")
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{"boat.yaml": dunlin.Text}
	for _, name := range []string{"ice.csv", "warming.csv"} {
		text, err := os.ReadFile(filepath.Join("testdata/logs", name))
		if err != nil {
			t.Fatal(err)
		}
		files[name] = string(text)
	}
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return folder
}

// Two programs that learn at a time lose no lesson: both are in the file, or one
// of them says that it came too late. Guards the turns of save and the guard of
// kept.save.
func TestLearningAtOneTime(t *testing.T) {
	for range 6 {
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
