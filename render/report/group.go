package report

import (
	"strconv"
	"strings"

	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
)

// Block is findings that are printed as one: the worst in full, the others in a
// line with their figures.
type Block struct {
	Finding
	Others string // "likewise W25 deck wash (30 A of 16.1 A), ..."; "" = it stands alone
}

// Blocks groups the findings of a report.
func (r *Report) Blocks() []Block {
	list := make([]*finding.Finding, len(r.Findings))
	for i := range r.Findings {
		list[i] = r.Findings[i].of
	}
	var out []Block
	for _, g := range finding.Groups(list) {
		b := Block{Finding: r.Findings[g[0]]}
		var others []string
		for _, n := range g[1:] {
			others = append(others, r.Findings[n].short())
		}
		if len(others) > 0 {
			b.Others = "likewise " + strings.Join(others, ", ")
		}
		out = append(out, b)
	}
	return out
}

// short is what a finding is about, with its figure.
func (f Finding) short() string {
	figure := f.Figure
	if figure == "" && len(f.Numbers) > 0 && f.Numbers[0].Value != nil { // of no end, or held against none
		figure = f.Numbers[0].String()
	}
	if figure == "" {
		return f.About()
	}
	return f.About() + " (" + figure + ")"
}

// About names the part with its designation or wire number: "W25 deck wash".
func (f Finding) About() string {
	if f.Ref == "" || f.Ref == f.Part {
		return f.Part
	}
	return f.Ref + " " + f.Part
}

// About names the part of a finding with its designation or wire number: "W25 deck wash".
func About(f *finding.Finding) string { return Finding{Ref: f.Ref, Part: f.Part}.About() }

// Says is what is wrong with it, in short.
func Says(f *finding.Finding) string { return rules.Find(f.Rule).Says }

// acceptance is the entry of a design that accepts a finding, without its reason.
func acceptance(f *finding.Finding) string {
	text := "{rule: " + f.Rule + ", part: " + strconv.Quote(f.Part)
	if f.Wire != "" {
		text += ", wire: " + f.Wire
	}
	if f.Severity == finding.Danger {
		text += ", severity: danger"
	}
	if figure := f.Figure.String(); figure != "" {
		text += ", figure: " + figure
	}
	return text + ", reason: }"
}
