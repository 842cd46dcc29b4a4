package schematic

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// signed puts a sign before a caption; 0 is none.
func (l *labels) signed(c caption, number int) caption {
	if number > 0 {
		c.sign, c.wide = number, l.signs.wide
	}
	return c
}

// head is the caption of a part before its words are put in.
func (l *labels) head(p *circuit.Part) caption {
	return l.signed(caption{ref: p.Ref}, l.signs.ofPart(p))
}

// captionOf wraps a part's text, its sign before it, to a width in mm.
func (l *labels) captionOf(p *circuit.Part, widthMM float64, most int) caption {
	return l.worded(l.head(p), p, widthMM, most)
}

// captionAtop is captionOf for a caption over an outline.
func (l *labels) captionAtop(p *circuit.Part, widthMM float64) caption {
	c := l.head(p)
	if l.signs.atop {
		c = caption{ref: p.Ref}
	}
	return l.worded(c, p, widthMM, 4)
}

func (l *labels) worded(c caption, p *circuit.Part, widthMM float64, most int) caption {
	words, details := l.wordsOf(p)
	return c.fit(words, details, widthMM, most).solved(widthMM, l.study.part(p)...)
}

// plain is how many lines of plain words a caption of a fixed height has: a
// study sheet needs some for solved values.
func (l *labels) plain(lines, solved int) int {
	if l.study != nil {
		return lines - solved
	}
	return lines
}

// coilCaption is the text of a coil that stands apart: the name, and where the
// contact is.
func (l *labels) coilCaption(p *circuit.Part, widthMM float64) caption {
	words, _ := l.wordsOf(p)
	text := l.head(p).fit(words, "", widthMM, 2)
	return text.reference().solved(widthMM, l.study.coil(p))
}

// plugWords names a plug in the caption where its name does not stand over it.
func (l *labels) plugWords(p *circuit.Part) string {
	if p.Plug == nil || p.Plug.Family == nil {
		return ""
	}
	in := 0
	for _, w := range l.circuit.Wires {
		if w.To.Part == p && w.Role != circuit.ReturnWire && w.Role != circuit.CoilReturnWire {
			in++
		}
	}
	out := l.outOf(p)
	if p.Kind == circuit.Load {
		out = len(l.wiring.returns[p])
	}
	wide := float64(plugSide(in)+plugSide(out)) + symbolOf(l.set, p).Body.W
	if plugHead(p, wide) > 0 {
		return ""
	}
	return "plug " + p.Plug.Family.Name
}

// outOf is 1 when a terminal of a part feeds anything, as addOutlets shows it.
func (l *labels) outOf(p *circuit.Part) int {
	for _, t := range p.Terminals {
		if len(l.wiring.feeds[t]) > 0 {
			return 1
		}
	}
	return 0
}

// minCaption is the least width a caption gets, in modules.
const minCaption = 10

// plugSide is the room of the poles of one side of a plug, in modules: several
// join behind them.
func plugSide(poles int) int {
	switch poles {
	case 0:
		return 0
	case 1:
		return plugM
	}
	return plugM + 1
}

// plugHead is the height of the family's name over the link, in modules; 0 when
// it is too long for the width and stands in the caption.
func plugHead(p *circuit.Part, widthM float64) float64 {
	if p.Plug.Family == nil || textW(p.Plug.Family.Name, scene.Regular) > widthM*symbol.M+0.8 {
		return 0
	}
	return (plugGap + capMM) / symbol.M
}

// plugGap is between the link and the name over it, in mm.
const plugGap = 0.8

// plugM is the width of a pole of a plug, in modules.
const plugM = 1
