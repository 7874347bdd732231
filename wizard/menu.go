package wizard

import (
	"fmt"
	"io"

	"github.com/AlecAivazis/survey/v2"
	"github.com/AlecAivazis/survey/v2/core"
	"github.com/AlecAivazis/survey/v2/terminal"
)

// menu is a list to move in and to type in, drawn by package survey. Survey's
// own list keeps its highlight on a place when what is typed changes what
// stands there; here the highlight goes to the best match, so that Enter takes
// what was typed.
type menu struct {
	survey.Renderer
	message string
	entries []string                 // one line of the screen each, without its number
	find    func(typed string) []int // the entries that a text may mean, the likeliest first
	enter   int                      // the entry that Enter takes before anything is typed
	width   int                      // of a line, in columns

	typed string
	found []int // the entries shown
	at    int   // the one of found that is highlighted
}

// explains is the place that a menu gives when its help is asked for.
const explains = -1

// The most entries on the screen at once.
const pageLines = 12

// menuTemplate shows a menuView.
const menuTemplate = `
{{- color .Config.Icons.Question.Format}}{{.Config.Icons.Question.Text}} {{color "reset"}}
{{- color "default+hb"}}{{.Message}}{{if .Typed}} {{.Typed}}{{end}}{{color "reset"}}
{{- if .Answer}}{{color "cyan"}} {{.Answer}}{{color "reset"}}{{"\n"}}
{{- else}}  {{color "cyan"}}[arrows or letters, ? explains]{{color "reset"}}{{"\n"}}
{{- range $place, $line := .Lines}}
{{- if eq $place $.At}}{{color $.Config.Icons.SelectFocus.Format}}{{$.Config.Icons.SelectFocus.Text}} {{else}}{{color "default"}}  {{end}}{{$line}}{{color "reset"}}{{"\n"}}
{{- end}}
{{- if .Below}}  {{.Below}}{{"\n"}}{{end}}
{{- end}}`

// menuView is what is on the screen of a menu.
type menuView struct {
	Message, Typed string
	Lines          []string
	At             int    // the line highlighted
	Below          string // what is said under the lines
	Answer         string // once it is chosen, which is all that is shown then
	Config         *survey.PromptConfig
}

// Prompt shows the list until one of its entries is chosen.
func (m *menu) Prompt(config *survey.PromptConfig) (any, error) {
	m.show("")
	keys, cursor := m.NewRuneReader(), m.NewCursor()
	if err := keys.SetTermMode(); err != nil {
		return nil, err
	}
	defer keys.RestoreTermMode()
	cursor.Hide()
	defer cursor.Show()
	// Places are told relative to the cursor: a saved place would be another
	// line after the terminal's size has changed.
	under := 0
	down := func() {
		if under > 0 {
			cursor.NextLine(under)
		}
	}
	defer func() { down() }()
	for {
		// The cursor waits on the highlighted line, where screen readers look.
		down()
		lines := m.view(config)
		if err := m.Render(menuTemplate, lines); err != nil {
			return nil, err
		}
		under = len(lines.Lines) - lines.At
		if lines.Below != "" {
			under++
		}
		m.OffsetCursor(under)
		key, _, err := keys.ReadRune()
		switch {
		case err != nil:
			return nil, err
		case key == terminal.KeyInterrupt:
			return nil, terminal.InterruptErr
		case key == terminal.KeyEndTransmission:
			return nil, io.EOF
		case (key == terminal.KeyEnter || key == '\n') && len(m.found) > 0:
			place := m.found[m.at]
			return core.OptionAnswer{Index: place, Value: m.entries[place]}, nil
		case string(key) == asksHelp:
			return core.OptionAnswer{Index: explains, Value: asksHelp}, nil
		}
		m.press(key)
	}
}

// press does what a key asks for.
func (m *menu) press(key rune) {
	typed := []rune(m.typed)
	switch {
	case key == terminal.KeyArrowUp && len(m.found) > 0:
		m.at = (m.at + len(m.found) - 1) % len(m.found)
	case (key == terminal.KeyArrowDown || key == terminal.KeyTab) && len(m.found) > 0:
		m.at = (m.at + 1) % len(m.found)
	case key == terminal.KeyDeleteWord || key == terminal.KeyDeleteLine:
		m.show("")
	case (key == terminal.KeyDelete || key == terminal.KeyBackspace) && len(typed) > 0:
		m.show(string(typed[:len(typed)-1]))
	case key >= terminal.KeySpace && key != terminal.KeyDelete:
		m.show(m.typed + string(key))
	}
}

// show finds the entries of a text, all of them when there is none.
func (m *menu) show(typed string) {
	m.typed, m.found, m.at = typed, nil, 0
	if typed != "" {
		m.found = m.find(typed)
		return
	}
	for place := range m.entries {
		m.found = append(m.found, place)
	}
	m.at = m.enter
}

// view gives the screen: a page of the entries found, round the highlighted one.
func (m *menu) view(config *survey.PromptConfig) menuView {
	v := menuView{Message: m.message, Typed: m.typed, Config: config}
	from := max(0, min(m.at-pageLines/2, len(m.found)-pageLines))
	to := min(from+pageLines, len(m.found))
	for _, place := range m.found[from:to] {
		line := m.entries[place]
		if line != backEntry {
			line = fmt.Sprintf("%d. %s", place+1, line)
		}
		v.Lines = append(v.Lines, shorten(line, m.width))
	}
	v.At = m.at - from
	switch below := len(m.found) - to; {
	case below > 0:
		v.Below = fmt.Sprintf("%d more below; type a few letters", below)
	case len(m.found) == 0:
		v.Below = "nothing like that here; delete a letter"
	}
	return v
}

// Cleanup leaves the question and its answer on the screen.
func (m *menu) Cleanup(config *survey.PromptConfig, answer any) error {
	chosen := answer.(core.OptionAnswer).Value
	return m.Render(menuTemplate, menuView{Message: m.message, Answer: shorten(chosen, m.width), Config: config})
}
