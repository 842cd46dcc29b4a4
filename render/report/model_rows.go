package report

import (
	"math"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/workshop/cutting"
	"fusewright/library"
)

// exact gives a number with all its digits, and nil for what JSON cannot hold.
func exact(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	if v == 0 {
		v = 0 // no negative zero
	}
	return &v
}

func exactAll(list []float64) []*float64 {
	out := make([]*float64, len(list))
	for i, v := range list {
		out[i] = exact(v)
	}
	return out
}

func modelBranch(b *circuit.Branch) ModelBranch {
	row := ModelBranch{Index: b.Index, Name: b.Name, Kind: b.Kind.String(), A: b.A.Index, B: b.B.Index,
		Ohm: exact(b.Ohm), Assumed: b.Assumed, Closer: closedBy(b.Closer)}
	if b.Part != nil {
		row.Part = b.Part.Ref
	}
	if b.Wire != nil {
		row.Wire = b.Wire.Number
	}
	if f := b.Fuse; f != nil {
		row.Fuse = &ModelFuse{Ref: f.Ref, Factory: f.Factory}
		if f.Type != nil {
			row.Fuse.Type = f.Type.Name
		}
		if f.Rating != nil {
			row.Fuse.RatingA = exact(f.Rating.RatingA)
		}
	}
	if l := b.Load; l != nil {
		row.Load = &ModelDrain{Behaves: string(l.Behaves), PowerW: exact(l.PowerW), RatedV: exact(l.RatedV),
			Duty: exact(l.Duty), Standby: l.Standby, Stall: l.FanStall}
	}
	return row
}

// closedBy says in words what closes a contact.
func closedBy(c *circuit.Closer) string {
	switch {
	case c == nil:
		return ""
	case c.Latch != nil && c.Coil != nil:
		return "as the last pulse of coil " + c.Coil.Name + " left it"
	case c.Latch != nil:
		return "open where the contact to 87 is closed, as the last pulse of coil " + c.Break.Name + " left it"
	case c.Coil != nil:
		return "coil " + c.Coil.Name + " energised"
	case c.Break != nil:
		return "coil " + c.Break.Name + " at rest"
	case c.Switch != nil:
		return "switch " + c.Switch.Name
	case c.OwnSwitch != nil:
		return "own switch of " + c.OwnSwitch.Name
	case c.Standby != nil:
		return "while off: " + c.Standby.Name
	case c.Key.Condition():
		return "condition: " + string(c.Key)
	}
	return "key: " + string(c.Key)
}

func modelWire(w *circuit.Wire) ModelWire {
	row := ModelWire{
		Number: w.Number, Role: string(w.Role), From: pinOf(w.From), To: pinOf(w.To), Colour: w.Spec.Colour.Code(),
		LengthM: exact(cutting.LengthM(w)), FinishedM: exact(w.LengthM), LengthGiven: w.LengthGiven, Fitted: w.Spec.Fitted, AmbientC: exact(w.AmbientC), AmbientAt: w.AmbientAt,
		AmbientKnown: w.AmbientKnown, ConductorOhm: exact(w.ConductorOhm20), EndsOhm: exact(w.EndsOhm),
		FromEnd: endName(w.FromEnd), ToEnd: endName(w.ToEnd), Branch: w.Branch.Index,
		Line: w.Pos.Line, Col: w.Pos.Col,
	}
	if w.Spec.Type != nil {
		row.Type = w.Spec.Type.Name
	}
	if w.Spec.Size != nil {
		row.Size, row.AreaMm2 = w.Spec.Size.Label, exact(w.Spec.Size.AreaMm2)
	}
	for _, p := range w.Poles {
		row.Through = append(row.Through, pinOf(p.Near))
	}
	for _, b := range w.Route {
		row.Runs = append(row.Runs, b.Run.Name)
	}
	return row
}

func pinOf(t *circuit.Terminal) string { return t.Part.Ref + ":" + t.Name }

func endName(t *library.Terminal) string {
	if t == nil {
		return ""
	}
	return t.Name
}

func modelSituation(s *solve.Solution) ModelSituation {
	row := ModelSituation{
		Name: s.Situation.Name, Key: string(s.Situation.Key), EngineRPM: exact(s.Situation.EngineRPM),
		On: []string{}, Closed: []string{}, Status: string(s.Status), Why: s.Why,
		NodeV: exactAll(s.NodeV), BranchA: exactAll(s.BranchA), BranchOhm: exactAll(s.Ohm),
		ClosedContacts: []string{}, Drawing: []string{},
		BatteryA: exact(s.BatteryA), ChargingA: exact(s.ChargingA), ChargingLimitA: exact(s.ChargingLimitA),
		Limited: s.Limited, PowerErrorW: exact(s.PowerErrorW),
	}
	for _, l := range s.Situation.On {
		row.On = append(row.On, l.Name)
	}
	for _, c := range s.Situation.Closed {
		row.Closed = append(row.Closed, c.Name)
	}
	for _, w := range s.Situation.With {
		row.With = append(row.With, string(w))
	}
	for _, b := range s.Circuit.Branches {
		switch {
		case b.Kind == circuit.ContactBranch && b.Index < len(s.Closed) && s.Closed[b.Index]:
			row.ClosedContacts = append(row.ClosedContacts, b.Name)
		case b.Kind == circuit.LoadBranch && b.Index < len(s.LoadOn) && s.LoadOn[b.Index]:
			row.Drawing = append(row.Drawing, b.Name)
		}
	}
	return row
}

// libraryRows lists what the design uses of the library, by kind and name.
func libraryRows(r *harness.Review) []ModelRow {
	used := &usedRows{seen: map[[2]string]bool{}, rows: []ModelRow{}}
	d := r.Design
	if d.Battery.Chemistry != nil {
		used.add("battery", d.Battery.Chemistry.Name, d.Battery.Chemistry.Source)
	}
	for _, p := range r.Circuit.Parts {
		used.part(p.Source)
		if p.Plug != nil {
			used.add("connector family", p.Plug.Family.Name, p.Plug.Family.Source)
		}
	}
	for _, w := range r.Circuit.Wires {
		if w.Spec.Type != nil {
			used.add("wire", w.Spec.Type.Name, w.Spec.Type.Source)
		}
		for _, end := range []*library.Terminal{w.FromEnd, w.ToEnd} {
			if end != nil {
				used.add("terminal", end.Name, end.Source)
			}
		}
	}
	for _, run := range d.Runs {
		if run.Cover != nil {
			used.add("cover", run.Cover.Name, run.Cover.Source)
		}
	}
	slices.SortFunc(used.rows, func(a, b ModelRow) int {
		if c := strings.Compare(a.Kind, b.Kind); c != 0 {
			return c
		}
		return strings.Compare(a.Name, b.Name)
	})
	return used.rows
}

// usedRows gathers rows, each once.
type usedRows struct {
	seen map[[2]string]bool
	rows []ModelRow
}

func (u *usedRows) add(kind, name string, s library.Source) {
	if key := [2]string{kind, name}; !u.seen[key] {
		u.seen[key] = true
		u.rows = append(u.rows, ModelRow{kind, name, s.Text, s.Certainty})
	}
}

// part adds the rows that a part of the design names.
func (u *usedRows) part(source design.Part) {
	switch p := source.(type) {
	case *design.Fuse:
		u.add("fuse", p.Type.Name, p.Type.Source)
	case *design.Relay:
		u.add("relay", p.Form.Name, p.Form.Source)
	case *design.Switch:
		if p.Type != nil {
			u.add("switch", p.Type.Name, p.Type.Source)
		}
	case *design.Load:
		if p.Type != nil {
			u.add("load", p.Type.Name, p.Type.Source)
		}
	case *design.Block:
		if p.Type != nil {
			u.add("block", p.Type.Name, p.Type.Source)
		}
		for _, w := range p.Ways {
			if w.FuseType != nil && w.Fuse != nil {
				u.add("fuse", w.FuseType.Name, w.FuseType.Source)
			}
		}
	}
}
