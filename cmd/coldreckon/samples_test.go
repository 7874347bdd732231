package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"strings"
	"sync"
	"testing"

	"coldreckon/economics"
	"coldreckon/report"
)

// A sampleRun is one sample reckoned once for all tests that look at it, with its
// figures as data and its whole report as Markdown, which keeps a cell in one
// piece where plain text folds it.
type sampleRun struct {
	sheet  map[string]any
	report string
}

// fewNights are the flags that make any boat quick to reckon.
var fewNights = []string{"--set", "cruising.nights=july 2", "--set", "cruising.trip_nights=2"}

// longRun reports whether what takes minutes is wanted too.
func longRun() bool { return os.Getenv("COLDRECKON_LONG") != "" }

// runs has each sample's run as the command makes it, made when it is first asked for.
var runs = func() map[string]func() (sampleRun, error) {
	of := map[string]func() (sampleRun, error){}
	for _, name := range sampleNames() {
		of[name] = sync.OnceValues(func() (sampleRun, error) { return newRun(name) })
	}
	return of
}()

func newRun(name string) (sampleRun, error) {
	none := func(string) string { return "" }
	var page bytes.Buffer
	out := environment{env: none, stdin: strings.NewReader(""), stdout: &page, stderr: &page}
	by := reckonFlags{settings: economics.DefaultSettings}
	ctx := context.Background()
	found, err := by.reckon(ctx, out, samplePrefix+name)
	if err != nil {
		return sampleRun{}, err
	}
	data, err := figuresJSON(found.figuresInput())
	if err != nil {
		return sampleRun{}, err
	}
	var r sampleRun
	if err := json.Unmarshal(data, &r.sheet); err != nil {
		return sampleRun{}, err
	}
	err = writeReport(ctx, out, found, &printer{format: "md", date: "2026-04-01"}, report.Input{Full: true})
	r.report = page.String()
	return r, err
}

// runOf gives the run of a sample.
func runOf(t *testing.T, name string) sampleRun {
	t.Helper()
	r, err := runs[name]()
	if err != nil {
		t.Fatal(err)
	}
	return r
}
