package answers

import (
	"fmt"
	"maps"
	"strings"

	"coldreckon/economics"
	"coldreckon/wizard/questions"
)

// Fresh makes a file from the answers of a boat, with a comment for every
// group and key. What was only assumed is left out. It fails on an answer that
// cannot be written so that it reads back the same.
func Fresh(b economics.Boat) (*File, error) {
	f := &File{name: "new answers", inputs: map[string]questions.Input{}}
	f.text = strings.TrimLeft(`
# Answers about one boat, for coldreckon.
# Change what you like; a line left out takes a usual value, and "don't know"
# is an answer. A figure may name its own unit: 90 L, 3.2 cu ft, 1 1/2 in.
`, "\n")
	for _, row := range questions.All() {
		in, ok := questions.Given(&b, row.Key)
		if !ok {
			continue
		}
		inputs := maps.Clone(f.inputs)
		inputs[row.Key] = in
		if err := f.become(f.with(row.Key, in), inputs, f.understood); err != nil {
			return nil, fmt.Errorf("writing %s: %w", row.Key, err)
		}
	}
	return f, nil
}
