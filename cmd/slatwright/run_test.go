package main

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"
)

// A panic in a job comes back to the caller, where run catches it.
func TestJobsRaiseBugs(t *testing.T) {
	defer func() {
		if got := recover(); fmt.Sprint(got) != "odd" {
			t.Errorf("recovered %v; want odd", got)
		}
	}()
	all([]job{{"a", func() ([]byte, error) { return nil, nil }}, {"b", func() ([]byte, error) { panic("odd") }}})
	t.Error("no panic")
}

// Files come in the order of the jobs, and the first error wins.
func TestJobsKeepOrder(t *testing.T) {
	var jobs []job
	for _, name := range []string{"a", "b", "c", "d", "e", "f", "g"} {
		jobs = append(jobs, job{name, func() ([]byte, error) { return []byte(name), nil }})
	}
	files, err := all(jobs)
	if err != nil {
		t.Fatal(err)
	}
	for i, f := range files {
		if f.name != jobs[i].name || string(f.data) != f.name {
			t.Errorf("file %d is %s with %q; want %s", i, f.name, f.data, jobs[i].name)
		}
	}
	first, second := errors.New("first"), errors.New("second")
	jobs[2].make = func() ([]byte, error) { return nil, first }
	jobs[5].make = func() ([]byte, error) { return nil, second }
	if _, err := all(jobs); err != first {
		t.Errorf("error %v; want %v", err, first)
	}
}

func TestBugsHaveAStatusOfTheirOwn(t *testing.T) {
	var stderr bytes.Buffer
	got := tell(&bugError{errors.New("sheet 02: off the sheet\nand again\nand again")}, &stderr)
	if got != statusBug || stderr.String() != "slatwright: this is a bug in the program, not in the design: sheet 02: off the sheet\n  and 2 lines more\n" {
		t.Errorf("status %d, %q", got, stderr.String())
	}
}

func TestDay(t *testing.T) {
	for _, c := range [][2]string{{"2031-03-04", "2031-03-04"}, {"2031-03-04T10:00:00Z", "2031-03-04"}, {"spring", ""}, {"", ""}, {"2031-02-30", ""}} {
		if got := day(c[0]); got != c[1] {
			t.Errorf("day(%q) = %q; want %q", c[0], got, c[1])
		}
	}
}

// Every command has an example, and its help names it.
func TestHelpHasExamples(t *testing.T) {
	for _, c := range newRoot().Commands() {
		if !strings.Contains(c.Example, "slatwright "+c.Name()) {
			t.Errorf("%s has no example", c.Name())
		}
	}
}
