package heat

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"coldreckon/economics/quantity"
)

func TestParseLog(t *testing.T) {
	tests := []struct {
		name, text string
		sys        quantity.System
		want       []LogRow
	}{
		{"ice, metric", "date,ice kg\n2025-07-14,10\n2025-07-16 15:30,\"7,5\"\n", quantity.Metric, []LogRow{
			{Line: 2, At: noon.Add(-12 * time.Hour), Ice: 10},
			{Line: 3, At: noon.Add(51*time.Hour + 30*time.Minute), Ice: 7.5}}},
		{"any order, units in the heading, semicolons, a mark at the start", "\ufeffCabin (°F);Time;Box °F\r\n80,6;2025-07-14T12:00;39,2\r\n", quantity.Metric, []LogRow{
			{Line: 2, At: noon, Box: 4, BoxRead: true, Cabin: 27, CabinRead: true}}},
		{"units in the cells, gaps, other columns, unsorted", "note\tdate\tweight\tbox\tair\n\t\t\t\t\nb\t14.07.2025 12:00\t\t4 C\t\na\t13 Jul 2025\t10 lb\t\t80.6 F\n", quantity.Metric, []LogRow{
			{Line: 4, At: noon.Add(-36 * time.Hour), Ice: 4.5359237, Cabin: 27, CabinRead: true},
			{Line: 3, At: noon, Box: 4, BoxRead: true}}},
		{"bare figures in the owner's system, date and time apart", "date,time,ice\n2025-07-14,12:00,22\n", quantity.US, []LogRow{
			{Line: 2, At: noon, Ice: 22 * 0.45359237}}},
		{"the heading's unit before the owner's", "date,ice [kg]\n2025-07-14 12:00,22\n", quantity.US, []LogRow{{Line: 2, At: noon, Ice: 22}}},
		{"ice left, before or after ice in the heading", "date,ice left (lb),ice kg\n2025-07-14 12:00,10,2\n2025-07-14 18:00,0,\n", quantity.Metric, []LogRow{
			{Line: 2, At: noon, Ice: 2, Left: 4.5359237, LeftRead: true},
			{Line: 3, At: noon.Add(6 * time.Hour), LeftRead: true}}},
		{"lid shut or not", "Box shut,date,ice\nYes,2025-07-14 12:00,2\n,2025-07-14 18:00,2\n", quantity.Metric, []LogRow{
			{Line: 2, At: noon, Ice: 2, Shut: true},
			{Line: 3, At: noon.Add(6 * time.Hour), Ice: 2}}},
		{"smaller units in the heading, larger ones in a cell", "date,ice (oz),left [g]\n2025-07-14 12:00,160,2 lb\n2025-07-14 18:00,16,500\n", quantity.Metric, []LogRow{
			{Line: 2, At: noon, Ice: 4.5359237, Left: 0.90718474, LeftRead: true},
			{Line: 3, At: noon.Add(6 * time.Hour), Ice: 0.45359237, Left: 0.5, LeftRead: true}}},
		{"words that are units of other things", "day,ice in box,air by day\n2025-07-14 12:00,3,24\n", quantity.Metric, []LogRow{
			{Line: 2, At: noon, Ice: 3, Cabin: 24, CabinRead: true}}},
		{"rows of which nothing is read", "date,ice,note\n2025-07-14 12:00,,a\n2025-07-14 12:00,,b\n", quantity.Metric, []LogRow{{Line: 2, At: noon}, {Line: 3, At: noon}}},
		{"slashes, the day first", "date,ice\n12/07/2025,1\n14/07/2025 12:00,2\n", quantity.Metric, []LogRow{
			{Line: 2, At: noon.Add(-60 * time.Hour), Ice: 1}, {Line: 3, At: noon, Ice: 2}}},
		{"slashes, the month first, with a time of its own", "date,time,ice\n07/12/2025,12:00:00 AM,1\n7/14/2025,12:00 PM,2\n", quantity.Metric, []LogRow{
			{Line: 2, At: noon.Add(-60 * time.Hour), Ice: 1}, {Line: 3, At: noon, Ice: 2}}},
		{"slashes, the year first", "date,ice\n2025/07/14 12:00,2\n", quantity.Metric, []LogRow{{Line: 2, At: noon, Ice: 2}}},
		{"lines left empty", "date,ice\n\n\n2025-07-14 12:00,2\n\n", quantity.Metric, []LogRow{{Line: 4, At: noon, Ice: 2}}},
	}
	for _, tt := range tests {
		rows, err := ParseLog(strings.NewReader(tt.text), tt.sys)
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		if len(rows) != len(tt.want) {
			t.Errorf("%s: got %+v", tt.name, rows)
			continue
		}
		for i, got := range rows {
			want := tt.want[i]
			if got.Line != want.Line || !got.At.Equal(want.At) || got.BoxRead != want.BoxRead || got.CabinRead != want.CabinRead || got.LeftRead != want.LeftRead || got.Shut != want.Shut {
				t.Errorf("%s: got %+v; want %+v", tt.name, got, want)
			}
			within(t, tt.name+", ice", float64(got.Ice), float64(want.Ice), 1e-9)
			within(t, tt.name+", ice left", float64(got.Left), float64(want.Left), 1e-9)
			within(t, tt.name+", box", float64(got.Box), float64(want.Box), 1e-9)
			within(t, tt.name+", cabin", float64(got.Cabin), float64(want.Cabin), 1e-9)
		}
	}
}

// Each error names line, field, what is wrong and what to give instead.
func TestParseLogErrors(t *testing.T) {
	for text, want := range map[string][]string{
		"":                                       {"line 1", "is empty", "heading"},
		"date,ice\n":                             {"no rows"},
		"a,b\n1,2\n":                             {"line 1", `"a", "b"`, "date or time"},
		"date,note\n2025-07-14,x\n":              {"line 1", `"note"`, "tell nothing of ice"},
		"date,box\n2025-07-14,4\n":               {"line 1", "box and cabin"},
		"date,ice,weight\n2025-07-14,1,2\n":      {"line 1", `"ice"`, `"weight"`, "of one kind"},
		"date,ice\n07/06/2025,4\n":               {"line 2", "date", "day or month", "2025-07-14"},
		"date,ice\n07/14/2025,4\n14/08/2025,4\n": {"line 2", "date", "line 3", "one order"},
		"date,ice\n14/13/2025,4\n":               {"line 2", "date", `"14/13/2025"`, "2025-07-14"},
		"date,ice\n7/Jul/2025,4\n":               {"line 2", "date", `"7/Jul/2025"`, "2025-07-14"},
		"date,box,cabin\n2025-07-14,41,75\n":     {"line 1", "box", "41", "Name their unit", `"box °F"`},
		"date,box °C,cabin\n2025-07-14,4,75\n":   {"line 1", "cabin", "75", "Name their unit", `"cabin °F"`},
		"date,ice\n,4\n":                         {"line 2", "date", "nothing", "2025-07-14"},
		"date,ice\n0001-01-01,4\n":               {"line 2", "year 1", "1950"},
		"date,ice (L)\n2025-07-14,4\n":           {"line 1", "ice (L)", "a volume", "a mass"},
		"date,ice\n2025-07-14,NaN\n":             {"line 2", "ice", `"NaN"`, "mass"},
		"date,ice\n2025-07-14,-inf\n":            {"line 2", "ice", `inf"`, "mass"},
		"date,ice\n2025-07-14,1e3\n":             {"line 2", "ice", "power of ten", "mass"},
		"date,ice\n2025-07-14,\"12,000\"\n":      {"line 2", "ice", `"12,000"`, "12000 or as 12.000"},
		"date,box °C,cabin °C,run share\n2025-07-14,4,25,often\n":            {"line 2", "run share", `"often"`},
		"date,box °C,cabin °C,run share\n2025-07-14,4,25,1.4\n":              {"line 2", "run share", `"1.4"`, "0 to 1"},
		"date,box °C,cabin °C,drawn Ah\n2025-07-14,4,25,plenty\n":            {"line 2", "drawn Ah", `"plenty"`},
		"date,box °F,cabin lb\n2025-07-14,4,5\n":                             {"line 1", "cabin lb", "a mass", "a temperature"},
		"date,box,cabin\n2025-07-14,61 °C,25\n":                              {"line 2", "box", `"61 °C"`, "60"},
		"date,ice kg\n2025-07-14,many\n":                                     {"line 2", "ice kg", `"many"`, "mass"},
		"date,ice kg\n2025-07-14,-4\n":                                       {"line 2", "ice kg", `"-4"`, "0 to 1000"},
		"date,ice\n2025-07-14,4 L\n":                                         {"line 2", "ice", `"4 L"`, "mass"},
		"date,ice,shut\n2025-07-14,4,maybe\n":                                {"line 2", "shut", `"maybe"`, "neither yes nor no"},
		"date,box,cabin\n2025-07-14,4,400\n":                                 {"line 2", "cabin", `"400"`, "60"},
		"date,box,cabin\n2025-07-14,cold,40\n":                               {"line 2", "box", `"cold"`, "temperature"},
		"date,ice,x\n2025-07-14,4\n2025-07-14,2,5,6\n":                       {"line 3", "4 cells", "heading has 3"},
		"date,ice\n2025-07-14,4\n2025-07-15,3\n2025-07-14,4 kg\n":            {"line 4", "line 2", "Keep one of the two"},
		"date,box,cabin\n2025-07-14 12:00,4,25\n14.07.2025 12:00,4,25\n":     {"line 3", "line 2", "Keep one of the two"},
		"date,ice,note\n2025-07-14,4,\n2025-07-16,2,\"oops\n2025-07-18,3,\n": {"line 3", "quote"},
	} {
		rows, err := ParseLog(strings.NewReader(text), quantity.Metric)
		if err == nil {
			t.Errorf("%q: no error, %+v", text, rows)
			continue
		}
		for _, w := range want {
			if !strings.Contains(err.Error(), w) {
				t.Errorf("%q: %q does not say %q", text, err, w)
			}
		}
	}
	if _, err := ParseLog(strings.NewReader("date,ice\n"+strings.Repeat(" \n", maxLogBytes)), quantity.Metric); err == nil || !strings.Contains(err.Error(), "8 MB") {
		t.Errorf("an endless log: %v", err)
	}
}

// A heading of two columns has one mark between them, whichever it is.
func TestOneMarkBetweenTwoColumns(t *testing.T) {
	for _, mark := range []string{",", ";", "\t"} {
		rows, err := ParseLog(strings.NewReader("date"+mark+"ice kg\n2025-07-14"+mark+"4\n2025-07-16"+mark+"1\n"), quantity.Metric)
		if err != nil || len(rows) != 2 || rows[1].Ice != 1 {
			t.Errorf("%q: %+v, %v", mark, rows, err)
		}
	}
}

// Figures without a unit that make no sense as the owner's °F are asked about,
// and those of a freezer that names it are not.
func TestFiguresWithoutUnitOfAnOwnerOfFahrenheit(t *testing.T) {
	for text, want := range map[string]string{
		"date,box,cabin\n2025-07-14,4,70\n":      `"box °C"`,
		"date,box,cabin\n2025-07-14,40,22\n":     `"cabin °C"`,
		"date,box °F,cabin\n2025-07-14,4,70\n":   "",
		"date,box,cabin\n2025-07-14,4 °C,22 C\n": "",
	} {
		_, err := ParseLog(strings.NewReader(text), quantity.US)
		if got := fmt.Sprint(err); want == "" && err != nil || !strings.Contains(got, want) {
			t.Errorf("%q: %v, want %q in it", text, err, want)
		}
	}
}

// A logger's clock that is put back an hour once is the end of summer time, and
// its rows go on; put back further, or again, it is a fault that names its line.
func TestALoggersClock(t *testing.T) {
	start := time.Date(2025, 10, 25, 20, 0, 0, 0, time.UTC)
	log := func(wrong func(i int) time.Duration, order func([]string)) string {
		lines := make([]string, 60)
		for i := range lines {
			at := start.Add(time.Duration(i)*10*time.Minute + wrong(i))
			lines[i] = fmt.Sprintf("%s,%.1f,20,2", at.Format("2006-01-02 15:04"), 4+0.1*float64(i%7))
		}
		if order != nil {
			order(lines)
		}
		return "date,box °C,cabin °C,amps\n" + strings.Join(lines, "\n")
	}
	after := func(row int, back time.Duration) func(int) time.Duration {
		return func(i int) time.Duration {
			if i < row {
				return 0
			}
			return back
		}
	}
	twice := func(i int) time.Duration { return after(20, -time.Hour)(i) + after(40, -time.Hour)(i) }
	for _, tt := range []struct {
		name, text string
		back       int // the row before which the clock went back, 0 for none
		want       string
	}{
		{"right", log(after(0, 0), nil), 0, ""},
		{"newest first", log(after(0, 0), slices.Reverse[[]string]), 0, ""},
		{"the end of summer time", log(after(42, -time.Hour), nil), 42, ""},
		{"set to another day", log(after(30, -96*time.Hour), nil), 0, "line 32, date: 2025-10-22 01:00 comes after 2025-10-26 00:50 in line 31"},
		{"put back twice", log(twice, nil), 0, "line 42, date"},
	} {
		rows, err := ParseLog(strings.NewReader(tt.text), quantity.Metric)
		if tt.want != "" {
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("%s: %v, want %q in it", tt.name, err, tt.want)
			}
			continue
		}
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		for i, r := range rows {
			if !r.At.Equal(start.Add(time.Duration(i)*10*time.Minute)) || r.ClockBack != (tt.back > 0 && i == tt.back) {
				t.Errorf("%s: row %d is of %v, clock back %t", tt.name, i, r.At, r.ClockBack)
			}
		}
	}
}

func TestFromRows(t *testing.T) {
	rows, err := ParseLog(strings.NewReader("date,ice,box,cabin\n2025-07-14,4,,\n2025-07-14,6,,\n2025-07-15,,4,25\n2025-07-16,8,5,\n2025-07-19,6,,\n"), quantity.Metric)
	if err != nil {
		t.Fatal(err)
	}
	stays := IceLoads(rows)
	if len(stays) != 2 || stays[0].Ice != 10 || stays[0].To.Sub(stays[0].From) != 48*time.Hour || stays[1].Ice != 8 || stays[1].To.Sub(stays[1].From) != 72*time.Hour {
		t.Errorf("stays %+v", stays)
	}
	if readings := Readings(rows); len(readings) != 1 || readings[0].Box != 4 || readings[0].Cabin != 25 {
		t.Errorf("readings %+v", readings)
	}
}

// A look at what is left ends a stay and begins the next with what there is;
// thrown away or gone, nothing begins. Guards the order of left and bought.
func TestIceLoadsWithWhatWasLeft(t *testing.T) {
	const log = "date,ice,left\n2025-07-01,10,\n2025-07-02,,6\n2025-07-03,5,2\n2025-07-05,,0\n2025-07-11,8,\n2025-07-12,,9\n"
	rows, err := ParseLog(strings.NewReader(log), quantity.Metric)
	if err != nil {
		t.Fatal(err)
	}
	var melted []quantity.Kilogram
	var gone []bool
	for _, s := range IceLoads(rows) {
		melted, gone = append(melted, s.Melted()), append(gone, s.Gone)
	}
	want := []quantity.Kilogram{4, 4, 7, -1}
	if !slices.Equal(melted, want) {
		t.Errorf("melted %v, want %v", melted, want)
	}
	if want := []bool{false, false, true, false}; !slices.Equal(gone, want) {
		t.Errorf("gone %v, want %v", gone, want)
	}
}

func TestLogsOverlap(t *testing.T) {
	july := Learnt{Of: OfIce, From: "2025-07-01", To: "2025-07-31", UA: 1.5, LogSD: 0.2}
	if e := july.Estimate(); e != (Estimate{Source: FromLog, UA: 1.5, LogSD: 0.2}) {
		t.Errorf("a log counts as %+v", e)
	}
	for _, row := range []struct {
		other Learnt
		want  bool
	}{
		{july, true},
		{Learnt{Of: OfIce, From: "2025-07-31", To: "2025-08-31"}, true},
		{Learnt{Of: OfIce, From: "2025-08-01", To: "2025-08-31"}, false},
		{Learnt{Of: OfIce, From: "2024-07-01", To: "2024-07-31"}, false},
		{Learnt{Of: OfTemperatures, From: "2025-07-01", To: "2025-07-31"}, false},
	} {
		if got := july.Overlaps(row.other); got != row.want || row.other.Overlaps(july) != got {
			t.Errorf("%+v: %v, want %v", row.other, got, row.want)
		}
	}
}

// Whatever the text, ParseLog ends without a panic, and what it accepts is in
// order of time and within the ranges it promises.
func FuzzParseLog(f *testing.F) {
	f.Add("date,ice kg\n2025-07-14,10\n", false)
	f.Add("\ufeffCabin (°F);Time;Box °F\n80,6;2025-07-14T12:00;39,2\n", true)
	f.Add("note\tdate\tweight\tbox\tair\nb\t14.07.2025 12:00\t\t4 C\t\n", false)
	f.Add("date,time,ice\n2025-07-14,3:04 PM,1 1/2 lb\n", true)
	f.Add("date,ice\n2025-07-14,\"2,5", false)
	f.Add("box,cabin,date\n4,25,2025-07-14T12:00:00+02:00\n", false)
	f.Fuzz(func(t *testing.T, text string, us bool) {
		sys := quantity.Metric
		if us {
			sys = quantity.US
		}
		rows, err := ParseLog(strings.NewReader(text), sys)
		if err != nil {
			if err.Error() == "" {
				t.Fatal("an error without words")
			}
			return
		}
		if len(rows) == 0 {
			t.Fatal("no rows and no error")
		}
		for i, r := range rows {
			if i > 0 && r.At.Before(rows[i-1].At) {
				t.Fatalf("row %d out of order", i)
			}
			if !(r.Ice >= 0 && r.Ice <= 1000 && r.Box >= -60 && r.Box <= 60 && r.Cabin >= -60 && r.Cabin <= 60) || r.Line < 2 {
				t.Fatalf("row %+v", r)
			}
		}
		for _, s := range IceLoads(rows) {
			if !s.To.After(s.From) || s.Ice <= 0 {
				t.Fatalf("stay %+v", s)
			}
		}
	})
}

// Guards how much of a strange heading an error quotes.
func TestLongHeadingIsCutShort(t *testing.T) {
	if got := list(strings.Split("a,b,c,d,e,f,g,h", ",")); strings.Contains(got, "…") || !strings.Contains(got, `"h"`) {
		t.Errorf("eight cells: %s", got)
	}
	if got := list(strings.Split("a,b,c,d,e,f,g,h,i", ",")); !strings.HasSuffix(got, `"h", …`) {
		t.Errorf("nine cells: %s", got)
	}
}
