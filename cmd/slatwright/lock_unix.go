//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package main

import (
	"errors"
	"os"
	"syscall"
)

// tryLock opens and locks the file, or returns errLocked.
func tryLock(name string) (*os.File, error) {
	f, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE, 0o644)
	if err != nil {
		return nil, err
	}
	err = syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	switch {
	case err == nil && same(f, name):
		return f, nil
	case err == nil, errors.Is(err, syscall.EWOULDBLOCK), errors.Is(err, syscall.EINTR):
		err = errLocked // or the run before has just removed the file
	}
	f.Close()
	return nil, err
}

// unlock removes the file while it is still locked, so that whoever waits for it
// sees that it is gone, and makes a new one.
func unlock(f *os.File) error {
	return errors.Join(os.Remove(f.Name()), f.Close())
}
