package document

import (
	"cmp"
	"strconv"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
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
			"outside it, all of it where there is no run. In brackets: the fuse in a way, the number of a plug's cavity, a switch's mark (from memory: look at the part). "+
			"Crimp parts and strip lengths: cut list.", smallQuiet)
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
		t.Add(name, "none", "", "", "factory wiring, stays", "", "")
		return
	}
	for _, w := range term.Wires {
		from, far := w.From == term, w.To
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
}
