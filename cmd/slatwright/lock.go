package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"
)

// lockName is the file by which a run keeps others out of a folder while it
// writes there. The system gives the lock up when a run ends, however it ends.
const lockName = ".slatwright-lock"

// How long a run waits for another that writes into the same folder, and how
// often it looks.
const (
	lockPatience = 30 * time.Second
	lockLook     = 20 * time.Millisecond
)

// errLocked says that another run holds the lock.
var errLocked = errors.New("another run is writing there")

// lockFolder keeps other runs out of the folder until release is called. It waits
// for another run to be done, but no longer than it has patience.
func lockFolder(dir string, patience time.Duration) (release func() error, err error) {
	name := filepath.Join(dir, lockName)
	for end := time.Now().Add(patience); ; time.Sleep(lockLook) {
		f, err := tryLock(name)
		switch {
		case err == nil:
			return func() error { return unlock(f) }, nil
		case !errors.Is(err, errLocked):
			return nil, fmt.Errorf("lock the output folder: %w", err)
		case time.Now().After(end):
			return nil, fmt.Errorf("write into %s: %w", dir, errLocked)
		}
	}
}

// same reports whether the name still leads to the open file.
func same(f *os.File, name string) bool {
	open, err := f.Stat()
	if err != nil {
		return false
	}
	named, err := os.Stat(name)
	return err == nil && os.SameFile(open, named)
}
