package economics

import (
	"os"
	"runtime"
	"runtime/debug"
	"testing"
	"time"
)

// The futures of a boat lived on all year, and the search for work, stay under 80
// MiB of heap. What is lived of one such year takes 131 x 24 x 32 bytes of air:
// that of the search's 200 futures, which it meets again and again, is held and
// takes 20 MB; holding it for every one of 1,000 would take 100 MB.
func TestFuturesFitInMemory(t *testing.T) {
	if os.Getenv("COLDRECKON_LONG") == "" {
		t.Skip("reckons a whole year aboard 1,000 times: COLDRECKON_LONG=1")
	}
	boat := liveAboard()
	ground, err := boat.Ground()
	if err != nil {
		t.Fatal(err)
	}
	defer debug.SetGCPercent(debug.SetGCPercent(100)) // as in the program
	runtime.GC()
	done := make(chan error, 1)
	go func() {
		_, err := Reckon(boat, testBook(), ground, DefaultSettings)
		done <- err
	}()
	const limit = 80 << 20
	var most uint64
	for {
		select {
		case err := <-done:
			if err != nil {
				t.Fatal(err)
			}
			if most > limit {
				t.Errorf("%d MiB of heap, want at most 80", most>>20)
			}
			t.Logf("%d MiB", most>>20)
			return
		case <-time.After(2 * time.Millisecond):
			var m runtime.MemStats
			runtime.ReadMemStats(&m)
			most = max(most, m.HeapAlloc)
		}
	}
}
