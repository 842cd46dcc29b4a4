package design

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"fusewright/harness/design/problem"

	"gopkg.in/yaml.v3"
)

// Numbers are the labels of a loom that is built or ordered: they stay whatever
// is added to the design or taken from it.
type Numbers struct {
	Revision Text // of the design when they were written
	List     []Number
}

// Number is one label and what it stands for: a part by its name, the fuse in a
// way by block and way, a wire by its part and role, with its other end and its colour.
type Number struct {
	Label string // "W7"
	Of    Text   // "left lamp, feed"
	Pos   problem.Pos
}

// Letter is the letter of a label, which says what kind of thing it stands for.
func (n Number) Letter() string { return strings.TrimRight(n.Label, "0123456789") }

// Compare puts labels in the order of their letters, then of their numbers.
func (n Number) Compare(m Number) int {
	return cmp.Or(cmp.Compare(n.Letter(), m.Letter()), cmp.Compare(len(n.Label), len(m.Label)), cmp.Compare(n.Label, m.Label))
}

// Coloured takes the colour off what the label of a wire stands for, "lamp, feed from
// main, YERD"; nil when there is none.
func (d *Design) Coloured(of string) (rest string, colour *Colour) {
	at := strings.LastIndex(of, ", ")
	if at < 0 || d.Library == nil {
		return of, nil
	}
	base, tracer := d.Library.ColourPair(strings.TrimSpace(of[at+2:]))
	if base == nil || !strings.Contains(of[:at], ", ") {
		return of, nil
	}
	return of[:at], &Colour{Base: base, Tracer: tracer}
}

// Lasting tells that labels whose part or wire is gone are not given again: the
// design is still of the revision that they were written for.
func (d *Design) Lasting() bool {
	return !d.Revision.Given() || d.Revision.Value == d.Numbers.Revision.Value
}

// labelForm is a reference designation or the number of a wire.
var labelForm = regexp.MustCompile(`^[A-Z]{1,3}[1-9][0-9]{0,5}$`)

// numbersKey reads which label stands for what.
func numbersKey() key[Design] {
	k := Key{Name: "numbers", Kind: KindLabels, Default: "counted in the order of the design",
		Doc: "labels that stay, one a line, written by `fmt --number`; what is not listed takes the next free number of its letter, " +
			"and one whose part or wire is gone is not given again before `revision` is another; a wire with its other end keeps its slot " +
			"in the schematic till then, and with its colour that of `colour: auto`",
		Example: `{revision: B, F1: main, W1: "main, feed from battery, RD"}`}
	return key[Design]{Key: k, read: func(r *reader, d *Design, f field) {
		if n := follow(f.node); n.Kind != yaml.MappingNode {
			r.report(r.pos(f.node), fmt.Sprintf("%q is %s", k.Name, kindName(n)), k.expected())
			return
		}
		r.pairs(f.node, where{kind: k.Name}, fold, func(name, value *yaml.Node) { r.number(d, name, value) })
	}}
}

func (r *reader) number(d *Design, name, value *yaml.Node) {
	of, ok := r.sentence(field{where: where{kind: "numbers"}, key: short(name.Value), node: value}, maxSentence)
	x := Number{Label: name.Value, Of: of, Pos: r.pos(name)}
	switch {
	case !ok:
	case spelling(name.Value) == "revision":
		d.Numbers.Revision = of
	case !labelForm.MatchString(x.Label):
		r.report(x.Pos, fmt.Sprintf("numbers: %s is no label", quoted(name.Value)),
			"a letter and a number, such as W7, or \"revision\"")
	case !slices.Contains(r.letters(), x.Letter()):
		r.report(x.Pos, fmt.Sprintf("numbers, %s: nothing has the letter %s", x.Label, x.Letter()), oneOf(r.letters()))
	default:
		d.Numbers.List = append(d.Numbers.List, x)
	}
}

// letters are those of all kinds of parts.
func (r *reader) letters() []string {
	var list []string
	for _, d := range r.lib.Designators {
		list = append(list, d.Letter)
	}
	slices.Sort(list)
	return slices.Compact(list)
}
