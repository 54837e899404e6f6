package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/signal"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"slatwright/geometry/check"
	"slatwright/render/drawing"
	"slatwright/render/page"
	"slatwright/render/report"
	"slatwright/render/svg"
	"slatwright/specs/design"
)

// looks is how often the preview looks at the design file.
const looks = 100 * time.Millisecond

// newPreview returns the command that shows a design while it is written.
func newPreview() *cobra.Command {
	var port int
	c := &cobra.Command{
		Use:   "preview DESIGN [--port N]",
		Short: "live page of a design, redrawn at each save",
		Long: "Preview shows every sheet of a design and what the checks find on a page for the browser of this machine,\n" +
			"and draws it anew each time the file is saved. Where the design cannot be drawn the page says why, and the\n" +
			"last sheets stay, marked as stale. The page is served on the loopback address only. Ctrl-C ends it; it\n" +
			"writes no file.",
		Example: "  slatwright preview rack.toml\n  slatwright preview rack.toml --port 8080",
		Args:    exactly("a design file"),
		RunE: func(c *cobra.Command, args []string) error {
			if port < 0 || port > 65535 {
				return fmt.Errorf("--port is from 1 to 65535, or 0 for any that is free, not %d", port)
			}
			if d, err := design.Load(args[0]); d == nil {
				return err // a file that is not there cannot be watched
			}
			door, err := net.Listen("tcp4", fmt.Sprintf("127.0.0.1:%d", port))
			if err != nil {
				return fmt.Errorf("open the port: %w", err)
			}
			ctx, stop := signal.NotifyContext(c.Context(), os.Interrupt, syscall.SIGTERM)
			defer stop()
			return preview(ctx, c.OutOrStdout(), door, args[0], looks)
		},
	}
	c.Flags().IntVar(&port, "port", 0, "port on the loopback address; 0 takes one that is free")
	return c
}

// preview serves the page of a design until the context ends, and returns when
// everything it started has ended.
func preview(ctx context.Context, w io.Writer, door net.Listener, path string, every time.Duration) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	board := page.NewBoard(path)
	server := &http.Server{
		Handler:           board.Handler(),
		ReadHeaderTimeout: 5 * time.Second,
		BaseContext:       func(net.Listener) context.Context { return ctx }, // ends the streams of events
	}
	served, watched := make(chan error, 1), make(chan struct{})
	go func() {
		watch(ctx, path, every, func() { redraw(board, path) })
		close(watched)
	}()
	go func() { served <- server.Serve(door) }()
	fmt.Fprintf(w, "%s is shown on http://%s/; Ctrl-C ends it\n", path, door.Addr())

	var err error
	select {
	case err = <-served:
	case <-ctx.Done():
		end, cancel := context.WithTimeout(context.Background(), 2*time.Second)
		defer cancel()
		if err = server.Shutdown(end); err != nil {
			err = server.Close() // a browser that does not let go
		}
	}
	stop()
	<-watched
	if errors.Is(err, http.ErrServerClosed) {
		return nil
	}
	return err
}

// redraw draws a design as it stands now and puts it on the board, or the
// reason why it cannot be drawn. A bug is told there too: the next save may
// well be drawn.
func redraw(board *page.Board, path string) {
	var words bytes.Buffer
	defer func() {
		if bug := recover(); bug != nil {
			tellBug(bug, &words)
			board.Trouble(words.String())
		}
	}()
	drawn, err := drawForPage(path)
	if err != nil {
		tell(err, &words)
		board.Trouble(words.String())
		return
	}
	board.Show(drawn)
}

// drawForPage draws every sheet of a design for the page.
func drawForPage(path string) (page.Drawn, error) {
	_, r, err := load(path)
	if err != nil {
		return page.Drawn{}, err
	}
	findings := check.All(r)
	in, err := contents(r, findings, report.Mark(r))
	if err != nil {
		return page.Drawn{}, err
	}
	sheets, err := compose(in)
	if err != nil {
		return page.Drawn{}, err
	}
	out := page.Drawn{Title: r.Design.Title, Summary: report.Summary(r), Findings: findings}
	var notes bytes.Buffer
	printMeasured(&notes, r)
	printNext(&notes, r)
	out.Notes = notes.String()
	for _, g := range []struct {
		title, name string
		sheets      []*drawing.Sheet
	}{{"Drawings", "drawing", sheets.Drawings}, {"Full-size templates", "template", sheets.Templates}, {"Labels", "labels", sheets.Labels}} {
		group := page.Group{Title: g.title}
		var jobs []job
		for i, s := range g.sheets {
			name := fmt.Sprintf("%s-%s", g.name, s.Name)
			if g.name != "drawing" { // those of other files bear no number in their names
				name = fmt.Sprintf("%s-%02d", g.name, i+1)
			}
			jobs = append(jobs, job{name, func() ([]byte, error) { return svg.Encode(s) }})
		}
		made, err := all(jobs)
		if err != nil {
			return page.Drawn{}, &bugError{err}
		}
		for i, f := range made {
			group.Sheets = append(group.Sheets, page.Sheet{Name: f.name, Title: g.sheets[i].Title, SVG: f.data, W: g.sheets[i].W, H: g.sheets[i].H})
		}
		out.Groups = append(out.Groups, group)
	}
	return out, nil
}
