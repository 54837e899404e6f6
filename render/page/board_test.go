package page_test

import (
	"bufio"
	"io"
	"net/http"
	"net/http/httptest"
	"regexp"
	"strings"
	"testing"
	"time"

	"slatwright/geometry/check"
	"slatwright/render/page"
)

func drawn(title, svg string) page.Drawn {
	return page.Drawn{
		Title: title, Summary: "20 bottles",
		Findings: []check.Finding{{Name: "fit.rest", Where: "columns 1-4", Status: check.Fail, Says: "gap < 2 in"}},
		Groups:   []page.Group{{Title: "Drawings", Sheets: []page.Sheet{{Name: "drawings-01-order", Title: "Order", SVG: []byte(svg)}}}},
	}
}

// get asks the board for a path as a browser at the host would.
func get(t *testing.T, b *page.Board, method, path, host string) (int, string, http.Header) {
	t.Helper()
	r := httptest.NewRequest(method, path, nil)
	r.Host = host
	w := httptest.NewRecorder()
	b.Handler().ServeHTTP(w, r)
	return w.Code, w.Body.String(), w.Header()
}

const here = "127.0.0.1:8000"

// has fails where the text lacks one of the words.
func has(t *testing.T, text string, words ...string) {
	t.Helper()
	for _, w := range words {
		if !strings.Contains(text, w) {
			t.Errorf("no %q in\n%s", w, text)
		}
	}
}

func TestPage(t *testing.T) {
	b := page.NewBoard("rack.toml")
	b.Show(drawn("Bar <rack>", "<svg>one</svg>"))
	code, text, head := get(t, b, "GET", "/", here)
	if code != http.StatusOK {
		t.Fatalf("status %d", code)
	}
	has(t, text, "Bar &lt;rack&gt;", "FAILS", "gap &lt; 2 in", "20 bottles", `src="/sheet/1/drawings-01-order.svg"`, "<figcaption>Order")
	if strings.Contains(text, "stale") || head["Date"] != nil {
		t.Error("a fresh page says stale, or tells the time")
	}
	if foreign := regexp.MustCompile(`(?:src|href)="(?:https?:)?//|url\(`).FindString(text); foreign != "" {
		t.Errorf("the page asks for %s", foreign)
	}
	if _, svg, _ := get(t, b, "GET", "/sheet/1/drawings-01-order.svg", here); svg != "<svg>one</svg>" {
		t.Errorf("sheet %q", svg)
	}
	for _, path := range []string{"/page.css", "/page.js"} {
		if code, text, _ := get(t, b, "GET", path, here); code != http.StatusOK || len(text) == 0 {
			t.Errorf("%s: status %d", path, code)
		}
	}
	for path, want := range map[string]int{"/sheet/2/drawings-01-order.svg": 404, "/sheet/1/none.svg": 404, "/page.go": 404, "/../page.go": 404} {
		if code, _, _ := get(t, b, "GET", path, here); code != want && code != http.StatusTemporaryRedirect && code != http.StatusMovedPermanently {
			t.Errorf("%s: status %d; want %d", path, code, want)
		}
	}
	if code, _, _ := get(t, b, "POST", "/", here); code != http.StatusMethodNotAllowed {
		t.Errorf("POST: status %d", code)
	}
}

// The same state gives the same bytes.
func TestPageIsTheSameTwice(t *testing.T) {
	b := page.NewBoard("rack.toml")
	b.Show(drawn("Bar rack", "<svg/>"))
	_, one, _ := get(t, b, "GET", "/", here)
	time.Sleep(time.Millisecond)
	if _, two, _ := get(t, b, "GET", "/", here); one != two {
		t.Error("the page differs from itself")
	}
}

func TestTroubleKeepsTheSheets(t *testing.T) {
	b := page.NewBoard("rack.toml")
	if _, text, _ := get(t, b, "GET", "/", here); !strings.Contains(text, "Being drawn") {
		t.Errorf("nothing was drawn yet, but\n%s", text)
	}
	b.Trouble("rack.toml:3:1: unknown key `widht`")
	_, text, _ := get(t, b, "GET", "/view", here)
	has(t, text, "unknown key `widht`", "Nothing was drawn yet")

	b.Show(drawn("Bar rack", "<svg>one</svg>"))
	b.Trouble("these lines cannot all hold\n  <here>")
	_, text, _ = get(t, b, "GET", "/view", here)
	has(t, text, "these lines cannot all hold\n  &lt;here&gt;", "<strong>stale</strong>", `class="stale"`, `src="/sheet/1/drawings-01-order.svg"`)
	if _, svg, _ := get(t, b, "GET", "/sheet/1/drawings-01-order.svg", here); svg != "<svg>one</svg>" {
		t.Errorf("the last good sheet is %q", svg)
	}
	b.Show(drawn("Bar rack", "<svg>two</svg>"))
	if _, text, _ = get(t, b, "GET", "/view", here); strings.Contains(text, "stale") || strings.Contains(text, "cannot all hold") {
		t.Errorf("the trouble is over, but\n%s", text)
	}
}

func TestOnlyLoopbackHosts(t *testing.T) {
	b := page.NewBoard("rack.toml")
	b.Show(drawn("Bar rack", "<svg/>"))
	for host, want := range map[string]int{
		"127.0.0.1:8000": 200, "127.0.0.1": 200, "localhost:8000": 200, "LOCALHOST": 200, "[::1]:8000": 200, "[::1]": 200,
		"": 403, "example.com": 403, "example.com:8000": 403, "127.0.0.1.example.com:8000": 403, "localhost.example.com": 403,
		"192.168.0.2:8000": 403, "0.0.0.0:8000": 403, "[::]:8000": 403, "localhost@example.com": 403,
	} {
		for _, path := range []string{"/", "/view", "/sheet/1/drawings-01-order.svg", "/page.js"} {
			if code, text, _ := get(t, b, "GET", path, host); code != want || want == 403 && strings.Contains(text, "Bar rack") {
				t.Errorf("%s of host %q: status %d; want %d", path, host, code, want)
			}
		}
	}
	if code, _, _ := get(t, b, "GET", "/events", "example.com"); code != http.StatusForbidden {
		t.Errorf("events: status %d; want 403", code)
	}
}

func TestEvents(t *testing.T) {
	b := page.NewBoard("rack.toml")
	b.Show(drawn("Bar rack", "<svg/>"))
	server := httptest.NewServer(b.Handler())
	defer server.Close()
	answer, err := http.Get(server.URL + "/events")
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	lines := bufio.NewReader(answer.Body)
	for _, want := range []string{"data: 1\n", "data: 2\n", "data: 3\n"} {
		if got, err := lines.ReadString('\n'); got != want || err != nil {
			t.Fatalf("event %q, %v; want %q", got, err, want)
		}
		if _, err := lines.ReadString('\n'); err != nil && err != io.EOF {
			t.Fatal(err)
		}
		b.Trouble("odd")
	}
}
