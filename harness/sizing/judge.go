package sizing

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/overload"
	"fusewright/harness/study/protection"
)

// score counts the judged findings: dangers, faults, advice.
type score [3]int

// less compares the gravest first.
func (s score) less(than score) bool {
	return slices.Compare(s[:], than[:]) < 0
}

// grave is the same without advice.
func (s score) grave() score { return score{s[0], s[1]} }

// verdict is a design with its present choices, judged.
type verdict struct {
	c          *circuit.Circuit
	corners    *corner.Set
	sols       []*solve.Solution // the nominal ones of corners
	faults     *fault.Study
	protection *protection.Study
	findings   []*finding.Finding // judged and not accepted, sorted
	score      score
	seen       *view // what look made of it
}

// judge takes the design through the whole chain.
func (s *search) judge() (*verdict, error) {
	s.judgements++
	c, err := circuit.BuildBy(s.d, s.rater)
	if err != nil {
		return nil, err
	}
	corners := corner.ComputeBy(c, s.rater)
	v := &verdict{c: c, corners: corners, sols: corners.Solutions()}
	v.faults = fault.ShortsBy(c, s.rater)
	v.protection = protection.ForRules(c, v.faults)
	found := rules.CheckSizes(v.input())
	counted := s.notLeft(v, found)
	for _, f := range append(counted, s.underHeld(v, counted)...) {
		if f.Accepted != "" || !s.answersFor(f) {
			continue
		}
		v.findings = append(v.findings, f)
		v.score[finding.Danger-f.Severity]++
	}
	return v, nil
}

// input is what the rules read of a verdict.
func (v *verdict) input() *rules.Input {
	return &rules.Input{Circuit: v.c, Solutions: v.sols, Faults: v.faults, Protection: v.protection,
		Overloads: overload.Compute(v.c, v.corners.Every(), v.faults), Corners: v.corners}
}

// elsewhere are the dangers and faults of the best answer that no size or rating mends.
func (s *search) elsewhere() []*finding.Finding {
	return slices.DeleteFunc(rules.Check(s.best.verdict.input()), func(f *finding.Finding) bool {
		return f.Severity < finding.Fault || f.Accepted != "" || rules.Find(f.Rule).Mend != rules.MendNot
	})
}

// notLeft are findings but for those that the trade leaves so: where such a one speaks for
// others that it does not leave, these count.
func (s *search) notLeft(v *verdict, found []*finding.Finding) (list []*finding.Finding) {
	for _, f := range found {
		if !f.Leave || s.pastRating(v, f) {
			list = append(list, f)
			continue
		}
		list = append(list, s.notLeft(v, f.Covers)...)
	}
	finding.Sort(list)
	return list
}

// nearRating is the share of its rating that a fuse is not chosen to carry more of, in any case
// (common practice, no source).
const nearRating = 0.9

// pastRating tells of a fuse too small in the worst case alone that it would then carry about
// its rating or more, as one of 10 A behind a socket that gives 10 A: the next larger one
// is fitted, though the trade leaves a smaller lack so.
func (s *search) pastRating(v *verdict, f *finding.Finding) bool {
	if f.Rule != "fuse-under-load" {
		return false
	}
	for _, b := range s.chosenFuses(v) {
		if b.Fuse.Ref != f.Ref {
			continue
		}
		for k := range v.corners.Results[corner.Nominal] {
			if v.corners.Usable(k) && corner.Beyond(v.corners.Amps(k, b).Corner, nearRating*b.Fuse.Rating.RatingA) {
				return true
			}
		}
	}
	return false
}

// answersFor tells whether a finding about sizes, ratings, types and seals is about
// what sizing chooses: of seals and sparks, where a part
// chosen here lacks the seal or makes the spark.
func (s *search) answersFor(f *finding.Finding) bool {
	mend := rules.Find(f.Rule).Mend
	if mend == rules.MendSpark {
		return s.answersForSpark(f)
	}
	return mend != rules.MendSeal || slices.ContainsFunc(s.slots, func(x *slot) bool {
		return (x.kind == Plug || x.kind == BlockType) && x.owner.PartName() == f.Part
	})
}
