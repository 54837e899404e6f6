package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// stagePrefix names the folders in which files are written before they take
// their place.
const stagePrefix = ".slatwright-stage-"

// numbered matches the sheets that an earlier run may have left.
var numbered = regexp.MustCompile(`^[0-9][0-9]-[a-z0-9-]+\.svg$`)

// writeAll puts the files into the folder. Each is written whole and flushed to
// the disk beside its place, and then renamed, so that a reader sees the old
// file or the new one and never a part. Sheets of an earlier run that this one
// does not have are removed, where this one has sheets; nothing else in the
// folder is touched. Where two runs write into one folder the second waits for
// the first, so that the files are all of one run.
func writeAll(dir string, files []outFile) (err error) {
	if info, err := os.Stat(dir); err == nil && !info.IsDir() {
		return fmt.Errorf("%s is a file; -o names a folder", dir)
	}
	sheets := slices.ContainsFunc(files, func(f outFile) bool { return strings.HasPrefix(f.name, "svg/") })
	inner := dir
	if sheets {
		inner = filepath.Join(dir, "svg")
	}
	if err := os.MkdirAll(inner, 0o755); err != nil {
		return fmt.Errorf("make the output folder: %w", err)
	}
	release, err := lockFolder(dir, lockPatience)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, release()) }()
	sweep(dir)
	stage, err := os.MkdirTemp(dir, stagePrefix)
	if err != nil {
		return fmt.Errorf("write into %s: %w", dir, err)
	}
	defer func() { err = errors.Join(err, os.RemoveAll(stage)) }()
	for i, f := range files {
		if err := writeOne(staged(stage, i), f.data); err != nil {
			return fmt.Errorf("write %s: %w; the output folder is as it was", f.name, err)
		}
	}
	for i, f := range files {
		if err := os.Rename(staged(stage, i), filepath.Join(dir, filepath.FromSlash(f.name))); err != nil {
			return fmt.Errorf("put %s in its place: %w", f.name, err)
		}
	}
	if !sheets {
		return nil
	}
	return removeStale(filepath.Join(dir, "svg"), files)
}

func staged(stage string, i int) string { return filepath.Join(stage, fmt.Sprintf("%03d", i)) }

// writeOne writes a file and sees it onto the disk.
func writeOne(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Sync(), f.Close())
}

// removeStale removes numbered sheets that are not among the files.
func removeStale(dir string, files []outFile) error {
	fresh := map[string]bool{}
	for _, f := range files {
		fresh[path.Base(f.name)] = true
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	for _, e := range entries {
		if !numbered.MatchString(e.Name()) || fresh[e.Name()] || e.IsDir() {
			continue
		}
		if err := os.Remove(filepath.Join(dir, e.Name())); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("remove the old sheet %s: %w", e.Name(), err)
		}
	}
	return nil
}

// sweep removes what runs that were killed have left. It is called under the
// lock, so that no stage belongs to a run that is still at work.
func sweep(dir string) {
	entries, _ := os.ReadDir(dir) // tidying up: what cannot be read stays
	for _, e := range entries {
		if e.IsDir() && strings.HasPrefix(e.Name(), stagePrefix) {
			os.RemoveAll(filepath.Join(dir, e.Name()))
		}
	}
}
