package design

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// Position is one of a switch that has several, with the outputs that are live in it.
type Position struct {
	Name    string
	Outputs []string // none = all is off
}

// Setting is a switch in one of its positions.
type Setting struct {
	Switch   *Switch
	Position string
}

// String is a setting in words.
func (s Setting) String() string { return s.Switch.Name + " at " + s.Position }

// Lead is the switch whose handle moves a pole: itself, or the one that it is a pole of.
func (x *Switch) Lead() *Switch {
	if x.Pole != nil {
		return x.Pole
	}
	return x
}

// WorksAlone tells of a switch that water, pressure or the like works, by its type.
func (x *Switch) WorksAlone() bool {
	return x.Type != nil && (x.Type.Float || x.Type.Pressure)
}

// Outputs are the outputs of a switch with positions, in the order in which it names
// them; none for a plain contact.
func (x *Switch) Outputs() []string {
	var list []string
	for _, p := range x.Positions {
		for _, out := range p.Outputs {
			if !slices.Contains(list, out) {
				list = append(list, out)
			}
		}
	}
	return list
}

// Gives tells whether an output is live in a position.
func (x *Switch) Gives(position, output string) bool {
	p := x.position(position)
	return p != nil && slices.Contains(p.Outputs, output)
}

func (x *Switch) position(name string) *Position {
	for _, p := range x.Positions {
		if p.Name == name || fold(p.Name) == fold(name) {
			return p
		}
	}
	return nil
}

// noOutput is what stands for a position in which nothing is live; a position of that name
// is one by itself.
const noOutput, offPosition = "none", "off"

// maxPositions is the most that a switch has.
const maxPositions = 12

// positionsKey reads the positions: a list, each of which has an output of its own name
// but `off`; or a mapping to the outputs that are live in each.
func positionsKey() key[Switch] {
	k := Key{Name: "positions", Kind: KindPositions, Default: "open and closed", Example: "[manual, off, automatic]",
		Doc: "its positions in the order of the handle. Of a list each has an output of its own name, but `off`; " +
			"a mapping gives the outputs that are live in each, `none`, a name or a list: `{off: none, navigation: [bow, stern], anchor: stern}`"}
	return key[Switch]{Key: k, read: func(r *reader, x *Switch, f field) {
		switch n := follow(f.node); n.Kind {
		case yaml.SequenceNode:
			for _, p := range n.Content {
				if t, ok := r.sentence(field{where: f.where, key: f.key, node: p}, maxName); ok {
					outputs := []Text{t}
					if fold(t.Value) == offPosition {
						outputs = nil
					}
					r.addPosition(x, f, t, outputs)
				}
			}
		case yaml.MappingNode:
			r.pairs(f.node, f.where, fold, func(name, value *yaml.Node) {
				at := field{where: f.where, key: "position " + name.Value, node: value}
				t, ok := r.sentence(field{where: f.where, key: f.key, node: name}, maxName)
				if outputs := r.texts(at, maxName); ok {
					if len(outputs) == 1 && fold(outputs[0].Value) == noOutput {
						outputs = nil
					}
					r.addPosition(x, f, t, outputs)
				}
			})
		default:
			r.report(r.pos(f.node), fmt.Sprintf("%s is %s", f, kindName(n)), k.expected())
			return
		}
	}}
}

func (r *reader) addPosition(x *Switch, f field, name Text, outputs []Text) {
	switch {
	case x.position(name.Value) != nil:
		r.report(name.Pos, fmt.Sprintf("%s: %s is named twice", f, quoted(name.Value)), "each position once")
		return
	case len(x.Positions) == maxPositions:
		r.report(name.Pos, fmt.Sprintf("%s: more than %d", f, maxPositions), "several switches")
		return
	case len(x.Positions) > maxPositions:
		return
	}
	p := &Position{Name: name.Value}
	for _, out := range outputs {
		switch spelt := x.output(out.Value); {
		case slices.Contains([]string{"in", "out"}, fold(out.Value)):
			r.report(out.Pos, fmt.Sprintf("%s: output %s would read as the switch's own terminal of that name", f, quoted(out.Value)),
				fmt.Sprintf("another name for the output, such as %q: the position itself may be called %s", "reel "+fold(out.Value), fold(out.Value)))
			p.Outputs = append(p.Outputs, spelt) // what is fed from it is not wrong too
		case slices.Contains(p.Outputs, spelt):
			r.report(out.Pos, fmt.Sprintf("%s: %s is named twice", f, quoted(out.Value)), "each output once")
		default:
			p.Outputs = append(p.Outputs, spelt)
		}
	}
	x.Positions = append(x.Positions, p)
}

// output is an output of a switch as it was first spelt; the name itself when it is new.
func (x *Switch) output(name string) string {
	for _, out := range x.Outputs() {
		if fold(out) == fold(name) {
			return out
		}
	}
	return name
}

// onlyOfAHandle refuses what a pole has from the switch that moves it, and positions where
// they cannot be.
func (r *reader) onlyOfAHandle(x *Switch, f field) {
	for _, key := range []string{"type", "rating", "at", "momentary", "plug"} {
		if x.poleOf.Given() && f.has[key] {
			r.report(r.pos(f.node), fmt.Sprintf("%s: %q is that of the switch it is a pole of", f.where, key), "it there alone")
		}
	}
	if f.has["positions"] && len(x.Positions) == 1 && !x.poleOf.Given() {
		r.report(r.pos(f.node), f.where.String()+" has a single position", "two or more, or a plain switch without `positions`")
	}
	if x.Momentary && len(x.Positions) > 1 && !slices.ContainsFunc(x.Positions, func(p *Position) bool { return len(p.Outputs) == 0 }) {
		r.report(r.pos(f.node), f.where.String()+" is momentary and gives something in each position", "a position to spring back to, such as `off: none`")
	}
}

// joinPoles finds the switches whose handles move further poles.
func (r *reader) joinPoles() {
	for _, x := range r.d.Switches {
		if !x.poleOf.Given() {
			continue
		}
		r.unplaced[x] = true
		found := namedParts[*Switch](r, where{"switch", x.Name}, "switch", []Text{x.poleOf})
		if len(found) == 0 {
			continue
		}
		lead := found[0]
		if lead == x || lead.poleOf.Given() {
			r.report(x.poleOf.Pos, fmt.Sprintf("switch %s: %s has no handle of its own", quoted(x.Name), quoted(lead.Name)), "the pole that gives type and place")
			continue
		}
		x.Pole, x.Type, x.RatingA, x.At, x.Momentary, x.MachineOperated = lead, lead.Type, lead.RatingA, lead.At, lead.Momentary, lead.MachineOperated
		r.unplaced[x] = r.unplaced[lead]
		r.sharePositions(x, lead)
	}
}

// sharePositions gives a pole the positions of its handle, or holds its own against them.
func (r *reader) sharePositions(x, lead *Switch) {
	if x.Positions == nil {
		x.Positions = lead.Positions
		return
	}
	for _, p := range x.Positions {
		if lead.position(p.Name) == nil {
			r.unknown(x.poleOf.Pos, fmt.Sprintf("switch %s: %s has no position %s", quoted(x.Name), quoted(lead.Name), quoted(p.Name)),
				p.Name, lead.positionNames())
		}
	}
}

func (x *Switch) positionNames() []string {
	names := make([]string, len(x.Positions))
	for i, p := range x.Positions {
		names[i] = p.Name
	}
	return names
}

// settingsKey reads in which positions switches are.
func settingsKey() key[stateDraft] {
	k := Key{Name: "switches", Kind: KindSettings, Example: "{lights: anchor}", Default: "what the loads that are on need",
		Doc: "positions of switches that have several"}
	return key[stateDraft]{Key: k, read: func(r *reader, x *stateDraft, f field) {
		if n := follow(f.node); n.Kind != yaml.MappingNode {
			r.report(r.pos(f.node), fmt.Sprintf("%s is %s", f, kindName(n)), k.expected())
			return
		}
		r.pairs(f.node, f.where, fold, func(name, value *yaml.Node) {
			at := field{where: f.where, key: "switch " + strings.TrimSpace(name.Value), node: value}
			if p, ok := r.sentence(at, maxName); ok {
				x.set = append(x.set, [2]Text{{name.Value, r.pos(name)}, p})
			}
		})
	}}
}

// settings looks up the positions that a situation gives.
func (r *reader) settings(x *stateDraft) (list []Setting) {
	for _, pair := range x.set {
		for _, s := range namedParts[*Switch](r, x.of, "switch", []Text{pair[0]}) {
			switch p := s.position(pair[1].Value); {
			case s.Pole != nil:
				r.report(pair[0].Pos, fmt.Sprintf("%s: %s is a pole of %s", x.of, quoted(s.Name), quoted(s.Pole.Name)), s.Pole.Name)
			case s.Positions == nil:
				r.report(pair[0].Pos, fmt.Sprintf("%s: switch %s has no positions", x.of, quoted(s.Name)), "it under `closed`, or not at all")
			case p == nil:
				r.unknown(pair[1].Pos, fmt.Sprintf("%s: switch %s has no position %s", x.of, quoted(s.Name), quoted(pair[1].Value)),
					pair[1].Value, s.positionNames())
			default:
				list = append(list, Setting{s, p.Name})
			}
		}
	}
	return list
}

// closedByHand refuses switches with positions among those that are closed.
func (r *reader) closedByHand(of where, texts []Text, list []*Switch) []*Switch {
	for i, s := range list {
		if s.Positions != nil && i < len(texts) {
			r.report(texts[i].Pos, fmt.Sprintf("%s: %s has positions", of, quoted(s.Name)),
				fmt.Sprintf("`switches: {%s: %s}`, or another of %s", s.Name, s.Positions[len(s.Positions)-1].Name, oneOf(s.positionNames())))
		}
	}
	return list
}

// derivePositions adds a situation for each position that gives something, of switches of
// which more than one does.
func (r *reader) derivePositions() {
	for _, s := range r.d.Switches {
		gives := slices.DeleteFunc(slices.Clone(s.Positions), func(p *Position) bool { return len(p.Outputs) == 0 })
		if s.Pole != nil || len(gives) < 2 {
			continue
		}
		for _, p := range gives {
			set := Setting{s, p.Name}
			r.derive("key on, "+set.String(), KeyOn, 0, true)
			r.d.Situations[len(r.d.Situations)-1].Set = []Setting{set}
		}
	}
}
