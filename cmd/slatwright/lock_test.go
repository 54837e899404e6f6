package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// packetOf is a packet whose files all say whose they are. Packets of different
// runs have different sheets.
func packetOf(who int) []outFile {
	var files []outFile
	for i := range 12 {
		files = append(files, outFile{fmt.Sprintf("file-%d", i), fmt.Appendf(nil, "of %d", who)})
		files = append(files, outFile{fmt.Sprintf("svg/%02d-sheet-%d.svg", i+1, who), fmt.Appendf(nil, "of %d", who)})
	}
	return files
}

// Runs that write into one folder at the same time leave the files of one of
// them, all of them, and nothing else.
func TestRunsDoNotMixFiles(t *testing.T) {
	dir := t.TempDir()
	for range 10 {
		var group sync.WaitGroup
		for who := range 6 {
			group.Go(func() {
				if err := writeAll(dir, packetOf(who)); err != nil {
					t.Error(err)
				}
			})
		}
		group.Wait()
		owners := map[string]int{}
		err := filepath.WalkDir(dir, func(path string, e os.DirEntry, err error) error {
			if err != nil || e.IsDir() {
				return err
			}
			data, err := os.ReadFile(path)
			owners[string(data)]++
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
		if len(owners) != 1 {
			t.Fatalf("files %v of each run in one folder", owners)
		}
		for who, n := range owners {
			if n != len(packetOf(0)) {
				t.Fatalf("%d files %s; want %d", n, who, len(packetOf(0)))
			}
		}
	}
	if entries, err := os.ReadDir(dir); err != nil || len(entries) != 13 {
		t.Errorf("%d entries left in the folder, %v; want 12 files and svg", len(entries), err)
	}
}

// A run does not wait for ever, and goes on as soon as it can.
func TestLockWaits(t *testing.T) {
	dir := t.TempDir()
	release, err := lockFolder(dir, 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := lockFolder(dir, 3*lockLook); !errors.Is(err, errLocked) || !strings.Contains(err.Error(), dir) {
		t.Errorf("a second lock: %v; want %v and the folder", err, errLocked)
	}
	time.AfterFunc(5*lockLook, func() {
		if err := release(); err != nil {
			t.Error(err)
		}
	})
	again, err := lockFolder(dir, time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	if err := again(); err != nil {
		t.Error(err)
	}
	if entries, _ := os.ReadDir(dir); len(entries) != 0 {
		t.Errorf("the lock leaves %d files", len(entries))
	}
}
