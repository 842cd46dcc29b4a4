package mutant

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design"
)

// refs are the names in a value that is one part or a list of parts.
func refs(v *yaml.Node) []*yaml.Node {
	switch {
	case v == nil:
		return nil
	case v.Kind == yaml.SequenceNode:
		return v.Content
	case v.Kind == yaml.ScalarNode:
		return []*yaml.Node{v}
	}
	return nil
}

// meant is the part that a reference names, and the terminal, if it names one.
func (s *subject) meant(ref string) (name, terminal string) {
	if s.partNamed(ref) == nil {
		if at := strings.LastIndexByte(ref, ' '); at > 0 && s.partNamed(ref[:at]) != nil {
			return fold(ref[:at]), ref[at+1:]
		}
	}
	return fold(ref), ""
}

// outputs are the references that may feed another part.
func (s *subject) outputs() []string {
	list := []string{"battery"}
	for _, p := range s.parts() {
		switch p.section {
		case "loads", "grounds":
		case "blocks":
			for i, way := range entries(value(p.record, "ways")) {
				if i%2 == 1 && way.Value != "spare" {
					list = append(list, p.name+" "+value(p.record, "ways").Content[i-1].Value)
				}
			}
		default:
			list = append(list, p.name)
			if form := s.lib.RelayForm(text(p.record, "form")); p.section == "relays" && form != nil && form.Changeover {
				list = append(list, p.name+" 87a")
			}
		}
	}
	return list
}

// below are the parts that get their current through one, itself included.
func (s *subject) below(name string) map[string]bool {
	set := map[string]bool{fold(name): true}
	for grown := true; grown; {
		grown = false
		for _, p := range s.parts() {
			for _, r := range refs(value(p.record, "fed by")) {
				if from, _ := s.meant(r.Value); set[from] && !set[fold(p.name)] {
					set[fold(p.name)], grown = true, true
				}
			}
		}
	}
	return set
}

// feedFromElsewhere feeds a part or a coil from another part, or from two.
func (s *subject) feedFromElsewhere() string {
	x := pick(s, s.ofKind(design.KindFeeds))
	if x.value == nil {
		return ""
	}
	var list []string
	below := s.below(x.owner)
	for _, out := range s.outputs() {
		if from, _ := s.meant(out); !below[from] || x.section == "coil" {
			list = append(list, out)
		}
	}
	from := pick(s, list)
	if second := pick(s, list); s.once(6) && second != from {
		*x.value = *flow(yaml.SequenceNode, scalar(from), scalar(second))
		return fmt.Sprintf("%s: from %s and %s", x.label(), from, second)
	}
	was := x.value.Value
	*x.value = *scalar(from)
	return fmt.Sprintf("%s: from %q to %q", x.label(), was, from)
}

// newReturns is a ground or the battery, but no ground that comes back to its own.
func (s *subject) newReturns(x slot) *yaml.Node {
	list := []string{"battery negative"}
	if x.section != "ground" {
		list = append(list, s.names("grounds")...)
	}
	return scalar(pick(s, list))
}

// addJoint puts a splice between a part and what feeds it, at the part's place.
func (s *subject) addJoint() string {
	x := pick(s, s.ofKind(design.KindFeeds))
	if x.value == nil || x.value.Kind != yaml.ScalarNode {
		return ""
	}
	name := s.freeName("joint")
	record := flow(yaml.MappingNode, scalar("fed by"), scalar(x.value.Value))
	if at := text(s.partNamed(x.owner), "at"); at != "" {
		record.Content = append(record.Content, scalar("at"), scalar(at))
	}
	if w := value(x.record, "wire"); w != nil {
		record.Content = append(record.Content, scalar("wire"), plain(w))
	}
	splices := s.section("splices", yaml.MappingNode)
	splices.Content = append(splices.Content, scalar(name), record)
	setNode(x.value, name)
	return fmt.Sprintf("%s: through %s", x.label(), name)
}
