package readings

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"fusewright/harness/design/problem"
)

// readCSV reads rows of the columns that its first row names.
func readCSV(file string, src []byte) (*File, error) {
	r := &reader{file: file}
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	in := csv.NewReader(bytes.NewReader(src))
	in.FieldsPerRecord, in.TrimLeadingSpace, in.Comma = -1, true, parted(src)
	var heads []string
	f := &File{}
	for {
		row, err := in.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			p := problem.Problem{Pos: problem.Pos{File: file, Line: 1, Col: 1}, What: "this is no CSV: " + err.Error()}
			if e := (*csv.ParseError)(nil); errors.As(err, &e) {
				p.Pos.Line, p.Pos.Col, p.What = e.Line, e.Column, "this is no CSV: "+e.Err.Error()
			}
			r.problems.Add(p)
			return nil, r.err()
		}
		at := func(col int) problem.Pos {
			line, column := in.FieldPos(min(col, len(row)-1))
			return problem.Pos{File: file, Line: line, Col: column}
		}
		for i := range row {
			row[i] = strings.Join(strings.Fields(row[i]), " ")
		}
		if heads == nil {
			heads = r.heads(row, at)
			continue
		}
		r.row(f, heads, row, at)
	}
	if heads == nil {
		r.problems.Add(problem.Problem{Pos: problem.Pos{File: file, Line: 1, Col: 1}, What: "the file is empty", Expected: "a first row with the columns " + strings.Join(columns, ", ")})
	}
	return f.checked(r)
}

// parted is what parts the columns of the first row.
func parted(src []byte) rune {
	if first, _, _ := bytes.Cut(src, []byte("\n")); bytes.ContainsRune(first, ';') {
		return ';'
	}
	return ','
}

func (r *reader) heads(row []string, at func(int) problem.Pos) []string {
	for i, name := range row {
		row[i] = strings.ToLower(name)
		if !slices.Contains(columns, row[i]) {
			p := problem.Problem{Pos: at(i), What: fmt.Sprintf("unknown column %q", name), Nearest: problem.Nearest(row[i], columns)}
			if p.Nearest == "" {
				p.Expected = strings.Join(columns, ", ")
			}
			r.problems.Add(p)
		}
	}
	for _, needed := range []string{"check", "reads"} {
		if !slices.Contains(row, needed) {
			r.problems.Add(problem.Problem{Pos: at(0), What: fmt.Sprintf("no column %q", needed), Expected: "a first row with the columns " + strings.Join(columns, ", ")})
		}
	}
	return row
}

// row is one reading, or what its first column says it is.
func (r *reader) row(f *File, heads, row []string, at func(int) problem.Pos) {
	if len(row) > len(heads) {
		r.problems.Add(problem.Problem{Pos: at(len(heads)), What: "more columns than the first row names", Expected: strings.Join(heads, ", ")})
		return
	}
	cells, where := map[string]string{}, map[string]int{}
	for i, text := range row {
		cells[heads[i]], where[heads[i]] = text, i
	}
	switch key := cells["check"]; {
	case f.word(key) != nil:
		*f.word(key) = cells["reads"]
		if key == "meter" {
			f.MeterPos = at(where["reads"])
		}
		return
	case key == "cut":
		if cells["reads"] == "" {
			r.problems.Add(problem.Problem{Pos: at(0), What: "a row of the cut list without its wire", Expected: "the wire's number under reads"})
			return
		}
		f.Cut = append(f.Cut, &Tick{Wire: cells["reads"], Of: cells["of"], Pos: at(0)})
		return
	case cells["reads"] == "": // a field that is left empty
		return
	case key == "":
		r.problems.Add(problem.Problem{Pos: at(0), What: "a reading without its check", Expected: "its number in the bench test, such as 10.5"})
		return
	}
	x, wrong := &Reading{Pos: at(0)}, false
	for _, key := range columns {
		if p := x.set(key, cells[key]); p != nil {
			p.Pos, wrong = at(where[key]), true
			r.problems.Add(*p)
		}
	}
	if !wrong {
		f.Readings = append(f.Readings, x)
	}
}

// CSV is the file as rows.
func (f *File) CSV() []byte {
	var b bytes.Buffer
	out := csv.NewWriter(&b)
	write := func(cells ...string) { _ = out.Write(cells) } // a buffer takes all
	write(columns...)
	for _, key := range words {
		if text := *f.word(key); text != "" {
			write(key, "", "", "", text)
		}
	}
	for _, x := range f.Readings {
		write(x.Check, x.In, x.Of, engine(x.Engine), x.Text)
	}
	for _, t := range f.Cut {
		write("cut", "", t.Of, "", t.Wire)
	}
	out.Flush()
	return b.Bytes()
}
