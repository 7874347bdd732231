package main

import (
	"strconv"
	"time"
)

// reportDate is the day printed on a report: the one given with --date, else
// that of SOURCE_DATE_EPOCH (seconds since 1970; reproducible-builds.org), else
// today. It is the only look at the calendar.
func reportDate(flag string, env func(string) string) (time.Time, error) {
	if flag != "" {
		day, err := time.Parse(time.DateOnly, flag)
		if err != nil {
			return time.Time{}, misuse("", "--date: %q is no day. Write it as 2025-06-30.", flag)
		}
		return day, nil
	}
	if epoch := env("SOURCE_DATE_EPOCH"); epoch != "" {
		seconds, err := strconv.ParseInt(epoch, 10, 64)
		if err != nil || seconds < 0 || seconds > 253402300799 { // the end of the year 9999
			return time.Time{}, misuse("", "SOURCE_DATE_EPOCH: %q is no number of seconds since 1970", epoch)
		}
		return time.Unix(seconds, 0).UTC(), nil
	}
	now := time.Now()
	return time.Date(now.Year(), now.Month(), now.Day(), 0, 0, 0, 0, time.UTC), nil
}

// printedDay is how a day stands on a page.
func printedDay(day time.Time) string { return day.Format("2 January 2006") }
