package main

import (
	"context"
	"os"
	"time"
)

// stamp is what tells one save of a file from another: editors write a file in
// place or put another in its place.
type stamp struct {
	there bool
	size  int64
	at    time.Time
	file  os.FileInfo
}

func stampOf(path string) stamp {
	info, err := os.Stat(path)
	if err != nil {
		return stamp{}
	}
	return stamp{true, info.Size(), info.ModTime(), info}
}

func (s stamp) same(t stamp) bool {
	if !s.there || !t.there {
		return s.there == t.there
	}
	return s.size == t.size && s.at.Equal(t.at) && os.SameFile(s.file, t.file)
}

// watch calls redraw at once and then after each save, until the context ends.
// It looks at the file every so often; a save counts when two looks find the
// same, so that a file half written, or gone while it is being replaced, is
// left alone.
func watch(ctx context.Context, path string, every time.Duration, redraw func()) {
	drawn := stampOf(path) // before the file is read: a save in between counts as one
	redraw()
	tick := time.NewTicker(every)
	defer tick.Stop()
	for last := drawn; ; {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
		now := stampOf(path)
		if now.same(last) && !now.same(drawn) {
			drawn = now
			redraw()
		}
		last = now
	}
}
