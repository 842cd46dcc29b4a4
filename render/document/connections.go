package document

import (
	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
)

// Connections lays the connection table on pages: part by part, each terminal
// with its wires and where they go, and a box to tick when it has been checked
// on the finished harness.
func Connections(r *harness.Review) []*scene.Sheet {
	b := newWideBook("Connection table", r)
	b.para("For checking after assembly: every wire stands here twice, once at each of its ends. Tick it when the number "+
		"on the marker, the colour and the terminal agree and the crimp holds a light pull. "+
		"With the battery disconnected.", quiet)
	t := b.newTable([]column{
		{head: "seen", wide: 9, align: scene.Middle},
		{head: "terminal", wide: 18, face: scene.Bold},
		{head: "wire", wide: 12, face: scene.Bold},
		{head: "colour, size", wide: 26},
		{head: "crimp part", wide: 44},
		{head: "goes to", wide: 52},
		{head: "at", wide: 38},
		{head: "for", wide: 20},
	})
	for _, p := range r.Circuit.Parts {
		if wired(p) == 0 {
			continue
		}
		t.group(partHeading(p))
		for _, term := range p.Terminals {
			connectionRows(t, term)
		}
	}
	return b.finish()
}

// wired counts the wires of a part's terminals.
func wired(p *circuit.Part) int {
	n := 0
	for _, t := range p.Terminals {
		n += len(t.Wires)
	}
	return n
}

func partHeading(p *circuit.Part) string {
	text := p.Ref
	if p.Name != "" && p.Name != p.Ref {
		text += " " + p.Name
	}
	if p.Label != "" && p.Label != p.Name {
		text += ", " + p.Label
	}
	if p.Place != nil {
		text += " · " + p.Place.Name
	}
	return text
}

// connectionRows are the wires at a terminal; one without wires says so.
func connectionRows(t *table, term *circuit.Terminal) {
	name := term.Name
	if term.FuseRef != "" {
		name += " (" + term.FuseRef + ")"
	}
	if len(term.Wires) == 0 {
		t.row("", name, "none", "", "", "no wire of this harness; the machine's own stay", "", "")
		t.tick(0)
		return
	}
	for _, w := range term.Wires {
		far, crimp := w.To, w.Crimp(true)
		if w.To == term {
			far, crimp = w.From, w.Crimp(false)
		}
		crimpName := "not known"
		if crimp != nil {
			crimpName = crimp.Name
		}
		place := "not said"
		if far.Part.Place != nil {
			place = far.Part.Place.Name
		}
		t.row("", name, w.Number, w.Look(), crimpName, far.Address(), place, string(w.Role))
		t.tick(0)
	}
}
