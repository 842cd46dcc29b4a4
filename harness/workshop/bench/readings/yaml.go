package readings

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
)

// mark is the first key; it tells the file from a design.
const mark, version = "fusewright bench", "1"

// Read reads a file, CSV by the ending .csv and else YAML. The error is a problem.List with
// the line and column of every mistake.
func Read(file string, src []byte) (*File, error) {
	if len(src) > MaxBytes {
		return nil, problem.List{{Pos: problem.Pos{File: file}, What: "the file is too large", Expected: fmt.Sprintf("at most %d bytes", MaxBytes)}}
	}
	if strings.HasSuffix(strings.ToLower(file), ".csv") {
		return readCSV(file, src)
	}
	return readYAML(file, src)
}

// reader gathers what is wrong.
type reader struct {
	file     string
	problems problem.List
}

// MostSaid is how many mistakes of one file of readings are said.
const MostSaid = 100

// err is what is wrong; nil = nothing.
func (r *reader) err() error { return r.problems.Few(MostSaid).Err() }

func (r *reader) at(n *yaml.Node) problem.Pos {
	return problem.Pos{File: r.file, Line: max(n.Line, 1), Col: max(n.Column, 1)}
}

func (r *reader) say(n *yaml.Node, what, expected string) {
	r.problems.Add(problem.Problem{Pos: r.at(n), What: what, Expected: expected})
}

func readYAML(file string, src []byte) (*File, error) {
	r := &reader{file: file}
	var doc yaml.Node
	start := &yaml.Node{Line: 1, Column: 1}
	if err := yaml.Unmarshal(src, &doc); err != nil {
		at := *start
		what := strings.TrimPrefix(err.Error(), "yaml: ")
		if _, scanErr := fmt.Sscanf(what, "line %d:", &at.Line); scanErr == nil {
			_, what, _ = strings.Cut(what, ": ")
		}
		r.say(&at, "this is no YAML: "+what, "")
		return nil, r.err()
	}
	if len(doc.Content) == 0 || doc.Content[0].Kind != yaml.MappingNode || len(doc.Content[0].Content) < 2 ||
		doc.Content[0].Content[0].Value != mark || doc.Content[0].Content[1].Value != version {
		r.say(start, "these are no readings of a bench test", fmt.Sprintf("%q as the first key", mark+": "+version))
		return nil, r.err()
	}
	f := &File{}
	r.keys(doc.Content[0], []string{mark, "design", "revision", "date", "by", "meter", "readings", "cut list"}, func(key string, n *yaml.Node) {
		if into := f.word(key); into != nil {
			*into = r.text(key, n)
			if key == "meter" {
				f.MeterPos = r.at(n)
			}
			return
		}
		switch key {
		case "readings":
			r.list(key, n, func(n *yaml.Node) { r.reading(f, n) })
		case "cut list":
			r.list(key, n, func(n *yaml.Node) { r.tick(f, n) })
		}
	})
	return f.checked(r)
}

// word is where the text of a key goes; nil = it has none.
func (f *File) word(key string) *string {
	switch key {
	case "design":
		return &f.Design
	case "revision":
		return &f.Revision
	case "date":
		return &f.Date
	case "by":
		return &f.By
	case "meter":
		return &f.Meter
	}
	return nil
}

// keys calls for each key of a mapping, once.
func (r *reader) keys(n *yaml.Node, known []string, do func(key string, n *yaml.Node)) {
	seen := map[string]bool{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		switch {
		case !slices.Contains(known, k.Value):
			p := problem.Problem{Pos: r.at(k), What: fmt.Sprintf("unknown key %q", k.Value), Nearest: problem.Nearest(k.Value, known)}
			if p.Nearest == "" {
				p.Expected = strings.Join(known, ", ")
			}
			r.problems.Add(p)
		case seen[k.Value]:
			r.say(k, fmt.Sprintf("%q stands here twice", k.Value), "each key once")
		default:
			seen[k.Value] = true
			do(k.Value, v)
		}
	}
}

func (r *reader) list(key string, n *yaml.Node, do func(*yaml.Node)) {
	if n.Kind == yaml.ScalarNode && n.Tag == "!!null" {
		return
	}
	if n.Kind != yaml.SequenceNode {
		r.say(n, fmt.Sprintf("%q is no list", key), "one entry a line, each after a dash")
		return
	}
	for _, x := range n.Content {
		if x.Kind != yaml.MappingNode {
			r.say(x, "this entry has no keys", `such as {check: "10.5", reads: 13.21 V} or {wire: W1}`)
			continue
		}
		do(x)
	}
}

// text is a value of one line as it is written.
func (r *reader) text(key string, n *yaml.Node) string {
	switch {
	case n.Kind != yaml.ScalarNode:
		r.say(n, fmt.Sprintf("%q is no single value", key), "a text of one line")
	case n.Tag != "!!null":
		return strings.Join(strings.Fields(n.Value), " ")
	}
	return ""
}

func (r *reader) reading(f *File, n *yaml.Node) {
	x := &Reading{Pos: r.at(n)}
	before, blank := len(r.problems), false
	r.keys(n, columns, func(key string, v *yaml.Node) {
		text := r.text(key, v)
		if key == "reads" && text == "" { // a field that is left empty
			blank = true
			return
		}
		if p := x.set(key, text); p != nil {
			p.Pos = r.at(v)
			r.problems.Add(*p)
		}
	})
	switch {
	case len(r.problems) > before || blank:
	case x.Check == "" || x.Text == "":
		r.say(n, "a reading without check or without what it reads", `such as {check: "10.5", reads: 13.21 V}`)
	default:
		f.Readings = append(f.Readings, x)
	}
}

// columns are the keys of a reading, and the columns of a CSV file.
var columns = []string{"check", "in", "of", "engine", "reads"}

// set puts the text of a key in; the place of a mistake is the caller's.
func (x *Reading) set(key, text string) *problem.Problem {
	var err error
	switch key {
	case "check":
		x.Check = plain(text)
	case "in":
		x.In = text
	case "of":
		x.Of = text
	case "engine":
		if text != "" {
			x.Engine, err = quantity.Parse(text, quantity.Speed)
		}
	case "reads":
		err = x.Take(text)
	}
	if err != nil {
		p := of(problem.Pos{}, err)
		return &p
	}
	return nil
}

func (r *reader) tick(f *File, n *yaml.Node) {
	t := &Tick{Pos: r.at(n)}
	r.keys(n, []string{"wire", "of"}, func(key string, v *yaml.Node) {
		if key == "wire" {
			t.Wire = r.text(key, v)
		} else {
			t.Of = r.text(key, v)
		}
	})
	if t.Wire == "" {
		r.say(n, "an entry of the cut list without its wire", "such as {wire: W1}")
		return
	}
	f.Cut = append(f.Cut, t)
}

// checked looks at what is wrong by itself: a date that is none, a check read twice.
func (f *File) checked(r *reader) (*File, error) {
	if f.Date != "" && !isDate(f.Date) {
		r.problems.Add(problem.Problem{Pos: problem.Pos{File: r.file}, What: fmt.Sprintf("date: %q", f.Date), Expected: "year, month and day, such as 2026-05-09"})
	}
	if len(f.Readings) > MaxReadings {
		r.problems.Add(problem.Problem{Pos: f.Readings[MaxReadings].Pos, What: fmt.Sprintf("%d readings", len(f.Readings)), Expected: fmt.Sprintf("at most %d in a file", MaxReadings)})
		return nil, r.err()
	}
	first := map[[4]string]*Reading{}
	for _, x := range f.Readings {
		key := [4]string{x.Check, x.In, x.Of, strconv.FormatFloat(x.Engine, 'g', -1, 64)}
		if o := first[key]; o != nil {
			also := o.Pos
			r.problems.Add(problem.Problem{Pos: x.Pos, What: fmt.Sprintf("check %q stands here twice", x.Check), Expected: "each reading once", Also: &also})
		}
		first[key] = x
	}
	if err := r.err(); err != nil {
		return nil, err
	}
	return f, nil
}

// isDate tells of a day written as ISO 8601 has it.
func isDate(s string) bool {
	return len(s) == 10 && s[4] == '-' && s[7] == '-' && digits(s[:4]+s[5:7]+s[8:]) &&
		s[5:7] >= "01" && s[5:7] <= "12" && s[8:] >= "01" && s[8:] <= "31"
}
