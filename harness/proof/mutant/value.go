package mutant

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
)

// writers give a new value of each kind, as YAML; nil = none can be given.
var writers = map[string]func(*subject, slot) *yaml.Node{
	design.KindText:       (*subject).newText,
	design.KindNumber:     (*subject).newNumber,
	design.KindQuantity:   (*subject).newQuantity,
	design.KindChoice:     func(s *subject, x slot) *yaml.Node { return word(pick(s, x.key.Choices)) },
	design.KindYesNo:      func(s *subject, _ slot) *yaml.Node { return word(pick(s, []string{"yes", "no"})) },
	design.KindLibrary:    (*subject).newName,
	design.KindPlace:      func(s *subject, _ slot) *yaml.Node { return s.onePlace() },
	design.KindLoad:       func(s *subject, _ slot) *yaml.Node { return scalar(pick(s, s.names("loads"))) },
	design.KindRelay:      func(s *subject, _ slot) *yaml.Node { return scalar(pick(s, s.names("relays"))) },
	design.KindReturns:    func(s *subject, x slot) *yaml.Node { return s.newReturns(x) },
	design.KindLoads:      func(s *subject, _ slot) *yaml.Node { return s.newList(s.names("loads"), "all", "none") },
	design.KindParts:      func(s *subject, _ slot) *yaml.Node { return s.newList(s.names("loads"), "") },
	design.KindSwitches:   func(s *subject, _ slot) *yaml.Node { return s.newList(s.names("switches"), "") },
	design.KindState:      func(s *subject, _ slot) *yaml.Node { return s.oneSituation() },
	design.KindStates:     (*subject).newStates,
	design.KindCondition:  func(s *subject, x slot) *yaml.Node { return word(pick(s, append(x.key.Choices, "main beam", "brake"))) },
	design.KindConditions: func(s *subject, _ slot) *yaml.Node { return s.newList([]string{"main beam", "brake"}, "") },
	design.KindCurve:      (*subject).newCurve,
	design.KindSwitch:     func(s *subject, _ slot) *yaml.Node { return scalar(pick(s, s.names("switches"))) },
	design.KindPositions: func(s *subject, _ slot) *yaml.Node {
		return s.newList([]string{"off", "low", "high"}, "")
	},
	design.KindCharges:  func(s *subject, _ slot) *yaml.Node { return nil }, // which batteries there are only the design knows
	design.KindSettings: func(*subject, slot) *yaml.Node { return nil },     // which positions there are only a switch knows
}

// changeValue gives one value of the design another.
func (s *subject) changeValue() string {
	x := pick(s, s.some(func(x slot) bool { return writers[x.key.Kind] != nil && x.key.Name != "fusewright" }))
	if x.value == nil {
		return ""
	}
	was := x.value.Value
	v := writers[x.key.Kind](s, x)
	if v == nil || v.Value == was && v.Kind == yaml.ScalarNode {
		return ""
	}
	*x.value = *v
	return fmt.Sprintf("%s: %q to %q", x.label(), was, v.Value)
}

// newText is a colour where one is wanted, else words of some length.
func (s *subject) newText(x slot) *yaml.Node {
	switch {
	case strings.HasSuffix(x.key.Name, "colour"):
		codes := s.lib.Names("colours")
		return scalar(pick(s, codes) + pick(s, append(codes, "", "", "")))
	case x.section == "acceptance" || x.key.Name == "date":
		return nil
	}
	return scalar(pick(s, []string{"é", "a <b> & \"c\": d # e", "$(x)", "=1+1", strings.Repeat("long ", 14), "漢字", "x"}))
}

func (s *subject) newNumber(x slot) *yaml.Node {
	return word(strconv.FormatFloat(math.Round(x.key.Min+s.rng.Float64()*(x.key.Max-x.key.Min)), 'g', -1, 64))
}

func (s *subject) newName(x slot) *yaml.Node {
	names := append(s.lib.Names(x.key.Library), x.key.Choices...)
	return scalar(pick(s, names))
}

// newQuantity scales a quantity, takes it to a limit of its key, or takes one of
// the words that may stand for it.
func (s *subject) newQuantity(x slot) *yaml.Node {
	switch {
	case len(x.key.Choices) > 0 && s.once(8):
		return word(pick(s, x.key.Choices))
	case x.key.Unit == quantity.Area:
		return s.newSize(x)
	case x.section == "design":
		return word(pick(s, []string{"6 V", "12 V", "24 V", "48 V"}))
	case (x.section == "fuse" || x.section == "way") && x.key.Unit == quantity.Current:
		return s.newRating(x)
	}
	was, err := quantity.Parse(x.value.Value, x.key.Unit)
	if err != nil {
		return nil
	}
	return s.quantityNear(x.key, was)
}

func (s *subject) quantityNear(k design.Key, was float64) *yaml.Node {
	v := was * pick(s, []float64{0, 0.1, 0.5, 0.8, 0.99, 1.01, 1.25, 2, 3, 10, 100})
	if s.once(10) {
		v = pick(s, []float64{k.Min, k.Max})
	}
	if k.Max > k.Min {
		v = min(max(v, k.Min), k.Max)
	}
	return word(quantity.Plain(v, k.Unit))
}

// newCurve scales the charging current at every speed.
func (s *subject) newCurve(x slot) *yaml.Node {
	v, by := plain(x.value), pick(s, []float64{0.1, 0.5, 0.9, 1.1, 2, 5})
	for i := 1; i < len(v.Content); i += 2 {
		if a, err := quantity.Parse(v.Content[i].Value, quantity.Current); err == nil {
			setText(v.Content[i], quantity.Plain(a*by, quantity.Current))
		}
	}
	return v
}

// oneSituation is one of the design; nil where it has none.
func (s *subject) oneSituation() *yaml.Node {
	if names := s.names("situations"); len(names) > 0 {
		return scalar(pick(s, names))
	}
	return nil
}

// newStates is a word for when, one situation or some of them.
func (s *subject) newStates(x slot) *yaml.Node {
	if one := s.oneSituation(); one != nil && s.once(3) {
		return one
	}
	return s.newList(s.names("situations"), x.key.Choices...)
}

// newList is some names, or a word that stands for a list; nil for the word "".
func (s *subject) newList(names []string, words ...string) *yaml.Node {
	if instead := pick(s, words); s.once(3) || len(names) == 0 {
		if instead == "" {
			return nil
		}
		return word(instead)
	}
	list := flow(yaml.SequenceNode)
	for _, name := range names {
		if s.once(2) {
			list.Content = append(list.Content, scalar(name))
		}
	}
	if len(list.Content) == 0 {
		list.Content = append(list.Content, scalar(pick(s, names)))
	}
	return list
}
