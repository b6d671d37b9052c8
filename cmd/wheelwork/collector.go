package main

import (
	"math"
	"os"
	"runtime"
	"runtime/debug"
)

// collectFrom is the size of the heap at which memory is first collected: a
// design of some thousand wheels is read and checked before it is reached.
const collectFrom = 192 << 20

// tuneCollector suits the collector to a process that lives for milliseconds:
// it does not run before the heap is large, and from then on as usual, so that
// however large a design is, memory stays within twice what it needs. Who sets
// GOGC or GOMEMLIMIT has the say.
func tuneCollector() {
	if os.Getenv("GOGC") != "" || os.Getenv("GOMEMLIMIT") != "" {
		return
	}
	debug.SetGCPercent(-1)
	debug.SetMemoryLimit(collectFrom)
	// Nothing holds the canary, so the first collection ends it.
	runtime.SetFinalizer(new(canary), func(*canary) {
		debug.SetGCPercent(100)
		debug.SetMemoryLimit(math.MaxInt64)
	})
}

// canary is too large to be allocated together with others, which would keep
// it alive.
type canary [32]byte
