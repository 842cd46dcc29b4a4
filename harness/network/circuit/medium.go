package circuit

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/bundle"
	"fusewright/harness/formula/conductor"
)

// Medium is the hottest place between the wires of a run in a situation, which a wire
// that carries next to nothing takes.
type Medium struct {
	Situation *design.Situation
	MediumC   float64
	heats     map[*Wire]bool
}

// Warms tells whether a wire is one of those that make the heat.
func (m *Medium) Warms(w *Wire) bool { return m.heats[w] }

// HottestMedium is that of the situation in which a run is hottest, by the rated
// currents of what is on; nil where no situation makes it hotter than aboveC. The loss
// below a cover counts by its current factor.
func (c *Circuit) HottestMedium(b *Bundle, aboveC float64) *Medium {
	use := c.newUse()
	if m := c.medium(b, nil, use.most(nil)); m == nil || m.MediumC <= aboveC {
		return nil // not even with all that is ever on at once
	}
	var hottest *Medium
	for _, s := range c.Design.Situations {
		m := c.medium(b, s, use.in(s, nil, make([]float64, len(c.Branches))))
		if m != nil && m.MediumC > aboveC && (hottest == nil || m.MediumC > hottest.MediumC) {
			hottest = m
		}
	}
	return hottest
}

func (c *Circuit) medium(b *Bundle, s *design.Situation, amps []float64) *Medium {
	var wires []bundle.Wire
	var of []*Wire
	cover := 1.0
	if b.Run.Cover != nil {
		cover = b.Run.Cover.CurrentFactor
	}
	for _, w := range b.Wires {
		if w.Spec.Type == nil || w.Spec.Size == nil {
			continue
		}
		in := conductor.InsulatedWire(w.Spec.Size, c.Design.Library.Insulation(w.Spec.Type.Material))
		goodA := w.Branch.TimeOn.pulse(in, RunAmbientC(b.Run), w.Spec.Type.ClassC).ForGoodA(amps[w.Branch.Index])
		wires = append(wires, bundle.Wire{Insulated: in, CurrentA: goodA / cover, LimitC: w.Spec.Type.ClassC})
		of = append(of, w)
	}
	laid, err := bundle.New(wires, bundle.Place{AmbientC: RunAmbientC(b.Run)})
	if err != nil || len(wires) < 2 {
		return nil
	}
	m := &Medium{Situation: s, MediumC: laid.Steady().MediumC, heats: map[*Wire]bool{}}
	most := 0.0
	loss := func(w bundle.Wire) float64 { return w.CurrentA * w.CurrentA * w.OhmPerM20 }
	for _, w := range wires {
		most = math.Max(most, loss(w))
	}
	for i, w := range wires {
		m.heats[of[i]] = most > 0 && loss(w) >= heatsShare*most
	}
	return m
}
