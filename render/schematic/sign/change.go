package sign

import (
	"slices"

	"fusewright/harness/design/wording"
)

// ChangeKind says how a part or wire changed.
type ChangeKind string

// The kinds of changes, each with a sign and a line of its own; see drawDelta.
const (
	Added   ChangeKind = "added"
	Removed ChangeKind = "removed"
	Changed ChangeKind = "changed"
	Judged  ChangeKind = "new finding" // itself as it was
)

// Changes is what differs between two designs, for the drawing of them.
type Changes struct {
	Was, Now string // how the title blocks call the other design: "revision A"
	List     []Change
}

// Change is one entry of the list of changes; its number is its place there,
// from 1.
type Change struct {
	Kind ChangeKind
	Name string // "lamp fuse"
	// Old and New are the parts and wires in each design that the entry is about,
	// by reference or wire number; the first carries the number.
	Old, New []string
	Text     string   // "rating 5 A → 30 A"
	Findings []string // that came with it: "new danger: fuse-over-wire: …"
	// Rewired tells that the drawing of the earlier design shows what words
	// cannot: something is gone or was connected to something else.
	Rewired bool
}

// Rewired tells whether the drawing of the earlier design shows more than words.
func (c *Changes) Rewired() bool {
	return slices.ContainsFunc(c.List, func(x Change) bool { return x.Rewired })
}

// OfChanges are the signs of changes. What is only judged anew is not marked
// on the earlier design.
func OfChanges(c *Changes, asWas bool) *Signs {
	f := &Signs{byRef: map[string]int{}, Kinds: map[string]ChangeKind{}, Wide: 7.8, Half: DeltaH / 2,
		Rise: DeltaH/2 - deltaFoot, Drop: 3.6, Above: 1.9, Lift: DeltaH + 2.4, Atop: true, halo: cloudReach + 0.2,
		Changes: c, AsWas: asWas}
	for i := range c.List {
		x := &c.List[i]
		m := &Entry{Number: i + 1, Refs: x.New, Change: x, AsWas: asWas}
		if asWas {
			m.Refs = x.Old
		}
		for _, ref := range m.Refs {
			f.Kinds[ref] = x.Kind
		}
		if len(m.Refs) > 0 {
			f.byRef[m.Refs[0]] = m.Number
		}
		f.List = append(f.List, m)
	}
	return f
}

// head names what an entry is about, with how the other design calls it.
func (c *Change) head(refs []string, asWas bool) string {
	return wording.Present(append(c.Names(refs, asWas), string(c.Kind)), ", ")
}

// Names are the parts and wires of an entry, or else its own name.
func (c *Change) Names(refs []string, asWas bool) []string {
	names := append([]string{}, refs...)
	if len(refs) == 0 {
		names = append(append(names, c.New...), c.Old...)
	}
	if len(names) == 0 {
		names = []string{c.Name}
	}
	if len(c.Old) > 0 && len(c.New) > 0 && c.Old[0] != c.New[0] {
		names[0] = c.New[0] + " (was " + c.Old[0] + ")"
		if asWas {
			names[0] = c.Old[0] + " (now " + c.New[0] + ")"
		}
	}
	return names
}

// statements are the name with what differs, and what was found.
func (c *Change) statements() (list []string) {
	if len(c.Old)+len(c.New) > 0 || c.Text != "" { // else the head has the name
		list = []string{wording.Present([]string{c.Name, c.Text}, ": ")}
	}
	return append(list, c.Findings...)
}

// Short is the most telling words of a change: its sign tells the kind.
func (c *Change) Short() string {
	switch {
	case c.Kind == Added || c.Kind == Removed:
		return string(c.Kind) + ": " + c.Name
	case c.Kind == Changed:
		return wording.Present(append([]string{c.Text}, c.Findings...), "; ")
	}
	return wording.Present(c.Findings, "; ")
}
