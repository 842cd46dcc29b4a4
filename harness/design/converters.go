package design

import (
	"fmt"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
)

// NominalOf is the nominal voltage of what feeds a part: the system's, or that of its converter.
func (d *Design) NominalOf(p Part) float64 {
	if c, ok := p.(interface{ common() *Common }); ok && c.common().Converter != nil {
		return c.common().Converter.Type.Volts
	}
	return d.NominalV()
}

// resolveConverters finds which converter feeds each part, and refuses what two voltages feed.
func (r *reader) resolveConverters() {
	f := converterSearch{r: r, done: map[Part]bool{}}
	for _, p := range r.parts {
		f.visit(p)
	}
	for _, x := range r.d.Relays {
		if by := f.over(x, x.Coil.FedBy); by != nil {
			x.CoilBy = by
			if form := r.lib.RelayFormFor(x.formSaid, by.Type.Volts); form != nil {
				x.Form = form
			}
		}
	}
	for _, x := range r.d.Batteries {
		if x.Converter != nil {
			r.report(x.FedBy[0].From.Pos, fmt.Sprintf("battery %s is fed by %s, a converter, which charges nothing", quoted(x.Name), quoted(x.Converter.Name)),
				"a charger; a battery of another voltage than the system's is a design of its own")
		}
	}
}

// converterSearch follows feeds up to the source.
type converterSearch struct {
	r    *reader
	done map[Part]bool
}

// visit sets what feeds a part and all above it.
func (f *converterSearch) visit(p Part) {
	feeds := Feeds(p)
	c, ok := p.(interface{ common() *Common })
	if !ok || f.done[p] || len(feeds) == 0 {
		return
	}
	f.done[p] = true
	by := f.over(p, *feeds[0])
	if x, ok := p.(*Charger); ok && by != nil {
		f.r.report((*feeds[0])[0].From.Pos, fmt.Sprintf("%s %s is fed by %s, a converter", kindOf(p), quoted(x.Name), quoted(by.Name)), "a part on the system's own voltage")
	}
	c.common().Converter = by
}

// over is the converter over some feeds; nil where they have the system's voltage.
func (f *converterSearch) over(p Part, feeds []Feed) (by *Charger) {
	for i, feed := range feeds {
		above := f.above(feed.From.Part)
		if i > 0 && above != by {
			also := feeds[0].From.Pos
			f.r.add(problem.Problem{Pos: feed.From.Pos, Also: &also,
				What:     fmt.Sprintf("%s %s is fed %s and %s", kindOf(p), quoted(p.PartName()), said(by), said(above)),
				Expected: "one of the two; outputs of converters are not joined, nor to a battery"})
			return by
		}
		by = above
	}
	return by
}

func (f *converterSearch) above(p Part) *Charger {
	if x, ok := p.(*Charger); ok {
		if x.Converts() {
			return x
		}
		return nil
	}
	if _, bank := p.(*Bank); bank {
		return nil
	}
	f.visit(p)
	if c, ok := p.(interface{ common() *Common }); ok {
		return c.common().Converter
	}
	return nil
}

func said(x *Charger) string {
	if x == nil {
		return "by a battery"
	}
	return fmt.Sprintf("by converter %s (%s)", quoted(x.Name), quantity.Plain(x.Type.Volts, quantity.Voltage))
}

// CoilV is the nominal voltage that a relay's coil is fed.
func (d *Design) CoilV(x *Relay) float64 {
	if x.CoilBy != nil {
		return x.CoilBy.Type.Volts
	}
	return d.SystemV.Value
}
