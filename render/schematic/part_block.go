package schematic

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// busOf is the terminal of the bar: the one that is fed, else the first.
func busOf(p *circuit.Part) *circuit.Terminal {
	named := map[string]bool{}
	if b, ok := p.Source.(*design.Block); ok {
		for _, w := range b.Ways {
			named[w.Number] = true
		}
	}
	for _, t := range p.Terminals {
		if !named[t.Name] {
			return t
		}
	}
	return &circuit.Terminal{Part: p, Name: "bar"}
}

// waysOf lists the ways of a block with what is in them.
func waysOf(p *circuit.Part) []*way {
	b, ok := p.Source.(*design.Block)
	if !ok {
		return nil
	}
	terms := map[string]*circuit.Terminal{}
	for _, t := range p.Terminals {
		terms[t.Name] = t
	}
	var list []*way
	for _, w := range b.Ways {
		v := &way{number: w.Number, term: terms[w.Number]}
		if v.term != nil {
			v.ref = v.term.FuseRef
		}
		fillWay(v, w)
		list = append(list, v)
	}
	return list
}

func fillWay(v *way, w *design.Way) {
	switch {
	case w.Spare:
		v.kind, v.words = spareWay, "spare"
	case w.Fuse == nil:
		v.kind, v.words = linkedWay, "no fuse"
	default:
		v.kind = wayKindOf(w.FuseType)
		v.words = number(w.Fuse.RatingA) + " A"
	}
}

func wayKindOf(t *library.FuseType) wayKind {
	if t == nil {
		return fusedWay
	}
	return map[string]wayKind{"breaker": breakerWay, "ptc": ptcWay}[t.Kind]
}

// way is one output of a block.
type way struct {
	number string
	term   *circuit.Terminal
	ref    string // "F3"
	words  string // "15 A"
	kind   wayKind
}

type wayKind int

const (
	fusedWay wayKind = iota
	breakerWay
	ptcWay
	linkedWay // no fuse in it
	spareWay
)
