package main

import (
	"os"
	"runtime/debug"
)

// collectFrom is the size of the heap from which on memory is collected: most
// designs are read and checked before it is reached.
const collectFrom = 768 << 20

// tuneCollector suits the collector to a process that lives for milliseconds:
// it does not run before the heap is large. Who sets GOGC or GOMEMLIMIT has
// the say.
func tuneCollector() {
	if os.Getenv("GOGC") != "" || os.Getenv("GOMEMLIMIT") != "" {
		return
	}
	debug.SetGCPercent(-1)
	debug.SetMemoryLimit(collectFrom)
}
