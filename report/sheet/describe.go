package sheet

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
)

// describe adds to a finished file what the PDF library cannot write: the
// language of the text, which screen readers need, and the wish that viewers
// show the title and not the file's name (ISO 32000-1, 7.7.2 and 12.2). Both
// belong to PDF 1.4, so the file says so.
//
// The library writes the catalogue as the last object before the
// cross-reference table. What is inserted there moves only the table, so one
// number, startxref, must follow. A file built otherwise is refused.
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
	return out, nil
}
