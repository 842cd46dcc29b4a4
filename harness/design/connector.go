package design

import (
	"fmt"

	"fusewright/harness/design/problem"
	"fusewright/library"
)

// Connector stands at a place of the loom, at a bulkhead, a deck or a hinge: the wires
// that pass the place are parted there, and each half of the loom comes off whole.
type Connector struct {
	Common
	Plugged // its family; PlugAuto = chosen by sizing, and the first of the library till then
	// Takes are the parts whose wires go through it; none = all that pass the place and no
	// other connector there takes.
	Takes []Part
	// Sockets is a place on the side of the half with the sockets; nil = the side on
	// which the most feeds stay live when the halves are apart.
	Sockets *Place

	takes      []Text // Takes before they are looked up
	socketsPos problem.Pos
}

var connectorSection = section[Connector]{
	Section: Section{Name: "parting", Shape: KindNamed,
		Doc: "Where the loom comes apart, by an inline connector: at a bulkhead, a deck, a hinge. It stands at a place to which runs lead, and " +
			"the wires that pass the place are parted there; what begins or ends at the place is not. A parted wire keeps its number, its pieces " +
			"are W4a and W4b from the source on. Cavities are given in the order of the wires.",
		Example: "partings:\n  bow: {family: sealed 1.5, at: bulkhead}\n  bow power: {family: sealed 6.3, at: bulkhead, takes: windlass}\n"},
	keys: withCommon(
		orAuto(libraryKey(Key{Name: "family", Library: "connector families", Required: true, Example: "sealed 1.5",
			Doc: "connector family; its housing is the smallest that has a cavity for each wire; `auto` is chosen by sizing"},
			(*library.Library).Connector, func(x *Connector) **library.Connector { return &x.Plug }),
			func(x *Connector) { x.PlugAuto = true }),
		key[Connector]{Key: Key{Name: "takes", Kind: KindParts, Default: "all that no other connector at the place takes", Example: "[windlass, bow lamp]",
			Doc: "the parts whose wires, feeds and returns, go through it"},
			read: func(r *reader, x *Connector, f field) { x.takes = r.texts(f, maxName) }},
		key[Connector]{Key: Key{Name: "sockets towards", Kind: KindPlace, Default: "where the most feeds stay live when the halves are apart", Example: "battery tray",
			Doc: "a place at the other end of a run from there: the half on its side has the sockets, whose contacts nothing touches when the halves are apart"},
			read: func(r *reader, x *Connector, f field) {
				x.socketsPos = r.pos(f.node)
				placeKey(Key{}, func(x *Connector) **Place { return &x.Sockets }).read(r, x, f)
			}},
	),
	finish: func(r *reader, x *Connector, f field) {
		if x.PlugAuto && len(r.lib.Connectors) > 0 {
			x.Plug = r.lib.Connectors[0]
		}
		if !f.has["at"] {
			r.report(x.Pos, f.where.String()+" stands nowhere", "`at`, a place to which runs lead")
		}
	},
}

// joinConnectors finds what connectors take, and refuses two at one place that both take
// all, or the same.
func (r *reader) joinConnectors() {
	taken := map[Part]map[*Place]*Connector{}
	all := map[*Place]*Connector{}
	for _, x := range r.d.Partings {
		of := where{"parting", x.Name}
		x.Takes = namedParts[Part](r, of, "part", x.takes)
		if x.At == nil {
			continue
		}
		r.checkConnectorRuns(x)
		if first := all[x.At]; len(x.takes) == 0 && first != nil {
			r.add(problem.Problem{Pos: x.Pos, Also: &first.Pos, Expected: "`takes` at one of them: the parts whose wires go through it",
				What: fmt.Sprintf("%s and %s both take all wires at %s", of, quoted(first.Name), quoted(x.At.Name))})
		} else if len(x.takes) == 0 {
			all[x.At] = x
		}
		for _, p := range x.Takes {
			if taken[p] == nil {
				taken[p] = map[*Place]*Connector{}
			}
			if first := taken[p][x.At]; first != nil {
				r.add(problem.Problem{Pos: x.Pos, Also: &first.Pos, Expected: "each part at one of them",
					What: fmt.Sprintf("%s and %s both take %s", of, quoted(first.Name), quoted(p.PartName()))})
			}
			taken[p][x.At] = x
		}
	}
}

// checkConnectorRuns wants runs at both sides of a connector, and the half with the sockets
// on one of them.
func (r *reader) checkConnectorRuns(x *Connector) {
	var far []string
	towards := false
	for _, run := range r.d.Runs {
		if other := run.Beyond(x.At); other != nil {
			far = append(far, other.Name)
			towards = towards || other == x.Sockets
		}
	}
	switch {
	case len(far) < 2:
		r.report(x.Pos, fmt.Sprintf("parting %s: fewer than two runs lead to %s, so that no wire passes it", quoted(x.Name), quoted(x.At.Name)),
			"a place between two runs")
	case x.Sockets != nil && !towards:
		r.unknown(x.socketsPos, fmt.Sprintf("parting %s: no run leads from %s to %s", quoted(x.Name), quoted(x.At.Name), quoted(x.Sockets.Name)),
			x.Sockets.Name, far)
	}
}

// Beyond is the place at the other end of a run; nil when it does not lead to the place.
func (x *Run) Beyond(from *Place) *Place {
	switch from {
	case x.From:
		return x.To
	case x.To:
		return x.From
	}
	return nil
}
