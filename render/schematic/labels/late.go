package labels

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// LateIn are the references of the parts and fuses that were added since the design's
// numbers were written; nil where none last.
func LateIn(c *circuit.Circuit) map[string]bool {
	if c.Design == nil || !c.Design.Lasting() || len(c.Design.Numbers.List) == 0 {
		return nil
	}
	held, late := map[string]bool{}, map[string]bool{}
	for _, x := range c.Design.Numbers.List {
		held[x.Label] = true
	}
	for _, p := range c.Parts {
		if p.Ref != "" && !held[p.Ref] {
			late[p.Ref] = true
		}
		for _, t := range p.Terminals {
			if t.FuseRef != "" && !held[t.FuseRef] {
				late[t.FuseRef] = true
			}
		}
	}
	return late
}

// LeavesOut tells of a part that is left out.
func (l *Labels) LeavesOut(p *circuit.Part) bool { return l.Left[p.Ref] }

// LeavesWire tells of a wire to or from what is left out.
func (l *Labels) LeavesWire(w *circuit.Wire) bool {
	return l.LeavesOut(w.From.Part) || l.LeavesOut(w.To.Part)
}

// LeavesWay tells of a way that is left out: one more than the block had. Where a block
// lists all that it has, the way was there as a spare one.
func (l *Labels) LeavesWay(p *circuit.Part, ref string) bool {
	b, ok := p.Source.(*design.Block)
	return ok && l.Left[ref] && b.Type != nil && len(b.Ways) < b.Type.Ways
}
