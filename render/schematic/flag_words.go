package schematic

import (
	"fmt"
	"fusewright/harness/design/wording"
	"slices"
)

// head names what an entry is about: "F1, danger".
func (m *marked) head() string {
	if m.change != nil {
		return m.change.head(m.refs, m.asWas)
	}
	severity := m.findings[0].Severity.String()
	if m.findings[0].Accepted != "" {
		severity = "accepted"
	}
	const most = 3 // names in a line
	names := wording.Present(m.refs[:min(len(m.refs), most)], ", ")
	if more := len(m.refs) - most; more > 0 {
		names += fmt.Sprintf(" and %d more", more)
	}
	return wording.Present([]string{names, severity}, ", ")
}

// indent is the room of a sign in a list, in mm.
func (m *marked) indent() float64 {
	if m.change != nil {
		return 9
	}
	return 6.5
}

// statements is everything an entry says, one after the other.
func (m *marked) statements() (list []string) {
	if m.change != nil {
		return m.change.statements()
	}
	for _, f := range m.findings {
		list = append(list, f.Rule+": "+f.What)
	}
	return list
}

// brief is what an entry says in few words: of findings, the rules.
func (m *marked) brief() string {
	if m.change != nil {
		if m.asWas {
			return m.change.statements()[0]
		}
		return wording.Present(m.change.statements(), "; ")
	}
	var rules []string
	for _, f := range m.findings {
		if !slices.Contains(rules, f.Rule) {
			rules = append(rules, f.Rule)
		}
	}
	return wording.Present(rules, ", ")
}
