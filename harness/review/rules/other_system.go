package rules

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/review/finding"
)

// otherSystem tells whether a load is rated for another system voltage.
func (f *facts) otherSystem(l *design.Load) bool {
	if l == nil {
		return false
	}
	v := f.d.NominalOf(l)
	return v > 0 && (l.RatedV >= ratedMostShare*v || l.RatedV > 0 && v >= ratedMostShare*l.RatedV)
}

// isOfOther says first, of a finding, that the load is the wrong one.
func (p *Pass) isOfOther(fin *finding.Finding, l *design.Load) {
	if p.otherSystem(l) {
		v := volts(p.d.NominalOf(l))
		fin.First = true
		fin.Change = fmt.Sprintf("%s is rated %s on a %s system: fit one for %s, or feed it %s", l.Name, volts(l.RatedV), v, v, p.fedOtherwise(l))
	}
}

// fedOtherwise is where a load of another voltage would be fed right.
func (f *facts) fedOtherwise(l *design.Load) string {
	if l.Converter != nil && !(l.RatedV >= ratedMostShare*f.d.NominalV() || f.d.NominalV() >= ratedMostShare*l.RatedV) {
		return "before the converter"
	}
	return "through a converter"
}
