// Package compare tells what changed between two reviews of a design: findings,
// fuses, other parts, wires with their lengths, the charging budget, what is to be
// bought, and labels. Parts go by name and wires by the part that they feed or take
// the current back from, so that moving lines in a file changes labels at most. Each
// list is in order of gravity. It reads reviews; it prints nothing.
package compare

import (
	"maps"
	"sort"

	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

// What says how a thing changed.
type What string

// The ways in which a thing changes.
const (
	Added   What = "added"
	Removed What = "removed"
	Changed What = "changed"
	// Of marks alone: what is as it was, but under another label, or with other findings.
	Relabelled What = "renumbered"
	Judged     What = "judged anew"
)

// Comparison is all differences of two reviews.
type Comparison struct {
	Old, New *harness.Review
	Findings []Finding
	Fuses    []Item // fuses of their own and of ways
	Parts    []Item // all other parts, and what they stand in: battery, charging, places, runs
	Wires    []Item
	Budget   []Amount
	Purchase []Amount
	// Renumbered are the parts and wires whose label is another one: those on a loom
	// built to the old design are wrong.
	Renumbered []Renumbering
}

// Renumbering is a part or wire that is there in both, under two labels.
type Renumbering struct{ Kind, Name, Old, New string }

// Finding is a finding that came, went, changed its severity or acceptance, or
// whose figure got worse by more than figure.Drift.
type Finding struct {
	What  What
	Old   *finding.Finding // nil when added
	New   *finding.Finding // nil when removed
	Worse bool             // open as before, and its figure worse
}

// Item is a part or wire that differs.
type Item struct {
	What   What
	Kind   string  // "fuse", "relay", "feed"
	Name   string  // the part's name; of a wire, the part it serves
	Fields []Field // what differs; of an added or removed item, all that is known
	// OldRef and NewRef are the reference designation or wire number in each of
	// the circuits; "" = it has none there.
	OldRef, NewRef string
	// Concern orders the list: above 0 is a change towards risk (a larger fuse, a
	// thinner or longer wire), below 0 away from it.
	Concern float64
}

// Field is one property that differs; empty = not there. Lengths are metric: Item.Text has
// them in the units of a sheet.
type Field struct {
	Name, Old, New string
	oldM, newM     float64 // of a length, in metres; 0 = not there
}

// Amount is a figure that differs.
type Amount struct {
	What     What
	Name     string
	Old, New float64 // NaN = none
	Unit     string
	Concern  float64
}

// Reviews compares two reviews.
func Reviews(old, changed *harness.Review) *Comparison {
	c := &Comparison{Old: old, New: changed}
	c.Findings = Findings(old.Findings, changed.Findings)
	c.Fuses = c.items(fuses)
	c.Parts = c.items(func(x *circuit.Circuit) []thing { return append(parts(x), surroundings(x)...) })
	same, is := connections(old.Circuit), connections(changed.Circuit)
	maps.DeleteFunc(same, func(k string, _ bool) bool { return !is[k] })
	c.Wires = c.items(func(x *circuit.Circuit) []thing { return wires(x, same) })
	c.Budget = budgets(old.Budget, changed.Budget, changed.Design.Spoken().Parked)
	c.Purchase = purchases(old.Circuit, changed.Circuit)
	return c
}

// Same tells that nothing differs.
func (c *Comparison) Same() bool {
	return len(c.Findings)+len(c.Fuses)+len(c.Parts)+len(c.Wires)+len(c.Budget)+len(c.Purchase)+len(c.Renumbered) == 0
}

// NewFindings are the findings of the new review that the old one did not have,
// and those that have grown graver or worse or are no longer accepted.
func (c *Comparison) NewFindings() []*finding.Finding {
	var list []*finding.Finding
	for _, f := range c.Findings {
		if f.Rank() > 0 {
			list = append(list, f.New)
		}
	}
	return list
}

// Rank orders findings: what came by its severity, what went below zero. An
// accepted finding weighs nothing, and a worse figure as much as an advice.
func (f Finding) Rank() int {
	if f.Worse {
		return int(finding.Advice)
	}
	return weight(f.New) - weight(f.Old)
}

func weight(f *finding.Finding) int {
	if f == nil || f.Accepted != "" {
		return 0
	}
	return int(f.Severity)
}

// byConcern puts the gravest first; equals keep their order.
func byConcern[T any](list []T, concern func(T) float64) []T {
	sort.SliceStable(list, func(i, j int) bool { return concern(list[i]) > concern(list[j]) })
	return list
}
