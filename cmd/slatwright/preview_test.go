package main

import (
	"context"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// shownPage is a preview at work on a design of the test's own.
type shownPage struct {
	t    *testing.T
	path string
	url  string
	stop context.CancelFunc
	done chan error
}

const previewed = "title = \"Cellar\"\n[rack]\ncolumns = 2\nrows = 2\n"

// startPreview shows a design, looking at it every few milliseconds.
func startPreview(t *testing.T, text string) *shownPage {
	t.Helper()
	p := &shownPage{t: t, path: filepath.Join(t.TempDir(), "rack.toml"), done: make(chan error, 1)}
	p.save(text)
	door, err := net.Listen("tcp4", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	p.url = "http://" + door.Addr().String()
	ctx, stop := context.WithCancel(context.Background())
	p.stop = stop
	go func() { p.done <- preview(ctx, io.Discard, door, p.path, 5*time.Millisecond) }()
	t.Cleanup(stop)
	return p
}

// save writes the design in place.
func (p *shownPage) save(text string) {
	p.t.Helper()
	if err := os.WriteFile(p.path, []byte(text), 0o644); err != nil {
		p.t.Fatal(err)
	}
}

// replace puts another file in the design's place, as many editors save.
func (p *shownPage) replace(text string) {
	p.t.Helper()
	if err := os.Rename(p.path, p.path+"~"); err != nil {
		p.t.Fatal(err)
	}
	fresh := p.path + ".new"
	if err := os.WriteFile(fresh, []byte(text), 0o644); err != nil {
		p.t.Fatal(err)
	}
	if err := os.Rename(fresh, p.path); err != nil {
		p.t.Fatal(err)
	}
}

func (p *shownPage) get(path string) (int, string) {
	p.t.Helper()
	answer, err := http.Get(p.url + path)
	if err != nil {
		p.t.Fatal(err)
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	if err != nil {
		p.t.Fatal(err)
	}
	return answer.StatusCode, string(text)
}

// wait waits until the page holds all the words, and returns it.
func (p *shownPage) wait(words ...string) string {
	p.t.Helper()
	var text string
	for until := time.Now().Add(20 * time.Second); time.Now().Before(until); time.Sleep(10 * time.Millisecond) {
		all := true
		_, text = p.get("/")
		for _, w := range words {
			all = all && strings.Contains(text, w)
		}
		if all {
			return text
		}
	}
	p.t.Fatalf("the page never said %q:\n%s", words, text)
	return ""
}

func TestPreview(t *testing.T) {
	p := startPreview(t, previewed)
	p.wait("<h1>Cellar</h1>", "2 columns in 2 rows", "fit.rest", "Front elevation", "Full-size templates", "Labels", "/sheet/1/drawing-01-order.svg")
	if code, text := p.get("/sheet/1/drawing-01-order.svg"); code != http.StatusOK || !strings.Contains(text, "<svg") {
		t.Errorf("order sheet: status %d", code)
	}
	if code, text := p.get("/sheet/1/labels-01.svg"); code != http.StatusOK || !strings.Contains(text, "<svg") {
		t.Errorf("labels: status %d", code)
	}

	p.save(strings.Replace(previewed, "rows = 2", "rows = 3", 1))
	p.wait("2 columns in 3 rows", "/sheet/2/")

	// A mistake: the message, as the terminal has it, and the last sheets, stale.
	p.save(strings.Replace(previewed, "rows", "rwos", 1))
	p.wait("rack.toml:4:1: unknown key `rwos` in [rack]", "rwos = 2", "^^^^", "<strong>stale</strong>", "2 columns in 3 rows", "/sheet/2/")

	// A contradiction, saved by putting another file in place.
	p.replace(previewed + "width = 5\n")
	p.wait("these lines cannot all hold", "rack.width = 5", "stale", "/sheet/2/")

	p.replace(previewed)
	if text := p.wait("2 columns in 2 rows", "/sheet/3/"); strings.Contains(text, "stale") {
		t.Error("drawn again, but still marked stale")
	}

	if err := os.Remove(p.path); err != nil {
		t.Fatal(err)
	}
	p.wait("there is no file", "stale", "/sheet/3/")
}

// An end while a browser listens ends all, and soon.
func TestPreviewEnds(t *testing.T) {
	p := startPreview(t, previewed)
	answer, err := http.Get(p.url + "/events")
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	p.stop()
	select {
	case err := <-p.done:
		if err != nil {
			t.Errorf("ended with %v", err)
		}
	case <-time.After(10 * time.Second):
		t.Fatal("still running")
	}
	if _, err := io.ReadAll(answer.Body); err != nil {
		t.Errorf("the stream of events broke off: %v", err)
	}
	if _, err := net.Dial("tcp4", strings.TrimPrefix(p.url, "http://")); err == nil {
		t.Error("the port is still open")
	}
}

// A save counts once two looks find the same; a file that did not change is not
// drawn again.
func TestWatch(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.toml")
	if err := os.WriteFile(path, []byte("a"), 0o644); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	drawn, ended := make(chan string, 100), make(chan struct{})
	go func() {
		watch(ctx, path, time.Millisecond, func() {
			text, _ := os.ReadFile(path) // gone reads as ""
			drawn <- string(text)
		})
		close(ended)
	}()
	for _, text := range []string{"a", "bb", "ccc"} {
		if text != "a" {
			if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		for got := ""; got != text; {
			select {
			case got = <-drawn:
			case <-time.After(10 * time.Second):
				t.Fatalf("%q was never drawn", text)
			}
		}
	}
	time.Sleep(30 * time.Millisecond)
	if len(drawn) > 0 {
		t.Errorf("drawn %d times more though nothing was saved", len(drawn))
	}
	stop()
	<-ended
}
