package main

import (
	"encoding/hex"
	"errors"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestMain lets scripts run the program as a command of its own.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"slatwright": main})
}

// The scripts of testdata/script. Each sees the demo designs as $DESIGNS.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "../../testdata/script",
		Setup: func(e *testscript.Env) error {
			e.Setenv("DESIGNS", designsDir(t))
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"status":  status,
			"fill":    fill,
			"hexfile": hexfile,
		},
	})
}

// status N COMMAND...: the command ends with exit status N.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status N command...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	var exit *exec.ExitError
	switch err := ts.Exec(args[1], args[2:]...); {
	case errors.As(err, &exit):
		got = exit.ExitCode()
	case err != nil:
		ts.Fatalf("%v", err)
	}
	if got != want {
		ts.Fatalf("exit status %d; want %d", got, want)
	}
}

// fill FILE BYTES: a file of so many bytes of comment.
func fill(ts *testscript.TestScript, neg bool, args []string) {
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte("#"+strings.Repeat(" ", n-1)), 0o644))
}

// hexfile FILE HEX: a file of these bytes.
func hexfile(ts *testscript.TestScript, neg bool, args []string) {
	data, err := hex.DecodeString(args[1])
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), data, 0o644))
}
