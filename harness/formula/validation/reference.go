package validation

import (
	"embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

//go:embed reference/*.csv
var files embed.FS

// sheet is one reference file.
type sheet struct {
	head Comparison // source, certainty and note filled in
	rows []record
}

// record is one row by column name.
type record map[string]string

// number is a cell that must hold a number.
func (r record) number(column string) float64 {
	x, err := strconv.ParseFloat(strings.TrimSpace(r[column]), 64)
	if err != nil {
		panic(fmt.Sprintf("validation: column %q holds %q", column, r[column]))
	}
	return x
}

// gauge is the AWG number of a row; 1/0 is 0, 2/0 is −1.
func (r record) gauge() int { return int(r.number("gauge")) }

// read opens a reference file. The files are compiled in, so a fault in one is
// a fault of the program, which the package's test finds.
func read(name string) sheet {
	src, err := files.ReadFile("reference/" + name + ".csv")
	if err != nil {
		panic("validation: " + err.Error())
	}
	s := sheet{}
	text := string(src)
	for strings.HasPrefix(text, "#") {
		line, rest, _ := strings.Cut(text, "\n")
		key, value, _ := strings.Cut(strings.TrimPrefix(line, "# "), ": ")
		switch key {
		case "source":
			s.head.Source = value
		case "certainty":
			s.head.Certainty = value
		case "note":
			s.head.Note = value
		}
		text = rest
	}
	all, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil || len(all) < 2 {
		panic(fmt.Sprintf("validation: reference %s: %v", name, err))
	}
	for _, cells := range all[1:] {
		r := record{}
		for i, column := range all[0] {
			r[column] = cells[i]
		}
		s.rows = append(s.rows, r)
	}
	return s
}

// against starts a comparison of a sheet.
func (s sheet) against(what, tolerance string, side Side) Comparison {
	c := s.head
	c.What, c.Tolerance, c.UnsafeSide = what, tolerance, side
	return c
}

// predicted is against for a prediction.
func (s sheet) predicted(what, tolerance string, side Side) Comparison {
	c := s.against(what, tolerance, side)
	c.Kind = Prediction
	return c
}

// lastDigit is half of the last printed digit of a number.
func lastDigit(printed string) float64 {
	printed = strings.TrimSpace(printed)
	_, decimals, _ := strings.Cut(printed, ".")
	x := 0.5
	for range decimals {
		x /= 10
	}
	return x
}
