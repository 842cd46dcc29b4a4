package circuit

import "fusewright/harness/design"

// number gives parts their reference designations after IEC 81346 and wires their
// numbers: a letter by kind and a number that counts the letter in the order of
// Circuit.Parts, or what the design holds. Nodes and branches take their names
// from the designations.
func (b *builder) number() {
	list := b.c.namedParts()
	for _, i := range b.wireOrder() {
		d := &b.drafts[i]
		list = append(list, namedWire(d.role, d.from, d.to, &d.number))
	}
	tellApart(list)
	b.label(list)
	for _, p := range b.c.Parts {
		for _, br := range p.Branches {
			nameBranch(p, br)
		}
		for _, t := range p.Terminals {
			if t.Node.Name == "" {
				t.Node.Name = p.Ref + ":" + t.Name
			}
		}
	}
	for _, p := range b.c.Parts {
		for _, br := range p.Branches {
			if br.B.Name == "" { // inner nodes have no terminal
				br.B.Name = br.Name + " inner"
			}
			if p.Kind == Block && br.Fuse != nil {
				br.B.Terminals[0].FuseRef = br.Fuse.Ref
			}
		}
	}
}

// letter is the library's letter for a kind; "?" when it has none.
func (b *builder) letter(kind string) string {
	if b.lib != nil {
		if d := b.lib.Designator(kind); d != nil {
			return d.Letter
		}
	}
	return "?"
}

// designatorKind is the kind of a part as the library's designators have it:
// loads by their sign.
func designatorKind(p *Part) string {
	if l, ok := p.Source.(*design.Load); ok && l.Sign != "" {
		return string(Load) + "/" + string(l.Sign)
	}
	return string(p.Kind)
}

// nameBranch names an inner branch and its fuse after the part.
func nameBranch(p *Part, br *Branch) {
	br.Name = p.Ref
	switch {
	case p.Kind == VehicleLoads:
		br.Name = p.Ref + ":" + br.Load.Vehicle.Name
	case p.Kind == Tap && br.Fuse != nil:
		br.Name = p.Ref + ".F1"
		br.Fuse.Ref = br.Name
	case p.Kind == Tap:
		br.Name = p.Ref + ":key"
	case p.Kind == Fuse:
		br.Fuse.Ref = p.Ref
	case p.Kind == Block && br.Fuse != nil:
		br.Name = br.Fuse.Ref
	case p.Kind == Relay:
		br.Name = p.Ref + ":" + br.A.Terminals[0].Name + "-" + br.B.Terminals[0].Name
		if br.Kind == ResistorBranch && br != p.Coil() {
			br.Name += " suppressor"
		}
	case br.OfLead():
		br.Name = p.Ref + ":lead"
	case p.Kind == Block:
		br.Name = p.Ref + ":" + br.B.Terminals[0].Name
	case br.Closer != nil && br.Closer.Output != "":
		br.Name = p.Ref + ":" + br.Closer.Output
	case br.Closer != nil && br.Closer.OwnSwitch != nil:
		br.Name = p.Ref + ":switch"
	case br.Closer != nil && br.Closer.Standby != nil:
		br.Name = p.Ref + ":standby switch"
	case br.Load != nil && br.Load.Standby:
		br.Name = p.Ref + ":standby"
	case p.Kind == Ground:
		br.Name = p.Ref + ":frame"
	}
}

// Coil is the coil branch of a relay, from 86 to 85; nil for other parts.
func (p *Part) Coil() *Branch {
	if p.Kind != Relay {
		return nil
	}
	for _, br := range p.Branches {
		if br.Kind == ResistorBranch {
			return br // the suppressor comes after it
		}
	}
	return nil
}

// Terminal finds a terminal by name; nil when the part has none such.
func (p *Part) Terminal(name string) *Terminal {
	for _, t := range p.Terminals {
		if t.Name == name {
			return t
		}
	}
	return nil
}
