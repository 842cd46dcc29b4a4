package remedy

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
)

// meant is a figure that is hard to believe with what may be meant in its place: what
// is gone then followed from the slip.
func (t *tester) meant(f *finding.Finding) ladder {
	if f.Meant == nil {
		return nil
	}
	now := func(was string, put func() func()) ladder {
		return ladder{{About: f.Part + ", " + string(f.Meant.Of), Was: was, Will: f.Meant.Text, Guess: true, put: put}}
	}
	value := f.Meant.Value
	switch f.Meant.Of {
	case finding.Power:
		if l := named(t.Design.Loads, f.Part); l != nil {
			return now(quantity.Format(l.PowerW, quantity.Power), func() func() { return keep(&l.PowerW, value) })
		}
	case finding.Length:
		for _, r := range t.Design.Runs {
			if r.Name == f.Part {
				return now(lengths.Of(t.Design).Text(r.LengthM.Value), func() func() {
					return keep(&r.LengthM, design.Quantity{Value: value, Text: f.Meant.Text, Pos: r.LengthM.Pos})
				})
			}
		}
	case finding.Output:
		return t.output(f, now)
	case finding.Resistance:
		r := &t.Design.Battery.ResistanceOhm
		for _, b := range t.Design.Batteries {
			if b.Name == f.Part {
				r = &b.Store.ResistanceOhm
			}
		}
		return now(r.Text, func() func() { return keep(r, design.Quantity{Value: value, Text: f.Meant.Text, Pos: r.Pos}) })
	case finding.Regulated:
		r := &t.Design.Charging.RegulatedV
		return now(r.Text, func() func() { return keep(r, design.Quantity{Value: value, Text: f.Meant.Text, Pos: r.Pos}) })
	}
	return nil
}

// output is the whole charging curve smaller as its highest point is.
func (t *tester) output(f *finding.Finding, now func(string, func() func()) ladder) ladder {
	c := &t.Design.Charging
	most := 0.0
	for _, o := range c.Output {
		most = max(most, o.CurrentA.Value)
	}
	return now(quantity.Format(most, quantity.Current), func() func() {
		less := slices.Clone(c.Output)
		for i := range less {
			less[i].CurrentA.Value *= f.Meant.Value / most
		}
		return keep(&c.Output, less)
	})
}

func named(list []*design.Load, name string) *design.Load {
	for _, l := range list {
		if l.Name == name {
			return l
		}
	}
	return nil
}
