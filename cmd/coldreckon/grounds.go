package main

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"coldreckon/economics/climate"
	"coldreckon/economics/quantity"
	"coldreckon/report/words"
)

// groundsCommand lists the cruising grounds, or shows the year of one.
func groundsCommand(out environment) *cobra.Command {
	var units string
	cmd := &cobra.Command{
		Use:   "grounds [NAME]",
		Short: "List the cruising grounds, or show the year of one",
		Long: `Lists the cruising grounds, one a line, the name first; the sun is in kWh/m² a
day on a level surface. With a NAME it shows that ground's usual year, month by
month, and where each figure comes from.`,
		Example: `  coldreckon grounds
  coldreckon grounds dalmatia --units metric`,
		Args: arguments(0, 1, "the name of at most one ground"),
		RunE: func(_ *cobra.Command, args []string) error {
			sys, err := unitSystem(units)
			if err != nil {
				return err
			}
			if len(args) == 0 {
				return out.result(groundList(climate.Grounds(), sys))
			}
			g, err := groundNamed(args[0])
			if err != nil {
				return err
			}
			return out.result(groundYear(g, sys))
		},
		ValidArgsFunction: completeFirst(groundIDs),
	}
	addUnitsFlag(cmd, &units)
	return cmd
}

// groundNamed finds a ground of the tables.
func groundNamed(id string) (climate.Ground, error) {
	g, err := climate.Find(id)
	if err != nil {
		return g, misuse("'coldreckon grounds' lists them all.", "%v", err)
	}
	return g, nil
}

// addUnitsFlag gives a command that has no boat a unit system to print in.
func addUnitsFlag(cmd *cobra.Command, units *string) {
	cmd.Flags().StringVar(units, "units", string(quantity.US), "us or metric")
	cmd.RegisterFlagCompletionFunc("units", cobra.FixedCompletions([]string{"us", "metric"}, cobra.ShellCompDirectiveNoFileComp))
}

// unitSystem reads that flag.
func unitSystem(text string) (quantity.System, error) {
	switch sys := quantity.System(strings.ToLower(text)); sys {
	case quantity.Metric, quantity.US:
		return sys, nil
	}
	return "", noSuch("--units", text, "us or metric")
}

// groundIDs lists the names that the command takes.
func groundIDs() []string {
	var ids []string
	for _, p := range climate.Places() {
		ids = append(ids, p.ID)
	}
	return ids
}

// groundList is one line a ground: its id, how warm and sunny its months are
// from the least to the most, and what it is called.
func groundList(grounds []climate.Ground, sys quantity.System) []byte {
	var b bytes.Buffer
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, g := range grounds {
		air := func(m climate.Month) quantity.Celsius { return m.AirMean }
		sun := func(m climate.Month) quantity.KWhPerM2Day { return m.Sun }
		coldest, warmest := monthlyRange(g, air)
		dullest, sunniest := monthlyRange(g, sun)
		fmt.Fprintf(w, "%s\t%s\tair %s to %s\tsun %.1f to %.1f\t%s\n", g.ID, quantity.FormatLatitude(g.LatDeg),
			quantity.FormatTemperature(coldest, sys), quantity.FormatTemperature(warmest, sys), dullest, sunniest, g.Name)
	}
	w.Flush()
	return b.Bytes()
}

// monthlyRange gives the least and the greatest of a figure over the year.
func monthlyRange[T quantity.Celsius | quantity.KWhPerM2Day](g climate.Ground, of func(climate.Month) T) (least, greatest T) {
	least, greatest = of(g.Months[0]), of(g.Months[0])
	for _, m := range g.Months[1:] {
		least, greatest = min(least, of(m)), max(greatest, of(m))
	}
	return least, greatest
}

// shortMonth is "Jan" for 0 and so on.
func shortMonth(i int) string { return words.Month(i + 1)[:3] }

// groundYear is a table of a ground's usual year, its sun also as bars, and
// the origin of its figures.
func groundYear(g climate.Ground, sys quantity.System) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s (%s), %s\n\n", g.Name, g.ID, quantity.FormatLatitude(g.LatDeg))
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(w, "month\tlowest\tmean air\thighest\tsea\tsun\t  kWh/m² a day, level")
	for i, m := range g.Months {
		fmt.Fprintf(w, "%s\t%s\t%s\t%s\t%s\t%.1f\t  %s\n", shortMonth(i),
			quantity.FormatTemperature(m.AirMin, sys), quantity.FormatTemperature(m.AirMean, sys),
			quantity.FormatTemperature(m.AirMax, sys), quantity.FormatTemperature(m.Sea, sys),
			m.Sun, sunBar(m.Sun))
	}
	w.Flush()
	b.WriteString("\nLowest and highest are means of each day's. Where the figures come from:\n")
	for _, figure := range []struct {
		label string
		of    func(climate.Provenance) string
	}{
		{"mean air", func(p climate.Provenance) string { return p.Air }},
		{"lowest and highest", func(p climate.Provenance) string { return p.AirRange }},
		{"sea", func(p climate.Provenance) string { return p.Sea }},
		{"sun", func(p climate.Provenance) string { return p.Sun }},
	} {
		for _, origin := range origins(g, figure.of) {
			fmt.Fprintf(&b, "  %s: %s\n", figure.label, origin)
		}
	}
	return b.Bytes()
}

// sunBar draws a month's sun, four characters to the kWh/m² a day.
func sunBar(sun quantity.KWhPerM2Day) string { return strings.Repeat("#", int(4*sun+0.5)) }

// origins gives where one figure comes from, in plain words: once when all
// months agree, else with the months of each.
func origins(g climate.Ground, of func(climate.Provenance) string) []string {
	var codes []string
	months := make(map[string][]string)
	for i, m := range g.Months {
		code := of(m.Provenance)
		if !slices.Contains(codes, code) {
			codes = append(codes, code)
		}
		months[code] = append(months[code], shortMonth(i))
	}
	var lines []string
	for _, code := range codes {
		line := climate.Explain(code)
		if line == "memory" {
			line = "from memory, not from an archive"
		}
		if archive, isRead := strings.CutPrefix(code, "read: "); isRead {
			line += " (" + strings.ReplaceAll(archive, "+", ", ") + ")"
		}
		if len(codes) > 1 {
			line += ", in " + strings.Join(months[code], ", ")
		}
		lines = append(lines, line)
	}
	return lines
}
