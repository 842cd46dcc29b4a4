package main

import (
	"fmt"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/handbook"
	"fusewright/library"
)

// calcFaultCmd answers calc fault.
type calcFaultCmd struct {
	Legs      []string `arg:"" name:"leg" help:"Wires in series, feed and return: '4mm²:0.5m' '1.5mm²:2m'."`
	Source    amount   `of:"voltage" help:"Voltage of the source." default:"12.6 V"`
	SourceOhm amount   `of:"resistance" help:"Resistance inside the source." default:"10 mΩ"`
	Contacts  amount   `of:"resistance" help:"Resistance of contacts and fuses on the way." default:"0 Ω"`
	Fuse      amount   `of:"current" help:"Rating of the fuse that should open; none when not given." placeholder:"15A"`
	Type      string   `help:"Kind of fuse." default:"blade C" placeholder:"NAME"`
	Ambient   amount   `of:"temperature" help:"Ambient temperature." default:"25 °C"`
	At        amount   `of:"temperature" help:"Temperature of the conductors." default:"20 °C"`
	wireChoice
	format
}

// Run works out the prospective current and the opening of the fuse.
func (c *calcFaultCmd) Run(io *streams, lib *library.Library) error {
	in := handbook.FaultInput{
		SourceV: c.Source.value, SourceOhm: c.SourceOhm.value, OtherOhm: c.Contacts.value,
		RatingA: c.Fuse.value, AmbientC: c.Ambient.value,
	}
	if c.Fuse.given {
		t, err := fuseType(lib, c.Type)
		if err != nil {
			return err
		}
		in.Type = t
	}
	for _, text := range c.Legs {
		leg, err := c.leg(lib, text)
		if err != nil {
			return err
		}
		in.Legs = append(in.Legs, leg)
	}
	answer, err := handbook.Fault(in)
	return printAnswer(io, c.format, answer, err)
}

// leg reads SIZE:LENGTH.
func (c *calcFaultCmd) leg(lib *library.Library, text string) (handbook.FaultLeg, error) {
	size, length, ok := strings.Cut(text, ":")
	if !ok {
		return handbook.FaultLeg{}, fmt.Errorf("leg %q has no length (expected SIZE:LENGTH such as 4mm²:0.5m)", text)
	}
	conductor, err := c.conductor(lib, size)
	if err != nil {
		return handbook.FaultLeg{}, err
	}
	lengthM, err := quantity.Parse(length, quantity.Length)
	if err != nil {
		return handbook.FaultLeg{}, err
	}
	return handbook.FaultLeg{Conductor: conductor, LengthM: lengthM, ConductorC: c.At.value}, nil
}
