package handbook

import (
	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

// Conductor is a wire by type and size, or by its bare copper area.
type Conductor struct {
	Type    *library.WireType // nil when AreaMm2 is given
	Size    *library.WireSize // nil when AreaMm2 is given
	AreaMm2 float64           // 0 when a size is given
}

// ohmPerM20 is the resistance at 20 °C and where it comes from.
func (c Conductor) ohmPerM20() (ohm float64, source string) {
	if c.Size != nil {
		return c.Size.MaxOhmPerM, "resistance of the size: " + c.Size.Source.String()
	}
	return conductor.OhmPerM(c.AreaMm2, 20), "resistance of annealed copper: IEC 60028"
}

func (c Conductor) area() float64 {
	if c.Size != nil {
		return c.Size.AreaMm2
	}
	return c.AreaMm2
}

func (c Conductor) name() string {
	switch {
	case c.Size != nil && c.Type != nil:
		return c.Type.Name + " " + sizeText(c.Size)
	case c.Size != nil:
		return c.Size.Label
	}
	return say("%.4g mm² of copper", c.AreaMm2)
}

// sizeText is a size with its area, where the size is not named by it.
func sizeText(s *library.WireSize) string {
	if area := say("%.4g mm²", s.AreaMm2); area != s.Label {
		return s.Label + " (" + area + ")"
	}
	return s.Label
}

func (c Conductor) check(k *check) {
	if c.Size == nil {
		k.positive("the area", c.AreaMm2, mostMm2, "mm²")
	}
}

// Path is the length of a circuit: the loop, feed and return together, or one
// way with a return of the same length and size.
type Path struct {
	LengthM float64
	OneWay  bool
}

func (p Path) loopM() float64 {
	if p.OneWay {
		return 2 * p.LengthM
	}
	return p.LengthM
}

func (p Path) name() string {
	if p.OneWay {
		return "length one way"
	}
	return "length of the loop"
}
