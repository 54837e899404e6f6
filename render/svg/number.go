package svg

import (
	"strconv"

	"slatwright/render/drawing"
)

// mm returns a length in millimetres with as few decimals as are exact, so
// never a negative zero.
func mm(u drawing.Um) string { return string(appendMM(nil, u)) }

// appendMM appends mm(u) to b.
func appendMM(b []byte, u drawing.Um) []byte {
	if u < 0 {
		b, u = append(b, '-'), -u
	}
	b = strconv.AppendInt(b, int64(u/drawing.MM), 10)
	rest := int64(u % drawing.MM)
	if rest == 0 {
		return b
	}
	b = append(b, '.', byte('0'+rest/100), byte('0'+rest/10%10), byte('0'+rest%10))
	for b[len(b)-1] == '0' {
		b = b[:len(b)-1]
	}
	return b
}

// list returns lengths with a space between them.
func list(us []drawing.Um) string {
	var b []byte
	for i, u := range us {
		if i > 0 {
			b = append(b, ' ')
		}
		b = appendMM(b, u)
	}
	return string(b)
}

// pathData returns a path as the d of a path element.
func pathData(p drawing.Path) string {
	b := appendPoint([]byte{'M'}, p.Start)
	for _, s := range p.Segs {
		if s.Curve {
			b = appendPoint(append(b, 'C'), s.C1)
			b = appendPoint(append(b, ' '), s.C2)
			b = appendPoint(append(b, ' '), s.To)
			continue
		}
		b = appendPoint(append(b, 'L'), s.To)
	}
	if p.Closed {
		b = append(b, 'Z')
	}
	return string(b)
}

func appendPoint(b []byte, p drawing.Point) []byte {
	return appendMM(append(appendMM(b, p.X), ' '), p.Y)
}
