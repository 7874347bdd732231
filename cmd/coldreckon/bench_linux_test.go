package main

import (
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"

	"coldreckon/wizard/answers"
)

// built makes the program as it is released: this test's own binary, which the
// scripts run, holds all the tests too and starts slower.
func built(b *testing.B) string {
	b.Helper()
	program := filepath.Join(b.TempDir(), "coldreckon")
	build := exec.Command("go", "build", "-trimpath", "-o", program, ".")
	build.Env = append(os.Environ(), "CGO_ENABLED=0")
	if said, err := build.CombinedOutput(); err != nil {
		b.Fatalf("%v\n%s", err, said)
	}
	return program
}

// run runs the program in a folder and gives the most memory it held.
func run(b *testing.B, folder, program string, args ...string) (peakBytes int64) {
	b.Helper()
	c := exec.Command(program, args...)
	c.Dir = folder
	var said strings.Builder
	c.Stderr = &said
	if err := c.Run(); err != nil {
		b.Fatalf("%v\n%s", err, said.String())
	}
	return c.ProcessState.SysUsage().(*syscall.Rusage).Maxrss << 10 // Linux counts in kilobytes
}

// BenchmarkFirstPrompt starts the program on a terminal and waits for its first
// question. Wanted: 15 ms. The start of a program that asks nothing stands
// beside it.
func BenchmarkFirstPrompt(b *testing.B) {
	program := built(b)
	b.Run("version", func(b *testing.B) {
		for b.Loop() {
			run(b, b.TempDir(), program, "version")
		}
	})
	b.Run("prompt", func(b *testing.B) {
		folder := b.TempDir()
		for b.Loop() {
			c := exec.Command(program, "ask", "tern.yaml")
			c.Dir = folder
			c.Env = append(os.Environ(), "TERM=xterm", "NO_COLOR=1", "ACCESSIBLE=")
			tty, err := pty.StartWithSize(c, &pty.Winsize{Rows: 40, Cols: 80})
			if err != nil {
				b.Fatal(err)
			}
			var shown strings.Builder
			for chunk := make([]byte, 4096); !hintBeside.MatchString(shown.String()); {
				n, err := tty.Read(chunk)
				shown.Write(chunk[:n])
				if strings.Contains(string(chunk[:n]), asksForCursor) {
					io.WriteString(tty, "\x1b[1;1R")
				}
				if err != nil {
					b.Fatalf("%v; on the screen:\n%s", err, shown.String())
				}
			}
			b.StopTimer()
			c.Process.Kill()
			c.Wait()
			tty.Close()
			b.StartTimer()
		}
	})
}

// BenchmarkCommands runs figures and report with their 1,000 futures, one after
// the other. Wanted, on two cores: figures 1 s, report 300 ms more.
func BenchmarkCommands(b *testing.B) {
	program, folder := built(b), b.TempDir()
	var figures, report time.Duration
	var runs int
	for b.Loop() {
		start := time.Now()
		run(b, folder, program, "figures", "sample:dunlin")
		middle := time.Now()
		run(b, folder, program, "report", "sample:dunlin", "-o", "report.pdf")
		figures += middle.Sub(start)
		report += time.Since(middle)
		runs++
	}
	each := func(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 / float64(runs) }
	b.ReportMetric(each(figures), "ms/figures")
	b.ReportMetric(each(report-figures), "ms-more/report")
}

// BenchmarkCompare compares boats over 100 futures each, a first look at a fleet.
// Wanted: 1,000 boats in a minute on two cores, in no more memory than 100. Run it
// once: -bench Compare -benchtime 1x.
func BenchmarkCompare(b *testing.B) {
	program := built(b)
	for _, boats := range []int{10, 100, 1000} {
		b.Run(fmt.Sprint(boats), func(b *testing.B) {
			folder := b.TempDir()
			names := fleet(b, folder, boats)
			var peak int64
			for b.Loop() {
				peak = max(peak, run(b, folder, program, append([]string{"compare", "--futures", "100", "--format", "csv", "-o", "all.csv"}, names...)...))
			}
			b.ReportMetric(float64(peak)/(1<<20), "MB-peak")
			b.ReportMetric(b.Elapsed().Seconds()/float64(b.N)/float64(boats), "s/boat")
		})
	}
}

// fleet writes answers files of boats that differ: the samples, each with a box
// and foam of its own.
func fleet(b *testing.B, folder string, boats int) []string {
	b.Helper()
	samples := answers.Samples()
	var names []string
	for i := range boats {
		file, faults := answers.Read("sample", strings.NewReader(samples[i%len(samples)].Text))
		if len(faults) > 0 {
			b.Fatal(faults)
		}
		for _, set := range [][2]string{
			{"boat.name", fmt.Sprintf("Boat %d", i+1)},
			{"box.opens_per_day", fmt.Sprint(6 + i%9)},
			{"money.years", fmt.Sprint(6 + i%7)},
			{"food.target", fmt.Sprintf("%.1f °C", 3+0.1*float64(i%30))},
			{"cruising.trip_nights", fmt.Sprint(2 + i%5)},
		} {
			if err := file.Set(set[0], set[1]); err != nil {
				b.Fatal(err)
			}
		}
		name := fmt.Sprintf("boat-%04d.yaml", i+1)
		f, err := os.Create(filepath.Join(folder, name))
		if err != nil {
			b.Fatal(err)
		}
		if err := file.Write(f); err != nil {
			b.Fatal(err)
		}
		if err := f.Close(); err != nil {
			b.Fatal(err)
		}
		names = append(names, name)
	}
	return names
}
