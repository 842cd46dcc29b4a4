package page

import (
	"fmt"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/wording"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/harness/workshop/cutting"
	"fusewright/library"
)

// CutRow is one wire to cut, or a piece of one.
type CutRow struct {
	Wire   string   `json:"wire"`
	Of     string   `json:"of"`   // what a tick is of: see readings.TickOf
	Look   string   `json:"look"` // "YERD 1.5 mm²"
	Type   string   `json:"type"` // of its insulation
	Colour []string `json:"colour,omitempty"`
	Length string   `json:"length"` // without its unit
	Unit   string   `json:"unit,omitempty"`
	From   string   `json:"from"`
	To     string   `json:"to"`
	Label  string   `json:"label"`
	Rests  string   `json:"rests,omitempty"` // "slack only": to be measured
}

func cutRows(r *harness.Review) []CutRow {
	u, list := lengths.Of(r.Design), []CutRow{}
	for _, row := range cutting.List(r.Circuit) {
		length, unit := fmt.Sprintf("%.0f", row.CutM*1000), "mm"
		if u.Feet() {
			length, unit = u.Cut(row.CutM), ""
		}
		c := CutRow{Wire: row.Number, Of: readings.TickOf(row.Wire).Of, Look: row.Wire.Look(), Type: row.Insulation, Length: length, Unit: unit,
			From: endOf(u, row.From), To: endOf(u, row.To), Label: row.Label}
		if row.Wire.SlackOnly() {
			c.Rests = row.LengthFrom()
		}
		base, tracer := r.Design.Library.ColourPair(row.Colour)
		for _, colour := range []*library.Colour{base, tracer} {
			if colour != nil {
				c.Colour = append(c.Colour, fmt.Sprintf("#%02x%02x%02x", colour.RGB[0], colour.RGB[1], colour.RGB[2]))
			}
		}
		list = append(list, c)
	}
	return list
}

// endOf is what is done at one end: "X6:1 lamp pair: butt splice red, strip 7".
func endOf(u lengths.Unit, e cutting.End) string {
	at := e.At
	if e.Mark != "" {
		at += " (" + e.Mark + ")"
	}
	work := []string{e.Crimp()}
	if e.Seal {
		work = []string{"seal first", e.Crimp()}
	}
	if e.StripMm > 0 {
		work = append(work, "strip "+u.Strip(e.StripMm))
	}
	return at + ": " + wording.Present(work, ", ")
}
