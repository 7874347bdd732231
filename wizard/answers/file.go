package answers

import (
	"io"
	"maps"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// understand builds the boat of the answers alone, nothing filled in. It reads
// those that were not understood before, or were for an owner of other units.
func (f *File) understand(before map[string]questions.Answer) []Fault {
	var faults []Fault
	f.boat, f.understood = economics.Boat{}, map[string]questions.Answer{}
	for _, row := range questions.All() {
		in, ok := f.inputs[row.Key]
		if !ok {
			continue
		}
		a, known := before[row.Key]
		if !known || !a.Is(&f.boat, in) {
			var bad []Fault
			f.reads++
			if a, bad = questions.Understand(&f.boat, row.Key, in); len(bad) > 0 {
				faults = append(faults, bad...)
				continue
			}
		}
		f.understood[row.Key] = a
		a.Put(&f.boat)
	}
	return faults
}

// Told gives the boat of the answers alone, nothing filled in. It is the
// caller's own.
func (f *File) Told() economics.Boat {
	b := f.boat
	b.Known, b.Box.Faces, b.Cruising.AirOverrides = maps.Clone(b.Known), maps.Clone(b.Box.Faces), maps.Clone(b.Cruising.AirOverrides)
	if b.Known == nil {
		b.Known = map[string]quantity.How{}
	}
	return b
}

// Try puts an answer into a copy of the boat of the answers, and leaves the file
// as it is. The error is a Fault.
func (f *File) Try(key, text string) (economics.Boat, error) {
	b, in := f.Told(), questions.Expand(key, questions.Word(text))
	if f.tried.Key != key || !f.tried.Is(&b, in) {
		f.reads++
		a, faults := questions.Understand(&b, key, in)
		if len(faults) > 0 {
			return b, faults[0]
		}
		f.tried = a
	}
	f.tried.Put(&b)
	return b, nil
}

// Guessed reports whether an answer's text did not say quite what it is taken to
// mean, such as "2 to 30" nights.
func (f *File) Guessed(key string) bool {
	if f.tried.Key == key {
		return f.tried.Guessed
	}
	return f.understood[key].Guessed
}

// Text gives an answer as it was written, "" where there is none or it is no
// plain text.
func (f *File) Text(key string) string { return f.inputs[key].Text }

// Reads gives how many answers were read from their texts so far: one for each
// that came, and those again whose meaning another one changed.
func (f *File) Reads() int { return f.reads }

// Check tells how the answers contradict each other, and what is missing.
func (f *File) Check() []Fault {
	faults := questions.Check(f.boat)
	for i, fault := range faults {
		in := f.inputs[fault.Key]
		faults[i].File, faults[i].Line, faults[i].Column = f.name, in.Line, in.Column
	}
	return faults
}

// Boat gives the boat with every unanswered row filled by its default, or the
// faults of Check.
func (f *File) Boat(book economics.Book) (economics.Boat, []Fault) {
	if faults := f.Check(); len(faults) > 0 {
		return economics.Boat{}, faults
	}
	b := f.Told()
	questions.Fill(&b, book)
	return b, nil
}

// Write writes the file, with the line ends it was read with.
func (f *File) Write(w io.Writer) error {
	text := f.text
	if f.crlf {
		text = strings.ReplaceAll(text, "\n", "\r\n")
	}
	_, err := io.WriteString(w, text)
	return err
}
