package chart

// label is a name beside the end of a line: it wants to stand at want.
type label struct{ want, got, height float64 }

// apart moves labels, given in any order, so that none overlaps another and
// all lie between low and high, each as near to its wish as the others let
// it. It reports whether they fit.
func apart(labels []*label, low, high float64) bool {
	order := append([]*label(nil), labels...)
	for i := 1; i < len(order); i++ { // few labels: insertion keeps equal wishes in order
		for k := i; k > 0 && order[k].want < order[k-1].want; k-- {
			order[k], order[k-1] = order[k-1], order[k]
		}
	}
	// Labels that would touch form a block that sits at the mean of their
	// wishes; blocks that touch are joined (pool adjacent violators).
	type block struct {
		first, count int
		height, top  float64
	}
	place := func(b block) block {
		mean, above := 0.0, 0.0
		for _, l := range order[b.first : b.first+b.count] {
			mean += l.want - (above + l.height/2)
			above += l.height
		}
		b.height = above
		b.top = min(max(mean/float64(b.count), low), high-above)
		return b
	}
	var blocks []block
	for i := range order {
		blocks = append(blocks, place(block{first: i, count: 1}))
		for n := len(blocks); n > 1 && blocks[n-2].top+blocks[n-2].height > blocks[n-1].top; n = len(blocks) {
			joined := place(block{first: blocks[n-2].first, count: blocks[n-2].count + blocks[n-1].count})
			blocks = append(blocks[:n-2], joined)
		}
	}
	for _, b := range blocks {
		y := b.top
		for _, l := range order[b.first : b.first+b.count] {
			l.got = y + l.height/2
			y += l.height
		}
	}
	sum := 0.0
	for _, l := range labels {
		sum += l.height
	}
	return sum <= high-low
}
