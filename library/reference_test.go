package library

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// table is a reference table by column name.
type table []map[string]string

// reference reads a table of testdata/reference/library and refuses rows
// without a source.
func reference(t *testing.T, name string) table {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "testdata", "reference", "library", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out table
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, cell := range record {
			row[records[0][i]] = cell
		}
		if row["source"] == "" || row["certainty"] == "" {
			t.Fatalf("%s: a row without source: %v", name, row)
		}
		out = append(out, row)
	}
	if len(out) == 0 {
		t.Fatalf("%s is empty", name)
	}
	return out
}

// number parses a cell.
func number(t *testing.T, cell string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// halfDigit is half a unit of a printed number's last digit.
func halfDigit(cell string) float64 {
	unit := 1.0
	for i := len(cell) - 1; i >= 0; i-- {
		if cell[i] == '.' {
			return unit / 2
		}
		unit /= 10
	}
	return 0.5 // no decimals
}
