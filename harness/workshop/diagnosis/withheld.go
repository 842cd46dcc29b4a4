package diagnosis

import (
	"math"
	"slices"
)

// Withheld is a figure of the design that the readings would give, were there nothing against them.
type Withheld struct {
	What string `json:"what"`
	Why  string `json:"why"`
}

// nothingSigma is how far above the meter's own error a reading of zero should have been to be no measurement.
const nothingSigma = 3

// unresolved are the explanations that are still to be reckoned with where something is wrong that
// the network tells of.
func unresolved(d *Diagnosis, list []*candidate) (live []*candidate) {
	if d.Sound >= criedShare && d.Failed <= len(d.Certain) {
		return nil
	}
	for _, c := range list {
		if c.share >= leastShare {
			live = append(live, c)
		}
	}
	return live
}

// doubt says why a figure is not to be taken from the readings; "" = nothing against it. moves is
// how each sensor moves with it.
func (m *model) doubt(s *spread, moves []float64, f *fit, live []*candidate) string {
	for i, o := range m.sensors {
		if moves[i] != 0 && o.y == 0 && math.Abs(f.pred[i]) > nothingSigma*noise(m.meter, o.gain, f.pred[i]) {
			return "reading " + o.name() + " shows nothing"
		}
	}
	if why := m.wrongOf(live, func(i int) bool { return moves[i] != 0 }); why != "" {
		return why
	}
	if len(live) > 0 && m.poor(f) {
		return "nothing that was tried explains all readings"
	}
	if !s.load {
		return ""
	}
	way := m.c.Needed(s.branch)
	for _, c := range live {
		for _, x := range c.faults {
			if x.branch != nil && (x.branch == s.branch || way[x.branch.Index]) {
				return m.ref(x) + ", on which it hangs, may be at fault"
			}
		}
	}
	return ""
}

// wrongOf says which reading of some may itself be wrong; "" = none.
func (m *model) wrongOf(live []*candidate, of func(sensor int) bool) string {
	for _, c := range live {
		i := slices.IndexFunc(c.faults, func(x *fault) bool { return x.kind == wrongReading && of(x.reading) })
		if i >= 0 {
			return m.ref(c.faults[i]) + " may itself be wrong"
		}
	}
	return ""
}
