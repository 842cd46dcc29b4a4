package mutant

import (
	"slices"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
)

// kept are keys without which a design cannot be read for reasons that say
// nothing: places, runs and all parts.
var kept = append([]string{"places", "runs", "at"}, partSections...)

// removeKey takes out a value that may be left out.
func (s *subject) removeKey() string {
	x := pick(s, s.some(func(x slot) bool { return !x.key.Required && !slices.Contains(kept, x.key.Name) }))
	if x.value == nil {
		return ""
	}
	drop(x.record, x.key.Name)
	return x.label() + " removed"
}

// addKey adds a value that is not there to a record.
func (s *subject) addKey() string {
	of := pick(s, s.slots())
	if of.value == nil {
		return ""
	}
	section := of.section
	if s.once(4) {
		section = "design" // where the optional sections are
	}
	record := of.record
	if section == "design" {
		record = s.root
	}
	var missing []design.Key
	for _, k := range s.sections[section].Keys {
		if value(record, k.Name) == nil {
			missing = append(missing, k)
		}
	}
	k := pick(s, missing)
	v := s.fresh(slot{section: section, key: k, owner: of.owner, record: record, value: word("")})
	if v == nil || v.Kind == yaml.ScalarNode && v.Value == "" {
		return ""
	}
	put(record, k.Name, v)
	return slot{section: section, owner: of.owner, key: k}.label() + " added: " + v.Value
}

// fresh is a value for a key that has none.
func (s *subject) fresh(x slot) *yaml.Node {
	switch x.key.Kind {
	case design.KindQuantity:
		if v := s.newQuantity(x); v != nil {
			return v
		}
		was, err := quantity.Parse(x.key.Example, x.key.Unit)
		if err != nil {
			return nil
		}
		return s.quantityNear(x.key, was)
	case design.KindFeeds:
		return scalar(pick(s, s.outputs()))
	case design.KindRecord:
		return s.freshRecord(x.key.Section)
	}
	if make := writers[x.key.Kind]; make != nil {
		return make(s, x)
	}
	return nil
}

// freshRecord is a record of one or two of its keys, and of all it must have.
func (s *subject) freshRecord(section string) *yaml.Node {
	record := flow(yaml.MappingNode)
	keys := s.sections[section].Keys
	for _, k := range keys {
		if !k.Required && !s.once(len(keys)/2+1) {
			continue
		}
		if v := s.fresh(slot{section: section, key: k, record: record, value: word("")}); v != nil {
			put(record, k.Name, v)
		}
	}
	if len(record.Content) == 0 {
		return nil
	}
	return record
}
