package economics

import (
	"os"
	"runtime"
	"testing"
	"time"
)

// The futures of a boat lived on all year, and the search for work, stay under 320
// MiB of heap. The air of one such year takes 8,760 x 40 bytes: that of the
// search's 400 futures, which it meets again and again, is held and takes 140 MB;
// holding it for every one of 2,000 would take 700 MB.
func TestFuturesFitInMemory(t *testing.T) {
	if os.Getenv("COLDRECKON_LONG") == "" {
		t.Skip("reckons a whole year aboard 2,000 times: COLDRECKON_LONG=1")
	}
	boat := liveAboard()
	ground, err := boat.Ground()
	if err != nil {
		t.Fatal(err)
	}
	runtime.GC()
	done := make(chan error, 1)
	go func() {
		_, err := Reckon(boat, testBook(), ground, DefaultSettings)
		done <- err
	}()
	const limit = 320 << 20
	var most uint64
	for {
		select {
		case err := <-done:
			if err != nil {
				t.Fatal(err)
			}
			if most > limit {
				t.Errorf("%d MiB of heap, want at most 320", most>>20)
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
