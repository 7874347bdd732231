package heat

import (
	"errors"
	"fmt"
	"slices"
	"sort"
	"strconv"
	"strings"
	"time"
)

// Orders of day and month in dates with slashes, as package time lays them out.
const dayFirst, monthFirst = "2/1/2006", "1/2/2006"

// slashOrder finds in which order a log writes day and month between slashes: a
// row past the twelfth of a month tells. It is "" where no date has slashes that
// leave it open.
func (c logColumns) slashOrder(records []record) (string, error) {
	open, day, month := 0, 0, 0 // lines; 0 for none
	for _, r := range records {
		text, _, _ := strings.Cut(r.cell(c.date), " ")
		parts := strings.Split(text, "/")
		if len(parts) != 3 || len(parts[0]) > 2 {
			continue
		}
		a, errA := strconv.Atoi(parts[0])
		b, errB := strconv.Atoi(parts[1])
		if errA != nil || errB != nil {
			continue
		}
		switch {
		case a > 12 && day == 0:
			day = r.line
		case b > 12 && month == 0:
			month = r.line
		case a != b && open == 0:
			open = r.line
		}
	}
	switch {
	case day > 0 && month > 0:
		return "", fmt.Errorf("line %d, %s: the month comes first here, but the day in line %d. Keep to one order, or write dates such as 2025-07-14", month, c.date.name, day)
	case day > 0:
		return dayFirst, nil
	case month > 0:
		return monthFirst, nil
	case open > 0:
		return "", fmt.Errorf("line %d, %s: no row past the twelfth tells whether day or month comes first in these slashes. Write dates such as 2025-07-14", open, c.date.name)
	}
	return dayFirst, nil
}

// parseTime reads a date and, in its own cell or in the same one, a time of
// day. A date alone is midnight. Dates with slashes are in the order given.
func parseTime(date, clock, slashes string) (time.Time, error) {
	text := strings.TrimSpace(date + " " + clock)
	for _, day := range []string{"2006-01-02", "2.1.2006", "2006/1/2", slashes, "2 Jan 2006", "2 January 2006"} {
		for _, layout := range []string{day, day + " 15:04", day + " 15:04:05", day + "T15:04", day + "T15:04:05", day + "T15:04:05Z07:00",
			day + " 3:04 PM", day + " 3:04PM", day + " 3:04:05 PM"} {
			if t, err := time.Parse(layout, text); err == nil {
				if t.Year() < 1950 || t.Year() > 2200 {
					return time.Time{}, fmt.Errorf("the year %d cannot be. Give one from 1950 to 2200", t.Year())
				}
				return t, nil
			}
		}
	}
	if text == "" {
		return time.Time{}, errors.New("nothing is written here. Give a date such as 2025-07-14 or 2025-07-14 15:30")
	}
	return time.Time{}, fmt.Errorf("%.40q is no date. Write it as 2025-07-14 or 2025-07-14 15:30", text)
}

// loggerRows is how many readings of the box, without ice, are a logger's and no
// owner's own: its rows stand in order, or its clock was at fault. Engineering
// judgement, from memory.
const loggerRows = 20

// inOrder sorts the rows by time. Where a logger's clock goes back within an
// hour, once, that is the end of summer time: later rows count an hour on.
func (c logColumns) inOrder(rows []LogRow) error {
	read, up, down := 0, 0, 0
	for i, r := range rows {
		if r.Ice > 0 || r.LeftRead {
			read = -len(rows)
		}
		if r.BoxRead {
			read++
		}
		if i > 0 && r.At.After(rows[i-1].At) {
			up++
		} else if i > 0 && r.At.Before(rows[i-1].At) {
			down++
		}
	}
	if read >= loggerRows {
		if down > up { // newest first
			slices.Reverse(rows)
		}
		var on time.Duration
		for i := range rows {
			rows[i].At = rows[i].At.Add(on)
			if i == 0 || !rows[i].At.Before(rows[i-1].At) {
				continue
			}
			if on > 0 || rows[i-1].At.Sub(rows[i].At) >= time.Hour {
				const written = "2006-01-02 15:04"
				return fmt.Errorf("line %d, %s: %s comes after %s in line %d. Where the clock was at fault, correct it or cut the log there",
					rows[i].Line, c.date.name, rows[i].At.Add(-on).Format(written), rows[i-1].At.Add(-on).Format(written), rows[i-1].Line)
			}
			on = time.Hour
			rows[i].At, rows[i].ClockBack = rows[i].At.Add(on), true
		}
	}
	sort.SliceStable(rows, func(i, j int) bool { return rows[i].At.Before(rows[j].At) })
	return nil
}
