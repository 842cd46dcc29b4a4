// Package labels is what is written at the parts and wires of one drawing, and the
// room that takes.
package labels

import (
	"cmp"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/sign"
	"fusewright/render/schematic/solved"
	"fusewright/render/symbol"
)

// Labels is the manner of one drawing: what is written at parts and wires, and
// the room it takes.
type Labels struct {
	Design     *design.Design
	Circuit    *circuit.Circuit
	Wiring     *parts.Wiring
	Set        *symbol.Set
	Signs      *sign.Signs
	Marks      *sign.Marks    // of what changed, in place of findings; nil = none
	Spots      *sign.Spots    // of everything, for a screen; nil on paper
	Study      *solved.Values // nil on the usual drawing
	Lengths    string         // "ft", else metres
	Stacked    bool           // wire labels in two lines, for narrow paper
	MainsBelow bool           // ground bars stand below the battery, not beside it
	Outlined   bool           // frames round the places
	Detached   bool           // coils and contacts of relays apart
	Slots      Slots          // for loads that are not there

	Left map[string]bool // references of parts and fuses that are left out
}

// Slots is how much room loads have that are not there.
type Slots int

const (
	WholeSlots Slots = iota // that of a load like it
	LeanSlots               // a row
	NoSlots
)

// New is the manner of the design's sheet; set and relays may be "" or nil.
func New(c *circuit.Circuit, set *symbol.Set, relays string, signs *sign.Signs) *Labels {
	of := c.Design
	if of == nil {
		of = &design.Design{}
	}
	l := &Labels{Design: of, Circuit: c, Wiring: parts.WiringOf(c), Set: set, Signs: signs, Lengths: of.Sheet.Lengths,
		Outlined: of.Sheet.PlaceBoxes, Detached: cmp.Or(relays, of.Sheet.Relays) == "detached"}
	if l.Set == nil {
		l.Set = symbol.SetByName(of.Sheet.Symbols)
	}
	return l
}

// Studied is the manner with the solved values of a situation in place of findings; nil
// without one. A situation that is not there is an error.
func (l *Labels) Studied(review *harness.Review, situation string) (*Labels, error) {
	if situation == "" {
		return nil, nil
	}
	s, err := solved.In(review, situation)
	if err != nil {
		return nil, err
	}
	study := *l
	study.Study, study.Signs = s, sign.OfFindings(review, true)
	return &study, nil
}

// Signed puts a sign before a caption; 0 is none.
func (l *Labels) Signed(c lettering.Caption, number int) lettering.Caption {
	if number > 0 {
		c.Sign, c.Wide = number, sign.Wide
	}
	return c
}

// Head is the caption of a part before its words are put in.
func (l *Labels) Head(p *circuit.Part) lettering.Caption {
	return l.Signed(lettering.Caption{Ref: p.Ref}, l.Signs.OfPart(p))
}

// CaptionOf wraps a part's text, its sign before it, to a width in mm.
func (l *Labels) CaptionOf(p *circuit.Part, widthMM float64) lettering.Caption {
	return l.worded(l.Head(p), p, widthMM, mostLines)
}

// BatteryCaption is CaptionOf between the trunks, where three lines have room: its resistance
// is left out rather than cut, and before the number and size of a link its chemistry.
func (l *Labels) BatteryCaption(widthMM float64, p *circuit.Part) lettering.Caption {
	c := l.worded(l.Head(p), p, widthMM, l.Plain(3, 2))
	capacity := given("", l.Design.Battery.CapacityAh, quantity.Charge)
	c = l.uncut(c, p, widthMM, 3, wording.Present([]string{capacity, linkWords(p)}, ", "))
	if cut(c) {
		return l.Head(p).Fit(wording.Present([]string{l.voltsOf(&l.Design.Battery), capacity}, " "), linkWords(p), widthMM, 3)
	}
	return c
}

// GeneratorCaption is the same of what charges, where two have: its kind is left out, which its symbol tells.
func (l *Labels) GeneratorCaption(widthMM float64, p *circuit.Part) lettering.Caption {
	most := l.Plain(2, 1)
	if l.Study != nil { // the second line is the solved one
		words, _ := l.WordsOf(p)
		return l.Head(p).Fit(words, "", widthMM, most).Solved(widthMM, l.Study.Part(p)...)
	}
	return l.uncut(l.worded(l.Head(p), p, widthMM, most), p, widthMM, most, l.outputWords())
}

// uncut is a caption with the first of other details that is not cut, where its own is.
func (l *Labels) uncut(c lettering.Caption, p *circuit.Part, widthMM float64, most int, others ...string) lettering.Caption {
	words, _ := l.WordsOf(p)
	for _, details := range others {
		if !cut(c) {
			break
		}
		c = l.Head(p).Fit(words, details, widthMM, most)
	}
	return c
}

func cut(c lettering.Caption) bool {
	return slices.ContainsFunc(c.Lines, func(s string) bool { return strings.HasSuffix(s, "…") })
}

// CaptionAtop is captionOf for a caption over an outline, with a reference of its own.
func (l *Labels) CaptionAtop(p *circuit.Part, ref string, widthMM float64) lettering.Caption {
	return l.worded(l.Signed(lettering.Caption{Ref: ref}, l.Signs.OfPart(p)), p, widthMM, mostLines)
}

func (l *Labels) worded(c lettering.Caption, p *circuit.Part, widthMM float64, most int) lettering.Caption {
	words, details := l.WordsOf(p)
	return c.Fit(words, details, widthMM, most).Solved(widthMM, l.Study.Part(p)...)
}

// Plain is how many lines of plain words a caption of a fixed height has: a
// study sheet needs some for solved values.
func (l *Labels) Plain(lines, solved int) int {
	if l.Study != nil {
		return lines - solved
	}
	return lines
}

// CoilCaption is the text of a coil that stands apart: the name, and where the
// contact is.
func (l *Labels) CoilCaption(p *circuit.Part, widthMM float64) lettering.Caption {
	words, _ := l.WordsOf(p)
	text := l.Head(p).Fit(words, "", widthMM, mostLines)
	return text.Reference().Solved(widthMM, l.Study.Coil(p))
}

// plugWords names a plug in the caption where its name does not stand over it.
func (l *Labels) plugWords(p *circuit.Part) string {
	if p.Plug == nil || p.Plug.Family == nil {
		return ""
	}
	in := 0
	for _, w := range l.Circuit.Wires {
		if w.To.Part == p && !parts.IsReturn(w) || w.From.Part == p && parts.ToHalf(w) {
			in++
		}
	}
	out := l.OutOf(p)
	if n := len(l.Wiring.Returns[p]); n > 0 || p.Kind == circuit.Load {
		out = len(l.Wiring.Returns[p])
	}
	wide := float64(PlugSide(in)+PlugSide(out)) + parts.SymbolOf(l.Set, p).Body.W
	if PlugHead(p, wide) > 0 {
		return ""
	}
	return "plug " + p.Plug.Family.Name
}

// OutOf is 1 when a terminal of a part feeds anything, as addOutlets shows it.
func (l *Labels) OutOf(p *circuit.Part) int {
	for _, t := range p.Terminals {
		if len(l.Wiring.Feeds[t]) > 0 {
			return 1
		}
	}
	return 0
}

// mostLines is as many lines as a name and its figures may take.
const mostLines = 8

// MinCaption is the least width a caption gets, in modules.
const MinCaption = 10

// PlugSide is the room of the poles of one side of a plug, in modules: several
// join behind them.
func PlugSide(poles int) int {
	switch poles {
	case 0:
		return 0
	case 1:
		return PlugM
	}
	return PlugM + 1
}

// PlugHead is the height of the family's name over the link, in modules; 0 when
// it is too long for the width and stands in the caption.
func PlugHead(p *circuit.Part, widthM float64) float64 {
	if p.Plug.Family == nil || lettering.TextW(p.Plug.Family.Name, scene.Regular) > widthM*symbol.M+0.8 {
		return 0
	}
	return (PlugGap + lettering.CapMM) / symbol.M
}

// PlugGap is between the link and the name over it, in mm.
const PlugGap = 0.8

// PlugM is the width of a pole of a plug, in modules.
const PlugM = 1
