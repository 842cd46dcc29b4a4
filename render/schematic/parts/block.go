package parts

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/render/symbol"
)

// BusOf is the terminal of the bar: the one that is fed, else the first.
func BusOf(p *circuit.Part) *circuit.Terminal {
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

// Fans tells of parts with one bar and several ways, which are drawn alike: blocks,
// switches with positions, a contact in each of their ways, and isolators, a diode in each.
func Fans(p *circuit.Part) bool {
	switch x := p.Source.(type) {
	case *design.Switch:
		return x.Positions != nil
	case *design.Diode:
		return x.Isolates > 0
	}
	return p.Kind == circuit.Block
}

// outputsOf are the outputs of a switch as ways, with the positions in which each is live.
func outputsOf(p *circuit.Part, s *design.Switch) (list []*Way) {
	for _, out := range s.Outputs() {
		w := &Way{Number: out, Term: p.Terminal(out), Kind: symbol.Positions}
		for _, at := range s.Positions {
			if !slices.Contains(at.Outputs, out) {
				continue
			}
			if w.Words = wording.Present([]string{w.Words, at.Name}, ", "); at.Name == out {
				w.Words = ""
			}
		}
		list = append(list, w)
	}
	return list
}

// WaysOf lists the ways of a part that fans with what is in them.
func WaysOf(p *circuit.Part) []*Way {
	switch x := p.Source.(type) {
	case *design.Switch:
		return outputsOf(p, x)
	case *design.Diode:
		var list []*Way
		for _, out := range x.Outputs() {
			list = append(list, &Way{Number: out, Term: p.Terminal(out), Kind: symbol.FeedDiode})
		}
		return list
	}
	b, ok := p.Source.(*design.Block)
	if !ok {
		return nil
	}
	terms := map[string]*circuit.Terminal{}
	for _, t := range p.Terminals {
		terms[t.Name] = t
	}
	var list []*Way
	for _, w := range b.Ways {
		v := &Way{Number: w.Number, Term: terms[w.Number]}
		if v.Term != nil {
			v.Ref = v.Term.FuseRef
		}
		fillWay(v, w)
		list = append(list, v)
	}
	return list
}

func fillWay(v *Way, w *design.Way) {
	switch {
	case w.Spare:
		v.Kind, v.Words = symbol.SpareWay, "spare"
	case w.Fuse == nil:
		v.Words = "no fuse"
	default:
		v.Kind, v.Words = fuseKind(w.FuseType), quantity.Plain(w.Fuse.RatingA, quantity.Current)
	}
}

// Way is one output of a block or of a switch with positions.
type Way struct {
	Number string
	Term   *circuit.Terminal
	Ref    string      // "F3"
	Words  string      // "15 A"
	Kind   symbol.Kind // "" when it is linked without a fuse
}

// RelayShape is where things stand inside a relay, in modules from its contact
// row.
type RelayShape struct {
	Changeover bool
	Rests      bool          // half of a reversing contactor: 87 and 87a on the left, 30 on the right
	CaseOf     *design.Relay // the half with the feed and the return, of the other one
	Return     int           // row on which 87a leaves, of what rests
	Sign       symbol.Kind   // of its coil
	Suppressor symbol.Kind   // "" when it has none
	Coil       int           // row of the coil
	Floor      int           // lower edge of the outline, where 85 leaves
	Roof       float64       // upper edge
	Drop       int           // from the floor to the ground's sign
}

// ContactKind is the symbol of a relay's contact.
func ContactKind(p *circuit.Part) symbol.Kind {
	r, ok := p.Source.(*design.Relay)
	form := ok && r.Form != nil
	switch {
	case form && r.Form.Contactor && r.Form.Changeover:
		return symbol.ContactorCO
	case form && r.Form.Contactor:
		return symbol.Contactor
	case form && r.Form.Changeover:
		return symbol.Changeover
	}
	return symbol.Make
}

// RelayForm is what a relay has inside.
func RelayForm(p *circuit.Part) (g RelayShape) {
	if r, ok := p.Source.(*design.Relay); ok {
		g.Changeover = r.Form != nil && r.Form.Changeover
		g.Rests, g.CaseOf = r.Rests, r.Half
		g.Sign = coilSign(r)
		g.Suppressor = map[string]symbol.Kind{
			"resistor": symbol.Resistor, "diode": symbol.Diode, "zener": symbol.Zener,
		}[r.Coil.Suppressed]
	}
	return g
}

// coilSign is the symbol of a relay's coil, by when its contacts follow it.
func coilSign(r *design.Relay) symbol.Kind {
	switch on, off := r.OnDelayS.Given(), r.OffDelayS.Given(); {
	case r.Latches:
		return symbol.LatchCoil
	case on && off:
		return symbol.DelayCoil
	case on:
		return symbol.OnCoil
	case off:
		return symbol.OffCoil
	}
	return symbol.Coil
}
