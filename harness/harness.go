// Package harness takes a design through the whole chain: circuit, solution of
// each situation, charging budget and findings. It is the way in for commands
// and documents; each stage is a package of its own below this one.
package harness

import (
	"fusewright/harness/budget"
	"fusewright/harness/circuit"
	"fusewright/harness/design"
	"fusewright/harness/finding"
	"fusewright/harness/solve"
)

// Review is everything known of a design after all stages.
type Review struct {
	Design    *design.Design
	Circuit   *circuit.Circuit
	Solutions []*solve.Solution // one per situation, in design order
	Budget    *budget.Budget
	Findings  []*finding.Finding // sorted, accepted ones included
}
