package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"

	"slatwright/geometry/rack"
	"slatwright/specs/design"
	"slatwright/specs/diag"
	"slatwright/specs/parallel"
)

// The exit statuses.
const (
	statusDone          = 0
	statusFails         = 1 // done, but a check fails
	statusUnread        = 2 // the command or the design cannot be read as written
	statusContradiction = 3
	statusBug           = 4
)

// run runs the program and returns its exit status. A panic is a bug and has a
// status of its own, so that it is never taken for a fault of the design.
func run(args []string, stdout, stderr io.Writer) (status int) {
	defer func() {
		if bug := recover(); bug != nil {
			tellBug(bug, stderr)
			if os.Getenv("SLATWRIGHT_TRACE") != "" {
				if within, ok := bug.(*parallel.Panic); ok {
					stderr.Write(within.Stack)
				}
				stderr.Write(debug.Stack())
			}
			status = statusBug
		}
	}()
	root := newRoot()
	root.SetArgs(args)
	root.SetOut(stdout)
	root.SetErr(stderr)
	return tell(root.Execute(), stderr)
}

// newRoot returns the whole command tree.
func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:   "slatwright",
		Short: "shop drawings of made-to-measure bottle racks",
		Long: "Slatwright reads a design of one page, solves every size exactly, checks that the bottles fit,\n" +
			"and writes the packet of drawings, templates and lists that is carried to the saw.\n\n" +
			"Exit status: 0 done, 1 done but a check fails, 2 the command or the design cannot be read as\n" +
			"written, 3 the statements of the design contradict each other, 4 a bug in the program.",
		Example:       "  slatwright new > rack.toml\n  slatwright draw rack.toml -o out",
		SilenceErrors: true, // tell prints them
		SilenceUsage:  true,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			var names []string
			for _, k := range c.Commands() {
				names = append(names, k.Name())
			}
			hint := cmp.Or(diag.DidYouMean(args[0], names), "the commands are "+strings.Join(names, ", "))
			return fmt.Errorf("there is no command %q; %s", args[0], hint)
		},
		RunE: func(c *cobra.Command, _ []string) error {
			return c.Help()
		},
	}
	root.CompletionOptions.DisableDefaultCmd = true
	root.AddCommand(newDraw(), newCheck(), newExplain(), newCut(), newQuote(), newSizes(), newCompare(), newPreview(), newNew(), newTables())
	return root
}

// errFails says that all was done, but a check fails. What fails was printed.
var errFails = errors.New("a check fails")

// designError is a fault of a design with the text it is a fault of.
type designError struct {
	source *diag.Source
	err    error // a diag.List or a *rack.Clash
}

func (e *designError) Error() string { return e.err.Error() }
func (e *designError) Unwrap() error { return e.err }

// bugError is an error that no design should be able to cause.
type bugError struct{ err error }

func (e *bugError) Error() string { return e.err.Error() }
func (e *bugError) Unwrap() error { return e.err }

// tellBug prints a bug in one line: a sheet that does not pass its own check can
// have thousands of faults, and the first says as much as all.
func tellBug(bug any, stderr io.Writer) {
	first, rest, more := strings.Cut(fmt.Sprint(bug), "\n")
	fmt.Fprintf(stderr, "slatwright: this is a bug in the program, not in the design: %s\n", first)
	if more {
		fmt.Fprintf(stderr, "  and %d lines more\n", 1+strings.Count(rest, "\n"))
	}
}

// tell prints an error and returns the exit status that goes with it.
func tell(err error, stderr io.Writer) int {
	var (
		fault *designError
		list  diag.List
		clash *rack.Clash
		bug   *bugError
	)
	switch {
	case err == nil:
		return statusDone
	case errors.Is(err, errFails):
		return statusFails
	case errors.As(err, &bug):
		tellBug(bug, stderr)
		return statusBug
	case !errors.As(err, &fault):
		fmt.Fprintf(stderr, "slatwright: %v\n", err)
		return statusUnread
	case errors.As(fault.err, &list):
		io.WriteString(stderr, list.Format(fault.source))
		return statusUnread
	case errors.As(fault.err, &clash):
		io.WriteString(stderr, clash.Messages().Format(fault.source))
		return statusContradiction
	}
	fmt.Fprintf(stderr, "%s: %v\n", fault.source.Name, fault.err)
	return statusUnread
}

// load reads a design and solves it. The design is nil only where the file
// could not be read at all.
func load(path string) (*design.Design, *rack.Rack, error) {
	d, err := design.Load(path)
	if err != nil {
		if d != nil {
			err = &designError{d.Source, err}
		}
		return d, nil, err
	}
	r, err := rack.Build(d)
	if err != nil {
		return d, nil, &designError{d.Source, err}
	}
	return d, r, nil
}

// exactly is cobra.ExactArgs with words that say what is missing.
func exactly(names ...string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) == len(names) {
			return nil
		}
		if len(args) < len(names) {
			return fmt.Errorf("%s needs %s; see slatwright %s --help", c.Name(), names[len(args)], c.Name())
		}
		return fmt.Errorf("%s does not know what to do with %q; see slatwright %s --help", c.Name(), args[len(names)], c.Name())
	}
}
