package sign

import (
	"fmt"
	"fusewright/harness/design/wording"
	"slices"
)

// Head names what an entry is about: "F1, danger".
func (m *Entry) Head() string {
	if m.Change != nil {
		return m.Change.head(m.Refs, m.AsWas)
	}
	severity := m.Findings[0].Severity.String()
	if m.Findings[0].Accepted != "" {
		severity = "accepted"
	}
	const most = 3 // names in a line
	names := wording.Present(m.Refs[:min(len(m.Refs), most)], ", ")
	if more := len(m.Refs) - most; more > 0 {
		names += fmt.Sprintf(" and %d more", more)
	}
	return wording.Present([]string{names, severity}, ", ")
}

// Indent is the room of a sign in a list, in mm.
func (m *Entry) Indent() float64 {
	if m.Change != nil {
		return 9
	}
	return 6.5
}

// Statements is everything an entry says, one after the other.
func (m *Entry) Statements() (list []string) {
	if m.Change != nil {
		return m.Change.statements()
	}
	for _, f := range m.Findings {
		list = append(list, f.Rule+": "+f.What)
	}
	return list
}

// Brief is what an entry says in few words: of findings, the rules.
func (m *Entry) Brief() string {
	if m.Change != nil {
		if m.AsWas {
			return m.Change.statements()[0]
		}
		return wording.Present(m.Change.statements(), "; ")
	}
	var rules []string
	for _, f := range m.Findings {
		if !slices.Contains(rules, f.Rule) {
			rules = append(rules, f.Rule)
		}
	}
	return wording.Present(rules, ", ")
}
