package rules

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the messages found into testdata/bad")

// TestBadFiles reads one file for every mistake. The first line of each holds
// the complete message, after the file's name.
func TestBadFiles(t *testing.T) {
	files, err := filepath.Glob("testdata/bad/*.yaml")
	if err != nil || len(files) < 90 {
		t.Fatalf("%d files, %v; expected all of testdata/bad", len(files), err)
	}
	for _, file := range files {
		name := filepath.Base(file)
		t.Run(strings.TrimSuffix(name, ".yaml"), func(t *testing.T) {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			first, body, _ := strings.Cut(string(data), "\n")
			pack, err := Read(name, data)
			if err == nil {
				err = pack.RunExamples().OrNil()
			}
			if err == nil {
				t.Fatal("the file was accepted")
			}
			got := "# want: " + strings.ReplaceAll(strings.ReplaceAll(err.Error(), "\n", " // "), name+":", "")
			if *update && got != first {
				if err := os.WriteFile(file, []byte(got+"\n"+body), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			if got != first {
				t.Errorf("got  %s\nwant %s", got, first)
			}
		})
	}
}
