package layout

import "regexp"

var figureAndUnit = regexp.MustCompile(`([0-9]) (W/K|Btu/h·°F|°F|°C|kg|lb|L|cu ft|sq ft|m²|kWh|Wh|W|Ah|A|V|mm²|mm|in|ft|AWG|m|%|K|kJ|h|of 100)(\W|$)`)

// bound keeps a figure and its unit on one line, by a space that does not break.
func bound(text string) string { return figureAndUnit.ReplaceAllString(text, "$1\u00a0$2$3") }
