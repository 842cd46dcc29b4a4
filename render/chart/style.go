package chart

import "fusewright/render/scene"

// quiet is for what is read second: notes, upright levels.
var quiet = scene.RGB{R: 0x50, G: 0x50, B: 0x50}

var (
	gridColour  = scene.RGB{R: 0xD0, G: 0xD0, B: 0xD0}
	minorColour = scene.RGB{R: 0xE8, G: 0xE8, B: 0xE8}
	spanTint    = scene.RGB{R: 0xF1, G: 0xF1, B: 0xF1}
	paper       = scene.RGB{R: 0xFF, G: 0xFF, B: 0xFF}
)

// look is how one curve differs from the next: by colour and by dash, either of
// which is enough to tell it.
type look struct {
	colour scene.RGB
	dash   []float64
}

// looks starts with black. The colours are the set published as Color Universal
// Design (chosen so that people with any of the common colour vision
// deficiencies tell them apart), the two lightest darkened so that thin lines
// and small print of that colour stay readable on white.
var looks = []look{
	{scene.RGB{R: 0x11, G: 0x11, B: 0x11}, nil},
	{scene.RGB{R: 0x00, G: 0x5F, B: 0x9E}, []float64{3.2, 1.2}},
	{scene.RGB{R: 0xC0, G: 0x4A, B: 0x00}, []float64{0.9, 0.9}},
	{scene.RGB{R: 0x00, G: 0x7A, B: 0x59}, []float64{4.5, 1, 0.9, 1}},
	{scene.RGB{R: 0xA6, G: 0x4F, B: 0x80}, []float64{6, 1.6}},
	{scene.RGB{R: 0x8A, G: 0x62, B: 0x00}, []float64{2.4, 0.9, 0.8, 0.9, 0.8, 0.9}},
}

// lookOf is the look at a place of a list. Beyond the last they start anew,
// heavier dashes tell no more.
func lookOf(place int) look { return looks[place%len(looks)] }

func (l look) stroke(widthMM float64) scene.Stroke {
	return scene.Stroke{WidthMM: widthMM, Colour: l.colour, Dash: l.dash}
}

// tint is the look's colour mixed with much white, for areas.
func (l look) tint() scene.RGB {
	mix := func(part uint8) uint8 { return uint8(255 - (255-int(part))*18/100) }
	return scene.RGB{R: mix(l.colour.R), G: mix(l.colour.G), B: mix(l.colour.B)}
}
