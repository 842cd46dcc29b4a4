package solve

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// Options choose the state in which a circuit is solved. The zero value is the
// nominal one: full battery, wires at 20 °C, new contacts, rated loads.
type Options struct {
	// WireTempC gives each conductor's temperature; nil = 20 °C. It acts on the
	// conductor alone, not on the terminations.
	WireTempC func(*circuit.Wire) float64

	Discharged float64 // share taken out of the battery, 0 = full .. 1 = empty
	BatteryV   float64 // EMF instead of the chemistry's; 0 = chemistry; negative = posts swapped
	BatteryOhm float64 // inner resistance instead of the circuit's; 0 = circuit's
	// BanksDischarged and BankV are Discharged and BatteryV of further batteries.
	BanksDischarged, BankV float64
	BankCharge             map[*design.Bank]float64 // how full further batteries are, in place of what the situation says
	BatteryK               float64                  // by how much batteries are warmer than 25 °C

	// After is the state before: relays and chargers begin as they are in it, so that one that
	// closes at one voltage and opens at another stays between. Nil = at rest.
	After *Solution

	Night bool // solar panels give nothing

	RegulatedV float64 // instead of the design's; 0 = design's
	NoCharging bool    // the charging system gives nothing
	// Pulled tells of coils that had pulled in before: they hold down to their drop-out voltage.
	Pulled func(coil *circuit.Branch) bool
	// ColdCharging takes the charging output without its hot derating: the
	// strongest source, where that is the worse one.
	ColdCharging bool

	Fans Fans // how motors behind dropping resistors turn

	// LoadFactor multiplies the power of a load branch; nil = 1.
	LoadFactor func(*circuit.Branch) float64
	// Aged takes the terminals' aged contact resistance where it is known.
	Aged bool
	// ContactFactor multiplies the resistance of relay contacts, switches,
	// fuses with their holders, and known terminations; 0 = 1.
	ContactFactor float64
	// BranchFactor multiplies the resistance of a relay contact, switch or fuse,
	// on top of ContactFactor; nil = 1.
	BranchFactor func(*circuit.Branch) float64
	// PullInFactor multiplies pull-in and release voltages (a hot coil needs
	// more); 0 = 1.
	PullInFactor float64

	// Rush has further batteries take charge as in the first minutes, along their inner resistance
	// alone: what a link carries when it closes on a flat battery.
	Rush bool

	// DiodesConduct makes every diode a straight line through its knee, as if it pointed with
	// its feed: what a short through it sees, whatever flows without one.
	// and the output of every converter one through what it holds, whatever it is good for.
	DiodesConduct bool

	// Drawn is taken out of nodes besides what the circuit draws, whatever their voltage: a starter.
	Drawn []Draw

	// Changes are faults and overrides that hold from the start.
	Changes []Change
	// AcceptFolded returns the operating point even where constant-power loads
	// have collapsed into their resistive fold: for fault studies, where a
	// load starved by a fault is the expected result.
	AcceptFolded bool
}

// Fans is how motors behind dropping resistors turn.
type Fans int

// The ways.
const (
	Slow   Fans = iota // as fans or pumps: less torque at less speed
	Steady             // with the torque, and so the current, of their rated speed at any
	Stand              // not at all
)

// Change is a difference from the design: exactly one of Open, Closed, a new
// Ohm, or a short between two nodes. Make it with the functions below.
type Change struct {
	Branch *circuit.Branch // nil for a short
	Open   bool            // the branch is broken
	Closed bool            // the contact is welded
	A, B   *circuit.Node   // of a short
	Ohm    float64         // of a short, or the branch's new resistance
}

// OpenBranch breaks a branch: wire off, fuse open, contact stuck open, load gone.
func OpenBranch(b *circuit.Branch) Change { return Change{Branch: b, Open: true} }

// CloseBranch welds a contact, or closes one by hand.
func CloseBranch(b *circuit.Branch) Change { return Change{Branch: b, Closed: true} }

// SetOhm gives a resistive branch another resistance; it leaves contacts as
// they are. Of a battery or charging branch it is the inner resistance.
func SetOhm(b *circuit.Branch, ohm float64) Change { return Change{Branch: b, Ohm: ohm} }

// Short joins two nodes by a resistance.
func Short(a, b *circuit.Node, ohm float64) Change { return Change{A: a, B: b, Ohm: ohm} }

// or is v, or a fallback when v is zero.
func or(v, fallback float64) float64 {
	if v == 0 {
		return fallback
	}
	return v
}
