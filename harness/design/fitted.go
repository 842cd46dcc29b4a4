package design

import (
	"fmt"
	"strings"
)

// Fitted tells whether a part is already there: the battery, a tap, or what the design says
// is fitted.
func Fitted(p Part) bool {
	switch p := p.(type) {
	case *BatteryPart, *NegativePart, *Tap:
		return true
	case *Relay:
		if p.Half != nil {
			return p.Half.Fitted
		}
	}
	return p.(interface{ common() *Common }).common().Fitted
}

// fittedKey says that a part is already there.
func fittedKey[X any, P partPtr[X]]() key[X] {
	return yesKey(Key{Name: "fitted", Default: "no", Example: "yes",
		Doc: "already there: in the circuit, drawn and judged, but not on the bill; a wire whose ends are both fitted is there too"},
		func(x *X) *bool { return &P(x).common().Fitted })
}

// fittedWireKey says of a wire whether it is already there.
func fittedWireKey() key[wireDraft] {
	return key[wireDraft]{Key: Key{Name: "fitted", Kind: KindYesNo, Default: "where both its ends are", Example: "no",
		Doc: "already there: neither cut nor bought"},
		read: func(r *reader, w *wireDraft, f field) {
			if yes, ok := r.yes(f); ok {
				w.fitted = &yes
			}
		}}
}

// fillFitted tells of each wire whether it is already there.
func (r *reader) fillFitted() {
	for _, c := range r.connections {
		for i := range *c.feeds {
			f := &(*c.feeds)[i]
			f.Wire.Fitted = Fitted(c.owner) && Fitted(f.From.Part)
			for _, w := range []*wireDraft{c.wire, c.feedOf[i]} { // its own goes first
				if w != nil && w.fitted != nil {
					f.Wire.Fitted = *w.fitted
				}
			}
			if f.Wire.Fitted && f.Wire.SizeAuto && !c.link {
				name := "wire"
				if c.back {
					name = "return wire"
				}
				r.report(f.Wire.Pos, fmt.Sprintf("%s of %s: it is already fitted, so no size can be chosen", name, c.of),
					"the size that it has, such as 1.5 mm², or `fitted: no`")
				break // of several alike
			}
		}
	}
	for _, p := range r.parts {
		if what := openOf(p); what != "" && Fitted(p) {
			r.report(p.PartPos(), fmt.Sprintf("%s %s is already fitted, so its %s cannot be chosen", strings.TrimPrefix(kindOf(p), "a "), quoted(p.PartName()), what),
				"the "+what+" that it has")
		}
	}
}

// openOf is the key that a part leaves to sizing; "" = none.
func openOf(p Part) string {
	if x, ok := p.(Pluggable); ok && x.PlugSpec().PlugAuto {
		if _, parts := p.(*Connector); parts {
			return "family"
		}
		return "plug"
	}
	switch x := p.(type) {
	case *Fuse:
		if x.RatingAuto || x.TypeAuto {
			return "rating"
		}
	case *Relay:
		if x.FormAuto {
			return "form"
		}
	case *Block:
		if x.TypeAuto {
			return "type"
		}
	case *Charger:
		if x.TypeAuto {
			return "type"
		}
	}
	return ""
}
