package report

import (
	"fmt"
	"sort"
	"strings"
)

// Summary says in a few lines what a reviewer must look at first: the shorts
// that no fuse clears in time, the wires that do not outlast their fuse, the
// starts that may open one, and what a lost return does.
func (rep *StudyReport) Summary() []string {
	lines := shortsSummary(rep)
	var wires, starts, returns []string
	for _, f := range rep.Fuses {
		for _, w := range f.Wires {
			if w.Margin != nil && *w.Margin <= 1 {
				wires = append(wires, f.Ref+" with "+w.Wire)
			}
		}
		for _, s := range f.Starts {
			if !s.Holds {
				starts = append(starts, f.Ref+" with "+s.Load)
			}
		}
	}
	for _, l := range rep.Lost {
		for _, a := range l.Affected {
			if a.Effect != "dead" && a.Effect != "weakened" {
				returns = append(returns, l.Ref+" ("+a.Part+" "+a.Effect+")")
			}
		}
	}
	lines = append(lines, listed("fuses that may open later than their wire withstands", wires),
		listed("starts that may open the fuse, or are not known to leave it intact", starts))
	if len(rep.Lost) > 0 {
		lines = append(lines, listed("shared returns whose loss does more than leave loads dead", returns))
	}
	return lines
}

// shortsSummary counts the bolted shorts, and names those that are not cleared,
// by verdict.
func shortsSummary(rep *StudyReport) []string {
	by := map[string][]string{}
	var verdicts []string
	cleared := 0
	for _, s := range rep.Shorts {
		if s.Verdict == "cleared" {
			cleared++
			continue
		}
		if by[s.Verdict] == nil {
			verdicts = append(verdicts, s.Verdict)
		}
		if refs := by[s.Verdict]; len(refs) == 0 || refs[len(refs)-1] != s.Ref {
			by[s.Verdict] = append(refs, s.Ref)
		}
	}
	lines := []string{fmt.Sprintf("bolted shorts: %d of %d cleared", cleared, len(rep.Shorts))}
	sort.Strings(verdicts)
	for _, v := range verdicts {
		what := "not cleared, " + v
		if v == string(behind) {
			what = "fed by no battery, behind diodes that are sound: what charges feeds it alone, and limits itself"
		}
		if v == string(stub) {
			what = "cleared by no fuse, on the stub from the battery to its first fuse, within the allowed length"
		}
		lines = append(lines, what+": "+strings.Join(by[v], ", "))
	}
	return lines
}

func listed(what string, list []string) string {
	if len(list) == 0 {
		return what + ": none"
	}
	return what + ": " + strings.Join(list, ", ")
}
