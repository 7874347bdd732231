package climate

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"
)

// oneGround is the smallest valid set of tables.
func oneGround() map[string]string {
	var climate, marine strings.Builder
	climate.WriteString("ground,month,tmean,tmax,tmin,sst,ghi,prov\n")
	marine.WriteString("ground,month,specific_humidity_g_per_kg,coads_cell\n")
	for _, month := range strings.Fields("1 2 3 4 5 6 7 8 9 10 11 12") {
		climate.WriteString("quiet-bay," + month + ",20,25,15,18,5.2,tmean=memory|tmax=memory|tmin=memory|sst=read:COADS-cell(1;3)|ghi=read:TMY3-1+TMY2-2\n")
		marine.WriteString("quiet-bay," + month + ",10.0,(1;3)\n")
	}
	return map[string]string{
		"data/grounds.csv": "id,name,lat,lon\nquiet-bay,\"Quiet Bay, Nowhere\",0.5,2\n",
		"data/climate.csv": climate.String(),
		"data/marine.csv":  marine.String(),
	}
}

func inMemory(files map[string]string) fs.FS {
	tables := make(fstest.MapFS)
	for name, text := range files {
		tables[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return tables
}

func TestLoad(t *testing.T) {
	grounds, err := load(inMemory(oneGround()))
	if err != nil {
		t.Fatal(err)
	}
	checkGround(t, grounds[0])
	got := grounds[0].Months[11]
	// 10 g in a kilogram of moist air are 10/990 in one of dry air.
	near(t, "humidity ratio", got.HumidityRatio, 10.0/990, 1e-12)
	got.HumidityRatio = 0
	want := Month{AirMean: 20, AirMax: 25, AirMin: 15, Sea: 18, Sun: 5.2, HumidityRead: true,
		Provenance: Provenance{Air: "memory", AirRange: "memory", Sea: "read: COADS-cell(1;3)", Sun: "read: TMY3-1+TMY2-2"}}
	if got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

// One mistake a row. Each guards the check in load.go that names the field.
func TestLoadFaults(t *testing.T) {
	const row5 = "quiet-bay,4,20,25,15,18,5.2,"
	for _, row := range []struct{ file, old, new, want string }{
		{"data/grounds.csv", "lat,lon", "lon,lat", `data/grounds.csv:1: header: found "id,name,lon,lat", expected "id,name,lat,lon"`},
		{"data/grounds.csv", "quiet-bay,", "Quiet Bay,", `data/grounds.csv:2: id: found "Quiet Bay", expected lower-case words`},
		{"data/grounds.csv", "0.5,2\n", "0.5,2\nquiet-bay,Again,1,1\n", `data/grounds.csv:3: id: found "quiet-bay", expected an id not used before`},
		{"data/grounds.csv", `"Quiet Bay, Nowhere"`, " ", `data/grounds.csv:2: name: found " ", expected a name`},
		{"data/grounds.csv", "0.5,2", "67,2", `data/grounds.csv:2: lat: found "67", expected a number from -66 to 66`},
		{"data/grounds.csv", "0.5,2", "0.5,east", `data/grounds.csv:2: lon: found "east", expected a number from -180 to 180`},
		{"data/grounds.csv", "0.5,2", "0.5", `data/grounds.csv: record on line 2: wrong number of fields`},
		{"data/climate.csv", row5, "loud-bay,4,20,25,15,18,5.2,", `data/climate.csv:5: ground: found "loud-bay", expected an id of grounds.csv`},
		{"data/climate.csv", row5, "quiet-bay,13,20,25,15,18,5.2,", `data/climate.csv:5: month: found "13", expected a whole number from 1 to 12`},
		{"data/climate.csv", row5, "quiet-bay,3,20,25,15,18,5.2,", `data/climate.csv:5: month: found "3", expected each month of a ground once`},
		{"data/climate.csv", row5, "quiet-bay,3,20,25,15,18,5.2,", `data/climate.csv: ground quiet-bay: found 11 months, expected 12`},
		{"data/climate.csv", row5, "quiet-bay,4,NaN,25,15,18,5.2,", `data/climate.csv:5: tmean: found "NaN", expected a number from -40 to 50`},
		{"data/climate.csv", row5, "quiet-bay,4,20,77,15,18,5.2,", `data/climate.csv:5: tmax: found "77", expected a number from -40 to 50`},
		{"data/climate.csv", row5, "quiet-bay,4,20,19,15,18,5.2,", `data/climate.csv:5: tmax: found "19", expected at least tmean, 20`},
		{"data/climate.csv", row5, "quiet-bay,4,20,25,21,18,5.2,", `data/climate.csv:5: tmin: found "21", expected at most tmean, 20`},
		{"data/climate.csv", row5, "quiet-bay,4,20,25,15,-3,5.2,", `data/climate.csv:5: sst: found "-3", expected a number from -2 to 36`},
		{"data/climate.csv", row5, "quiet-bay,4,20,25,15,18,7.6,", `data/climate.csv:5: ghi: found "7.6", expected a number from 2.`},
		{"data/climate.csv", row5, "quiet-bay,4,20,25,15,18,1.9,", `data/climate.csv:5: ghi: found "1.9", expected a number from 2.`},
		{"data/climate.csv", row5 + "tmean=memory", row5 + "tmean=guess", `data/climate.csv:5: prov: found "tmean=guess|`},
		{"data/climate.csv", row5 + "tmean=memory|tmax", row5 + "tmax=memory|tmean", `expected origin 1 to be of tmean`},
		{"data/climate.csv", row5 + "tmean=memory|", row5, `expected five origins joined by |`},
		{"data/climate.csv", row5 + "tmean=memory", row5 + "tmean=read:TMY9-1", `expected codes such as TMY3-726079`},
		{"data/climate.csv", row5 + "tmean=memory", row5 + "tmean=read:TMY3", `expected codes such as TMY3-726079`},
		{"data/climate.csv", row5 + "tmean=memory|tmax=memory", row5 + "tmean=memory|tmax=read:TMY3-1", `expected one origin for both tmax and tmin`},
		{"data/marine.csv", "quiet-bay,4,10.0", "quiet-bay,4,26", `data/marine.csv:5: specific_humidity_g_per_kg: found "26", expected a number from 1 to 25`},
		{"data/marine.csv", "quiet-bay,4,10.0,(1;3)", "quiet-bay,4,10.0,(1;7)", `data/marine.csv:5: coads_cell: found "(1;7)", expected (latitude;longitude) within 4 degrees`},
		{"data/marine.csv", "quiet-bay,4,10.0,(1;3)", "quiet-bay,4,10.0,(N;3)", `data/marine.csv:5: coads_cell: found "(N;3)"`},
		{"data/marine.csv", "quiet-bay,4,10.0,(1;3)", "quiet-bay,4,10.0,here", `data/marine.csv:5: coads_cell: found "here"`},
		{"data/marine.csv", "quiet-bay,4,10.0,(1;3)\n", "", `data/marine.csv: ground quiet-bay: found 11 months, expected 12 or none`},
	} {
		files := oneGround()
		damaged := strings.Replace(files[row.file], row.old, row.new, 1)
		if damaged == files[row.file] {
			t.Errorf("%q is not in %s", row.old, row.file)
		}
		files[row.file] = damaged
		_, err := load(inMemory(files))
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s with %q: got %v, want %s", row.file, row.new, err, row.want)
		}
	}
}

func TestLoadGathersFaults(t *testing.T) {
	files := oneGround()
	files["data/climate.csv"] = strings.ReplaceAll(files["data/climate.csv"], ",18,", ",warm,")
	_, err := load(inMemory(files))
	if err == nil || strings.Count(err.Error(), "\n") != 11 {
		t.Errorf("got %v, want twelve faults", err)
	}
}

func TestLoadMissingFile(t *testing.T) {
	for _, name := range []string{"data/grounds.csv", "data/climate.csv", "data/marine.csv"} {
		files := oneGround()
		delete(files, name)
		if _, err := load(inMemory(files)); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("without %s: got %v", name, err)
		}
	}
}

// Whatever the tables hold, loading ends in an error or in grounds that keep
// every promise of Ground.
func FuzzLoad(f *testing.F) {
	good := oneGround()
	f.Add(good["data/grounds.csv"], good["data/climate.csv"], good["data/marine.csv"])
	f.Add(good["data/grounds.csv"], good["data/climate.csv"], "ground,month,specific_humidity_g_per_kg,coads_cell\n")
	f.Add("id,name,lat,lon\n", "", "\"")
	f.Fuzz(func(t *testing.T, grounds, climate, marine string) {
		loaded, err := load(inMemory(map[string]string{
			"data/grounds.csv": grounds, "data/climate.csv": climate, "data/marine.csv": marine,
		}))
		if err != nil {
			return
		}
		for _, g := range loaded {
			checkGround(t, g)
		}
	})
}
