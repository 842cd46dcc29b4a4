package mutant

import (
	"bytes"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/library"
)

// Same is a way to write a design otherwise without changing what it says: the
// findings must stay. Lines stay where they are, columns need not.
type Same struct {
	Name string
	make func(*subject)
}

// Sames are the ways.
func Sames() []Same {
	return []Same{
		{"as it is", func(*subject) {}},
		{"other units", (*subject).otherUnits},
		{"current for power", (*subject).currentForPower},
		{"other quotes, no comments", (*subject).otherQuotes},
		{"an unused place", (*subject).unusedPlace},
		{"a situation twice", (*subject).situationTwice},
	}
}

// Make writes a design in that way.
func (w Same) Make(src []byte, lib *library.Library) ([]byte, error) {
	s, err := newSubject(src, lib, 1)
	if err != nil {
		return nil, err
	}
	w.make(s)
	return s.written()
}

func (s *subject) written() ([]byte, error) {
	var b bytes.Buffer
	out := yaml.NewEncoder(&b)
	out.SetIndent(2)
	if err := out.Encode(s.root); err != nil {
		return nil, err
	}
	return b.Bytes(), out.Close()
}

// otherUnits writes every quantity in another unit of its dimension, with all
// the digits that it needs; sizes stay, since their types name them.
func (s *subject) otherUnits() {
	for _, x := range s.slots() {
		switch {
		case x.value.Kind == yaml.ScalarNode && x.key.Kind == design.KindQuantity && x.key.Unit != quantity.Area:
			s.otherUnit(x.value, x.key.Unit)
		case x.key.Kind == design.KindCurve:
			for i, n := range x.value.Content {
				s.otherUnit(n, []quantity.Dimension{quantity.Speed, quantity.Current}[i%2])
			}
		}
	}
}

func (s *subject) otherUnit(n *yaml.Node, dim quantity.Dimension) {
	want, err := quantity.Parse(n.Value, dim)
	if err != nil {
		return // a word in place of a quantity
	}
	units := quantity.Units(dim)
	for i := range units {
		unit := units[(i+len(n.Value))%len(units)]
		if strings.HasSuffix(n.Value, unit) {
			continue
		}
		zero, _ := quantity.Parse("0 "+unit, dim)
		one, err := quantity.Parse("1 "+unit, dim)
		if err != nil {
			continue
		}
		setText(n, digits((want-zero)/(one-zero))+" "+unit)
		return
	}
}

// digits is a number as a person would write it, to 12 digits.
func digits(x float64) string {
	x, _ = strconv.ParseFloat(strconv.FormatFloat(x, 'g', 12, 64), 64)
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// currentForPower gives the current of a load at its rated voltage for its power.
func (s *subject) currentForPower() {
	text, err := s.written()
	if err != nil {
		return
	}
	d, err := design.Read("x.yaml", text, s.lib)
	if err != nil {
		return
	}
	for _, l := range d.Loads {
		record := s.partNamed(l.Name)
		if value(record, "power") == nil {
			continue
		}
		for i, n := range record.Content {
			if n.Value == "power" && i%2 == 0 {
				n.Value = "current"
				setText(record.Content[i+1], digits(l.PowerW/l.RatedV)+" A")
			}
		}
	}
}

// otherQuotes quotes every text that can be, and drops the comments.
func (s *subject) otherQuotes() {
	var quote func(n *yaml.Node)
	quote = func(n *yaml.Node) {
		n.HeadComment, n.LineComment, n.FootComment = "", "", ""
		if n.Kind == yaml.ScalarNode && (n.Tag == "!!str" || n.Tag == "") {
			n.Style ^= yaml.DoubleQuotedStyle
			n.Tag = "!!str"
		}
		for _, x := range n.Content {
			quote(x)
		}
	}
	quote(s.root)
}

// unusedPlace adds a place where nothing stands, on the line of the last one.
func (s *subject) unusedPlace() {
	if places := value(s.root, "places"); places != nil {
		places.Style = yaml.FlowStyle
		put(places, "empty shed", flow(yaml.MappingNode, scalar("ambient"), word("20 °C")))
	}
}

// Again is the name of the situation that a way adds: the last of the alphabet, as
// of equally bad situations the first is named.
const Again = "zz the same again"

// situationTwice adds the last situation once more under another name.
func (s *subject) situationTwice() {
	if list := entries(value(s.root, "situations")); len(list) > 0 {
		value(s.root, "situations").Style = yaml.FlowStyle
		put(value(s.root, "situations"), Again, plain(list[len(list)-1]))
	}
}
