package report

import (
	"fmt"
	"strings"

	"coldreckon/economics"
	"coldreckon/rules"
)

// An invented boat is reckoned and reported as Markdown; its headings show what
// stands where.
func ExampleOwnerMarkdown() {
	pack, err := rules.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	boat := weekender()
	ground, err := boat.Ground()
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := economics.Reckon(boat, pack.Book, ground, economics.Settings{Futures: 20, Seed: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := OwnerMarkdown(Input{Reckoning: r, Pack: pack, Version: "1.0.0"})
	if err != nil {
		fmt.Println(err)
		return
	}
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, "# ") || strings.HasPrefix(line, "## ") {
			fmt.Print(line)
		}
	}
	// Output:
	// # Sandpiper
	// ## Three reasons
	// ## What would change this
	// ## The four ways side by side
	// ## As she is, and with the work
	// ## The work for ice alone
	// ## Before anything is cut, wired or bought
	// ## The season: heat, ice and power
	// ## Money over the years
	// ## Where the answer turns
	// ## What to find out first
	// ## How sure this is
	// # Appendix
	// ## Where the heat comes from
	// ## The units in this box
	// ## Work for the other ways
	// ## What moves the choice
	// ## What is paid for
	// ## Cash flows
	// ## All cautions, to tick off
	// ## Foods that keep without cooling
	// ## The boat as told
	// ## How this was worked out
	// ## Taken for granted
	// ## Sources
}
