package mutant

import (
	"fmt"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design/quantity"
	"fusewright/library"
)

// Renamed gives every part the name that to gives for its number, counted in the
// order of the design.
func Renamed(src []byte, lib *library.Library, to func(i int) string) ([]byte, error) {
	s, err := newSubject(src, lib, 1)
	if err != nil {
		return nil, err
	}
	for i, p := range s.parts() {
		s.renameTo(p, to(i))
	}
	return s.written()
}

// Jointed puts a joint into the wire that feeds a part, with the lengths of the
// wires before and behind it. The joint stands at the part's place, so that the
// first wire goes the way of the old one.
func Jointed(src []byte, lib *library.Library, name, joint, before, behind string) ([]byte, error) {
	s, err := newSubject(src, lib, 1)
	if err != nil {
		return nil, err
	}
	record := s.partNamed(name)
	from := value(record, "fed by")
	if from == nil || from.Kind != yaml.ScalarNode {
		return nil, fmt.Errorf("%s has no single feed", name)
	}
	first := flow(yaml.MappingNode)
	var end *yaml.Node // that the design names at the part
	if w := value(record, "wire"); w != nil {
		if ends := value(w, "ends"); ends != nil {
			end = value(ends, "to")
		}
		first = plain(w)
		drop(first, "ends")
	}
	second := plain(first)
	if end != nil {
		put(second, "ends", flow(yaml.MappingNode, scalar("to"), scalar(end.Value)))
	}
	put(first, "length", word(before))
	put(second, "length", word(behind))
	splice := flow(yaml.MappingNode, scalar("fed by"), scalar(from.Value), scalar("wire"), first)
	for _, key := range []string{"at", "stays live"} {
		if at := text(record, key); at != "" {
			put(splice, key, scalar(at))
		}
	}
	put(s.section("splices", yaml.MappingNode), joint, splice)
	put(record, "wire", second)
	setNode(from, joint)
	return s.written()
}

// Rewired makes every wire of another type, with its size as to gives it.
func Rewired(src []byte, lib *library.Library, insulation string, to func(size string) string) ([]byte, error) {
	s, err := newSubject(src, lib, 1)
	if err != nil {
		return nil, err
	}
	put(s.section("wire", yaml.MappingNode), "insulation", scalar(insulation))
	for _, x := range s.slots() {
		switch {
		case x.key.Name == "insulation":
			*x.value = *scalar(insulation)
		case x.key.Unit == quantity.Area && x.value.Value != "auto":
			setText(x.value, to(x.value.Value))
		}
	}
	return s.written()
}
