package protection

import (
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/study/fault"
)

// Pair is a device against one above it, nearer the source.
type Pair struct {
	Above *circuit.Branch
	// Selectivity is over every current up to the greatest short behind the
	// lower device.
	fusing.Selectivity
	// Shorts compares at the shorts that the circuit can have on the wires that
	// the lower device protects, greatest and least of each; the first at which
	// the upper may open first, else the first that could not be told, else the
	// first.
	Shorts fusing.Selectivity
	// At is that short; nil when there is none behind the device.
	At *fault.Short
	// Inverted is the first short for which the upper device must have opened
	// while the lower one may still be closed: latest against latest. The bands
	// of fuse-links are so wide that few pairs are selective edge against edge.
	Inverted   *fault.Short
	InvertedA  float64
	DownS, UpS float64 // the latest openings there
}

// invert notes a short at which the upper device opens first.
func (p *Pair) invert(sh *fault.Short, down, up fusing.Device, amps float64) {
	if p.Inverted != nil {
		return
	}
	d, u := down.Open(amps), up.Open(amps)
	if u.SlowKnown && u.SlowS <= d.SlowS {
		p.Inverted, p.InvertedA, p.DownS, p.UpS = sh, amps, d.SlowS, u.SlowS
	}
}

// inverted looks for the first short at which a device above opens first.
func (f *Fuse) inverted(up *circuit.Branch, faults *fault.Study) Pair {
	p := Pair{Above: up}
	d, _ := faults.Device(up)
	f.eachThrough(up, faults, func(sh *fault.Short, amps float64) { p.invert(sh, f.Device, d, amps) })
	return p
}

// compareAbove compares the device with one above it at every current, and at
// every short.
func (f *Fuse) compareAbove(p *Pair, faults *fault.Study) {
	d, _ := faults.Device(p.Above)
	key := pairKey{kindOf(f.Device), kindOf(d), f.FaultA}
	p.Selectivity = faults.Wires.Kept(key, func() any {
		return fusing.Selective(f.Device, d, f.FaultA)
	}).(fusing.Selectivity)
	p.Shorts.Known = true
	f.eachThrough(p.Above, faults, func(sh *fault.Short, amps float64) {
		p.at(sh, fusing.SelectiveAt(f.Device, d, amps))
	})
}

// eachThrough goes through the currents of shorts that pass the device and one
// above it.
func (f *Fuse) eachThrough(up *circuit.Branch, faults *fault.Study, do func(*fault.Short, float64)) {
	for _, w := range f.Wires {
		for _, sh := range faults.OfWire(w.Wire) {
			for state := range sh.Results {
				if amps := throughBoth(&sh.Results[state], f.Branch, up); sh.Fed && amps > 0 {
					do(sh, amps)
				}
			}
		}
	}
}

// throughBoth is the current of a short that passes two devices in series; zero
// when neither clears it, as where another stands between the lower and the short.
func throughBoth(r *fault.Result, down, up *circuit.Branch) float64 {
	if r.Device == down || r.Device == up {
		return r.DeviceA
	}
	return 0
}

// at takes in one short.
func (p *Pair) at(sh *fault.Short, s fusing.Selectivity) {
	if p.At == nil || rank(s) > rank(p.Shorts) {
		p.At, p.Shorts = sh, s
	}
}

// rank orders comparisons: not selective for sure, then not known, then selective.
func rank(s fusing.Selectivity) int {
	switch {
	case !s.Selective && s.Known:
		return 2
	case !s.Selective:
		return 1
	}
	return 0
}
