package diagnosis

import (
	"math"
	"slices"
)

// How far explanations are sought.
const (
	refined   = 10  // single faults that are worked out on the whole network
	paired    = 3   // of them, that get a second one
	pairs     = 5   // second faults that are worked out, of each
	mostAlike = 40  // at most, where many are about as likely
	alikeLogP = 2   // by the natural logarithm
	poorLogP  = 30  // and from how far below a sound circuit's evidence, for each fault of it
	poorSigma = 2.5 // from how many standard deviations of χ² on one fault does not do
)

// explain lists explanations, likeliest first; the first return is the sound circuit's.
func (m *model) explain() (sound *fit, list []*fit) {
	sound = m.weigh(m.solved(nil))
	m.soundPred = sound.pred
	if sound.chol != nil {
		m.expected = -0.5*float64(len(m.sensors)) - 0.5*sound.logDet
	} else {
		return sound, nil
	}
	suspects := m.suspects()
	singles := m.worked(sound, sound, suspects, refined)
	list = append(singles, m.misread(sound)...)
	best(list)
	if len(list) > 0 && m.poor(list[0]) {
		tops := list[:min(paired, len(list))]
		for _, f := range slices.Clone(tops) {
			if len(f.faults) == 1 && f.faults[0].kind != wrongReading && f.tried && f.chol != nil {
				list = append(list, m.worked(sound, f, suspects, pairs)...)
				list = append(list, m.misread(f)...)
			}
		}
	}
	best(list)
	return sound, list
}

// worked are the suspects on top of a base, the likeliest of them worked out on the whole network.
func (m *model) worked(sound, base *fit, suspects []*fault, most int) []*fit {
	list := m.screen(base, suspects)
	best(list)
	top := math.Inf(-1)
	if len(list) > 0 {
		top = list[0].logP
	}
	for i, f := range list {
		if i >= most && (i >= mostAlike || f.logP < top-alikeLogP) {
			break
		}
		if g := m.refine(sound, f.faults); g != nil {
			list[i] = g
		}
	}
	best(list)
	return list
}

// poor tells that an explanation leaves more than the meter and a sound circuit do.
func (m *model) poor(f *fit) bool {
	n := float64(len(m.sensors))
	return f.chi2 > n+poorSigma*math.Sqrt(2*n) || f.logP < m.expected-poorLogP*float64(len(f.faults))
}

// toldApart is from which distance, in standard deviations, readings can tell two explanations apart:
// nearer, the wrong one of them agrees better one time in six or oftener.
const toldApart = 2.0

// alike tells whether two explanations expect the same of every reading, as near as the meter can tell.
func alike(a, b *fit) bool {
	if a.point == nil || b.point == nil || a.chol == nil {
		return false
	}
	d := make([]float64, len(a.pred))
	for i := range d {
		d[i] = a.pred[i] - b.pred[i]
	}
	return a.product(d, d) < toldApart*toldApart
}
