package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strconv"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/starter"
	"fusewright/harness/review/finding"
	"fusewright/library"
	"fusewright/render/report"
)

// newCmd writes a first design.
type newCmd struct {
	File      string   `arg:"" optional:"" default:"design.yaml" help:"The file to write, or - for standard output."`
	Vehicle   string   `help:"Kind of vehicle: motorcycle, quad, off-road, boat, camper or truck (24 V)." placeholder:"KIND"`
	Accessory []string `help:"An accessory of the library; may be given several times. See: fusewright parts load." placeholder:"NAME" sep:"none"`
	Title     string   `help:"Title of the design." placeholder:"TEXT"`
	Battery   string   `help:"Battery chemistry, such as AGM." placeholder:"NAME"`
	Capacity  string   `help:"Battery capacity, such as '14 Ah'." placeholder:"CHARGE"`
	Regulated string   `help:"Regulated voltage, such as '14.2 V'." placeholder:"VOLTAGE"`
	Output    string   `help:"Charging output, such as '1300 rpm: 14 A, 4000 rpm: 30 A'." placeholder:"POINTS" sep:"none"`
	Idle      string   `help:"Engine speed at idle, such as '1300 rpm'." placeholder:"SPEED"`
	Cruise    string   `help:"Engine speed at cruise, such as '4000 rpm'." placeholder:"SPEED"`
	Ask       bool     `help:"Ask for what no flag gives; an empty answer takes the usual value." negatable:"" default:"true"`
	Force     bool     `help:"Replace the file if it exists."`
}

// Run gathers the answers and writes the file.
func (c *newCmd) Run(io *streams, lib *library.Library) error {
	if err := c.refuseToReplace(); err != nil {
		return err
	}
	q := &questions{in: bufio.NewScanner(io.in), out: io.err, ask: c.Ask, lib: lib}
	vehicle := q.answer("kind of vehicle ("+strings.Join(starter.Vehicles(), ", ")+")", c.Vehicle, starter.Vehicles()[0],
		func(a *starter.Answers, text string) { a.Vehicle = text })
	usual, ok := starter.Defaults(vehicle)
	if !ok {
		return notFound("kind of vehicle", vehicle, starter.Vehicles())
	}
	src, err := starter.Write(c.answers(q, usual), lib)
	if err != nil {
		return err
	}
	if c.File == "-" {
		return printed(io, func(b *bytes.Buffer) error { b.Write(src); return nil })
	}
	if err := writeFile(io, c.File, func(b *bytes.Buffer) error { b.Write(src); return nil }); err != nil {
		return err
	}
	if io.quiet {
		return nil
	}
	return printed(io, func(b *bytes.Buffer) error {
		fmt.Fprintf(b, "%s\n%snext: put your own figures in, then run fusewright check %s\n", c.File, asItStands(src, lib), c.File)
		return nil
	})
}

// asItStands says what is wrong with a new design: accessories may be more than
// the example figures of the vehicle bear. Empty when nothing is.
func asItStands(src []byte, lib *library.Library) string {
	d, err := design.Read("new design", src, lib)
	if err != nil {
		return ""
	}
	r, err := harness.Assess(d)
	if err != nil {
		return ""
	}
	var n report.Counts
	for _, f := range r.Findings {
		switch f.Severity {
		case finding.Danger:
			n.Danger++
		case finding.Fault:
			n.Fault++
		}
	}
	if n.Danger+n.Fault == 0 {
		return ""
	}
	return fmt.Sprintf("with the example figures this is too much: %d danger · %d fault\n", n.Danger, n.Fault)
}

// answers asks for what no flag gives.
func (c *newCmd) answers(q *questions, usual starter.Answers) starter.Answers {
	a := starter.Answers{Vehicle: usual.Vehicle}
	a.Title = q.answer("title", c.Title, usual.Title, func(a *starter.Answers, text string) { a.Title = text })
	a.Battery = q.answer("battery chemistry", c.Battery, usual.Battery, func(a *starter.Answers, text string) { a.Battery = text })
	a.Capacity = q.answer("battery capacity, Ah", c.Capacity, usual.Capacity, func(a *starter.Answers, text string) { a.Capacity = inAh(text) })
	if c.Capacity == "" {
		a.Capacity = inAh(a.Capacity)
	}
	a.Regulated = q.answer("regulated voltage", c.Regulated, usual.Regulated, func(a *starter.Answers, text string) { a.Regulated = text })
	a.Output = q.answer("charging output", c.Output, usual.Output, func(a *starter.Answers, text string) { a.Output = text })
	a.Idle = q.answer("idle speed", c.Idle, usual.Idle, func(a *starter.Answers, text string) { a.Idle = text })
	a.Cruise = q.answer("cruising speed", c.Cruise, usual.Cruise, func(a *starter.Answers, text string) { a.Cruise = text })
	list := q.answer("accessories, with commas between them (fusewright parts load lists them)",
		strings.Join(c.Accessory, ","), strings.Join(usual.Accessories, ","),
		func(a *starter.Answers, text string) { a.Accessories = named(text) })
	a.Accessories = named(list)
	return a
}

// inAh gives a bare number the unit that the question names.
func inAh(text string) string {
	if _, err := strconv.ParseFloat(text, 64); err == nil {
		return text + " Ah"
	}
	return text
}

// named are the accessories of an answer.
func named(list string) []string {
	names := []string{}
	for _, name := range strings.Split(list, ",") {
		if name = strings.TrimSpace(name); name != "" && name != "none" {
			names = append(names, name)
		}
	}
	return names
}

// refuseToReplace keeps a file that is there.
func (c *newCmd) refuseToReplace() error {
	if c.File == "-" || c.Force {
		return nil
	}
	switch _, err := os.Lstat(c.File); {
	case err == nil:
		return fmt.Errorf("%s is there already (hint: another name, or --force)", c.File)
	case errors.Is(err, fs.ErrNotExist):
		return nil
	default:
		return plainPathError(err)
	}
}

// questions asks one thing after another on standard error.
type questions struct {
	in  *bufio.Scanner
	out interface{ Write([]byte) (int, error) }
	ask bool
	lib *library.Library
	got starter.Answers // so far
}

// answer is what a flag says, else the answer, else the usual. At the end of
// the input everything is usual. What cannot be is asked again.
func (q *questions) answer(what, flag, usual string, put func(a *starter.Answers, text string)) string {
	if flag != "" {
		return flag
	}
	if !q.ask {
		return usual
	}
	for {
		fmt.Fprintf(q.out, "%s [%s]: ", what, usual)
		if !q.in.Scan() {
			fmt.Fprintln(q.out)
			q.ask = false
			return usual
		}
		text := strings.TrimSpace(q.in.Text())
		if text == "" {
			return usual
		}
		with := q.got
		put(&with, text)
		if with.Vehicle == "" {
			with.Vehicle = starter.Vehicles()[0]
		}
		_, err := starter.Write(with, q.lib)
		if err == nil {
			q.got = with
			return text
		}
		fmt.Fprintln(q.out, harmless(err.Error()))
	}
}
