package sheet

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
)

// describe adds to a finished file what the PDF library cannot write: the
// language of the text, which screen readers need, and the wish that viewers
// show the title and not the file's name (ISO 32000-1, 7.7.2 and 12.2). Both
// belong to PDF 1.4, so the file says so.
//
// The library writes the catalogue as the last object before the
// cross-reference table. What is inserted there moves only the table, so one
// number, startxref, must follow; the signature after the first line moves all
// that the table tells. A file built otherwise is refused.
func describe(file []byte, lang string) ([]byte, error) {
	const version, catalogue = "%PDF-1.", "/Type /Catalog\n"
	if !bytes.HasPrefix(file, []byte(version)) || len(file) < len(version)+1 {
		return nil, errors.New("the PDF library wrote no PDF version")
	}
	at := bytes.LastIndex(file, []byte(catalogue))
	table := bytes.LastIndex(file, []byte("\nxref\n")) + 1
	if at < 0 || table < at || bytes.Contains(file[at:table], []byte(" obj\n")) {
		return nil, errors.New("the PDF library did not write the catalogue last")
	}
	start := bytes.LastIndex(file, []byte("startxref\n")) + len("startxref\n")
	end := start + bytes.IndexByte(file[start:], '\n')
	told, err := strconv.Atoi(string(file[start:end]))
	if err != nil || told != table {
		return nil, fmt.Errorf("startxref is %q; the table is at %d", file[start:end], table)
	}
	insert := "/Lang (" + lang + ")\n/ViewerPreferences << /DisplayDocTitle true >>\n"
	at += len(catalogue)
	out := make([]byte, 0, len(file)+len(insert)+1)
	out = append(out, file[:at]...)
	out = append(out, insert...)
	out = append(out, file[at:start]...)
	out = strconv.AppendInt(out, int64(table+len(insert)), 10)
	out = append(out, file[end:]...)
	if minor := &out[len(version)]; *minor < '4' {
		*minor = '4'
	}
	return sign(out, table+len(insert))
}

// signature is the comment after the version: four signs above 127, which tell
// that the file is no text (ISO 32000-1, 7.5.2), and who wrote it.
const signature = "%\xe2\xe3\xcf\xd3 coldreckon\n"

// place is an object's place in the cross-reference table: ten digits, a
// generation, and n for in use (ISO 32000-1, 7.5.4).
var place = regexp.MustCompile(`(?m)^(\d{10}) (\d{5}) n `)

// sign puts the signature into a file whose cross-reference table starts at a
// place, and moves what the table tells.
func sign(file []byte, table int) ([]byte, error) {
	first := bytes.IndexByte(file, '\n') + 1
	start := bytes.LastIndex(file, []byte("startxref\n"))
	if first == 0 || start < table {
		return nil, errors.New("the PDF library wrote no line of its version, or no place of its table")
	}
	moved := place.ReplaceAllFunc(file[table:start], func(entry []byte) []byte {
		at, err := strconv.Atoi(string(entry[:10]))
		if err != nil {
			return entry // ten digits are a number
		}
		return append(fmt.Appendf(nil, "%010d", at+len(signature)), entry[10:]...)
	})
	out := slices.Concat(file[:first], []byte(signature), file[first:table], moved)
	return fmt.Appendf(out, "startxref\n%d\n%%%%EOF\n", table+len(signature)), nil
}
