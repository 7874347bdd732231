package climate

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// testRow is a line of a file of testdata, by column.
type testRow map[string]string

func (r testRow) number(t *testing.T, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("%v: %v", r, err)
	}
	return v
}

// readTestdata reads a file of testdata whose first column has that name.
func readTestdata(t *testing.T, name, first string) []testRow {
	t.Helper()
	file, err := os.Open(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	in := csv.NewReader(file)
	in.Comment = '#'
	lines, err := in.ReadAll()
	if err != nil || len(lines) < 2 || lines[0][0] != first {
		t.Fatalf("%s: %d lines, %v", name, len(lines), err)
	}
	var rows []testRow
	for _, line := range lines[1:] {
		row := make(testRow)
		for i, column := range lines[0] {
			row[column] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}
