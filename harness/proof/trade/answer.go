package main

import (
	"fmt"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/sizing"
	"fusewright/library"
)

// answer is what the program chooses for a job and what is left to object.
type answer struct {
	job                       job
	stubMm2, feedMm2, backMm2 float64
	fuseA                     float64
	fuseType                  string
	bad                       []string // dangers and faults
}

// answer sizes a job and checks it.
func (j job) answer() (answer, error) {
	a := answer{job: j}
	d, err := design.Read(j.ID+".yaml", []byte(j.yaml()), library.Default())
	if err != nil {
		return a, fmt.Errorf("%s: %w", j.ID, err)
	}
	if _, err := sizing.Complete(d); err != nil {
		return a, fmt.Errorf("%s: %w", j.ID, err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		return a, fmt.Errorf("%s: %w", j.ID, err)
	}
	for _, w := range r.Circuit.Wires {
		area := 0.0
		if w.Spec.Size != nil {
			area = w.Spec.Size.AreaMm2
		}
		switch {
		case w.Role == circuit.ReturnWire:
			a.backMm2 = area
		case a.stubMm2 == 0:
			a.stubMm2 = area
		default:
			a.feedMm2 = area
		}
	}
	for _, f := range d.Fuses {
		if f.Rating != nil {
			a.fuseA = f.Rating.RatingA
		}
		if f.Type != nil {
			a.fuseType = f.Type.Name
		}
	}
	a.bad = badOf(r.Findings)
	return a, nil
}

// badOf lists dangers and faults in short.
func badOf(list []*finding.Finding) []string {
	var out []string
	for _, f := range list {
		if f.Severity >= finding.Fault && f.Accepted == "" {
			out = append(out, f.Severity.String()+" "+f.Rule+": "+f.What)
		}
	}
	return out
}

// AWG sizes fall a little below or above the metric ones.
const below, above = 0.03, 0.06

func (a answer) wires() bool {
	feed, back := a.feedMm2, a.backMm2
	if a.job.Published { // an AWG size counts as the standard size that it falls on, as the printed one does
		feed, back = step(sizesMm2, feed, 0), step(sizesMm2, back, 0)
	}
	b := a.job.WireMm2
	return b.holds(feed, below, above) && b.holds(back, below, above) && a.stubMm2 >= a.feedMm2*(1-below)
}

func (a answer) fuse() bool { return !a.job.FuseA.given() || a.job.FuseA.holds(a.fuseA, 0, 0) }

// met tells that wires and fuse lie in range and, of a usual job, that nothing is left
// to object.
func (a answer) met() bool { return a.wires() && a.fuse() && (a.job.Published || len(a.bad) == 0) }

func (a answer) String() string {
	mark := func(ok bool) string {
		if ok {
			return " "
		}
		return "!"
	}
	return fmt.Sprintf("%s stub %.3g feed %.3g return %.3g mm² (%s) %s %g A %s (%s) %s", mark(a.wires()), a.stubMm2, a.feedMm2,
		a.backMm2, a.job.WireMm2, mark(a.fuse()), a.fuseA, a.fuseType, a.job.FuseA, strings.Join(a.bad, "\n        "))
}
