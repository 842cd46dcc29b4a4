package page

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/trace"
	"fusewright/harness/workshop/cutting"
)

// Way is where the circuit of what draws goes, as the spots of the drawing are called, in
// the situation in which it loses most.
type Way struct {
	Of    string   `json:"of"` // "E1", a relay's coil "K1:coil"
	Title string   `json:"title"`
	In    int      `json:"in"`   // the situation
	A     float64  `json:"a"`    // what it draws there
	Out   []string `json:"out"`  // from the battery, what draws last
	Back  []string `json:"back"` // and home
}

// Circuit is the same element by element, with the figures of a situation.
type Circuit struct {
	Way
	Situation string `json:"situation"`
	Solved    bool   `json:"solved"`
	On        bool   `json:"on"`
	Whole     bool   `json:"whole"` // it begins and ends at a battery
	Volts     string `json:"volts"`
	Amps      string `json:"amps"`
	Supply    string `json:"supply"`
	Lost      string `json:"lost"`
	Worst     string `json:"worst"`
	Limit     string `json:"limit,omitempty"` // "" = it may lose what it likes
	Over      bool   `json:"over,omitempty"`  // at worst it loses more
	Place     string `json:"place,omitempty"` // of what draws
	What      string `json:"what"`
	Steps     []Step `json:"steps"`
	Turn      int    `json:"turn"` // how many steps lead out
}

// Step is an element of a circuit. Figures are printed; "" = not known.
type Step struct {
	ID    string  `json:"id"` // as in parts: "W1", "F3"
	Mark  string  `json:"mark"`
	What  string  `json:"what"`
	Place string  `json:"place,omitempty"`
	After string  `json:"after"` // volts behind it, against battery negative
	Amps  string  `json:"amps"`
	Lost  string  `json:"lost"` // mV
	Worst string  `json:"worst"`
	Share float64 `json:"share"` // of what it may carry; 0 = not known
	May   string  `json:"may,omitempty"`
	Fuse  string  `json:"fuse"` // behind which it lies; "none", "shared"
}

// ways are the circuits of all that draws.
func ways(r *harness.Review) []Way {
	list := []Way{}
	t := trace.New(r.Corners)
	for _, draw := range trace.Draws(r.Circuit) {
		if draw.Part.Kind == circuit.Load || draw.IsCoil() {
			list = append(list, wayOf(r, t.Of(draw, t.Worst(draw))))
		}
	}
	return list
}

// CircuitOf is the circuit of what draws, by the label of its way, in a situation; nil when
// there is none such. A situation below zero is that in which it loses most.
func CircuitOf(r *harness.Review, of string, situation int) *Circuit {
	t := trace.New(r.Corners)
	for _, draw := range trace.Draws(r.Circuit) {
		if drawName(draw) != of {
			continue
		}
		if situation < 0 || situation >= len(r.Design.Situations) {
			situation = t.Worst(draw)
		}
		return circuitOf(r, t.Of(draw, situation))
	}
	return nil
}

func drawName(b *circuit.Branch) string {
	if b.IsCoil() {
		return b.Part.Ref + ":coil"
	}
	return b.Part.Ref
}

func wayOf(r *harness.Review, x *trace.Circuit) Way {
	of := drawName(x.Draw)
	w := Way{Of: of, A: math.Round(finite(x.A)*1000) / 1000, Title: capital(nameOf(x.Draw.Part)), In: x.Situation, Out: []string{}, Back: []string{}}
	if x.Draw.IsCoil() {
		w.Title = "Coil of " + nameOf(x.Draw.Part)
	}
	battery := func(n *circuit.Node, post string) string {
		for _, t := range n.Terminals {
			switch t.Part.Kind {
			case circuit.Battery:
				return t.Part.Ref + post
			case circuit.Bank:
				return t.Part.Ref
			}
		}
		return ""
	}
	if x.Out > 0 {
		w.Out = append(w.Out, battery(x.Steps[0].From, ":+"))
	}
	for _, s := range x.Steps[:x.Out] {
		if b := s.Branch; b.Wire != nil && b.Wire.From.Part.Kind == circuit.Block && b.Wire.From.FuseRef == "" {
			w.Out = append(w.Out, b.Wire.From.Part.Ref+":"+b.Wire.From.Name)
		}
		w.Out = append(w.Out, markOf(s.Branch))
		if b := s.Branch; b.Wire != nil && b.Wire.To.Part.Kind == circuit.Splice {
			w.Out = append(w.Out, b.Wire.To.Part.Ref)
		}
	}
	w.Out = append(w.Out, of)
	for _, s := range x.Steps[x.Out:] {
		w.Back = append(w.Back, markOf(s.Branch))
	}
	if n := len(x.Steps); n > x.Out {
		w.Back = append(w.Back, battery(x.Steps[n-1].To, ":-"))
	}
	empty := func(s string) bool { return s == "" }
	w.Out, w.Back = slices.DeleteFunc(slices.Compact(w.Out), empty), slices.DeleteFunc(slices.Compact(w.Back), empty)
	return w
}

// markOf is the spot of a branch in the drawing.
func markOf(b *circuit.Branch) string {
	switch {
	case b.Wire != nil:
		return b.Wire.Number
	case b.Fuse != nil && b.Part.Kind == circuit.Block:
		return b.Fuse.Ref
	case b.Closer != nil && b.Closer.Output != "":
		return b.Part.Ref + ":" + b.Closer.Output
	}
	return b.Part.Ref
}

func circuitOf(r *harness.Review, x *trace.Circuit) *Circuit {
	c := &Circuit{Way: wayOf(r, x), Situation: r.Design.Situations[x.Situation].Name, Solved: x.Solved, On: x.On, Whole: x.Whole,
		Volts: volts(x.Volts.Nominal), Amps: quantity.Format(x.A, quantity.Current), Supply: volts(x.SupplyV),
		Lost: millivolts(x.Drop.Nominal) + " mV", Worst: millivolts(x.Drop.Corner) + " mV", What: drawWords(x.Draw), Turn: x.Out,
		Steps: []Step{}, Over: x.LimitV > 0 && x.Drop.Corner > x.LimitV*(1+1e-9)}
	if x.LimitV > 0 {
		c.Limit = millivolts(x.LimitV) + " mV"
	}
	if p := x.Draw.Part.Place; p != nil {
		c.Place = p.Name
	}
	unit := lengths.Of(r.Design)
	for _, s := range x.Steps {
		id, what, place := told(s.Branch, unit)
		step := Step{ID: id, Mark: markOf(s.Branch), What: what, Place: place, After: strings.TrimSuffix(volts(s.AfterV), " V"),
			Amps: quantity.Format(s.A, quantity.Current), Lost: millivolts(s.LostV), Worst: millivolts(s.WorstV), Fuse: "none"}
		if s.MayA > 0 {
			step.Share, step.May = math.Round(s.A/s.MayA*1000)/1000, quantity.Format(s.MayA, quantity.Current)
		}
		switch {
		case s.Shared:
			step.Fuse = "shared"
		case s.Fuse != nil:
			step.Fuse = s.Fuse.Fuse.Ref
			if s.Fuse.Fuse.Rating != nil {
				step.Fuse += " " + quantity.Plain(s.Fuse.Fuse.Rating.RatingA, quantity.Current)
			}
		}
		c.Steps = append(c.Steps, step)
	}
	return c
}

// told is how an element is called, what it is and where.
func told(b *circuit.Branch, unit lengths.Unit) (id, what, place string) {
	if w := b.Wire; w != nil {
		from, to := w.From.Part.Place, w.To.Part.Place
		if from != nil && to != nil {
			place = wording.Present([]string{from.Name, to.Name}, " → ")
			if from == to {
				place = from.Name
			}
		}
		return w.Number, w.Look() + " · " + unit.Text(cutting.LengthM(w)), place
	}
	p := b.Part
	if p.Place != nil {
		place = p.Place.Name
	}
	switch {
	case b.Fuse != nil:
		what = "fuse"
		if b.Fuse.Rating != nil {
			what += " " + quantity.Plain(b.Fuse.Rating.RatingA, quantity.Current)
		}
		return b.Fuse.Ref, what, place
	case p.Kind == circuit.Load && b.OfLead():
		return p.Ref, "its own lead", place
	case p.Kind == circuit.Load:
		return p.Ref, "its own switch", place
	case p.Kind == circuit.Relay:
		_, ends, _ := strings.Cut(b.Name, ":")
		return p.Ref, nameOf(p) + ", " + strings.Replace(ends, "-", " to ", 1), place
	case p.Kind == circuit.Ground:
		return p.Ref, nameOf(p) + ", through the frame", place
	}
	return p.Ref, nameOf(p), place
}

func drawWords(b *circuit.Branch) string {
	if b.Load == nil {
		return "coil of " + nameOf(b.Part)
	}
	return nameOf(b.Part) + ", " + quantity.Plain(b.Load.PowerW, quantity.Power)
}

// finite is a number for JSON; 0 = it is none.
func finite(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return v
}

func nameOf(p *circuit.Part) string { return cmp.Or(p.Label, p.Name) }

func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

func volts(v float64) string {
	if math.IsNaN(v) {
		return "not joined"
	}
	return quantity.Fixed(v, 2) + " V"
}

// millivolts is what is lost: a tenth is as much as a meter shows of a crimp.
func millivolts(v float64) string {
	switch {
	case math.IsNaN(v):
		return "?"
	case math.Abs(v) < 0.1:
		return quantity.Fixed(v*1000, 1)
	}
	return fmt.Sprint(quantity.Fixed(v*1000, 0))
}
