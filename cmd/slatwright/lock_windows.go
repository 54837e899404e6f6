package main

import (
	"errors"
	"os"
	"syscall"
)

// What the system calls a file that another program has open, and the flag that
// removes a file when it is closed.
const (
	sharingViolation = syscall.Errno(32)
	deleteOnClose    = 0x04000000
)

// tryLock opens the file for itself alone, or returns errLocked.
func tryLock(name string) (*os.File, error) {
	path, err := syscall.UTF16PtrFromString(name)
	if err != nil {
		return nil, err
	}
	h, err := syscall.CreateFile(path, syscall.GENERIC_READ|syscall.GENERIC_WRITE, 0, nil, syscall.OPEN_ALWAYS, syscall.FILE_ATTRIBUTE_HIDDEN|deleteOnClose, 0)
	switch {
	case err == nil:
		return os.NewFile(uintptr(h), name), nil
	case errors.Is(err, sharingViolation), errors.Is(err, syscall.ERROR_ACCESS_DENIED):
		return nil, errLocked // access is denied while the file is being removed
	}
	return nil, err
}

// unlock closes the file, which removes it.
func unlock(f *os.File) error { return f.Close() }
