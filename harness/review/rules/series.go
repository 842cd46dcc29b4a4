package rules

import (
	"iter"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// strings goes through the strings of loads in series, each from the source on.
func (f *facts) strings() iter.Seq[[]*circuit.Branch] {
	return func(yield func([]*circuit.Branch) bool) {
		for _, b := range f.branchesOf(circuit.LoadBranch) {
			if len(b.String) > 0 && b.String[0] == b && !yield(b.String) {
				return
			}
		}
	}
}

// others are the loads of a string but for one.
func others(string []*circuit.Branch, but *circuit.Branch) (list []*circuit.Branch) {
	for _, b := range string {
		if b != but {
			list = append(list, b)
		}
	}
	return list
}

// drops tells of a string in which a resistance is there to take part of the voltage.
func drops(string []*circuit.Branch) bool {
	for _, b := range string {
		if b.Load.Behaves == design.Resistor {
			return true
		}
	}
	return false
}
