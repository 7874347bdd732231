package wizard

import (
	"os"
	"runtime/debug"
	"testing"
)

// TestMain collects rubbish less often: a fifth of the tests' time goes into it
// otherwise.
func TestMain(m *testing.M) {
	debug.SetGCPercent(400)
	os.Exit(m.Run())
}
