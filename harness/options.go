package harness

import (
	"fusewright/harness/design"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
)

// Options are what the solver took for the nominal solution of one of the
// design's situations, wire temperatures included, so that a netlist or another
// solver meets the very same network.
func (r *Review) Options(s *design.Situation) solve.Options {
	for i, known := range r.Design.Situations {
		if known == s && r.Corners != nil {
			return r.Corners.Options(i, corner.Nominal)
		}
	}
	return solve.Options{}
}
