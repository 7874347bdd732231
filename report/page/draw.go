package page

import (
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// Draw sets the document on a sheet. Errors: what layout.Document.Draw gives.
func (d Document) Draw(s sheet.Sheet) error {
	out := layout.Document{Running: d.Title, Foot: d.Foot}
	for _, part := range d.Parts {
		out.Break()
		out.Add(set(part)...)
	}
	return out.Draw(s)
}

// PDF makes the file. Title and subject of info are replaced by the document's.
// Errors: what sheet.NewPDF and Draw give.
func (d Document) PDF(info sheet.Info) ([]byte, error) {
	info.Title, info.Subject = d.Title, d.Subject
	p, err := sheet.NewPDF(info)
	if err != nil {
		return nil, err
	}
	if err := d.Draw(p); err != nil {
		return nil, err
	}
	return p.Bytes()
}

// types are the sizes of the styles.
var types = map[Style]sheet.Type{Body: layout.Body, Lede: layout.Lede, Small: layout.Small, Fine: layout.Fine}

func set(blocks []Block) []layout.Block {
	var out []layout.Block
	for _, b := range blocks {
		out = append(out, setOne(b))
	}
	return out
}

func setOne(b Block) layout.Block {
	switch b := b.(type) {
	case Heading:
		return layout.Heading{Level: b.Level, Text: b.Text}
	case Para:
		return layout.Text{Words: led(b.Lead, b.Text), Type: types[b.Style], Full: b.Style != Body, Keep: b.Keep}
	case List:
		var items []layout.Block
		typ := layout.Body
		if b.Fine {
			typ = layout.Fine
		}
		for _, item := range b.Items {
			w := led(item.Lead, item.Text)
			if item.Source != "" {
				w = layout.Join(w, layout.Quiet(bound(" "+item.Source)))
			}
			items = append(items, layout.Text{Words: w, Type: typ, Full: true})
		}
		return layout.List(layout.Mark(b.Mark), items...)
	case Table:
		return setTable(b)
	case Chart:
		figure := layout.Figure{Height: b.Height, Draw: b.Draw}
		if !b.Shown {
			return figure
		}
		return layout.Stack{figure, setTable(b.Table)}
	case Note:
		weight := 0.0
		if b.Heavy {
			weight = 0.8
		}
		return layout.Note{Weight: weight, Content: set(b.Blocks)}
	case Side:
		var columns []layout.Block
		for _, c := range b.Columns {
			columns = append(columns, layout.Stack(set(c)))
		}
		return layout.Columns{Shares: b.Shares, Blocks: columns}
	case Kept:
		return layout.Together(set(b)...)
	}
	return layout.Stack(nil)
}

// led sets a bold lead before a text.
func led(lead, text string) layout.Words {
	if lead == "" {
		return plain(text)
	}
	if text == "" {
		return strongWords(lead)
	}
	return layout.Join(strongWords(lead+" "), plain(text))
}

func setTable(t Table) layout.Table {
	out := layout.Table{Fine: t.Fine}
	for _, c := range t.Columns {
		column := layout.Column{Head: c.Head, Share: c.Share, Quiet: c.Quiet}
		if c.Right {
			column.Align = sheet.Right
		}
		out.Columns = append(out.Columns, column)
	}
	for i, cells := range t.Rows {
		row := layout.Row{Heavy: t.Sum && i == len(t.Rows)-1}
		for _, c := range cells {
			row.Cells = append(row.Cells, plain(c))
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

func plain(text string) layout.Words { return layout.Plain(bound(text)) }

func strongWords(text string) layout.Words { return layout.Strong(bound(text)) }
