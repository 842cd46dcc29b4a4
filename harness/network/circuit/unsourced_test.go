package circuit

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/library"
)

// TestUnsourcedOhm: what has no source of a branch's resistance, by what it is of.
func TestUnsourcedOhm(t *testing.T) {
	sure := library.Source{Certainty: library.OneSource}
	weak := library.Source{Certainty: library.FromMemory}
	part := func(s design.Part) *Part { return &Part{Source: s} }
	rating := func(s library.Source) *library.FuseRating { return &library.FuseRating{Source: s} }
	ring := &library.Terminal{ContactOhm: 0.3e-3, Source: sure}
	own := &library.Terminal{ContactOhm: 0.2e-3, Source: library.Source{Certainty: library.UserData}}
	wire := func(s library.Source) *Branch {
		w := &Wire{FromEnd: ring, ToEnd: own, LengthM: 2, ConductorOhm20: 37e-3}
		w.Spec.Size = &library.WireSize{AreaMm2: 1, MaxOhmPerM: 18.5e-3, Source: s}
		return &Branch{Wire: w, Ohm: 37.5e-3}
	}
	block := func(s library.Source) *design.Block {
		return &design.Block{Type: &library.BlockType{ContactOhm: 2e-3, Source: s}}
	}
	fused := func(b *design.Block, s library.Source) *Branch {
		return &Branch{Part: part(b), Ohm: 5e-3, Fuse: &FuseSpec{Rating: rating(s)}}
	}
	for name, c := range map[string]struct {
		b    *Branch
		want float64
	}{
		"assumed":             {&Branch{Part: part(&design.Fuse{Rating: rating(sure)}), Ohm: 5e-3, Assumed: "x"}, 5e-3},
		"fuse":                {&Branch{Part: part(&design.Fuse{Rating: rating(sure)}), Ohm: 5e-3}, 0},
		"fuse from memory":    {&Branch{Part: part(&design.Fuse{Rating: rating(weak)}), Ohm: 5e-3}, 5e-3},
		"ground as given":     {&Branch{Part: part(&design.Ground{}), Ohm: 5e-3}, 0},
		"switch":              {&Branch{Part: part(&design.Switch{Type: &library.SwitchType{Source: sure}}), Ohm: 5e-3}, 0},
		"switch, no source":   {&Branch{Part: part(&design.Switch{Type: &library.SwitchType{Source: weak}}), Ohm: 5e-3}, 5e-3},
		"relay":               {&Branch{Part: part(&design.Relay{Form: &library.RelayForm{Source: sure}}), Ohm: 5e-3}, 0},
		"own switch":          {&Branch{Part: part(&design.Load{}), Ohm: 1e-3}, 1e-3},
		"way and fuse":        {fused(block(sure), sure), 0},
		"way from memory":     {fused(block(weak), sure), 2e-3},
		"its fuse":            {fused(block(sure), weak), 3e-3},
		"wire":                {wire(sure), 0.3e-3},                       // the ring; the user's own end is known
		"wire from memory":    {wire(weak), 0.3e-3 + 37e-3 - 2*17.241e-3}, // and what is above copper's
		"nothing to be found": {&Branch{Ohm: 1}, 0},
	} {
		if got := c.b.UnsourcedOhm(); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s: %g Ω, want %g Ω", name, got, c.want)
		}
	}
}
