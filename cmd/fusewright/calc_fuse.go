package main

import (
	"fusewright/harness/formula/handbook"
	"fusewright/library"
)

// calcFuseCmd answers calc fuse.
type calcFuseCmd struct {
	Rating   amount `arg:"" of:"current" help:"Rating: '15 A'."`
	Current  amount `arg:"" of:"current" help:"Current through it: '30 A'."`
	Type     string `help:"Kind of fuse; see 'fusewright parts fuse'." default:"blade C" placeholder:"NAME"`
	Ambient  amount `of:"temperature" help:"Ambient temperature." default:"25 °C"`
	Practice string `help:"Practice that says what share of the rating a continuous load may take." default:"motorcycle" placeholder:"NAME"`
	format
}

// Run reads the opening-time band.
func (c *calcFuseCmd) Run(io *streams, lib *library.Library) error {
	t, err := fuseType(lib, c.Type)
	if err != nil {
		return err
	}
	practice := lib.Practice(c.Practice)
	if practice == nil {
		return notFound("practice", c.Practice, lib.Names("practices"))
	}
	answer, err := handbook.Fuse(handbook.FuseInput{Practice: practice,
		Type: t, RatingA: c.Rating.value, CurrentA: c.Current.value, AmbientC: c.Ambient.value,
	})
	return printAnswer(io, c.format, answer, err)
}

// fuseType finds a kind of fuse, or says which are known.
func fuseType(lib *library.Library, name string) (*library.FuseType, error) {
	if t := lib.FuseType(name); t != nil {
		return t, nil
	}
	return nil, notFound("kind of fuse", name, lib.Names("fuse types"))
}
