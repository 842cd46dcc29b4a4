package harness

import "fusewright/harness/study/outlook"

// Outlook answers what a reader asks who ticks what is on. It follows each ride once, so it is
// no stage of Assess.
func (r *Review) Outlook() *outlook.Planner { return outlook.New(r.Circuit, r.Corners, r.Budget) }
