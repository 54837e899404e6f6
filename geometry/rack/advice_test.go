package rack_test

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/specs/design"
	"slatwright/specs/table"
)

// Each change that is suggested for a contradiction, typed into the file as it
// is printed, makes the design possible.
func TestSuggestedChangesWork(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := drawDesign(t).text()
		_, clash := build(t, text)
		if clash == nil || len(clash.Messages()) > 1 {
			return // of several problems each suggestion mends only its own
		}
		for _, c := range clash.Changes {
			for _, changed := range typed(text, c) {
				if r, still := build(t, changed); r == nil {
					t.Errorf("%q (line %d) does not do: %v\n%s", c.Text, c.Line, still, text)
				}
			}
		}
	})
}

// A stated length that breaks the fit is drawn all the same, and what the
// finding says to change puts it right.
func TestRemediesWork(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 3))
	tried := 0
	for range 30 {
		text := fmt.Sprintf("[bottles]\nfit = [\"claret-750\"]\n[rack]\ncolumns = 2\nrows = 3\n[cell]\ngap = \"%d/16\"\nrise = \"%d/16\"\n"+
			"[slat]\nheight = 1\nthickness = \"3/4\"\nfirst = \"%d/16\"\n[apron]\nheight = \"2 1/2\"\nlift = 0\n",
			24+rng.IntN(27), 40+rng.IntN(41), 4+rng.IntN(45))
		r := racktest.Build(t, text)
		for _, remedy := range r.Remedies {
			if passes(r, remedy.Check) {
				t.Errorf("%s holds, and still there is a remedy\n%s", remedy.Check, text)
			}
			for _, c := range remedy.Changes {
				for _, changed := range typed(text, c) {
					tried++
					if mended, still := racktest.Try(t, changed); still != nil || !passes(mended, remedy.Check) {
						t.Errorf("%s: %q (line %d) does not do: %v\n%s", remedy.Check, c.Text, c.Line, still, text)
					}
				}
			}
		}
	}
	if tried < 30 {
		t.Errorf("only %d remedies were tried", tried)
	}
}

func passes(r *rack.Rack, code string) bool {
	for _, f := range check.All(r) {
		if f.Name == code && f.Status == check.Fail {
			return false
		}
	}
	return true
}

// build reads and solves a text.
func build(t *rapid.T, text string) (*rack.Rack, *rack.Clash) {
	d, err := design.Read("drawn.toml", []byte(text))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	r, err := rack.Build(d)
	var clash *rack.Clash
	if err != nil && !errors.As(err, &clash) {
		t.Fatalf("%v\n%s", err, text)
	}
	return r, clash
}

var (
	limited = regexp.MustCompile(`^(?:at least |at most |from |up to )?(.*)$`)
	without = regexp.MustCompile(`^without (.*)$`)
)

// typed types a suggestion into the file: the first way that it names, and the
// one with defaults kept where it names that too.
func typed(text string, c rack.LineText) (out []string) {
	first, kept, _ := strings.Cut(c.Text, ", or ")
	name, value, _ := strings.Cut(first, " ")
	ways := []string{value}
	if kept != "" {
		ways = append(ways, strings.TrimSuffix(kept, " with every default and preference kept"))
	}
	for _, way := range ways {
		if changed, ok := retype(text, c.Line, name, first, way); ok {
			out = append(out, changed)
		}
	}
	return out
}

// retype puts a new value on a line of the file; ok is false for what has no
// single value to replace.
func retype(text string, line int, name, first, way string) (string, bool) {
	lines := strings.Split(text, "\n")
	key, old, ok := strings.Cut(lines[line-1], " = ")
	old = strings.Trim(old, `"`)
	switch {
	case strings.HasPrefix(first, "no change "):
		return "", false
	case strings.HasPrefix(lines[line-1], "where"):
		// The relation is the only one of its list.
		lines[line-1] = fmt.Sprintf("where = [%q]", first)
		return strings.Join(lines, "\n"), true
	case !ok || !strings.HasSuffix(name, "."+key):
		return "", false
	}
	value := limited.FindStringSubmatch(way)[1]
	switch m := without.FindStringSubmatch(way); {
	case m != nil:
		list := strings.Split(strings.Trim(old, "[]"), ", ")
		var rest []string
		for _, x := range list {
			if strings.Trim(x, `"`) != m[1] {
				rest = append(rest, x)
			}
		}
		lines[line-1] = key + " = [" + strings.Join(rest, ", ") + "]"
		return strings.Join(lines, "\n"), true
	case strings.HasPrefix(way, "["):
		lines[line-1] = key + " = " + way
		return strings.Join(lines, "\n"), true
	case strings.HasPrefix(old, "<="):
		value = "<= " + value
	case strings.HasPrefix(old, ">="):
		value = ">= " + value
	case strings.Contains(old, ".."):
		lo, hi, _ := strings.Cut(old, " .. ")
		if strings.HasPrefix(way, "up to") {
			value = lo + " .. " + value
		} else {
			value += " .. " + hi
		}
	}
	if key == "columns" || key == "rows" {
		if !strings.ContainsAny(value, "<>.") {
			lines[line-1] = key + " = " + value
			return strings.Join(lines, "\n"), true
		}
	}
	lines[line-1] = fmt.Sprintf("%s = %q", key, value)
	return strings.Join(lines, "\n"), true
}

// In place of the maker's bottle one that holds about as much is offered, and
// another only where none of those would do.
func TestBottlesOfferedHoldAsMuch(t *testing.T) {
	named := regexp.MustCompile(`bottles\.fit \["([a-z0-9-]+)"\]`)
	offered := 0
	for _, bottle := range []string{"claret-750", "burgundy-750", "magnum-1500", "half-375"} {
		for _, channel := range []string{"2", "2 1/2", "3", "3 1/4", "3 1/2", "4"} {
			with := func(bottle string) (*rack.Rack, error) {
				return racktest.Try(t, fmt.Sprintf("[bottles]\nfit = [%q]\n[rack]\ncolumns = 2\nrows = 3\n[cell]\nchannel = %q\n", bottle, channel))
			}
			r, err := with(bottle)
			type hint struct{ check, text string } // no check: a contradiction
			var hints []hint
			var clash *rack.Clash
			switch {
			case errors.As(err, &clash):
				hints = append(hints, hint{"", rack.Advice(clash.Changes)})
			case err != nil:
				t.Fatal(err)
			default:
				for _, x := range r.Remedies {
					hints = append(hints, hint{x.Check, rack.Advice(x.Changes)})
				}
			}
			was, _ := table.FindBottle(bottle)
			asMuch := func(k table.Bottle) bool {
				return 10*max(k.Millilitres-was.Millilitres, was.Millilitres-k.Millilitres) <= was.Millilitres
			}
			for _, h := range hints {
				for _, m := range named.FindAllStringSubmatch(h.text, -1) {
					offered++
					if is, _ := table.FindBottle(m[1]); asMuch(is) {
						continue
					}
					for _, k := range table.Bottles() {
						if k.ID == bottle || !asMuch(k) {
							continue
						}
						if other, err := with(k.ID); err == nil && (h.check == "" || passes(other, h.check)) {
							t.Errorf("%s in place of %s (channel %s), and %s would do", m[1], bottle, channel, k.ID)
						}
					}
				}
			}
		}
	}
	if offered == 0 {
		t.Error("no bottle was offered in place of another")
	}
}
