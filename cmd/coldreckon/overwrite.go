package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"slices"
)

// forceHint names the way out of a refusal to replace a file.
const forceHint = "Name another file with -o, or write over this one with --force."

// marks are how the files begin that the program writes, in each format.
var marks = [][]byte{
	[]byte("Written by coldreckon "),
	[]byte("<!-- Written by coldreckon "),
	[]byte("\ufeffnote,file,name,error,currency,answer,"), // the columns of a comparison
	[]byte("note,file,name,error,currency,answer,"),       // the same of older ones
	[]byte("{\n  \"program\": \"coldreckon\""),
}

// The marks of what opens with a line that its format wants: in a comment, or
// where HTML names its generator (html.spec.whatwg.org, 4.2.5.1).
var (
	pdfMark  = []byte("coldreckon\n")
	htmlMark = []byte(`<meta name="generator" content="coldreckon `)
)

// longestHead is how far into a file its mark stands, in bytes.
const longestHead = 1024

// marked puts the mark before a file of a format that has no other.
func marked(format string, data []byte) []byte {
	switch format {
	case "text":
		return append(fmt.Appendf(nil, "Written by coldreckon %s.\n\n", buildVersion()), data...)
	case "md":
		return append(fmt.Appendf(nil, "<!-- Written by coldreckon %s. -->\n\n", buildVersion()), data...)
	}
	return data
}

// ours reports whether the program wrote a file that begins so. An empty one
// has nothing to lose.
func ours(head []byte) bool {
	if len(head) == 0 || slices.ContainsFunc(marks, func(mark []byte) bool { return bytes.HasPrefix(head, mark) }) {
		return true
	}
	switch first, rest, _ := bytes.Cut(head, []byte("\n")); {
	case bytes.HasPrefix(first, []byte("%PDF-")):
		second, _, _ := bytes.Cut(rest, []byte("\n"))
		return bytes.HasPrefix(second, []byte("%")) && bytes.HasSuffix(append(second, '\n'), pdfMark)
	case bytes.EqualFold(first, []byte("<!DOCTYPE html>")):
		return bytes.Contains(rest, htmlMark)
	}
	return false
}

// writable is the guard of a file that its owner has locked.
func writable(name string) error {
	if info, err := os.Stat(name); err == nil && info.Mode().IsRegular() && info.Mode()&0o222 == 0 {
		return misuse("", "%s: the file is read only", name)
	}
	return nil
}

// replaceable is the guard of what a report would be written over: it must be a
// file of the program's own, and not a locked one. A device or a pipe is written
// to, and where nothing is nothing is lost.
func replaceable(name string) error {
	info, err := os.Stat(name)
	if err != nil || !info.Mode().IsRegular() {
		return nil
	}
	if info.Mode()&0o222 == 0 {
		return misuse(forceHint, "%s: the file is read only, and is not replaced", name)
	}
	f, err := os.Open(name)
	if err != nil {
		return misuse(forceHint, "%s: the file cannot be looked into (%v), so it is not replaced", name, cause(err))
	}
	defer f.Close()
	head, err := io.ReadAll(io.LimitReader(f, longestHead))
	if err != nil || !ours(head) {
		return misuse(forceHint, "%s: coldreckon did not write this file, so it is not replaced. Give a new name.", name)
	}
	return nil
}
