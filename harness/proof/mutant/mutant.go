// Package mutant makes designs out of other designs by small structural changes:
// other sizes and ratings, parts fed from elsewhere, doubled, renamed or moved,
// places merged, options turned. It goes by the tables of the design reader, so
// that most mutants read: a text that is refused at its first line proves little
// about what comes after the reader. It is used by tests alone.
package mutant

import (
	"fmt"
	"math/rand/v2"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design"
	"fusewright/library"
)

// Mutant is a changed design.
type Mutant struct {
	Text    []byte
	Changes []string // what was changed, in words, in order
}

// mostChanges are made in one mutant: each more makes it likelier that the
// reader refuses it.
const mostChanges = 6

// Make changes a design. The same text and seed give the same mutant. The error
// is that of a text which is no YAML mapping.
func Make(src []byte, lib *library.Library, seed uint64) (*Mutant, error) {
	s, err := newSubject(src, lib, seed)
	if err != nil {
		return nil, err
	}
	m := &Mutant{}
	want := 1 + s.rng.IntN(mostChanges)
	for try := 0; len(m.Changes) < want && try < 10*mostChanges; try++ {
		if what := s.change(); what != "" {
			s.settle()
			m.Changes = append(m.Changes, what)
		}
	}
	m.Text, err = s.written()
	return m, err
}

// change makes one change of a kind picked by weight; "" when the design has
// nothing to change in that way.
func (s *subject) change() string {
	total := 0
	for _, k := range kinds {
		total += k.weight
	}
	at := s.rng.IntN(total)
	for _, k := range kinds {
		if at -= k.weight; at < 0 {
			return k.make(s)
		}
	}
	return ""
}

// kinds of changes, with how often each is made.
var kinds = []struct {
	weight int
	make   func(*subject) string
}{
	{40, (*subject).changeValue},
	{12, (*subject).feedFromElsewhere},
	{8, (*subject).removeKey},
	{10, (*subject).addKey},
	{5, (*subject).doublePart},
	{4, (*subject).removePart},
	{4, (*subject).renamePart},
	{5, (*subject).addJoint},
	{4, (*subject).mergePlaces},
	{4, (*subject).splitRun},
	{4, (*subject).addSituation},
	{3, (*subject).addLeg},
	{3, (*subject).changeStyle},
	{2, (*subject).accept},
}

// subject is the design under change.
type subject struct {
	lib      *library.Library
	sections map[string]design.Section
	rng      *rand.Rand
	root     *yaml.Node
}

func newSubject(src []byte, lib *library.Library, seed uint64) (*subject, error) {
	var doc yaml.Node
	if err := yaml.Unmarshal(src, &doc); err != nil {
		return nil, err
	}
	if len(doc.Content) != 1 || doc.Content[0].Kind != yaml.MappingNode {
		return nil, fmt.Errorf("not a mapping")
	}
	s := &subject{lib: lib, sections: map[string]design.Section{}, rng: rand.New(rand.NewPCG(seed, 0x6d7574)),
		root: plain(doc.Content[0])}
	for _, x := range design.Format() {
		s.sections[x.Name] = x
	}
	return s, nil
}

// pick is one of a list; the zero value of an empty one.
func pick[T any](s *subject, list []T) (x T) {
	if len(list) == 0 {
		return x
	}
	return list[s.rng.IntN(len(list))]
}

// once in n times.
func (s *subject) once(n int) bool { return s.rng.IntN(n) == 0 }
