package questions

import (
	_ "embed"
	"slices"
	"strings"
)

// rankingTable lists answers by how far the price of a cold day moves when one
// of them alone is another, the farthest first: percent, on average of some
// invented boats. TestRanking of package wizard makes it.
//
//go:embed ranking.csv
var rankingTable string

// Ranking gives the keys of the answers that were ranked, those that move the
// price of a cold day farthest first.
func Ranking() []string {
	var keys []string
	for _, line := range strings.Split(strings.TrimSpace(rankingTable), "\n")[1:] {
		key, _, _ := strings.Cut(line, ",")
		keys = append(keys, key)
	}
	return keys
}

// foremost are asked before the first answer whatever they move: the others make
// no sense without them, they say what is wanted and what it may cost, or they
// show, as ice does that has melted, what several others only guess at.
var foremost = []string{"units", "cruising.ground", NightsKey, ShopKey, "cruising.crew", "food.cool_is_enough", "food.dry_premium",
	"evidence.ice_history", "money.budget"}

// mostEssential is how many answers the first one may take.
const mostEssential = 14

// later tells why an answer that moves as much as the last one asked for, or
// more, is not asked for before the first answer.
var later = map[string]string{
	"box.cabin_offset":   "few know it before they have hung up two thermometers",
	"ice.found_at_stops": "who has bought no ice there cannot tell",
	"ice.first_load":     "no more than chance apart from panel and battery, on which every unit hangs",
}

// essentials gives the keys of the first round: the foremost, and as many as
// there is room for of those that move most.
func essentials() []string {
	keys := slices.Clone(foremost)
	for _, key := range Ranking() {
		if len(keys) < mostEssential && later[key] == "" && !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	return keys
}
