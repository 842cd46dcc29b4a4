package sign

import (
	"slices"

	"fusewright/harness/design/wording"
	"fusewright/harness/review/compare"
)

// names are the parts and wires that a change is about, or else its own name.
func (m *Entry) names() []string {
	c := m.Change
	switch {
	case c.What == compare.Relabelled:
		return []string{"labels"}
	case len(c.Old)+len(c.New) == 0:
		return []string{c.Name}
	case len(c.New) == 0 && len(m.Refs) == 0: // another may have the label now
		return append([]string{"old " + c.Old[0]}, c.Old[1:]...)
	case len(c.New) == 0:
		return slices.Clone(c.Old)
	}
	names := slices.Clone(c.New)
	if len(c.Old) > 0 && c.Old[0] != c.New[0] {
		names[0] += " (was " + c.Old[0] + ")"
	}
	return names
}

// Title is what a line of a list begins with.
func (m *Entry) Title() string {
	if m.Change != nil {
		return m.names()[0]
	}
	return m.Head()
}

// Statements is everything a change says: its name with what differs, and what was found.
func (m *Entry) Statements() (list []string) {
	c := m.Change
	if len(c.Old)+len(c.New) > 0 || c.Text != "" { // else the head has the name
		list = []string{wording.Present([]string{c.Name, c.Text}, ": ")}
	}
	return append(list, c.Findings...)
}

// Brief is what a change says in one sentence.
func (m *Entry) Brief() string { return wording.Present(m.Statements(), "; ") }

// short is the most telling words of a change: its sign tells the kind.
func (m *Entry) short() string {
	c := m.Change
	if c.What == compare.Added || c.What == compare.Removed {
		return string(c.What) + ": " + c.Name
	}
	return wording.Present(append([]string{c.Text}, c.Findings...), "; ")
}
