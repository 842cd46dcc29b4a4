package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/finding"
	"fusewright/library"
)

// maxDesignBytes is read at most from a design; one byte more tells the reader
// that the file is too large.
const maxDesignBytes = 4<<20 + 1

// designArg is the design file every command takes.
type designArg struct {
	Design string `arg:"" help:"The design file, or - for standard input."`
}

// read gives the design, or every problem in it.
func (a designArg) read(io *streams, cli *program) (*design.Design, error) {
	lib, err := cli.library()
	if err != nil {
		return nil, err
	}
	name, src, err := a.source(io)
	if err != nil {
		return nil, err
	}
	return design.Read(name, src, lib)
}

func (a designArg) source(s *streams) (string, []byte, error) {
	if a.Design == "-" {
		src, err := io.ReadAll(io.LimitReader(s.in, maxDesignBytes))
		return "standard input", src, err
	}
	f, err := os.Open(a.Design)
	if err != nil {
		return "", nil, plainPathError(err)
	}
	defer f.Close()
	src, err := io.ReadAll(io.LimitReader(f, maxDesignBytes))
	if err != nil {
		return "", nil, plainPathError(err)
	}
	return a.Design, src, nil
}

// assess takes the design through all stages.
func (a designArg) assess(io *streams, cli *program) (*harness.Review, error) {
	d, err := a.read(io, cli)
	if err != nil {
		return nil, err
	}
	return harness.Assess(d)
}

func (p *program) library() (*library.Library, error) {
	if len(p.Library) == 0 {
		return library.Default(), nil
	}
	return library.Load(p.Library...)
}

// failOn is the severity from which a command ends with exit code 1.
type failOn struct {
	FailOn string `help:"End with exit code 1 from this severity on: danger, fault, advice or never." enum:"danger,fault,advice,never" default:"fault" placeholder:"SEVERITY"`
}

func (f failOn) verdict(list []*finding.Finding) error {
	least := map[string]finding.Severity{
		"danger": finding.Danger, "fault": finding.Fault, "advice": finding.Advice,
	}
	from, ok := least[f.FailOn]
	if !ok {
		return nil
	}
	for s := from; s <= finding.Danger; s++ {
		if finding.Count(list, s) > 0 {
			return exitCode(exitFindings)
		}
	}
	return nil
}

// plainPathError says what is wrong with a path without the name of a system call.
func plainPathError(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return fmt.Errorf("%s: %w", p.Path, p.Err)
	}
	return err
}
