package main

import (
	"fusewright/harness/formula/handbook"
	"fusewright/library"
)

// calcHeatCmd answers calc heat.
type calcHeatCmd struct {
	Size     string `arg:"" help:"Wire size: '16 AWG', '1.5 mm²'."`
	Current  amount `of:"current" help:"Current, for the conductor's temperature; left out: only what is allowed." placeholder:"12A"`
	Ambient  amount `of:"temperature" help:"Ambient temperature." default:"30 °C"`
	Bundle   int    `help:"Wires loaded together, this one counted." default:"1" placeholder:"N"`
	Loading  amount `of:"share" help:"Share of the bundle's capacity in use." default:"100 %"`
	Altitude amount `of:"length" help:"Height above the sea." default:"0 m"`
	Margin   amount `of:"temperature" help:"Kept below the insulation class; left out: the practice's." placeholder:"KELVIN"`
	Practice string `help:"Practice whose table and margin hold." default:"motorcycle" placeholder:"NAME"`
	wireChoice
	format
}

// Run works out the heat balance and each practice's table.
func (c *calcHeatCmd) Run(io *streams, lib *library.Library) error {
	t, s, err := c.sized(lib, c.Size)
	if err != nil {
		return err
	}
	practice := lib.Practice(c.Practice)
	if practice == nil {
		return notFound("practice", c.Practice, lib.Names("practices"))
	}
	if !c.Margin.given {
		c.Margin.value = practice.HotSpotMarginC
	}
	answer, err := handbook.Heat(handbook.HeatInput{
		Type: t, Size: s, AmbientC: c.Ambient.value, Loaded: c.Bundle, Loading: c.Loading.value,
		AltitudeM: c.Altitude.value, MarginC: c.Margin.value, CurrentA: c.Current.value, Library: lib, Practice: practice,
	})
	return printAnswer(io, c.format, answer, err)
}
