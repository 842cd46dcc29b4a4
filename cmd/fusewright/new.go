package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"fusewright/harness/starter"
)

// newCmd writes a first design.
type newCmd struct {
	File      string   `arg:"" optional:"" default:"design.yaml" help:"The file to write, or - for standard output."`
	Vehicle   string   `help:"Kind of vehicle: motorcycle, quad, off-road or boat." placeholder:"KIND"`
	Accessory []string `help:"An accessory of the library; may be given several times. See: fusewright parts load." placeholder:"NAME" sep:"none"`
	Title     string   `help:"What the harness is." placeholder:"TEXT"`
	Battery   string   `help:"Battery chemistry, such as AGM." placeholder:"NAME"`
	Capacity  string   `help:"Battery capacity, such as '14 Ah'." placeholder:"CHARGE"`
	Regulated string   `help:"Regulated voltage, such as '14.2 V'." placeholder:"VOLTAGE"`
	Output    string   `help:"Charging output, such as '1300 rpm: 14 A, 4000 rpm: 30 A'." placeholder:"POINTS" sep:"none"`
	Idle      string   `help:"Idle speed, such as '1300 rpm'." placeholder:"SPEED"`
	Cruise    string   `help:"Cruising speed, such as '4000 rpm'." placeholder:"SPEED"`
	Ask       bool     `help:"Ask for what no flag gives; an empty answer takes the usual." negatable:"" default:"true"`
	Force     bool     `help:"Replace the file if it is there."`
}

// Help shows examples.
func (newCmd) Help() string {
	return `Examples:

  fusewright new own.yaml
      asks a few questions and writes a commented design
  fusewright new own.yaml --no-ask --vehicle boat --capacity '60 Ah'
      asks nothing: what no flag gives is usual for the vehicle
  fusewright new - --no-ask --vehicle quad --accessory horn --accessory radio
      on standard output, with two accessories`
}

// Run gathers the answers and writes the file.
func (c *newCmd) Run(io *streams, cli *program) error {
	lib, err := cli.library()
	if err != nil {
		return err
	}
	if err := c.refuseToReplace(); err != nil {
		return err
	}
	q := &questions{in: bufio.NewScanner(io.in), out: io.err, ask: c.Ask}
	vehicle := q.answer("kind of vehicle ("+strings.Join(starter.Vehicles(), ", ")+")", c.Vehicle, starter.Vehicles()[0])
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
	if err := writeFile(c.File, func(b *bytes.Buffer) error { b.Write(src); return nil }); err != nil {
		return err
	}
	if io.quiet {
		return nil
	}
	return printed(io, func(b *bytes.Buffer) error {
		fmt.Fprintf(b, "%s\nnext: put your own figures in, then run fusewright check %s\n", c.File, c.File)
		return nil
	})
}

// answers asks for what no flag gives.
func (c *newCmd) answers(q *questions, usual starter.Answers) starter.Answers {
	a := starter.Answers{Vehicle: usual.Vehicle}
	a.Title = q.answer("title", c.Title, usual.Title)
	a.Battery = q.answer("battery chemistry", c.Battery, usual.Battery)
	a.Capacity = q.answer("battery capacity", c.Capacity, usual.Capacity)
	a.Regulated = q.answer("regulated voltage", c.Regulated, usual.Regulated)
	a.Output = q.answer("charging output", c.Output, usual.Output)
	a.Idle = q.answer("idle speed", c.Idle, usual.Idle)
	a.Cruise = q.answer("cruising speed", c.Cruise, usual.Cruise)
	list := q.answer("accessories, with commas between them (fusewright parts load lists them)",
		strings.Join(c.Accessory, ","), strings.Join(usual.Accessories, ","))
	a.Accessories = []string{}
	for _, name := range strings.Split(list, ",") {
		if name = strings.TrimSpace(name); name != "" && name != "none" {
			a.Accessories = append(a.Accessories, name)
		}
	}
	return a
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
}

// answer is what a flag says, else the answer, else the usual. At the end of
// the input everything is usual.
func (q *questions) answer(what, flag, usual string) string {
	if flag != "" {
		return flag
	}
	if !q.ask {
		return usual
	}
	fmt.Fprintf(q.out, "%s [%s]: ", what, usual)
	if !q.in.Scan() {
		fmt.Fprintln(q.out)
		q.ask = false
		return usual
	}
	if text := strings.TrimSpace(q.in.Text()); text != "" {
		return text
	}
	return usual
}
