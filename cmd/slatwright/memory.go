package main

import (
	"os"
	"runtime/debug"
)

// A run is short and makes much that it drops soon, so that memory is given back
// late: at four times what is in use, where there is room for that. It is the
// user's to say otherwise in GOGC and GOMEMLIMIT.
const (
	percentFree = 300
	softLimit   = 400 << 20 // bytes
)

func init() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(percentFree)
	}
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(softLimit)
	}
}
