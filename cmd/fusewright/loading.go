package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"
	"syscall"
	"unicode"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

// maxDesignBytes is read at most from a design; one byte more tells the reader
// that the file is too large.
const maxDesignBytes = 4<<20 + 1

// designArg is the design file that most commands take.
type designArg struct {
	Design string `arg:"" help:"The design file, or - for standard input."`
}

// assess takes the design through all stages.
func (a designArg) assess(io *streams, cli *program) (*harness.Review, error) {
	return a.assessUpTo(0, io, cli)
}

// assessUpTo is assess for commands whose work grows with the number of wires:
// more than so many are refused before any stage but reading; 0 takes all.
func (a designArg) assessUpTo(mostWires int, io *streams, cli *program) (*harness.Review, error) {
	return a.by(harness.Assess, mostWires, io, cli)
}

// by is assessUpTo with a review made otherwise.
func (a designArg) by(review func(*design.Design) (*harness.Review, error), mostWires int, io *streams, cli *program) (*harness.Review, error) {
	in, err := a.texts(io, cli)
	if err != nil {
		return nil, err
	}
	in.mostWires = mostWires
	r, err := in.by(review)
	if err == nil && r.Sizing != nil {
		io.hint("%s chosen in this run; fusewright size says why, and size --write keeps them so that later runs are quick",
			wording.Count(len(r.Sizing.Choices), "value is left open and was", "values are left open and were"))
	}
	return r, err
}

// texts reads the design and the library files, and nothing else: no text in
// them names a further file.
func (a designArg) texts(s *streams, cli *program) (*inputs, error) {
	libraries, err := library.ReadTexts(cli.Library...)
	if err != nil {
		return nil, err
	}
	s.read = append(append(s.read, a.Design), cli.Library...)
	name, src, err := readInput(s, a.Design, maxDesignBytes)
	return &inputs{design: library.Text{File: name, Data: src}, libraries: libraries, note: s.note}, err
}

// inputs are the texts that everything is made from.
type inputs struct {
	design    library.Text
	libraries []library.Text
	mostWires int               // 0 = as many as can be read
	note      func(text string) // says what is read but is to be written otherwise; nil = nobody listens
}

func (in *inputs) read() (*design.Design, error) {
	lib := library.Default()
	if len(in.libraries) > 0 {
		var err error
		if lib, err = library.LoadTexts(in.libraries...); err != nil {
			return nil, err
		}
	}
	d, err := design.Read(in.design.File, in.design.Data, lib)
	if err == nil && in.note != nil {
		for _, p := range d.OldKeys {
			in.note(p.String())
		}
		in.note = nil // once
	}
	return d, err
}

func (in *inputs) assess() (*harness.Review, error) { return in.by(harness.Assess) }

func (in *inputs) by(review func(*design.Design) (*harness.Review, error)) (*harness.Review, error) {
	d, err := in.read()
	if err != nil {
		return nil, err
	}
	if n := d.WireCount(); in.mostWires > 0 && n > in.mostWires {
		return nil, fmt.Errorf("%s: %d wires (expected at most %d where every paper is made; check takes more)",
			in.design.File, n, in.mostWires)
	}
	return review(d)
}

// readInput reads a file, or standard input for "-", at most so many bytes: one
// more than a reader takes tells it that the input is too large.
func readInput(s *streams, path string, most int64) (name string, src []byte, err error) {
	if path == "-" {
		src, err = io.ReadAll(io.LimitReader(s.in, most))
		return "standard input", src, err
	}
	f, err := os.Open(path)
	if err != nil {
		return "", nil, plainPathError(err)
	}
	defer f.Close()
	if src, err = io.ReadAll(io.LimitReader(f, most)); err != nil {
		return "", nil, plainPathError(err)
	}
	return strings.Map(func(r rune) rune {
		if r == '\n' || r == '\t' { // a name is one line
			return unicode.ReplacementChar
		}
		return r
	}, harmless(path)), src, nil
}

func (p *program) library() (*library.Library, error) {
	if len(p.Library) == 0 {
		return library.Default(), nil
	}
	return library.Load(p.Library...)
}

// failOn is the severity from which a command ends with exit code 1.
type failOn struct {
	FailOn string `help:"End with exit code 1 from this severity on: danger, fault (and advice that leaves something live with the key off), advice or never; fault when not given." enum:"danger,fault,advice,never" default:"fault" placeholder:"SEVERITY"`
}

// severity is the least severity that fails; 0 when none does.
func (f failOn) severity() finding.Severity {
	return map[string]finding.Severity{
		"danger": finding.Danger, "fault": finding.Fault, "advice": finding.Advice,
	}[f.FailOn]
}

func (f failOn) verdict(list []*finding.Finding) error {
	from := f.severity()
	if from == 0 {
		return nil
	}
	for s := from; s <= finding.Danger; s++ {
		if finding.Count(list, s) > 0 {
			return exitCode(exitFindings)
		}
	}
	if from == finding.Fault && slices.ContainsFunc(list, func(f *finding.Finding) bool { return f.Live && f.Accepted == "" }) {
		return exitCode(exitFindings)
	}
	return nil
}

// plainPathError says what is wrong with a path without the name of a system call.
func plainPathError(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) && errors.Is(err, syscall.EISDIR) {
		return fmt.Errorf("%s is a directory (expected a file)", p.Path)
	}
	if errors.As(err, &p) {
		return fmt.Errorf("%s: %w", p.Path, p.Err)
	}
	return err
}
