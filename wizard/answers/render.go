package answers

import (
	"strings"

	"gopkg.in/yaml.v3"

	"coldreckon/wizard/questions"
)

// named renders "name: value" as the lines of a block mapping.
func named(name string, in questions.Input, indent int) []string {
	margin := strings.Repeat(" ", indent)
	head := margin + scalar(name) + ":"
	switch in.Shape {
	case questions.Scalar:
		return []string{head + " " + scalar(in.Text)}
	case questions.Listed:
		if flat(in) {
			var items []string
			for _, item := range in.List {
				items = append(items, flowScalar(item.Text))
			}
			return []string{head + " [" + strings.Join(items, ", ") + "]"}
		}
		lines := []string{head}
		for _, item := range in.List {
			block := render(item, indent+4)
			block[0] = margin + "  - " + strings.TrimLeft(block[0], " ")
			lines = append(lines, block...)
		}
		return lines
	}
	return append([]string{head}, render(in, indent+2)...)
}

// render renders the pairs of an input as a block mapping.
func render(in questions.Input, indent int) []string {
	var lines []string
	for _, p := range in.Pairs {
		lines = append(lines, named(p.Name.Text, p.Value, indent)...)
	}
	return lines
}

// flat reports whether a list holds texts only.
func flat(in questions.Input) bool {
	for _, item := range in.List {
		if item.Shape != questions.Scalar {
			return false
		}
	}
	return true
}

// scalar writes a text plainly where YAML reads it back as the same text, and
// quoted where not.
func scalar(text string) string {
	var n yaml.Node
	if err := yaml.Unmarshal([]byte("- "+text+"\n"), &n); err == nil && len(n.Content) == 1 {
		if list := n.Content[0]; list.Kind == yaml.SequenceNode && len(list.Content) == 1 {
			if v := list.Content[0]; v.Kind == yaml.ScalarNode && v.Value == text && v.Style == 0 && v.Tag != "!!null" && v.LineComment == "" && v.Anchor == "" {
				return text
			}
		}
	}
	return quoted(text)
}

// flowScalar is scalar for a text between brackets.
func flowScalar(text string) string {
	if strings.ContainsAny(text, "[]{},") {
		return quoted(text)
	}
	return scalar(text)
}

func quoted(text string) string {
	out, err := yaml.Marshal(&yaml.Node{Kind: yaml.ScalarNode, Style: yaml.DoubleQuotedStyle, Value: text})
	if err != nil {
		return `""`
	}
	return strings.TrimSuffix(string(out), "\n")
}
