package page

import (
	"bytes"
	"fmt"
	"net"
	"net/http"
	"strconv"
	"strings"
	"sync"
)

// Board holds what the page shows. Its methods may be called from any
// goroutine.
type Board struct {
	mu      sync.Mutex
	now     content
	changed chan struct{} // closed at the next change
}

// NewBoard returns a board for a design file, with nothing drawn yet.
func NewBoard(file string) *Board {
	return &Board{now: content{File: file}, changed: make(chan struct{})}
}

// Show puts a drawn design on the page.
func (b *Board) Show(d Drawn) {
	b.change(func(c *content) {
		c.Drawn, c.Trouble = d, ""
		c.Version++
	})
}

// Trouble puts a message on the page; the last sheets stay and are marked
// stale.
func (b *Board) Trouble(message string) {
	b.change(func(c *content) { c.Trouble = message })
}

func (b *Board) change(f func(c *content)) {
	b.mu.Lock()
	defer b.mu.Unlock()
	f(&b.now)
	b.now.Turn++
	close(b.changed)
	b.changed = make(chan struct{})
}

// read returns what is shown, and what is closed when that changes.
func (b *Board) read() (content, <-chan struct{}) {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.now, b.changed
}

// Handler serves the page. It answers only requests that name a loopback
// address, so that no page from elsewhere can read a design through a name of
// its own that leads here.
func (b *Board) Handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", b.part("shell"))
	mux.HandleFunc("GET /view", b.part("view"))
	mux.HandleFunc("GET /page.css", asset("page.css", "text/css; charset=utf-8"))
	mux.HandleFunc("GET /page.js", asset("page.js", "text/javascript; charset=utf-8"))
	mux.HandleFunc("GET /sheet/{version}/{name}", b.sheet)
	mux.HandleFunc("GET /events", b.events)
	return guard(mux)
}

// guard refuses other hosts and sets what every answer has.
func guard(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h["Date"] = nil // no clock in what is served
		h.Set("Cache-Control", "no-store")
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Content-Security-Policy", "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'")
		if !loopback(r.Host) {
			http.Error(w, "the preview answers on the loopback address only", http.StatusForbidden)
			return
		}
		next.ServeHTTP(w, r)
	})
}

// loopback reports whether a Host header names this machine for itself.
func loopback(host string) bool {
	name := host
	if n, _, err := net.SplitHostPort(host); err == nil {
		name = n
	}
	if strings.EqualFold(name, "localhost") {
		return true
	}
	ip := net.ParseIP(strings.TrimSuffix(strings.TrimPrefix(name, "["), "]"))
	return ip != nil && ip.IsLoopback()
}

// part serves the whole page, or what changes in it.
func (b *Board) part(name string) http.HandlerFunc {
	return func(w http.ResponseWriter, _ *http.Request) {
		c, _ := b.read()
		var text bytes.Buffer
		if err := c.write(&text, name); err != nil {
			http.Error(w, err.Error(), http.StatusInternalServerError)
			return
		}
		serve(w, "text/html; charset=utf-8", text.Bytes())
	}
}

func asset(name, kind string) http.HandlerFunc {
	data, err := files.ReadFile(name)
	if err != nil {
		panic("page: " + err.Error()) // it is embedded
	}
	return func(w http.ResponseWriter, _ *http.Request) { serve(w, kind, data) }
}

// sheet serves one sheet. One of an earlier version is gone.
func (b *Board) sheet(w http.ResponseWriter, r *http.Request) {
	c, _ := b.read()
	if r.PathValue("version") == strconv.Itoa(c.Version) {
		for _, g := range c.Groups {
			for _, s := range g.Sheets {
				if s.Name+".svg" == r.PathValue("name") {
					serve(w, "image/svg+xml", s.SVG)
					return
				}
			}
		}
	}
	http.NotFound(w, r)
}

func serve(w http.ResponseWriter, kind string, data []byte) {
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Content-Length", strconv.Itoa(len(data)))
	w.Write(data) // a browser that has gone away is no fault of ours
}

// events tells the browser of each change, as server-sent events: first of how
// things stand, so that one that comes back late knows.
func (b *Board) events(w http.ResponseWriter, r *http.Request) {
	out := http.NewResponseController(w)
	w.Header().Set("Content-Type", "text/event-stream")
	for {
		c, changed := b.read()
		if _, err := fmt.Fprintf(w, "data: %d\n\n", c.Turn); err != nil {
			return
		}
		if err := out.Flush(); err != nil {
			return
		}
		select {
		case <-changed:
		case <-r.Context().Done():
			return
		}
	}
}
