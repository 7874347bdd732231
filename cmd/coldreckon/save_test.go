package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

func TestSaveReplacesWhole(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "report.pdf")
	for _, data := range [][]byte{[]byte("first, and longer than the second"), []byte("second"), {}} {
		if err := save(path, data); err != nil {
			t.Fatal(err)
		}
		if got, err := os.ReadFile(path); err != nil || !bytes.Equal(got, data) {
			t.Fatalf("found %q, %v; expected %q", got, err, data)
		}
	}
	expectOnly(t, folder, "report.pdf")
}

func TestSaveKeepsPermissions(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("permissions there are no bits")
	}
	path := filepath.Join(t.TempDir(), "boat.yaml")
	if err := os.WriteFile(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := save(path, []byte("units: us\n")); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("found mode %v, %v; expected 0600", info.Mode(), err)
	}
}

func TestSaveFollowsLinks(t *testing.T) {
	folder := t.TempDir()
	real, link := filepath.Join(folder, "real.yaml"), filepath.Join(folder, "link.yaml")
	if err := os.WriteFile(real, []byte("old"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("real.yaml", link); err != nil {
		t.Skip(err)
	}
	if err := save(link, []byte("new")); err != nil {
		t.Fatal(err)
	}
	if got, _ := os.ReadFile(real); string(got) != "new" {
		t.Errorf("the linked file holds %q", got)
	}
	if info, _ := os.Lstat(link); info.Mode()&os.ModeSymlink == 0 {
		t.Error("the link was replaced by a file")
	}
}

// What a killed program left is taken up after a moment, and swept away where it
// is another file's; what may still be written stays.
func TestSaveClearsWhatACrashLeft(t *testing.T) {
	folder := t.TempDir()
	leave := func(target string, age time.Duration) string {
		t.Helper()
		name := partName(filepath.Join(folder, target))
		then := time.Now().Add(-age)
		if err := errors.Join(os.WriteFile(name, []byte("half"), 0o644), os.Chtimes(name, then, then)); err != nil {
			t.Fatal(err)
		}
		return filepath.Base(name)
	}
	leave("a", 2*turnOver)
	leave("b", 2*partsSwept)
	young := leave("c", partsSwept/2)
	if err := save(filepath.Join(folder, "a"), []byte("whole")); err != nil {
		t.Fatal(err)
	}
	expectOnly(t, folder, young, "a")
}

// Programs that save under one name at a time take turns, and a guard is asked
// within a turn: of ten that each want to be the first, one is.
func TestSaveTakesTurns(t *testing.T) {
	path := filepath.Join(t.TempDir(), "boat.yaml")
	var first atomic.Int32
	var all sync.WaitGroup
	for range 10 {
		all.Go(func() {
			err := save(path, []byte("mine"), func(name string) error {
				if _, err := os.Stat(name); err == nil {
					return errors.New("somebody was here")
				}
				return nil
			})
			if err == nil {
				first.Add(1)
			}
		})
	}
	all.Wait()
	if n := first.Load(); n != 1 {
		t.Errorf("%d were the first", n)
	}
	expectOnly(t, filepath.Dir(path), "boat.yaml")
}

func TestSaveFailsClean(t *testing.T) {
	for name, path := range map[string]func(folder string) string{
		"a folder":          func(folder string) string { return folder },
		"no such folder":    func(folder string) string { return filepath.Join(folder, "no", "report.pdf") },
		"a file as folder":  func(folder string) string { return filepath.Join(folder, "old", "report.pdf") },
		"a name too long":   func(folder string) string { return filepath.Join(folder, string(bytes.Repeat([]byte("x"), 300))) },
		"a link to itself":  func(folder string) string { return filepath.Join(folder, "loop") },
		"a name with a NUL": func(folder string) string { return filepath.Join(folder, "a\x00b") },
	} {
		t.Run(name, func(t *testing.T) {
			folder := t.TempDir()
			if err := os.WriteFile(filepath.Join(folder, "old"), []byte("old"), 0o644); err != nil {
				t.Fatal(err)
			}
			if err := os.Symlink("loop", filepath.Join(folder, "loop")); err != nil {
				t.Skip(err)
			}
			err := save(path(folder), []byte("new"))
			var c complaint
			if !errors.As(err, &c) || len(c.lines) != 1 || c.code == exitDone {
				t.Errorf("found %v, expected a complaint of one line", err)
			}
			expectOnly(t, folder, "loop", "old")
			if got, _ := os.ReadFile(filepath.Join(folder, "old")); string(got) != "old" {
				t.Errorf("the old file now holds %q", got)
			}
		})
	}
}

// expectOnly fails unless a folder holds exactly the named files.
func expectOnly(t *testing.T, folder string, names ...string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var found []string
	for _, e := range entries {
		found = append(found, e.Name())
	}
	if len(found) != len(names) {
		t.Fatalf("found %q, expected %q", found, names)
	}
	for i, name := range names {
		if found[i] != name {
			t.Errorf("found %q, expected %q", found, names)
		}
	}
}

// What somebody else wrote into the answers file while the questions went on is
// not written over. Guards the comparison in kept.save.
func TestKeptNoticesOthers(t *testing.T) {
	name := filepath.Join(t.TempDir(), "boat.yaml")
	k := savedFile{name: name}
	for _, text := range []string{"one", "two"} {
		if err := k.save([]byte(text)); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(name, []byte("theirs"), 0o644); err != nil {
		t.Fatal(err)
	}
	err := k.save([]byte("three"))
	if err == nil || !strings.Contains(err.Error(), "somebody else changed it") {
		t.Errorf("error %v", err)
	}
	if text, _ := os.ReadFile(name); string(text) != "theirs" {
		t.Errorf("the file holds %q", text)
	}
}
