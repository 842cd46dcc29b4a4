package harness

import "fusewright/harness/study/outlook"

// Outlook answers what a reader asks who ticks what is on. It is made when it is first asked
// for, and follows each ride once, so it is no stage of Assess.
func (r *Review) Outlook() *outlook.Planner { return r.outlook() }
