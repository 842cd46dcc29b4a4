package sign

import "fusewright/harness/design/wording"

// ChangeKind says how a part or wire changed.
type ChangeKind string

// The kinds of changes, each with a sign and a line of its own.
const (
	Added   ChangeKind = "added"
	Removed ChangeKind = "removed"
	Changed ChangeKind = "changed"
	Judged  ChangeKind = "judged anew" // itself as it was
	Relabel ChangeKind = "renumbered"  // under another label
)

// Changes is what differs between two designs, for the drawing of them.
type Changes struct {
	Was  string // how the title block calls the earlier design: "revision A"
	List []Change
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
	case c.Kind == Changed || c.Kind == Relabel:
		return wording.Present(append([]string{c.Text}, c.Findings...), "; ")
	}
	return wording.Present(c.Findings, "; ")
}
