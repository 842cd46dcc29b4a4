package main

import (
	"fusewright/harness/formula/handbook"
	"fusewright/library"
)

// calcHeatCmd answers calc heat.
type calcHeatCmd struct {
	Size     string `arg:"" help:"Wire size: '16 AWG', '1.5 mm²'."`
	Current  amount `of:"current" help:"Current, for the conductor's temperature; only the allowed current when not given." placeholder:"12A"`
	Ambient  amount `of:"temperature" help:"Ambient temperature." default:"30 °C"`
	Bundle   int    `help:"Wires loaded together, this one counted." default:"1" placeholder:"N"`
	Loading  amount `of:"share" help:"Share of the bundle's capacity in use." default:"100 %"`
	Altitude amount `of:"length" help:"Altitude above sea level." default:"0 m"`
	Margin   amount `of:"temperature" help:"Margin kept below the insulation class; the practice's when not given." placeholder:"KELVIN"`
	Practice string `help:"Practice whose table and margin apply." default:"motorcycle" placeholder:"NAME"`
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
