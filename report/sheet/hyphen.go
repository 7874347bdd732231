package sheet

import (
	"bytes"
	"encoding/binary"
	"errors"

	"golang.org/x/image/font/sfnt"
)

// withTextHyphen gives a copy of a TrueType face whose hyphen is the face's
// own soft hyphen. The Go faces were made for program text, where the hyphen
// is also the minus and as wide as a plus; in sentences it reads as a dash.
// Outline and width are copied inside the file (OpenType 1.9, tables glyf,
// loca and hmtx); the minus sign U+2212 keeps its own.
func withTextHyphen(face []byte) ([]byte, error) {
	f, err := sfnt.Parse(face)
	if err != nil {
		return nil, err
	}
	var buf sfnt.Buffer
	hyphen, err := f.GlyphIndex(&buf, '-')
	if err != nil {
		return nil, err
	}
	soft, err := f.GlyphIndex(&buf, '\u00ad')
	if err != nil {
		return nil, err
	}
	out := bytes.Clone(face)
	t := tables(out)
	head, hhea, loca, glyf, hmtx := t["head"], t["hhea"], t["loca"], t["glyf"], t["hmtx"]
	if len(head) < 52 || len(hhea) < 36 {
		return nil, errors.New("the face has no outlines")
	}
	outline := func(g sfnt.GlyphIndex) []byte {
		if binary.BigEndian.Uint16(head[50:]) == 0 { // short offsets, halved
			return glyf[2*int(binary.BigEndian.Uint16(loca[2*g:])) : 2*int(binary.BigEndian.Uint16(loca[2*g+2:]))]
		}
		return glyf[binary.BigEndian.Uint32(loca[4*g:]):binary.BigEndian.Uint32(loca[4*g+4:])]
	}
	to, from := outline(hyphen), outline(soft)
	measured := sfnt.GlyphIndex(binary.BigEndian.Uint16(hhea[34:])) // glyphs with a width of their own
	if len(from) > len(to) || hyphen >= measured || soft >= measured {
		return nil, errors.New("the face's soft hyphen does not fit in the hyphen's place")
	}
	copy(to, from)
	copy(hmtx[4*hyphen:4*hyphen+4], hmtx[4*soft:])
	return out, nil
}

// tables gives the tables of a TrueType file by tag, as parts of it.
func tables(file []byte) map[string][]byte {
	out := map[string][]byte{}
	for i := range int(binary.BigEndian.Uint16(file[4:])) {
		record := file[12+16*i:]
		at, size := binary.BigEndian.Uint32(record[8:]), binary.BigEndian.Uint32(record[12:])
		out[string(record[:4])] = file[at : at+size]
	}
	return out
}
