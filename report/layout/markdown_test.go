package layout

import (
	"regexp"
	"strings"
	"testing"
)

// A name of the owner's choosing stays text, wherever it stands. Every ASCII
// sign with a backslash before it is itself and no more.
// Source: CommonMark 0.31.2, sections 2.4 (escapes), 4 and 5 (what opens a
// block), 6.3 and 6.4 (links, images); GFM 0.29, section 6.9 (bare addresses).
func TestMarkdownKeepsNamesText(t *testing.T) {
	for name, want := range map[string]string{
		"![Dunlin](https://a.example/b.png)": `\!\[Dunlin\](https\://a.example/b.png)`,
		"[Dunlin](www.a.example)":            `\[Dunlin\](www\.a.example)`,
		"Dunlin & Co &amp; &#91;":            `Dunlin \& Co \&amp; \&\#91;`,
		"<img src=x>":                        `&lt;img src=x\>`,
		"~~Dunlin~~ **B** __C__ `d`":         "\\~\\~Dunlin\\~\\~ \\*\\*B\\*\\* \\_\\_C\\_\\_ \\`d\\`",
		"Dunlin\r\n# Buy":                    `Dunlin  \# Buy`,
		"C:\\ | D":                           `C:\\ \| D`,
	} {
		if got := escape(name); got != want {
			t.Errorf("%q becomes %q, want %q", name, got, want)
		}
	}
	for name, want := range map[string]string{
		"- Dunlin": `\- Dunlin`, "+ Dunlin": `\+ Dunlin`, "> Dunlin": `\> Dunlin`, "---": `\---`, "1. Dunlin": `1\. Dunlin`,
		"12) Dunlin": `12\) Dunlin`, "    Dunlin": "Dunlin", "\tDunlin": "Dunlin", "# Dunlin": `\# Dunlin`,
		"-$30 a year": "-$30 a year", "1.5 kg": "1.5 kg", "12 A": "12 A",
	} {
		var d Document
		d.Part(Para{Text: name}, List{Mark: Dash, Items: []Item{{Text: name}}})
		if got := d.Markdown(); got != want+"\n\n- "+want+"\n" {
			t.Errorf("%q becomes %q, want %q", name, got, want)
		}
	}
}

// opens is what may open a link, a picture, an entity, raw HTML, emphasis or
// code where no backslash stands before it.
var opens = regexp.MustCompile("(^|[^\\\\])(\\\\\\\\)*[\\[\\]!*_`~]|://|&[^l]|<")

func FuzzMarkdownNames(f *testing.F) {
	f.Add(`\[a](b)`)
	f.Add("\\\\![x](y)&lt;")
	f.Fuzz(func(t *testing.T, name string) {
		got := escape(name)
		if at := opens.FindString(strings.ReplaceAll(got, `\&`, "")); at != "" {
			t.Errorf("%q becomes %q, which holds %q", name, got, at)
		}
		if strings.ContainsAny(got, "\r\n") {
			t.Errorf("%q becomes more than a line, %q", name, got)
		}
	})
}
