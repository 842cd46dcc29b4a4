// Package finding is what the rules say of a design: a neutral record that
// reports, drawings and documents print. It holds no rule and no physics.
package finding

import (
	"cmp"
	"slices"

	"fusewright/harness/design/figure"
	"fusewright/harness/design/problem"
)

// Severity orders findings.
type Severity int

// The severities, each defined before any rule takes it.
const (
	// Advice: safe as it is, but worse than the trade would build it, or a
	// number is missing that the review needs.
	Advice Severity = iota + 1
	// Fault: it will not work as described, or a part runs outside its rating.
	Fault
	// Danger: it can burn, stay live, or leave a critical load dead.
	Danger
)

// String is the word for a severity.
func (s Severity) String() string {
	switch s {
	case Danger:
		return "danger"
	case Fault:
		return "fault"
	case Advice:
		return "advice"
	}
	return "none"
}

// SeverityOf is the severity of a word; 0 for none.
func SeverityOf(word string) Severity {
	for s := Advice; s <= Danger; s++ {
		if s.String() == word {
			return s
		}
	}
	return 0
}

// Number is one figure of a finding, with its unit as printed.
type Number struct {
	Name  string
	Value float64
	Unit  string
}

// Finding is one thing wrong or worth saying.
type Finding struct {
	// Number is the same on every paper, in drawings, texts and JSON; findings that are
	// printed as one share it. 0 = not numbered.
	Number    int
	Rule      string // the rule's name: "unfused-conductor"
	Severity  Severity
	Part      string // the part's name in the design, or the wire's number
	Ref       string // reference designation or wire number
	Pos       problem.Pos
	What      string   // one sentence with the numbers in it
	Numbers   []Number // value, limit, margin, ...
	Situation string   // where it is worst; "" when it holds in all
	Why       string   // why it matters
	Change    string   // what to change
	Source    string   // of the limit
	Accepted  string   // reason when the design accepts it; "" otherwise

	// Wire is what the wire is to the part, "feed" or "return"; "" when the finding
	// is about the part itself. With rule and part it tells which finding it is,
	// whatever numbers the wires have.
	Wire   string
	Figure figure.Figure // what decides it
	// LimitSays is what a limit of next to nothing comes of; "" = the figure says it.
	LimitSays string
	// Short is what it comes to, as one would say it; "" = its figures say it.
	Short string
	// Unsourced is how much of what it is judged by has no source.
	Unsourced Unsourced
	// Cause is the same for findings of the rule that one thing causes, such as a
	// fuse too large for several wires; "" = it stands alone.
	Cause string
	Known bool // a baseline has it already
	// Meant is what a figure of the design may have been meant to be; nil = nothing is asked.
	Meant *Meant
	// Leave tells that the trade leaves it so: no size or rating is chosen against it.
	Leave bool
	// First tells that the part itself is the wrong one: what else is said of it matters less.
	First bool
	// Live tells that it leaves something live with the key off: a check fails by it
	// as by a fault, whatever its severity.
	Live bool
	// Covers are findings of other rules with the same cause. They need no word of
	// their own while this one is open; when it is accepted they stand in the list.
	Covers []*Finding
	// Behind names the loads that are never on among what it covers, at the end of What
	// too; "" for none.
	Behind string
	// Uses are the terms of a figure that is a contact's use: what draws through it over its rating for that.
	Uses []Use
}

// Use is what draws through a contact.
type Use struct {
	Branch  int // of what draws, by its index in the circuit
	Kind    string
	RatingA float64 // of the contact for it
}

// Meant is a value in place of one that is hard to believe.
type Meant struct {
	Of    Of
	Value float64 // W at the load's rated voltage, m, A at the highest speed, Ω or V
	Text  string  // "35 W"
}

// Of is which figure of the part it is.
type Of string

// The figures that are asked about.
const (
	Power      Of = "power"
	Length     Of = "length"
	Output     Of = "output"
	Resistance Of = "resistance"
	Regulated  Of = "regulated"
)

// All is a list with what its findings cover.
func All(list []*Finding) []*Finding {
	var all []*Finding
	for _, f := range list {
		all = append(append(all, f), f.Covers...)
	}
	return all
}

// Sort puts the most severe first, accepted ones last, then by place and rule.
func Sort(list []*Finding) {
	accepted := func(f *Finding) int { return min(len(f.Accepted), 1) }
	slices.SortStableFunc(list, func(a, b *Finding) int {
		return cmp.Or(cmp.Compare(accepted(a), accepted(b)), cmp.Compare(b.Severity, a.Severity), cmp.Compare(later(a), later(b)),
			cmp.Compare(a.Pos.Line, b.Pos.Line), cmp.Compare(a.Pos.Col, b.Pos.Col),
			cmp.Compare(a.Rule, b.Rule), cmp.Compare(a.Ref, b.Ref))
	})
}

// later is 0 for what is said first, else 1.
func later(f *Finding) int {
	if f.First {
		return 0
	}
	return 1
}

// Count counts open findings of a severity.
func Count(list []*Finding, s Severity) int {
	n := 0
	for _, f := range list {
		if f.Accepted == "" && f.Severity == s {
			n++
		}
	}
	return n
}
