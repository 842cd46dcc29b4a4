package finding

import (
	"cmp"
	"math"
	"slices"
)

// Groups gathers findings that are printed as one: those of one rule, severity and
// cause that stand alike, accepted for the same reason, known or open. Each group
// holds the places in the list of its findings, the worst first; the groups are in
// the order in which the list has the worst of each.
func Groups(list []*Finding) [][]int {
	type key struct {
		rule, cause, accepted string
		severity              Severity
		known                 bool
	}
	var out [][]int
	at := map[key]int{}
	for i, f := range list {
		k := key{f.Rule, f.Cause, f.Accepted, f.Severity, f.Known}
		n, met := at[k]
		if !met || f.Cause == "" {
			at[k], n = len(out), len(out)
			out = append(out, nil)
		}
		out[n] = append(out[n], i)
	}
	for _, g := range out {
		slices.SortStableFunc(g, func(a, b int) int { return Compare(list[a], list[b]) })
	}
	slices.SortFunc(out, func(a, b []int) int { return cmp.Compare(a[0], b[0]) })
	return out
}

// Enumerate numbers findings from 1, in the order of the list; those of a group share one.
func Enumerate(list []*Finding) {
	for n, g := range Groups(list) {
		for _, i := range g {
			list[i].Number = n + 1
		}
	}
}

// Compare puts the worse of two findings of one rule first: by severity, then the
// one at the cause itself, then by figure. Equals go by what the design calls them,
// not by where they stand in the file.
func Compare(a, b *Finding) int {
	if a.Severity != b.Severity {
		return cmp.Compare(b.Severity, a.Severity)
	}
	if leads := a.Cause != "" && a.Cause == a.Part; leads != (b.Cause != "" && b.Cause == b.Part) {
		return map[bool]int{true: -1, false: 1}[leads]
	}
	if x, y := a.Figure.Beyond(), b.Figure.Beyond(); !alike(x, y) {
		return cmp.Compare(y, x)
	}
	return cmp.Or(cmp.Compare(a.Part, b.Part), cmp.Compare(a.Wire, b.Wire), cmp.Compare(a.Ref, b.Ref))
}

// alike tells whether two numbers differ by no more than the rounding of the
// arithmetic.
func alike(a, b float64) bool {
	return a == b || math.Abs(a-b) <= 1e-9*math.Max(math.Abs(a), math.Abs(b))
}
