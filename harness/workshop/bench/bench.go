// Package bench works out the bench test of a harness: what an installer should
// read before power, at first power and in each situation, with bounds and with
// what they rest on. The readings come from solutions of the circuit; nothing
// here draws or prints pages.
//
// Voltages in use are stated as how far they lie below the battery's posts,
// which are read first: a battery that is not as full as assumed, or a
// regulator set otherwise, then still gives a fair test.
package bench

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
)

// Kind is what a section tests.
type Kind string

// The kinds of sections, in the order of the test.
const (
	Continuity Kind = "continuity"
	Fuses      Kind = "fuses"
	Isolation  Kind = "isolation"
	Switches   Kind = "switches" // of several positions
	Resistors  Kind = "resistors"
	Coils      Kind = "coils"
	Timed      Kind = "timed relays" // and those that latch
	Sensing    Kind = "sensing relays"
	Chargers   Kind = "chargers"
	Strings    Kind = "batteries in series"
	Polarity   Kind = "polarity"
	FirstPower Kind = "first power"
	InUse      Kind = "in use" // a situation with the key on, or with something on
	Parked     Kind = "parked" // key off and nothing on
	Live       Kind = "live"   // the engine running, at idle and fast idle
	Charging   Kind = "chargers in use"
)

// Test is the whole bench test.
type Test struct {
	Cautions []string
	Tools    []string
	Bounds   []string // how the bounds are made
	Sections []*Section
	// Missing says what could not be worked out, or rests on an assumption.
	Missing []string
}

// Section is one part of the test.
type Section struct {
	Number    int
	Kind      Kind
	Title     string
	Situation *design.Situation // of InUse and Parked; nil otherwise
	Setup     []string          // what to do before the first reading
	Groups    []*Group
	Trouble   string // why there are no readings; "" when there are
	Wrong     []Hint // given with the first section of each kind
	WrongIn   int    // the number of that section
}

// Group is readings of one sort.
type Group struct {
	Title  string // "" when the section has one group only
	Checks []*Check
}

// Check is one reading, or one thing to look at when Text is set.
type Check struct {
	Number   string // "3.2"
	Ref      string // of the part or wire
	Name     string
	Where    string // between which points, or what stands there
	Quantity quantity.Dimension
	// Nominal, Low and High are in base units; NaN = no such bound. With Below
	// they are how far the reading lies below the battery voltage read before.
	Nominal, Low, High float64
	Below              bool
	Supply             *circuit.Node // with Below: the post against which it is
	// ShowsV is what the meter shows at the nominal battery voltage, in volts,
	// when Below is set.
	ShowsV float64
	// PlainHigh is the most that a two-wire meter may show, in ohms, where Low to
	// High are finer than such a meter reads; zero when they are not.
	PlainHigh float64
	SetA      float64         // current limit of the supply, in amperes; zero when there is none
	Text      string          // what must be seen instead of a number
	Basis     string          // where the bounds come from
	Probe     *Probe          // where the meter is; nil = nowhere in the circuit
	Holder    *circuit.Branch // of the rating printed on a fuse: what holds it
}

// Hint is what a wrong reading usually means. All hints are common practice,
// without a source.
type Hint struct{ Reading, Means string }

// Checks lists all readings of a section.
func (s *Section) Checks() []*Check {
	var out []*Check
	for _, g := range s.Groups {
		out = append(out, g.Checks...)
	}
	return out
}

// Make works out the bench test of a circuit. Situations that cannot be solved
// keep their section, with the trouble in place of readings.
func Make(c *circuit.Circuit) *Test {
	m := &maker{c: c, d: c.Design, plan: solve.Prepare(c), tol: corner.TolerancesOf(c.Design)}
	t := &Test{Cautions: cautions(c.Design), Tools: m.tools(), Bounds: m.boundsText()}
	t.Sections = append(t.Sections, m.continuity(), m.fuses(), m.isolation())
	for _, more := range []func() []*Section{m.switches, m.resistors, m.coils, m.timedRelays, m.sensing, m.chargers, m.strings, m.polarity, m.firstPower, m.situations} {
		t.Sections = append(t.Sections, more()...)
	}
	first := map[Kind]int{}
	for i, s := range t.Sections {
		s.Number = i + 1
		if first[s.Kind] == 0 {
			first[s.Kind] = s.Number
			s.Wrong = hints[s.Kind]
		}
		s.WrongIn = first[s.Kind]
		for k, check := range s.Checks() {
			check.Number = fmt.Sprintf("%d.%d", s.Number, k+1)
		}
	}
	t.Missing = m.missing
	m.assumed(t)
	return t
}

// maker holds what the sections share.
type maker struct {
	c       *circuit.Circuit
	d       *design.Design
	plan    *solve.Plan
	tol     *corner.Tolerances
	missing []string
	// first are the fuses that stay out longest: see firstFuses.
	first    []*circuit.Branch
	supplies []*circuit.Part // converters whose output a pass reads
	asked    []*Check        // currents of the passes so far: see anew
	// postsV is the voltage of the supply across the posts while a pass on it is
	// being solved; 0 = the battery.
	postsV float64
	out    *circuit.Branch // a fuse that is out for a pass; nil = all are in
	// taking tells that a pass on chargers in use is being solved: batteries drawn down before.
	taking bool
}

// assumed says which resistances of the circuit rest on usual values.
func (m *maker) assumed(t *Test) {
	seen := map[string]int{}
	var order []string
	for _, b := range m.c.Branches {
		if b.Assumed == "" {
			continue
		}
		if seen[b.Assumed] == 0 {
			order = append(order, b.Assumed)
		}
		seen[b.Assumed]++
	}
	for _, what := range order {
		t.Missing = append(t.Missing, fmt.Sprintf("Assumed by common practice for want of data (%s): %s.",
			wording.Count(seen[what], "place", "places"), what))
	}
}
