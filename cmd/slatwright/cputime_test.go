//go:build unix

package main

import (
	"syscall"
	"testing"
	"time"
)

// cpuTime returns how long processors have worked for this program so far. Unlike
// the clock it does not go on while others have the machine.
func cpuTime(t *testing.T) time.Duration {
	t.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		t.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
