package report

import (
	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
)

// ModelState is a situation solved in one state of its tolerances. The lists go by the index
// of node and branch.
type ModelState struct {
	State     string     `json:"state"` // "nominal", "weak source, aged contacts", ...
	Status    string     `json:"status"`
	Why       string     `json:"why,omitempty"`
	NodeV     []*float64 `json:"node_v,omitempty"`
	BranchA   []*float64 `json:"branch_a,omitempty"`
	BranchOhm []*float64 `json:"branch_ohm,omitempty"` // as used: wires warm, contacts aged
	// BranchC is the temperature of a wire's conductor; null = no wire, or no steady temperature.
	BranchC []*float64 `json:"branch_c,omitempty"`
	// Branch says of a contact whether it is "closed" or "open", of a load whether it is "on" or
	// "off", of the charging system whether it is "at its limit"; "" of the others.
	Branch []string `json:"branch,omitempty"`
}

// modelStates are all states of a situation, by its place in the design.
func modelStates(r *harness.Review, at int) (list []ModelState) {
	if r.Corners == nil {
		return nil
	}
	for state, results := range r.Corners.Results {
		x := results[at]
		row := ModelState{State: corner.State(state).String(), Status: string(x.Solution.Status), Why: x.Why}
		if x.Usable() {
			s := x.Solution
			row.NodeV, row.BranchA, row.BranchOhm = exactAll(s.NodeV), exactAll(s.BranchA), exactAll(s.Ohm)
			for _, b := range r.Circuit.Branches {
				row.Branch = append(row.Branch, branchState(s, b))
				if b.Wire == nil {
					row.BranchC = append(row.BranchC, nil)
				} else {
					row.BranchC = append(row.BranchC, exact(x.WireC[b.Wire.Index]))
				}
			}
		}
		list = append(list, row)
	}
	return list
}

func branchState(s *solve.Solution, b *circuit.Branch) string {
	switch {
	case b.Kind == circuit.ContactBranch && s.Closed[b.Index]:
		return "closed"
	case b.Kind == circuit.ContactBranch:
		return "open"
	case b.Kind == circuit.LoadBranch && s.LoadOn[b.Index]:
		return "on"
	case b.Kind == circuit.LoadBranch:
		return "off"
	case b.Kind == circuit.ChargerBranch && s.Limited:
		return "at its limit"
	}
	return ""
}
