package rules

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/review/finding"
)

// otherSystem tells whether a load is rated for another system voltage.
func (f *facts) otherSystem(l *design.Load) bool {
	v := f.d.NominalV()
	return l != nil && v > 0 && (l.RatedV >= ratedMostShare*v || l.RatedV > 0 && v >= ratedMostShare*l.RatedV)
}

// isOfOther says first, of a finding, that the load is the wrong one.
func (p *Pass) isOfOther(fin *finding.Finding, l *design.Load) {
	if p.otherSystem(l) {
		v := volts(p.d.NominalV())
		fin.First = true
		fin.Change = fmt.Sprintf("%s is rated %s on a %s system: fit one for %s, or feed it through a converter", l.Name, volts(l.RatedV), v, v)
	}
}
