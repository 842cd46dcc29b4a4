package main

import (
	"errors"
	"fusewright/library"

	"fusewright/harness/formula/handbook"
)

// calcShortCmd answers calc short.
type calcShortCmd struct {
	Current amount `of:"current" help:"Current of the short circuit." placeholder:"500A"`
	Time    amount `of:"time" help:"How long it flows." placeholder:"50ms"`
	Size    string `help:"Wire size or copper area; the smallest area is worked out when not given." placeholder:"1.5mm²"`
	Start   amount `of:"temperature" help:"Conductor temperature before the fault; that of the insulation class when not given." placeholder:"70°C"`
	wireChoice
	format
}

// Run works out area, k²S² or time, by what is given.
func (c *calcShortCmd) Run(io *streams, lib *library.Library) error {
	t, err := c.wireType(lib)
	if err != nil {
		return err
	}
	if t.ShortC == 0 {
		return errors.New("the library has no short-circuit limit for " + t.Name)
	}
	in := handbook.ShortInput{CurrentA: c.Current.value, Seconds: c.Time.value, StartC: t.ClassC, EndC: t.ShortC}
	if c.Start.given {
		in.StartC = c.Start.value
	}
	if c.Size != "" {
		conductor, err := c.conductor(lib, c.Size)
		if err != nil {
			return err
		}
		in.AreaMm2 = conductor.AreaMm2
		if conductor.Size != nil {
			in.AreaMm2 = conductor.Size.AreaMm2
		}
	}
	answer, err := handbook.Short(in)
	return printAnswer(io, c.format, answer, err)
}
