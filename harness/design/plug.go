package design

import (
	"fmt"

	"fusewright/harness/design/problem"
	"fusewright/library"
)

// Plugged is the connector at which a part comes off the harness: the wires
// that the design ends at the part end in contacts of the family.
type Plugged struct {
	// Plug is the connector family; nil = the part has no plug, or its choice is
	// left to package sizing, which PlugAuto tells.
	Plug     *library.Connector
	PlugAuto bool
	// PlugKind is the kind of crimp part that the `ends` of its wires ask for; ""
	// when they ask for none. The family's pin kind must be the same.
	PlugKind string
}

// PlugSpec is what the design says of the plug; it may be changed in place.
func (p *Plugged) PlugSpec() *Plugged { return p }

// Pluggable is a part that can have a plug, *Load and *Switch, or is one: *Connector.
type Pluggable interface {
	Part
	PlugSpec() *Plugged
}

// plugKey reads the connector at which a part comes off the harness.
func plugKey[X any, P interface {
	*X
	Pluggable
}]() key[X] {
	return orAuto(libraryKey(Key{Name: "plug", Library: "connector families", Default: "wired without one",
		Example: "sealed 1.5",
		Doc: "connector family at which it comes off the harness, both halves bought: its wires then end in " +
			"contacts of the family; `auto` is chosen by sizing"},
		(*library.Library).Connector, func(x *X) **library.Connector { return &P(x).PlugSpec().Plug }),
		func(x *X) { P(x).PlugSpec().PlugAuto = true })
}

// checkPlugs reports wires whose `ends` ask for another crimp part than the
// plug of the part where they end.
func (r *reader) checkPlugs() {
	asked := map[*Plugged]problem.Pos{} // where PlugKind was asked for
	for _, c := range r.connections {
		for i, f := range *c.feeds {
			w := c.feedOf[i]
			if w == nil {
				break
			}
			if i > 0 && w == c.feedOf[i-1] {
				if !c.back {
					r.checkPlug(asked, f.From.Part, w.ask(false))
				}
				continue
			}
			if c.back {
				r.checkPlug(asked, c.owner, w.ask(false))
				continue
			}
			r.checkPlug(asked, c.owner, w.ask(true))
			r.checkPlug(asked, f.From.Part, w.ask(false))
		}
	}
}

// ask is the kind of crimp part that the design names for an end; not given
// when it names none.
func (w *wireDraft) ask(to bool) Text {
	t, kind, pos := w.spec.FromEnd, w.from, w.fromPos
	if to {
		t, kind, pos = w.spec.ToEnd, w.to, w.toPos
	}
	if kind.Given() || t == nil {
		return kind
	}
	return Text{t.Kind, pos}
}

// checkPlug compares one wire's end with the plug of the part where it ends.
func (r *reader) checkPlug(asked map[*Plugged]problem.Pos, of Part, end Text) {
	x, ok := of.(Pluggable)
	if !ok || !end.Given() {
		return
	}
	p := x.PlugSpec()
	if p.Plug == nil && !p.PlugAuto {
		return
	}
	name := kindOf(of)[len("a "):] + " " + quoted(of.PartName())
	switch first, twice := asked[p]; {
	case p.Plug != nil && p.Plug.PinKind != end.Value:
		r.report(end.Pos, fmt.Sprintf("%s has the plug %s, but the end of its wire asks for %s", name,
			p.Plug.Name, quoted(end.Value)), p.Plug.PinKind+", or no crimp part named here")
		return
	case p.Plug == nil && !r.isPin(end.Value):
		r.report(end.Pos, fmt.Sprintf("%s has a plug, but no connector family of the library takes the %s "+
			"that the end of its wire asks for", name, quoted(end.Value)), "no crimp part named here")
		return
	case twice && p.PlugKind != end.Value:
		r.add(problem.Problem{Pos: end.Pos, Also: &first, Expected: "one kind for one plug",
			What: fmt.Sprintf("%s has a plug, but the ends of its wires ask for %s and %s", name,
				quoted(p.PlugKind), quoted(end.Value))})
		return
	}
	asked[p], p.PlugKind = end.Pos, end.Value
}

// isPin tells whether a kind of crimp part is the contact of some family.
func (r *reader) isPin(kind string) bool {
	for _, c := range r.lib.Connectors {
		if c.PinKind == kind {
			return true
		}
	}
	return false
}
