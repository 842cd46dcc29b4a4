package sizing

import (
	"slices"

	"fusewright/harness/circuit"
	"fusewright/harness/corner"
	"fusewright/harness/fault"
	"fusewright/harness/finding"
	"fusewright/harness/protection"
	"fusewright/harness/rules"
	"fusewright/harness/solve"
	"fusewright/harness/warm"
)

// judged are the rules about sizes, ratings and types: what sizing answers for.
var judged = map[string]bool{
	"block-overload": true, "block-way-overload": true, "chafing-run": true,
	"feed-fuse-under-branches": true, "flexing-run": true, "fuse-breaking-capacity": true,
	"fuse-grading": true, "fuse-inrush": true, "fuse-not-selective": true, "fuse-over-wire": true,
	"fuse-type-in-block": true, "fuse-under-load": true, "fuse-voltage": true,
	"fuse-wire-curve": true, "insulation-class": true, "load-undervoltage": true,
	"no-terminal-fits": true, "plug-overload": true, "plug-ways": true, "relay-coil-voltage": true, "relay-contact-overload": true,
	"relay-too-hot": true, "return-below-fuse": true, "shared-return-thin": true, "short-overheats-wire": true,
	"short-too-weak": true, "situation-unsolved": true, "terminal-overload": true,
	"voltage-drop": true, "wire-below-minimum": true, "wire-over-current": true,
}

// score counts the judged findings: dangers, faults, advice.
type score [3]int

// less compares the gravest first.
func (s score) less(than score) bool {
	for i := range s {
		if s[i] != than[i] {
			return s[i] < than[i]
		}
	}
	return false
}

// verdict is a design with its present choices, judged.
type verdict struct {
	c          *circuit.Circuit
	corners    *corner.Set
	sols       []*solve.Solution // the nominal ones of corners
	faults     *fault.Study
	protection *protection.Study
	findings   []*finding.Finding // judged and not accepted, sorted
	score      score
}

// judge takes the design through the whole chain.
func (s *search) judge() (*verdict, error) {
	s.judgements++
	c, err := circuit.Build(s.d)
	if err != nil {
		return nil, err
	}
	corners := corner.ComputeBy(c, s.rater)
	v := &verdict{c: c, corners: corners, sols: warm.Solutions(corners.Results[corner.Nominal])}
	v.faults = fault.ShortsBy(c, s.rater)
	v.protection = protection.Compute(c, v.sols, v.faults)
	for _, f := range rules.Check(&rules.Input{Circuit: c, Solutions: v.sols, Faults: v.faults,
		Protection: v.protection, Corners: corners}) {
		if f.Accepted != "" || !judged[f.Rule] && !s.chosenUnsealed(f) {
			continue
		}
		v.findings = append(v.findings, f)
		v.score[finding.Danger-f.Severity]++
	}
	return v, nil
}

// chosenUnsealed tells whether a finding says that a part chosen here is not
// sealed in a wet place; of parts given it is the design's own affair.
func (s *search) chosenUnsealed(f *finding.Finding) bool {
	return f.Rule == "unsealed-in-wet-place" && slices.ContainsFunc(s.slots, func(x *slot) bool {
		return (x.kind == Plug || x.kind == BlockType) && x.owner.PartName() == f.Part
	})
}
