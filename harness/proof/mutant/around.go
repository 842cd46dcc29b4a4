package mutant

import (
	"fmt"

	"gopkg.in/yaml.v3"

	"fusewright/harness/review/rules"
)

// addSituation adds one to those of the design.
func (s *subject) addSituation() string {
	situations := s.section("situations", yaml.MappingNode)
	name := fmt.Sprintf("case %d", len(situations.Content)/2+1)
	put(situations, name, s.state())
	return "situation " + name
}

// addLeg adds a leg to a ride, with the ride if there is none.
func (s *subject) addLeg() string {
	if value(s.root, "rides") == nil {
		put(s.root, "rides", flow(yaml.MappingNode, scalar("round"), flow(yaml.MappingNode, scalar("legs"), flow(yaml.SequenceNode))))
	}
	rides := entries(value(s.root, "rides"))
	if len(rides) < 2 {
		return ""
	}
	legs := value(rides[1], "legs")
	if legs == nil || legs.Kind != yaml.SequenceNode {
		return ""
	}
	leg := s.state()
	drop(leg, "closed")
	put(leg, "lasts", word(pick(s, []string{"1 s", "10 min", "8 h", "30 days"})))
	put(leg, "ambient", word(pick(s, []string{"-40 °C", "0 °C", "25 °C", "60 °C"})))
	legs.Content = append(legs.Content, leg)
	return "leg added"
}

// state is what is on at once, as situations and legs say it.
func (s *subject) state() *yaml.Node {
	key, engine := pick(s, []string{"on", "on", "off"}), "stopped"
	if value(s.root, "charging") != nil && key == "on" {
		engine = pick(s, []string{"stopped", "idle", "cruise"})
	}
	state := flow(yaml.MappingNode, scalar("key"), word(key), scalar("engine"), word(engine),
		scalar("on"), s.newList(s.names("loads"), "all", "none"))
	if closed := s.newList(s.names("switches"), ""); closed != nil {
		put(state, "closed", closed)
	}
	return state
}

// accept takes a finding as it is, whether there is one or not.
func (s *subject) accept() string {
	p := pick(s, s.parts())
	if p.record == nil {
		return ""
	}
	list := s.section("accepted", yaml.SequenceNode)
	rule := pick(s, rules.Names())
	list.Content = append(list.Content, flow(yaml.MappingNode, scalar("rule"), scalar(rule), scalar("part"), scalar(p.name),
		scalar("reason"), scalar("a mutant's")))
	return fmt.Sprintf("%s of %s accepted", rule, p.name)
}

// changeStyle writes the same design otherwise: other order of keys, on one line
// or many, without comments.
func (s *subject) changeStyle() string {
	s.restyle(s.root, 0)
	return "written otherwise"
}

func (s *subject) restyle(n *yaml.Node, depth int) {
	n.HeadComment, n.LineComment, n.FootComment = "", "", ""
	switch n.Kind {
	case yaml.MappingNode:
		first := 0
		if depth == 0 {
			first = 1 // the version is the first key
		}
		for i := len(n.Content)/2 - 1; i > first; i-- {
			j := first + s.rng.IntN(i-first+1)
			a, b := n.Content, 2*j
			a[2*i], a[2*i+1], a[b], a[b+1] = a[b], a[b+1], a[2*i], a[2*i+1]
		}
		fallthrough
	case yaml.SequenceNode:
		n.Style ^= yaml.FlowStyle & yaml.Style(s.rng.Uint32())
		if depth == 0 {
			n.Style = 0
		}
	case yaml.ScalarNode:
		if n.Style == yaml.DoubleQuotedStyle || n.Style == yaml.SingleQuotedStyle {
			n.Style = pick(s, []yaml.Style{yaml.DoubleQuotedStyle, yaml.SingleQuotedStyle})
		}
	}
	for _, x := range n.Content {
		s.restyle(x, depth+1)
	}
}
