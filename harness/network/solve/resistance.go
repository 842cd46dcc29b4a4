package solve

import (
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Resistance is what the resistance of a wire, contact, fuse or resistor is made of.
type Resistance struct {
	ColdOhm float64 // of a wire its conductor at 20 °C; of others as new
	TempC   float64 // of a wire's conductor
	Heat    float64 // by which a conductor at TempC has more; of others 1
	EndsOhm float64 // of a wire: both terminations and the connectors on its way
	Aged    bool    // EndsOhm is aged
	// Ends is the options' factor of EndsOhm, Factor that of a contact or fuse: aged, or hot.
	Ends, Factor float64

	builtOhm, warmOhm, newEndsOhm float64 // new at 20 °C, ends included; what warmth adds; ends as new
}

// Ohm is the resistance: ColdOhm·Heat·Factor + EndsOhm·Ends.
func (r Resistance) Ohm() float64 {
	return (r.builtOhm + r.warmOhm + r.EndsOhm*r.Ends - r.newEndsOhm) * r.Factor
}

// ResistanceOf is that of a branch under the options.
func ResistanceOf(b *circuit.Branch, opt *Options) Resistance {
	r := Resistance{ColdOhm: b.Ohm, builtOhm: b.Ohm, TempC: coldC, Heat: 1, Ends: 1, Factor: 1}
	if w := b.Wire; w != nil {
		r.ColdOhm, r.EndsOhm, r.Aged, r.Ends = b.Ohm-w.EndsOhm, EndsOhm(w, opt.Aged), opt.Aged, or(opt.ContactFactor, 1)
		r.newEndsOhm = w.EndsOhm
		if opt.WireTempC != nil {
			r.TempC = opt.WireTempC(w)
			r.Heat = conductor.AtTemperature(1, r.TempC)
			r.warmOhm = conductor.AtTemperature(w.ConductorOhm20, r.TempC) - w.ConductorOhm20
		}
		return r
	}
	if b.Kind == circuit.ContactBranch || b.Kind == circuit.FuseBranch {
		r.Factor = or(opt.ContactFactor, 1)
		if opt.BranchFactor != nil {
			r.Factor *= opt.BranchFactor(b)
		}
	}
	return r
}

// coldC is the temperature at which the resistance of conductors is given.
const coldC = 20

// EndsOhm is both terminations of a wire and the connectors on its way, new or aged.
func EndsOhm(w *circuit.Wire, aged bool) float64 {
	ohm := w.EndsOhm
	if aged {
		ohm += ageing(w.FromEnd) + ageing(w.ToEnd)
		for _, p := range w.Poles {
			ohm += ageing(p.Contact)
		}
	}
	return ohm
}

// ageing is by how much a contact's resistance rises in use.
func ageing(t *library.Terminal) float64 {
	if t == nil || t.AgedOhm <= 0 {
		return 0
	}
	return t.AgedOhm - t.ContactOhm
}
