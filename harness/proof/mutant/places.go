package mutant

import (
	"fmt"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design"

	"fusewright/harness/design/quantity"
)

// onePlace is the name of a place; nil when there are none.
func (s *subject) onePlace() *yaml.Node {
	if names := s.names("places"); len(names) > 0 {
		return scalar(pick(s, names))
	}
	return nil
}

// mergePlaces makes one place of two; runs between them go.
func (s *subject) mergePlaces() string {
	names := s.names("places")
	keep, gone := pick(s, names), pick(s, names)
	if keep == gone {
		return ""
	}
	for _, x := range s.ofKind(design.KindPlace) {
		if fold(x.value.Value) == fold(gone) {
			setNode(x.value, keep)
		}
	}
	drop(value(s.root, "places"), gone)
	if runs := value(s.root, "runs"); runs != nil {
		var left []*yaml.Node
		for _, r := range runs.Content {
			if fold(text(r, "from")) != fold(text(r, "to")) {
				left = append(left, r)
			}
		}
		if runs.Content = left; len(left) == 0 {
			drop(s.root, "runs")
		}
	}
	return fmt.Sprintf("place %s merged into %s", gone, keep)
}

// splitRun puts a new place into the middle of a run.
func (s *subject) splitRun() string {
	runs := value(s.root, "runs")
	if runs == nil || runs.Kind != yaml.SequenceNode {
		return ""
	}
	run := pick(s, runs.Content)
	lengthM, err := quantity.Parse(text(run, "length"), quantity.Length)
	if err != nil {
		return ""
	}
	places := value(s.root, "places")
	name := "halfway"
	for i := 2; value(places, name) != nil; i++ {
		name = fmt.Sprintf("halfway %d", i)
	}
	put(places, name, flow(yaml.MappingNode, scalar("ambient"), word("45 °C")))
	second := plain(run)
	drop(second, "name")
	half := quantity.Plain(max(lengthM/2, 1e-3), quantity.Length)
	put(run, "length", word(half))
	put(second, "length", word(half))
	put(second, "from", scalar(name))
	put(run, "to", scalar(name))
	runs.Content = append(runs.Content, second)
	return "run split at " + name
}
