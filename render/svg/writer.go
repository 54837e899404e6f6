package svg

import (
	"encoding/xml"
	"io"
	"strings"
)

// writer passes writes on until one goes wrong and then keeps the error, since
// the library that writes through it does not look at errors.
type writer struct {
	out io.Writer
	err error
}

// Write implements io.Writer.
func (w *writer) Write(b []byte) (int, error) {
	if w.err != nil {
		return 0, w.err
	}
	n, err := w.out.Write(b)
	w.err = err
	return n, err
}

// escape returns s for use within a quoted attribute. Characters that XML does
// not allow become U+FFFD.
func escape(s string) string {
	var b strings.Builder
	if err := xml.EscapeText(&b, []byte(s)); err != nil {
		panic("svg: " + err.Error()) // a strings.Builder takes everything
	}
	return b.String()
}
