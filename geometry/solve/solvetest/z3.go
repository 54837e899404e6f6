// Package solvetest has a solver that is not ours judge answers of package
// solve, for tests.
package solvetest

import (
	"bufio"
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"slatwright/golden"
)

// MustReferees reports whether a missing referee is a fault.
func MustReferees() bool { return os.Getenv("SLATWRIGHT_REFEREES") == "1" }

const python = "/usr/bin/python3" // where Debian's python3-z3 is found

// NeedZ3 skips the test where Z3 is not installed, or ends it where it must be.
func NeedZ3(t testing.TB) {
	t.Helper()
	if err := exec.Command(python, "-c", "import z3").Run(); err == nil {
		return
	}
	if MustReferees() {
		t.Fatal("python3-z3 is not installed")
	}
	t.Skip("python3-z3 is not installed")
}

// Judge puts models with their answers to Z3, one of them a case, as
// testdata/solve/referee.py reads them, and returns what it says of each: "ok",
// "undecided" or complaints, and the time that it took.
func Judge[T any](t testing.TB, cases []T) []string {
	t.Helper()
	var in bytes.Buffer
	enc := json.NewEncoder(&in)
	for _, c := range cases {
		if err := enc.Encode(c); err != nil {
			t.Fatal(err)
		}
	}
	cmd := exec.Command(python, filepath.Join(golden.Root(t), "testdata", "solve", "referee.py"))
	cmd.Stdin, cmd.Stderr = &in, os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	var says []string
	for lines := bufio.NewScanner(bytes.NewReader(out)); lines.Scan(); {
		says = append(says, lines.Text())
	}
	if len(says) != len(cases) {
		t.Fatalf("%d of %d cases judged", len(says), len(cases))
	}
	return says
}
