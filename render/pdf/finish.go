package pdf

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"strconv"
)

// What the library writes, as far as finish depends on it.
var (
	header    = []byte("%PDF-1.3\n")
	catalog   = []byte("<<\n/Type /Catalog\n")
	trailer   = []byte("\ntrailer\n<<\n")
	startxref = []byte("\nstartxref\n")
)

// version is the one whose viewer preferences are used; 1.7 is ISO 32000-1.
const version = "1.7"

// The viewer preferences of a document: the title in the window, and for full
// size no scaling, the tray by the page's size, one side (ISO 32000-1:2008,
// table 150; PrintScaling and PickTrayByPDFSize read in other libraries'
// manuals). Enforce came with PDF 2.0 and is passed over by older viewers.
const (
	scaledPrefs   = "/ViewerPreferences <</DisplayDocTitle true>>\n"
	fullSizePrefs = "/ViewerPreferences <</DisplayDocTitle true /Duplex /Simplex /Enforce [/PrintScaling]" +
		" /NumCopies 1 /PickTrayByPDFSize true /PrintScaling /None>>\n"
)

var errForm = errors.New("finish pdf: the library wrote a file of another form than is known here")

// finish adds what the library has no call for: the version, the viewer
// preferences and a file identifier. The catalog is the last object before the
// cross-reference table, so that only the table's own place moves.
func finish(file []byte, fullSize bool) ([]byte, error) {
	if !bytes.HasPrefix(file, header) || bytes.Count(file, catalog) != 1 {
		return nil, errForm
	}
	file = bytes.Clone(file)
	copy(file, "%PDF-"+version+"\n")
	at := bytes.Index(file, catalog) + len(catalog)
	tail := bytes.LastIndex(file, startxref)
	tr := bytes.LastIndex(file, trailer)
	if tail < 0 || tr < at || tail < tr {
		return nil, errForm
	}
	number := file[tail+len(startxref):]
	number = number[:max(bytes.IndexByte(number, '\n'), 0)]
	xref, err := strconv.Atoi(string(number))
	if err != nil || xref < at || xref > tr || bytes.Contains(file[at:xref], []byte(" 0 obj\n")) {
		return nil, errForm
	}
	prefs := scaledPrefs
	if fullSize {
		prefs = fullSizePrefs
	}
	sum := sha256.Sum256(file)
	var out bytes.Buffer
	out.Grow(len(file) + 256)
	out.Write(file[:at])
	out.WriteString(prefs)
	out.Write(file[at : tr+len(trailer)])
	fmt.Fprintf(&out, "/ID [<%x><%x>]", sum[:16], sum[:16])
	out.WriteByte('\n')
	out.Write(file[tr+len(trailer) : tail+len(startxref)])
	fmt.Fprintf(&out, "%d", xref+len(prefs))
	out.Write(file[tail+len(startxref)+len(number):])
	return out.Bytes(), nil
}
