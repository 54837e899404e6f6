package table

import (
	"bytes"
	"fmt"

	"github.com/BurntSushi/toml"

	"slatwright/specs/unit"
)

// length is a length in an embedded table. It must name its unit.
type length unit.Length

// UnmarshalText reads the length exactly.
func (l *length) UnmarshalText(text []byte) error {
	q, err := unit.Scan(string(text), unit.Imperial)
	if err != nil {
		return err
	}
	if !q.Named {
		return fmt.Errorf("%q names no unit", text)
	}
	*l = length(q.Length)
	return nil
}

// origin is the pair of keys that every row or figure has.
type origin struct {
	Standing Standing `toml:"standing"`
	Source   string   `toml:"source"`
}

func (o origin) value() Origin { return Origin(o) }

// Source is what a short key in the origins of a table stands for.
type Source struct {
	Key string // such as "S02"
	Ref string // author, title, place
}

// decode reads an embedded table. The tables are part of the program: one that
// can't be read, or that holds a key nobody knows, is a fault of the program.
func decode(name string, text []byte, into any) toml.MetaData {
	meta, err := toml.NewDecoder(bytes.NewReader(text)).Decode(into)
	if err != nil {
		panic("table: " + name + ": " + err.Error())
	}
	if extra := meta.Undecoded(); len(extra) > 0 {
		panic("table: " + name + ": unknown key " + extra[0].String())
	}
	return meta
}

// sourcesOf returns the sources in the order of the file.
func sourcesOf(meta toml.MetaData, refs map[string]string) []Source {
	var list []Source
	for _, key := range meta.Keys() {
		if len(key) == 2 && key[0] == "sources" {
			list = append(list, Source{Key: key[1], Ref: refs[key[1]]})
		}
	}
	return list
}
