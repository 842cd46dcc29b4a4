package together

import (
	"slices"
	"sort"

	"fusewright/harness/design"
)

// usualRank is the priority of a load whose design says none, by what it is: 1
// is given up last. Seeing and being seen comes first, comfort last. Common
// practice, no source.
var usualRank = map[design.Sign]int{
	design.SignLamp: 2, design.SignLED: 2, design.SignHorn: 2,
	design.SignSensor: 3,
	design.SignPump:   4,
	// Navigation and radio: without them one still arrives.
	design.SignElectronics: 5, design.SignVoltmeter: 5, design.SignConverter: 5,
	design.SignMotor:  6,
	design.SignSocket: 7,
	design.SignHeater: 8,
}

// otherRank is that of a load whose sign says nothing.
const otherRank = 6

// Rank is the priority of a load: the design's, else the usual one of its kind.
// Stated says which.
func Rank(l *design.Load) (rank int, stated bool) {
	if l.Priority > 0 {
		return l.Priority, true
	}
	if r, ok := usualRank[l.Sign]; ok {
		return r, false
	}
	return otherRank, false
}

// seeingRank is the usual priority of what one sees and is seen by.
const seeingRank = 2

// GivenUp tells whether a load may be proposed to be switched off: none that is critical, is
// meant to stay live, or that one sees and is seen by, unless the design ranks it itself.
func GivenUp(l *design.Load) bool {
	rank, stated := Rank(l)
	return !l.Critical && l.StaysLive.Value == "" && (stated || rank > seeingRank)
}

// byImportance sorts items so that what is given up last stands first: critical
// ones before all others, then by rank, then in design order.
func byImportance(items []*Item) {
	sort.SliceStable(items, func(i, j int) bool {
		a, b := items[i], items[j]
		switch {
		case a.Critical != b.Critical:
			return a.Critical
		case a.Rank != b.Rank:
			return a.Rank < b.Rank
		}
		return len(a.needs) < len(b.needs) // what others hang on goes after them
	})
}

// giveUp lists what to switch off, first thing first, until an overdraw is
// covered: from the end of a list by importance, and then without those that
// turn out not to be needed after all. Critical loads are never proposed: what
// the others cannot cover is left, for a higher engine speed.
func giveUp(on []*Item, overdrawA float64) (off []*Item, left float64) {
	for i := len(on) - 1; i >= 0 && overdrawA > slackA; i-- {
		if on[i].CurrentA > 0 && !on[i].Critical {
			off = append(off, on[i])
			overdrawA -= on[i].CurrentA
		}
	}
	if overdrawA > slackA {
		return off, overdrawA
	}
	for i := len(off) - 1; i >= 0; i-- { // the most important comes back first
		if overdrawA+off[i].CurrentA <= slackA && !slices.ContainsFunc(off[i].needs, func(n *Item) bool { return slices.Contains(off, n) }) {
			overdrawA += off[i].CurrentA
			off = append(off[:i], off[i+1:]...)
		}
	}
	return off, 0
}
