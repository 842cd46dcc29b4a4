package mutant

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design"
)

// part is a named record that others may name.
type part struct {
	section string // "fuses"
	name    string
	record  *yaml.Node
}

// partSections are the keys of a design whose records share one space of names.
var partSections = []string{"taps", "fuses", "relays", "blocks", "switches", "diodes", "resistors", "splices", "loads", "grounds", "partings"}

func (s *subject) parts() []part {
	var list []part
	for _, section := range partSections {
		for i, n := range entries(value(s.root, section)) {
			if i%2 == 1 && n.Kind == yaml.MappingNode {
				list = append(list, part{section, value(s.root, section).Content[i-1].Value, n})
			}
		}
	}
	return list
}

func entries(n *yaml.Node) []*yaml.Node {
	if n == nil || n.Kind != yaml.MappingNode {
		return nil
	}
	return n.Content
}

func (s *subject) partNamed(name string) *yaml.Node {
	for _, p := range s.parts() {
		if fold(p.name) == fold(name) {
			return p.record
		}
	}
	return nil
}

// names of the records of a key of the design.
func (s *subject) names(section string) []string {
	var list []string
	for i, n := range entries(value(s.root, section)) {
		if i%2 == 0 {
			list = append(list, n.Value)
		}
	}
	return list
}

// doublePart puts a twin of a part beside it.
func (s *subject) doublePart() string {
	p := pick(s, s.parts())
	if p.record == nil {
		return ""
	}
	name := s.freeName(p.name + " twin")
	records := value(s.root, p.section)
	records.Content = append(records.Content, scalar(name), plain(p.record))
	return fmt.Sprintf("%s doubled as %s", p.name, name)
}

// removePart takes a part out; what it fed is fed by what fed it.
func (s *subject) removePart() string {
	p := pick(s, s.parts())
	if p.record == nil {
		return ""
	}
	feed := refs(value(p.record, "fed by"))
	drop(value(s.root, p.section), p.name)
	for _, x := range s.slots() {
		switch x.key.Kind {
		case design.KindFeeds:
			if len(feed) > 0 {
				s.rename(x.value, p.name, func(string) string { return feed[0].Value })
			} else {
				s.rename(x.value, p.name, func(string) string { return "battery" })
			}
		case design.KindReturns:
			s.rename(x.value, p.name, func(string) string { return "battery negative" })
		case design.KindLoads, design.KindParts, design.KindSwitches:
			s.unlist(x, p.name)
		case design.KindRelay, design.KindSwitch, design.KindLoad:
			if fold(x.value.Value) == fold(p.name) {
				drop(x.record, x.key.Name)
			}
		}
	}
	return p.name + " removed"
}

// rename changes the references to a part in a value.
func (s *subject) rename(v *yaml.Node, name string, to func(terminal string) string) {
	seen := map[string]bool{}
	for _, r := range refs(v) {
		if fold(r.Value) == fold(name) {
			setNode(r, to(""))
		} else if rest, ok := strings.CutPrefix(fold(r.Value), fold(name)+" "); ok && !strings.Contains(rest, " ") && s.partNamed(r.Value) == nil {
			setNode(r, to(" "+rest))
		}
	}
	if v != nil && v.Kind == yaml.SequenceNode {
		v.Content = slices.DeleteFunc(v.Content, func(n *yaml.Node) bool {
			was := seen[fold(n.Value)]
			seen[fold(n.Value)] = true
			return was
		})
	}
}

func setNode(n *yaml.Node, text string) { *n = *scalar(text) }

// unlist takes a name out of a list; an empty list goes.
func (s *subject) unlist(x slot, name string) {
	if x.value.Kind != yaml.SequenceNode {
		return
	}
	x.value.Content = slices.DeleteFunc(x.value.Content, func(n *yaml.Node) bool { return fold(n.Value) == fold(name) })
	if len(x.value.Content) == 0 {
		drop(x.record, x.key.Name)
	}
}

// renamePart gives a part another name everywhere.
func (s *subject) renamePart() string {
	p := pick(s, s.parts())
	if p.record == nil {
		return ""
	}
	name := s.freeName(pick(s, []string{"unit", "é", "a: b # c", `"quoted"`, "yes", "12", strings.Repeat("n", 75), "<tag>&amp;"}))
	s.renameTo(p, name)
	return fmt.Sprintf("%s renamed %s", p.name, name)
}

// renameTo renames a part and what refers to it.
func (s *subject) renameTo(p part, name string) {
	for _, x := range s.slots() {
		switch x.key.Kind {
		case design.KindFeeds, design.KindReturns:
			s.rename(x.value, p.name, func(terminal string) string { return name + terminal })
		case design.KindLoads, design.KindParts, design.KindSwitches, design.KindRelay, design.KindSwitch, design.KindLoad:
			s.rename(x.value, p.name, func(string) string { return name })
		case design.KindSettings, design.KindCharges: // the keys are names
			for i := 0; i+1 < len(x.value.Content); i += 2 {
				s.rename(x.value.Content[i], p.name, func(string) string { return name })
			}
		case design.KindText:
			if x.section == "acceptance" && x.key.Name == "part" {
				s.rename(x.value, p.name, func(string) string { return name })
			}
		}
	}
	records := value(s.root, p.section)
	for i := 0; i < len(records.Content); i += 2 {
		if records.Content[i].Value == p.name {
			records.Content[i] = scalar(name)
		}
	}
}

// freeName is the name with a number, if it is taken.
func (s *subject) freeName(name string) string {
	for i := 2; ; i++ {
		if s.partNamed(name) == nil {
			return name
		}
		name = strings.TrimRight(name, " 0123456789") + " " + strconv.Itoa(i)
	}
}
