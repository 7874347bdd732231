package layout

// Rows sets figures below one another without air, as the rows of a form that
// may go on over the page.
func Rows(figures ...Figure) Block {
	s := make(Stack, len(figures))
	for i, f := range figures {
		s[i] = rowFigure{f}
	}
	return s
}

// rowFigure is a figure that leaves the air to its own drawing.
type rowFigure struct{ Figure }

func (rowFigure) space() (above, below float64)              { return 0, 0 }
func (r rowFigure) split(_, _, _ float64) (head, rest Block) { return nil, r }
