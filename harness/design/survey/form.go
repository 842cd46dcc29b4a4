package survey

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design/edit"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
)

// head opens the form; its key tells it from a design.
const head = `# Wiring can burn: local codes, the makers' instructions and licensed practice come first.
# What was measured, each with its unit, such as 12.6 V; what was not stays empty.
# The survey sheet says how. Read it back with: fusewright survey ... --fill FILE
fusewright survey: 1
`

// Form is the text to fill in.
func Form(groups []*Group) []byte {
	var b strings.Builder
	b.WriteString(head)
	var open []string
	for _, g := range groups {
		for _, x := range g.Blanks {
			same := 0
			for same < len(open) && same < len(x.Path)-1 && open[same] == x.Path[same] {
				same++
			}
			for i := same; i < len(x.Path); i++ {
				fmt.Fprintf(&b, "%s%s:\n", strings.Repeat("  ", i), key(x.Path[i]))
			}
			open = x.Path[:len(x.Path)-1]
		}
	}
	return []byte(b.String())
}

// key is a name as a key of YAML, quoted where it must be.
func key(name string) string {
	text, err := yaml.Marshal(name)
	if s := strings.TrimSpace(string(text)); err == nil && !strings.Contains(s, "\n") {
		return s
	}
	return strconv.Quote(name)
}

// Read takes a filled-in form and gives the changes of the design's text. The error is a
// problem.List with the line and column of every mistake.
func Read(file string, src []byte, groups []*Group) ([]edit.Change, error) {
	r := &reader{file: file, groups: groups, step: map[string]map[string]float64{}}
	var doc yaml.Node
	if err := yaml.Unmarshal(src, &doc); err != nil || len(doc.Content) == 0 {
		r.report(&yaml.Node{Line: 1, Column: 1}, "the form is no YAML", "a form as survey writes it")
		return nil, r.problems.Err()
	}
	root := doc.Content[0]
	if root.Kind != yaml.MappingNode || len(root.Content) < 2 || root.Content[0].Value != "fusewright survey" || root.Content[1].Value != "1" {
		r.report(root, "this is no survey form", `"fusewright survey: 1" as the first key`)
		return nil, r.problems.Err()
	}
	for i := 2; i+1 < len(root.Content); i += 2 {
		r.walk([]string{root.Content[i].Value}, root.Content[i], root.Content[i+1])
	}
	r.resistances(root)
	return r.changes, r.problems.Err()
}

type reader struct {
	file     string
	groups   []*Group
	problems problem.List
	changes  []edit.Change
	step     map[string]map[string]float64 // readings of the load step by battery and name
}

func (r *reader) report(n *yaml.Node, what, expected string) {
	r.problems.Add(problem.Problem{Pos: problem.Pos{File: r.file, Line: max(n.Line, 1), Col: max(n.Column, 1)}, What: what, Expected: expected})
}

// walk takes one key with what stands under it.
func (r *reader) walk(path []string, name, value *yaml.Node) {
	if x := r.blank(path); x != nil {
		r.take(x, value)
		return
	}
	if x := r.otherSpeed(path); x != nil {
		r.take(x, value)
		return
	}
	choices := r.choices(path[:len(path)-1])
	if !slices.Contains(choices, name.Value) {
		p := problem.Problem{Pos: problem.Pos{File: r.file, Line: name.Line, Col: name.Column},
			What: fmt.Sprintf("the survey has no %q", name.Value), Nearest: problem.Nearest(name.Value, choices)}
		if p.Nearest == "" {
			p.Expected = strings.Join(choices, ", ")
		}
		r.problems.Add(p)
		return
	}
	if value.Kind == yaml.MappingNode {
		for i := 0; i+1 < len(value.Content); i += 2 {
			r.walk(append(slices.Clone(path), value.Content[i].Value), value.Content[i], value.Content[i+1])
		}
	} else if value.Tag != "!!null" {
		r.report(value, fmt.Sprintf("%q has a value of its own", name.Value), strings.Join(r.choices(path), ", ")+" under it")
	}
}

// blank is the one of a path; nil when there is none.
func (r *reader) blank(path []string) *Blank {
	for _, g := range r.groups {
		for _, x := range g.Blanks {
			if slices.Equal(x.Path, path) {
				return x
			}
		}
	}
	return nil
}

// otherSpeed is a blank for the output at a speed at which the design gives none: an engine that
// was measured seldom idles at a round figure.
func (r *reader) otherSpeed(path []string) *Blank {
	n := len(path)
	first := n == 3 && path[0] == "charging" && path[1] == "output"
	if !first && (n != 4 || path[2] != bySpeed || len(r.choices(path[:3])) == 0) {
		return nil
	}
	if rpm, err := quantity.Parse(path[n-1], quantity.Speed); err != nil || rpm <= 0 {
		return nil
	}
	return blank(quantity.Current, "", path...)
}

// choices are the keys that may stand under a path.
func (r *reader) choices(path []string) (list []string) {
	for _, g := range r.groups {
		for _, x := range g.Blanks {
			if n := len(path); len(x.Path) > n && slices.Equal(x.Path[:n], path) && !slices.Contains(list, x.Path[n]) {
				list = append(list, x.Path[n])
			}
		}
	}
	return list
}

// take reads the value of a blank.
func (r *reader) take(x *Blank, value *yaml.Node) {
	name := x.Path[len(x.Path)-1]
	switch {
	case value.Kind != yaml.ScalarNode:
		r.report(value, fmt.Sprintf("%q is no single value", name), x.expected())
	case value.Tag == "!!null" || strings.TrimSpace(value.Value) == "":
	case x.Unit == "":
		if !slices.Contains(x.Words, value.Value) {
			r.report(value, fmt.Sprintf("%s: %q", name, value.Value), x.expected())
			return
		}
		r.changes = append(r.changes, x.put(value.Value, 0)...)
	default:
		v, err := quantity.Parse(value.Value, x.Unit)
		switch {
		case err != nil:
			p := problem.Problem{Pos: problem.Pos{File: r.file, Line: value.Line, Col: value.Column}, What: name + ": " + err.Error()}
			if q := (*quantity.Error)(nil); errors.As(err, &q) {
				p.What, p.Expected, p.Nearest = name+": "+q.What, q.Expected, q.Nearest
			}
			r.problems.Add(p)
		case x.put == nil:
			of := joined(x.Path[:len(x.Path)-2])
			if r.step[of] == nil {
				r.step[of] = map[string]float64{}
			}
			r.step[of][name] = v
		default:
			r.changes = append(r.changes, x.put(value.Value, v)...)
		}
	}
}

func (x *Blank) expected() string {
	if x.Unit == "" {
		return strings.Join(x.Words, " or ")
	}
	return quantity.Expected(x.Unit)
}

// resistances are the batteries' by the load step: the volts lost over the amperes.
func (r *reader) resistances(at *yaml.Node) {
	for _, g := range r.groups {
		for _, x := range g.Blanks {
			if n := len(x.Path); x.Path[n-1] == loadStep[0] && x.put == nil {
				r.resistance(at, x.Path[:n-2])
			}
		}
	}
}

func (r *reader) resistance(at *yaml.Node, path []string) {
	step := r.step[joined(path)]
	if len(step) == 0 {
		return
	}
	of := ""
	if len(path) > 1 {
		of = " of " + path[1]
	}
	var x [3]float64
	for i, name := range loadStep {
		v, given := step[name]
		if !given {
			r.report(at, fmt.Sprintf("the load step%s lacks %q", of, name), "all three of its readings, or none")
			return
		}
		x[i] = v
	}
	ohm := (x[0] - x[1]) / x[2]
	if !(ohm > 0) || math.IsInf(ohm, 0) {
		r.report(at, "the volts of the load step"+of+" do not fall with the load", "volts with load below those at rest, amperes above 0 A")
		return
	}
	r.changes = append(r.changes, edit.Change{Path: path, Key: "resistance", Value: quantity.Format(ohm, quantity.Resistance)})
}
