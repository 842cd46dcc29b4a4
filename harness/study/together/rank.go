package together

import (
	"cmp"
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

// GivenUp tells whether a load may be proposed to be shed: none that is critical, is meant to
// stay live, keeps watch, must burn or pumps a bilge, nor that one sees and is seen by, unless
// the design ranks it itself.
func GivenUp(l *design.Load) bool {
	if k := l.Type; k != nil && (k.Watches || k.MustBurn || k.Bilge) {
		return false
	}
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

// Shed are those of some items that may be switched off, in the order in which they are: by
// rank, of as much weight those that take most. What hangs on another goes before it.
func Shed(on []*Item) []*Item {
	return shed(on, func(a, b *Item) int {
		return cmp.Or(cmp.Compare(b.Rank, a.Rank), cmp.Compare(len(b.needs), len(a.needs)), cmp.Compare(b.CurrentA, a.CurrentA))
	})
}

// ShedStopped is Shed with the engine stopped, when the battery has to last: what takes most goes first, whatever it
// is, unless the design ranks it.
func ShedStopped(on []*Item) []*Item {
	rank := func(i *Item) int {
		if i.Stated {
			return i.Rank
		}
		return otherRank
	}
	var order []*Item
	var add func(i *Item)
	most := shed(on, func(a, b *Item) int {
		return cmp.Or(cmp.Compare(rank(b), rank(a)), cmp.Compare(b.CurrentA, a.CurrentA))
	})
	add = func(i *Item) {
		for _, j := range most {
			if slices.Contains(j.needs, i) {
				add(j)
			}
		}
		if !slices.Contains(order, i) {
			order = append(order, i)
		}
	}
	for _, i := range most {
		add(i)
	}
	return order
}

func shed(on []*Item, before func(a, b *Item) int) []*Item {
	off := slices.DeleteFunc(slices.Clone(on), func(i *Item) bool { return i.kept })
	slices.SortStableFunc(off, before)
	return off
}

// giveUp lists what to shed, first thing first, until an overdraw is covered, and then without
// those that turn out not to be needed after all. What may not be shed is never proposed: what
// the others cannot cover is left, for a higher engine speed.
func giveUp(on []*Item, overdrawA float64) (off []*Item, left float64) {
	for _, i := range Shed(on) {
		if i.CurrentA > 0 && overdrawA > slackA {
			off = append(off, i)
			overdrawA -= i.CurrentA
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
