package rules

import (
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

// Short names for printing, since every finding is full of numbers.
func amps(v float64) string  { return quantity.Format(v, quantity.Current) }
func volts(v float64) string { return quantity.Format(v, quantity.Voltage) }
func share(v float64) string { return quantity.Format(v, quantity.Share) }
func celsius(v float64) string {
	return quantity.Format(v, quantity.Temperature)
}
func rated(v float64) string { return quantity.Plain(v, quantity.Current) }
func area(v float64) string  { return quantity.Plain(v, quantity.Area) }

// length is in the unit that the design's sheet asks for.
func (p *Pass) length(m float64) string { return lengths.Of(p.d).Text(m) }

// against prints a figure with the digits that tell it from its limit.
func against(limit float64, dim quantity.Dimension) func(float64) string {
	return func(v float64) string {
		text, _ := quantity.Against(v, limit, dim)
		return text
	}
}

// ampsOver and voltsOver are against for the usual two.
func ampsOver(v, limit float64) string  { return against(limit, quantity.Current)(v) }
func voltsOver(v, limit float64) string { return against(limit, quantity.Voltage)(v) }

// ofPart starts a finding about a part.
func ofPart(s finding.Severity, p *circuit.Part) finding.Finding {
	return finding.Finding{Severity: s, Part: p.Name, Ref: p.Ref, Pos: p.Pos}
}

// ofWire starts a finding about a wire. It goes by the name of the part whose
// feed or return the wire is, since that is where the design describes it.
func ofWire(s finding.Severity, w *circuit.Wire) finding.Finding {
	return finding.Finding{Severity: s, Part: wireOwner(w).Name, Ref: w.Number, Pos: w.Pos, Wire: string(w.Role)}
}

// wireOwner is the part whose feed or return a wire is.
func wireOwner(w *circuit.Wire) *circuit.Part {
	if w.Role.Returns() {
		return w.From.Part
	}
	return w.To.Part
}
