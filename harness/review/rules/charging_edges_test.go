package rules

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
)

// By hand: at 4000 rpm the curve gives 24 + 4/3 = 25.33 A, half of which is shorted where 12.67 A are
// drawn, 181.1 W at 14.3 V; nothing else is on. The heat is 1.2 V times what is shorted.
func TestShuntAtHalf(t *testing.T) {
	for watts, want := range map[string]finding.Severity{"180 W": finding.Advice, "182 W": none} {
		p := passOf(t, shuntSurplus, shuntSurplus.Bad+
			"vehicle loads:\n  machine: {power: "+watts+", when: running}\nsituations:\n  riding: {engine: cruise}\n"+
			"loads:\n  tail lamp: {power: 5 W, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}\n")
		shuntSurplus.Run(p)
		says(t, watts, p.found, want)
	}
}

// cable is a pass over the example of a charging cable, changed.
func cable(t *testing.T, r *Rule, changes ...string) *Pass {
	t.Helper()
	return passOf(t, r, strings.NewReplacer(changes...).Replace(chargingCableDrop.Bad))
}

// By hand: 28 A through R lose 2 % of 12 V, 0.24 V, where R is 8.571 mΩ, warm: the cable is made longer by as
// much as is missing, once a little less and once a little more.
func TestChargingCableAtTwoPerCent(t *testing.T) {
	ohm := func(lengthM float64) float64 {
		p := cable(t, chargingCableDrop, "wire: {size: 6 mm²}", fmt.Sprintf("wire: {size: 6 mm², length: %.6f m}", lengthM))
		sum := 0.0
		for _, b := range p.chargingCable() {
			sum += p.laid.Ohm(b, 28)
		}
		return sum
	}
	one, two := ohm(1), ohm(2)
	atM := 1 + (0.24/28-one)/(two-one)
	for lengthM, want := range map[float64]finding.Severity{atM - 0.002: none, atM + 0.002: finding.Advice} {
		p := cable(t, chargingCableDrop, "wire: {size: 6 mm²}", fmt.Sprintf("wire: {size: 6 mm², length: %.6f m}", lengthM))
		chargingCableDrop.Run(p)
		says(t, fmt.Sprintf("%.3f m", lengthM), p.found, want)
	}
	p := cable(t, chargingCableDrop, "wire: {size: 6 mm²}", "wire: {size: 6 mm², length: 9 m}", "senses: machine", "senses: battery")
	chargingCableDrop.Run(p)
	says(t, "sensed at the battery", p.found, none)
}

// A blade E of 40 A bears 32 A for good and its rating until the machine is hot.
func TestChargingFuseAtItsShare(t *testing.T) {
	for _, k := range []struct {
		most, derating string
		want           finding.Severity
	}{
		{"31.9 A", "0 %", none}, {"32.1 A", "0 %", finding.Fault},
		{"40 A", "20 %", none}, {"40.1 A", "25 %", finding.Advice},
	} {
		p := cable(t, chargingFuseSmall, "6000 rpm: 28 A", "6000 rpm: "+k.most, "hot derating: 0 %", "hot derating: "+k.derating)
		bears := 0.0
		for _, b := range p.chargingCable() {
			if b.Kind == circuit.FuseBranch {
				bears = p.continuousA(b, 0)
			}
		}
		if bears != 32 {
			t.Fatalf("the fuse bears %g A", bears)
		}
		chargingFuseSmall.Run(p)
		says(t, k.most+" less "+k.derating, p.found, k.want)
	}
}

// A charging cable without a fuse is a danger, and advice where the maker of a land vehicle fitted it.
func TestUnfusedChargingCable(t *testing.T) {
	for _, k := range []struct {
		practice, fitted string
		want             finding.Severity
	}{
		{"motorcycle", "no", finding.Danger}, {"motorcycle", "yes", finding.Advice}, {"marine", "yes", finding.Danger},
	} {
		p := cable(t, unfusedConductor, "fed by: charge fuse", "fitted: "+k.fitted+", fed by: battery", "  charge fuse: {type: blade E, rating: 40 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}\n", "",
			"runs:", "practice: "+k.practice+"\nruns:")
		unfusedConductor.Run(p)
		says(t, k.practice+", fitted "+k.fitted, p.found, k.want)
	}
}

// flips finds, by halving, the figure at which a rule begins to say something.
func flips(low, high float64, said func(float64) bool) float64 {
	for range 24 {
		if mid := (low + high) / 2; said(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// A link's fuse is named where the fastest of its kind opens within five minutes, and not above: the
// flat battery's resistance is lowered until it is, and the fuse then takes 300 s.
func TestEqualisingAtFiveMinutes(t *testing.T) {
	pass := func(siemens float64) (*Pass, *circuit.Branch, float64) {
		p := passOf(t, linkEqualising, strings.NewReplacer("resistance: 12 mΩ, at: rear", fmt.Sprintf("resistance: %.6f mΩ, at: rear", 1000/siemens)).Replace(linkEqualising.Bad))
		fuse := part(t, p, "house end").Branches[0]
		rush := solve.Solve(p.c, p.usable[len(p.usable)-1].Situation, solve.Options{Rush: true, Changes: p.heldClosed(p.usable[len(p.usable)-1])})
		return p, fuse, math.Abs(rush.Amps(fuse))
	}
	at := flips(1, 60, func(siemens float64) bool {
		p, fuse, _ := pass(siemens)
		linkEqualising.Run(p)
		for _, f := range p.found {
			if f.Ref == fuse.Part.Ref {
				return true
			}
		}
		return false
	})
	_, fuse, amps := pass(at)
	if s := fuse.Device(0).Open(amps).FastS; math.Abs(s-300) > 1 {
		t.Errorf("named from %.2f A, which the fastest opens in %.1f s", amps, s)
	}
}

// A link is named that is left closed where the battery lasts less than four hours by it: the load is
// raised until it is.
func TestLeftClosedAtFourHours(t *testing.T) {
	pass := func(watts float64) *Pass {
		p := passOf(t, linkLeftClosed, linkLeftClosed.Bad)
		for _, b := range p.c.Branches {
			if b.Load != nil && b.Load.Load != nil && !b.Load.Standby {
				b.Load.PowerW = watts
			}
		}
		return p
	}
	said := func(watts float64) bool {
		p := pass(watts)
		linkLeftClosed.Run(p)
		return len(p.found) > 0
	}
	p := pass(flips(1, 400, said))
	var closed []*circuit.Branch
	for _, b := range p.c.Branches {
		if b.OfRelay() {
			closed = append(closed, b)
		}
	}
	least := math.Inf(1)
	for _, s := range p.usable {
		if s.Situation.Key == design.KeyOff && !budget.IsParked(s.Situation) {
			least = math.Min(least, p.hoursLinked(s.Situation, closed))
		}
	}
	if math.Abs(least-4) > 0.01 {
		t.Errorf("named from %.3f h", least)
	}
}
