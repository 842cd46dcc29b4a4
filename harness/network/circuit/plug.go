package circuit

import (
	"fmt"
	"slices"

	"fusewright/harness/design"
	"fusewright/library"
)

// String names the family and the housing: "sealed 1.5, 2 ways".
func (p *Plug) String() string {
	switch p.Ways {
	case 0:
		return fmt.Sprintf("%s, no housing with %d ways", p.Family.Name, p.Needed)
	case 1:
		return p.Family.Name + ", 1 way"
	}
	return fmt.Sprintf("%s, %d ways", p.Family.Name, p.Ways)
}

// plug gives a part its plug, when it has one, and the kind of crimp part that
// its wires end in: the family's contact, else the part's own. Contacts of a sealed
// family hold in its housing alone: without one the leads are spliced.
func (b *builder) plug(p *Part, spec *design.Plugged, own string) string {
	switch {
	case spec.Plug == nil && b.needsHousing(own):
		return ""
	case spec.Plug == nil:
		return own
	}
	p.Plug = &Plug{Family: spec.Plug}
	return spec.Plug.PinKind
}

func (b *builder) needsHousing(kind string) bool {
	return b.lib != nil && slices.ContainsFunc(b.lib.Connectors, func(c *library.Connector) bool { return c.Sealed && c.PinKind == kind })
}

// leadMm2 is the thickest lead that contacts of a kind take; 0 = not known.
func (b *builder) leadMm2(kind string) float64 {
	most := 0.0
	if b.lib != nil {
		for _, t := range b.lib.Terminals {
			if t.Kind == kind {
				most = max(most, t.MaxMm2)
			}
		}
	}
	return most
}

// fillPlugs counts the wires at each plug and chooses its housing.
func (b *builder) fillPlugs() {
	for _, p := range b.c.Parts {
		if p.Plug == nil {
			continue
		}
		for _, t := range p.Terminals {
			p.Plug.Needed += len(t.Wires)
		}
		p.Plug.Ways = p.Plug.Family.Housing(p.Plug.Needed)
		p.cavities()
	}
}

// cavities says which wire goes into which cavity of a plug with two: 1 is the plus of an
// accessory or a switch's feed, 2 the other, unless the accessory's type has its plus in
// the second (common practice, no source). Of more ways the part's instructions say it.
func (p *Part) cavities() {
	one, two := p.Terminals[0], p.Terminals[1]
	if p.Plug.Ways != 2 || len(one.Wires) > 1 || len(two.Wires) > 1 {
		return
	}
	if l, ok := p.Source.(*design.Load); ok && l.Type != nil && l.Type.PlusCavity == 2 {
		one, two = two, one
	}
	one.Mark, two.Mark = "cavity 1", "cavity 2"
}
