package document

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// Connections lays the connection table on pages: part by part, each terminal
// with its wires, where they go, the run that they come out of and how far they
// stand out there, and a box to tick when it has been checked on the finished
// harness. It is the one table of where wires end.
func Connections(r *harness.Review, board *formboard.Board) []*scene.Sheet {
	out := standing(board)
	return upright("Connection table", r, func(b *book) {
		b.para("Where each wire ends, part by part, so every wire is listed twice. Tick it when the number on the marker, the colour and "+
			"the terminal agree and the crimp holds a light pull, with the battery disconnected. Run: as on the layout; out: length of the wire "+
			"outside it. In brackets: the fuse in a way, the number of a plug's cavity, a switch's mark (from memory: look at the part). "+
			"Crimp parts and strip lengths: cut list.", smallQuiet)
		for _, x := range r.Circuit.Inlines() {
			if len(x.Poles) == 0 {
				continue
			}
			b.para(x.Part.Ref+" "+x.Part.Name+" parts the loom: "+x.Part.Plug.String()+", the half with the sockets towards "+
				wording.And(x.Towards(x.Sockets))+". A wire that it parts is in pieces with a letter each, in the order in which its current meets them.", smallQuiet)
		}
		u := lengths.Of(r.Design)
		size := sizeUnit(r.Circuit)
		t := report.NewTable("at", "wire", "colour", ">"+cmp.Or(size, "size"), "goes to", ">run", ">"+u.Headed("out"))
		for _, p := range r.Circuit.Parts {
			if wired(p) == 0 {
				continue
			}
			t.Group(partHeading(p))
			for _, term := range p.Terminals {
				connectionRows(u, t, term, out, size)
			}
		}
		for _, x := range r.Circuit.Inlines() {
			poleRows(u, t, x, out, size)
		}
		_ = b.columns(2, func() error {
			b.lay(t, column{head: "", wide: 5, align: scene.Middle, first: true})
			return nil
		})
		b.jointTable(r)
	})
}

// standing maps the ends of a board by wire and end.
type endOf struct {
	wire *circuit.Wire
	from bool
}

func standing(board *formboard.Board) map[endOf]formboard.End {
	out := map[endOf]formboard.End{}
	add := func(list []formboard.End) {
		for _, e := range list {
			out[endOf{e.Wire, e.AtFrom}] = e
		}
	}
	for _, p := range board.Places {
		add(p.Ends)
	}
	add(board.Nowhere)
	return out
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

// sizeUnit is the unit that all wires are sized in, which then stands in the head;
// empty where there are several.
func sizeUnit(c *circuit.Circuit) (unit string) {
	for _, w := range c.Wires {
		if w.Spec.Size == nil {
			continue
		}
		_, its, _ := strings.Cut(w.Spec.Size.Label, " ")
		if unit == "" {
			unit = its
		}
		if its != unit {
			return ""
		}
	}
	return unit
}

// sizeIn is a wire's size without the unit that stands in the head.
func sizeIn(w *circuit.Wire, unit string) string {
	if w.Spec.Size == nil {
		return "?"
	}
	return strings.TrimSuffix(w.Spec.Size.Label, " "+unit)
}

// connectionRows are the wires at a terminal; one without wires says so.
func connectionRows(u lengths.Unit, t *report.Table, term *circuit.Terminal, out map[endOf]formboard.End, size string) {
	name := term.Name
	if term.FuseRef != "" {
		name += " (" + term.FuseRef + ")"
	}
	if term.Mark != "" {
		name += " (" + strings.TrimPrefix(term.Mark, "cavity ") + ")"
	}
	if len(term.Wires) == 0 {
		what := "stays empty"
		if post := term.OnPost(); post != nil {
			t.Add(name, "none", "", "", "bolted on "+post.Part.Ref+" "+post.Name, "", "")
			return
		}
		if on := term.Bolted(); len(on) > 0 {
			t.Add(name, "none", "", "", "bolted: "+on[0].Part.Ref+" "+on[0].Name, "", "")
			return
		}
		if k := term.Part.Kind; k == circuit.Battery || k == circuit.Bank || k == circuit.Tap {
			what = "factory wiring, stays"
		} else if k == circuit.Block {
			what = "spare, stays empty"
		} else if coil := term.Part.Coil(); coil != nil && coil.Senses() {
			what = "not brought out: senses at 30"
		}
		t.Add(name, "none", "", "", what, "", "")
		return
	}
	for _, whole := range term.Wires {
		from := whole.From == term
		connectionRow(u, t, name, whole.End(from), from, out, size)
	}
}

// poleRows are the contacts of a connector in the loom, half by half.
func poleRows(u lengths.Unit, t *report.Table, x *circuit.Inline, out map[endOf]formboard.End, size string) {
	if len(x.Poles) == 0 {
		return
	}
	for _, side := range []int{x.Sockets, 1 - x.Sockets} {
		mark := "sockets"
		if side != x.Sockets {
			mark = "pins"
		}
		t.Group(partHeading(x.Part) + ", " + mark)
		for _, p := range x.Poles {
			if i := slices.Index(p.Wire.Poles, p); side == p.NearSide() {
				connectionRow(u, t, p.Near.Name, p.Wire.Pieces[i], false, out, size)
			} else {
				connectionRow(u, t, p.Far.Name, p.Wire.Pieces[i+1], true, out, size)
			}
		}
	}
}

// connectionRow is one end of a wire, or of a piece of one.
func connectionRow(u lengths.Unit, t *report.Table, name string, w *circuit.Wire, from bool, out map[endOf]formboard.End, size string) {
	far := w.To
	if !from {
		far = w.From
	}
	run, free := "–", ""
	if e, ok := out[endOf{w, from}]; ok {
		switch free = u.Near(e.FreeMm); {
		case e.Short:
			free = "too short"
		case e.Beside:
			free = "beside the runs"
		}
		if e.Via != nil {
			run = strconv.Itoa(e.Via.Number)
		}
	}
	t.Add(name, w.Number, w.Spec.Colour.Code(), sizeIn(w, size), far.Address(), run, free)
}
