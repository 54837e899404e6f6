//go:build !(darwin || dragonfly || freebsd || linux || netbsd || openbsd || windows)

package main

import (
	"errors"
	"io/fs"
	"os"
)

// tryLock makes the file, or returns errLocked where there is one. On these
// systems a run that was killed leaves it behind, to be removed by hand.
func tryLock(name string) (*os.File, error) {
	f, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		err = errLocked
	}
	return f, err
}

// unlock removes the file.
func unlock(f *os.File) error {
	return errors.Join(f.Close(), os.Remove(f.Name()))
}
