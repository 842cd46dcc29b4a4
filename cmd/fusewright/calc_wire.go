package main

import (
	"slices"

	"fusewright/harness/formula/handbook"
	"fusewright/library"
)

// calcWireCmd answers calc wire.
type calcWireCmd struct {
	Current  amount   `arg:"" of:"current" help:"Current: '12 A'."`
	Length   amount   `arg:"" of:"length" help:"Length: '3 m', '10 ft'."`
	System   amount   `of:"voltage" help:"System voltage." default:"12 V"`
	Drop     amount   `of:"share" help:"Allowed drop as a share of the system voltage; what the practice aims at when not given." placeholder:"SHARE"`
	At       amount   `of:"temperature" help:"Temperature of the conductor for the drop." default:"20 °C"`
	Ambient  amount   `of:"temperature" help:"Ambient for the allowed current." default:"30 °C"`
	Practice string   `help:"Practice whose table, margin and usual wire apply." default:"motorcycle" placeholder:"NAME"`
	Family   []string `help:"Wire families to choose from; several may be given." placeholder:"NAME"`
	Sizes    string   `help:"Conductor sizes to choose from: shop (what a shop has by the metre) or all." enum:"shop,all" default:"shop"`
	span
	format
}

// wireFamilies are asked after the practice's usual wire when none is chosen: one
// of each system of sizes.
var wireFamilies = []string{"ISO 6722 thin wall class B", "SAE J1128 GXL", "tinned marine 105 °C AWG"}

// Run finds the smallest sizes.
func (c *calcWireCmd) Run(io *streams, lib *library.Library) error {
	practice := lib.Practice(c.Practice)
	if practice == nil {
		return notFound("practice", c.Practice, lib.Names("practices"))
	}
	path, err := c.path(c.Length)
	if err != nil {
		return err
	}
	types, err := c.families(lib, practice)
	if err != nil {
		return err
	}
	in := handbook.WireInput{
		CurrentA: c.Current.value, SystemV: c.System.value, DropShare: c.Drop.value, ConductorC: c.At.value,
		AmbientC: c.Ambient.value, Types: types, AllSizes: c.Sizes == "all", Library: lib, Practice: practice, Path: path,
	}
	if !c.Drop.given {
		in.DropShare, in.DropAimed = practice.DropAim, true
	}
	answer, err := handbook.Wire(in)
	return printAnswer(io, c.format, answer, err)
}

// families are those asked for, else the usual ones, the practice's first.
func (c *calcWireCmd) families(lib *library.Library, practice *library.Practice) ([]*library.WireType, error) {
	names := c.Family
	if len(names) == 0 {
		names = append([]string{practice.UsualWire}, wireFamilies...)
	}
	var types []*library.WireType
	for _, name := range names {
		if name == "" && len(c.Family) == 0 { // the practice has no usual wire
			continue
		}
		t, err := wireChoice{name}.wireType(lib)
		if err != nil {
			return nil, err
		}
		if !slices.Contains(types, t) {
			types = append(types, t)
		}
	}
	return types, nil
}
