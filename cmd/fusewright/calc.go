package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"slices"

	"github.com/alecthomas/kong"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/formula/handbook"
	"fusewright/library"
	"fusewright/render/report"
)

// calcCmd groups the quick questions of the bench.
type calcCmd struct {
	Drop    calcDropCmd    `cmd:"" help:"Volts and percent lost in a circuit."`
	Wire    calcWireCmd    `cmd:"" help:"Smallest wire for a current, length and allowed drop."`
	Power   calcPowerCmd   `cmd:"" help:"Watts to amperes and back."`
	Battery calcBatteryCmd `cmd:"" help:"How long a battery lasts at a current."`
	Heat    calcHeatCmd    `cmd:"" help:"Allowed current of a wire, or its temperature at a current."`
	Fuse    calcFuseCmd    `cmd:"" help:"Fastest and slowest opening of a fuse at a current."`
	Short   calcShortCmd   `cmd:"" help:"Smallest area for a short circuit, or time to a temperature."`
	Fault   calcFaultCmd   `cmd:"" help:"Current of a short circuit at the end of a path, and what opens."`
}

// amount is a quantity with its unit on the command line, in SI inside. The tag
// "of" of the field says what it measures.
type amount struct {
	value float64
	given bool
}

// Decode reads "12 A", "3 ft", "30 %".
func (a *amount) Decode(ctx *kong.DecodeContext) error {
	var text string
	if err := ctx.Scan.PopValueInto("value", &text); err != nil {
		return err
	}
	v, err := quantity.Parse(text, quantity.Dimension(ctx.Value.Tag.Get("of")))
	if err != nil {
		return err
	}
	a.value, a.given = v, true
	return nil
}

// span says what a length is of: there is no silent choice between the two, which
// differ by half the drop.
type span struct {
	OneWay bool `help:"The length is one way; the return is as long again." xor:"span"`
	Loop   bool `help:"The length is feed and return together." xor:"span"`
}

// path is a length as said; an error when it is not said which it is.
func (s span) path(length amount) (handbook.Path, error) {
	if !s.OneWay && !s.Loop {
		return handbook.Path{}, errors.New("what the length is of is not said " +
			"(expected --one-way: the return is as long again; or --loop: feed and return together)")
	}
	return handbook.Path{LengthM: length.value, OneWay: s.OneWay}, nil
}

// usualWire is the family taken where none is named.
const usualWire = "ISO 6722 thin wall class B"

// wireChoice names a size, and the family it is of.
type wireChoice struct {
	Insulation string `help:"Wire family; see 'fusewright parts wire'. When not given: ISO 6722 thin wall class B, or for a size it does not come in, the first family that does." placeholder:"NAME"`
}

// wireType finds the family, or says which are known.
func (w wireChoice) wireType(lib *library.Library) (*library.WireType, error) {
	name := cmp.Or(w.Insulation, usualWire)
	if t := lib.WireType(name); t != nil {
		return t, nil
	}
	return nil, notFound("wire family", name, lib.Names("wire types"))
}

// sized finds a size of the family. A family that is named has the size or the
// size is refused; where none is named, gauges are looked up in the first family
// that has them.
func (w wireChoice) sized(lib *library.Library, size string) (*library.WireType, *library.WireSize, error) {
	t, err := w.wireType(lib)
	if err != nil {
		return nil, nil, err
	}
	if s := t.Size(size); s != nil {
		return t, s, nil
	}
	if w.Insulation == "" {
		for _, other := range slices.Concat(usualFamilies(lib), lib.WireTypes) {
			if s := other.Size(size); s != nil {
				return other, s, nil
			}
		}
	}
	return nil, nil, notFound("size of "+t.Name, size, t.SizeLabels())
}

// usualFamilies are those asked first for a size.
func usualFamilies(lib *library.Library) []*library.WireType {
	var list []*library.WireType
	for _, name := range wireFamilies {
		list = append(list, lib.WireType(name))
	}
	return list
}

// conductor is a size of the library or a bare area.
func (w wireChoice) conductor(lib *library.Library, size string) (handbook.Conductor, error) {
	t, s, err := w.sized(lib, size)
	if err == nil {
		return handbook.Conductor{Type: t, Size: s}, nil
	}
	if area, parseErr := quantity.Parse(size, quantity.Area); parseErr == nil {
		return handbook.Conductor{AreaMm2: area}, nil
	}
	return handbook.Conductor{}, err
}

// notFound is the error for an unknown name.
func notFound(kind, name string, choices []string) error {
	if near := problem.Nearest(name, choices); near != "" {
		return fmt.Errorf("no %s %q (did you mean %q?)", kind, name, near)
	}
	return fmt.Errorf("no %s %q (known: %s)", kind, name, wording.Some(choices, 20))
}

// printAnswer prints an answer as text or JSON.
func printAnswer(io *streams, f format, answer *handbook.Answer, err error) error {
	if err != nil {
		return err
	}
	return printed(io, func(b *bytes.Buffer) error {
		if f.json() {
			return report.WriteJSON(b, answer)
		}
		_, err := b.WriteString(answer.Text())
		return err
	})
}
