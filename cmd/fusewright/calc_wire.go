package main

import (
	"fusewright/harness/formula/handbook"
	"fusewright/library"
)

// calcWireCmd answers calc wire.
type calcWireCmd struct {
	Current  amount   `arg:"" of:"current" help:"Current: '12 A'."`
	Length   amount   `arg:"" of:"length" help:"Length: '3 m', '10 ft'."`
	System   amount   `of:"voltage" help:"System voltage." default:"12 V"`
	Drop     amount   `of:"share" help:"Allowed drop as a share of the system voltage." default:"3 %"`
	OneWay   bool     `help:"The length is one way; the return is as long again."`
	At       amount   `of:"temperature" help:"Temperature of the conductor for the drop." default:"20 °C"`
	Ambient  amount   `of:"temperature" help:"Ambient for the allowed current." default:"30 °C"`
	Practice string   `help:"Practice whose table and margin hold." default:"motorcycle" placeholder:"NAME"`
	Family   []string `help:"Wire families to choose from; several may be given." placeholder:"NAME"`
	format
}

// wireFamilies are asked when none is chosen: one of each system of sizes.
var wireFamilies = []string{"SAE J1128 GXL", "tinned marine 105 °C AWG", "ISO 6722 thin wall class B"}

// Run finds the smallest sizes.
func (c *calcWireCmd) Run(io *streams, lib *library.Library) error {
	practice := lib.Practice(c.Practice)
	if practice == nil {
		return notFound("practice", c.Practice, lib.Names("practices"))
	}
	names := c.Family
	if len(names) == 0 {
		names = wireFamilies
	}
	var types []*library.WireType
	for _, name := range names {
		t, err := wireChoice{name}.wireType(lib)
		if err != nil {
			return err
		}
		types = append(types, t)
	}
	answer, err := handbook.Wire(handbook.WireInput{
		CurrentA: c.Current.value, SystemV: c.System.value, DropShare: c.Drop.value, ConductorC: c.At.value,
		AmbientC: c.Ambient.value, Types: types, Library: lib, Practice: practice,
		Path: handbook.Path{LengthM: c.Length.value, OneWay: c.OneWay},
	})
	return printAnswer(io, c.format, answer, err)
}
