package purchase

import (
	"fmt"
	"strconv"

	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// plugs adds both halves of each plug: the housings, what mates with the
// contacts of the harness half, and, of sealed families, the wire seals and
// what closes the ways left over. The contacts of the harness half are among
// the terminals. The accessory's half is counted in the size of the harness
// wires, since the design does not know the accessory's own leads.
func (b *builder) plugs(c *circuit.Circuit) {
	for _, p := range c.Parts {
		plug := p.Plug
		if plug == nil {
			continue
		}
		family := plug.Family
		if plug.Ways == 0 {
			b.missing = append(b.missing, fmt.Sprintf("%s: no housing of %s has %d ways", p.Ref, family.Name, plug.Needed))
			continue
		}
		halves, item := 2, "both halves of a housing, "
		if p.Fitted {
			halves, item = 1, "half of a housing, "
		}
		made := false
		for _, t := range p.Terminals {
			for _, w := range t.Wires {
				if !w.Spec.Fitted {
					made = true
					b.way(family, w, t, halves)
				}
			}
		}
		if x := c.InlineOf(p); x != nil {
			halves = 2
			made = b.poles(x)
		}
		if p.Fitted && !made {
			continue
		}
		b.add(Housings, item+plug.String(), "pcs", 1, p.Ref)
		if unused := plug.Ways - plug.Needed; family.Sealed && unused > 0 {
			b.seals(family, "blanking plug, "+family.Name, float64(halves*unused), p.Ref)
		}
	}
	if b.mates {
		b.missing = append(b.missing, "contacts and seals of the accessories' halves are counted in the size of the harness "+
			"wires: look at the accessories' own leads")
	}
}

// poles adds the wire seals of both halves of a connector in the loom, whose contacts are
// at the ends of the pieces of its wires; it tells whether any are still to be made.
func (b *builder) poles(x *circuit.Inline) (made bool) {
	for _, pole := range x.Poles {
		if pole.Wire.Spec.Fitted || pole.Contact == nil {
			continue
		}
		made = true
		if family := x.Part.Plug.Family; family.Sealed {
			b.seals(family, "wire seal for "+pole.Contact.Name, 2, pole.Wire.Number)
		}
	}
	return made
}

// way adds what one wire of a plug needs besides its own contact, in one half or both.
func (b *builder) way(family *library.Connector, w *circuit.Wire, t *circuit.Terminal, halves int) {
	contact := w.ToEnd
	if w.From == t {
		contact = w.FromEnd
	}
	if contact == nil {
		return // ends has said so
	}
	if halves > 1 {
		b.mates = true
		l := b.add(Plugs, "mate of "+contact.Name, "pcs", 1, w.End(w.From == t).Number)
		if contact.SoldPer > 1 {
			l.SoldAs = "pack of " + strconv.Itoa(contact.SoldPer)
		}
	}
	if family.Sealed {
		b.seals(family, "wire seal for "+contact.Name, float64(halves), w.End(w.From == t).Number)
	}
}

// seals adds seals or blanking plugs, sold in packs of the family's number.
func (b *builder) seals(family *library.Connector, item string, amount float64, ref string) {
	l := b.add(Plugs, item, "pcs", amount, ref)
	if family.SealsPer > 1 {
		l.SoldAs = "pack of " + strconv.Itoa(family.SealsPer)
	}
}
