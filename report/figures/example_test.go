package figures

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"

	"coldreckon/economics"
	"coldreckon/rules"
)

// An invented boat's figures as a terminal shows them: the head of the text.
func ExamplePlain() {
	pack, err := rules.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	boat := dunlin()
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
	text := Plain(Input{Reckoning: r, Book: pack.Book, Guidance: pack.Guidance})
	fmt.Println(strings.Join(strings.Split(text, "\n")[:2], "\n"))
	// Output:
	// Dunlin, Maine coast, USA
	// ========================
}

// What has no value is null.
func ExampleObject() {
	text, err := json.Marshal(Object{{"held_c", 1.9}, {"pull_down_h", math.Inf(1)}, {"doubts", []string(nil)}})
	fmt.Println(string(text), err)
	// Output:
	// {"held_c":1.9,"pull_down_h":null,"doubts":[]} <nil>
}
