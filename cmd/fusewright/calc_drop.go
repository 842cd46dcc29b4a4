package main

import (
	"fusewright/harness/formula/handbook"
	"fusewright/library"
)

// calcDropCmd answers calc drop.
type calcDropCmd struct {
	Size    string `arg:"" help:"Wire size or copper area: '16 AWG', '1.5 mm²'."`
	Current amount `arg:"" of:"current" help:"Current: '12 A'."`
	Length  amount `arg:"" of:"length" help:"Length: '3 m', '10 ft'."`
	System  amount `of:"voltage" help:"System voltage." default:"12 V"`
	At      amount `of:"temperature" help:"Temperature of the conductor." default:"20 °C"`
	span
	wireChoice
	format
}

// Run works the drop out.
func (c *calcDropCmd) Run(io *streams, lib *library.Library) error {
	conductor, err := c.conductor(lib, c.Size)
	if err != nil {
		return err
	}
	path, err := c.path(c.Length)
	if err != nil {
		return err
	}
	answer, err := handbook.Drop(handbook.DropInput{
		Conductor: conductor, CurrentA: c.Current.value, SystemV: c.System.value, ConductorC: c.At.value,
		Path: path,
	})
	return printAnswer(io, c.format, answer, err)
}
