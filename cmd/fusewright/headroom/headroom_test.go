package headroom

import (
	"runtime"
	"testing"
)

var sink []byte

// What a short command leaves behind is not worth a collection.
func TestShortRunsCollectNothing(t *testing.T) {
	runtime.GC()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	for range 200 {
		sink = make([]byte, 100_000)
	}
	runtime.ReadMemStats(&after)
	if n := after.NumGC - before.NumGC; n > 0 {
		t.Errorf("%d collections for 20 MB", n)
	}
	runtime.KeepAlive(reserved)
}
