package harness

import "fusewright/harness/study/together"

// Together works out which accessories may run at once. It is asked for by the
// charging budget alone and can take longer than all rules, so it is no stage
// of Assess.
func (r *Review) Together() *together.Plan {
	return together.Compute(r.Circuit, r.Solutions, r.Budget)
}
