package main

import (
	"bufio"
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/starter"
	"fusewright/harness/design/wording"
	"fusewright/harness/review/finding"
	"fusewright/library"
	"fusewright/render/report"
)

// newCmd writes a first design.
type newCmd struct {
	File      string   `arg:"" optional:"" default:"design.yaml" help:"The file to write, or - for standard output."`
	Vehicle   string   `help:"Kind of vehicle: motorcycle, quad, off-road, boat, camper or truck (24 V)." placeholder:"KIND"`
	Accessory []string `help:"An accessory of the library, or a name of your own and it, as 'left lamp: LED auxiliary lamp'; may be given several times. See: fusewright parts load." placeholder:"NAME" sep:"none"`
	Together  []string `help:"Accessories that share a switch, as 'left lamp + right lamp'; may be given several times, or none." placeholder:"NAMES" sep:"none"`
	Live      []string `help:"An accessory that stays live with the key or the house switch off; may be given several times." placeholder:"NAME" sep:"none"`
	Fitted    []string `help:"An accessory that is fitted already; may be given several times." placeholder:"NAME" sep:"none"`
	Length    []string `help:"Length of a stretch of loom, as 'battery box - console: 2 m'; may be given several times." placeholder:"LENGTH" sep:"none"`
	Title     string   `help:"Title of the design." placeholder:"TEXT"`
	Battery   string   `help:"Battery chemistry, such as AGM." placeholder:"NAME"`
	Capacity  string   `help:"Battery capacity, such as '14 Ah'." placeholder:"CHARGE"`
	Second    string   `help:"Second battery, such as '100 Ah' or 'LiFePO4 100 Ah', or none." placeholder:"CHARGE"`
	Solar     string   `help:"Solar panels that charge the second battery, such as '120 W', or none." placeholder:"POWER"`
	Engine    string   `help:"Engine: of a boat petrol outboard or diesel, of a camper or an off-road vehicle diesel or petrol." placeholder:"KIND"`
	Regulated string   `help:"Regulated voltage, such as '14.2 V'." placeholder:"VOLTAGE"`
	Output    string   `help:"Charging output, such as '1300 rpm: 14 A, 4000 rpm: 30 A'." placeholder:"POINTS" sep:"none"`
	Idle      string   `help:"Engine speed at idle, such as '1300 rpm'." placeholder:"SPEED"`
	Cruise    string   `help:"Engine speed at cruise, such as '4000 rpm'." placeholder:"SPEED"`
	Tap       string   `help:"Factory wire that is live with the key on, and its fuse, such as 'tail lamp feed, 10 A'." placeholder:"FEED" sep:"none"`
	Ask       bool     `help:"Ask for what no flag gives; an empty answer takes the usual value, ? explains." negatable:"" default:"true"`
	Force     bool     `help:"Replace the file if it exists."`
}

// flags are the answers given as flags, by question.
func (c *newCmd) flags() map[string]string {
	return map[string]string{"title": c.Title, "battery": c.Battery, "capacity": c.Capacity, "second": c.Second, "solar": c.Solar, "engine": c.Engine,
		"regulated": c.Regulated, "output": c.Output, "idle": c.Idle, "cruise": c.Cruise, "tap": c.Tap,
		"accessory": strings.Join(c.Accessory, ","), "together": strings.Join(c.Together, ","),
		"live": strings.Join(c.Live, ","), "fitted": strings.Join(c.Fitted, ",")}
}

// Run gathers the answers and writes the file.
func (c *newCmd) Run(io *streams, lib *library.Library) error {
	if err := c.refuseToReplace(); err != nil {
		return err
	}
	q := &questions{in: bufio.NewScanner(io.in), out: io.err, ask: c.Ask, lib: lib}
	if err := c.ask(q); err != nil {
		return err
	}
	if q.ended && q.answered == 0 {
		return errors.New("the input ended before any answer (hint: --no-ask takes the usual ones)")
	}
	src, err := starter.Write(q.got, lib)
	if err != nil {
		return err
	}
	q.sayTaken()
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
		fmt.Fprintf(b, "%s\n%s%snext: put your own figures in, then run fusewright check %s\n", c.File, asItStands(src, lib), goesDead(q.got), c.File)
		return nil
	})
}

// ask goes through the questions: the vehicle's, then how long the loom is.
func (c *newCmd) ask(q *questions) error {
	q.got.Vehicle = q.answer(starter.Kind(), c.Vehicle)
	if _, ok := starter.Defaults(q.got.Vehicle); !ok {
		return notFound("kind of vehicle", q.got.Vehicle, starter.Vehicles())
	}
	flags := c.flags()
	for _, x := range starter.Questions(q.got.Vehicle) {
		if flags[x.Name] != "" || x.Asked(q.got) {
			x.Put(&q.got, q.answer(x, x.Spelt(flags[x.Name])))
		}
		delete(flags, x.Name)
	}
	for _, x := range []string{"second", "solar", "engine", "tap"} {
		if flags[x] != "" {
			return fmt.Errorf("--%s is not asked of a %s (expected --vehicle %s)", x, q.got.Vehicle, wording.Or(askedOf(x)))
		}
	}
	if q.got.Lengths = c.Length; len(c.Length) > 0 || !c.Ask {
		return nil
	}
	for _, x := range starter.Lengths(q.got, q.lib) {
		x.Put(&q.got, q.answer(x, ""))
	}
	return nil
}

// askedOf are the kinds of vehicle of which a question is asked.
func askedOf(question string) []string {
	return slices.DeleteFunc(starter.Vehicles(), func(vehicle string) bool {
		return !slices.ContainsFunc(starter.Questions(vehicle), func(x starter.Question) bool { return x.Name == question })
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

// goesDead says what stays live where nothing was named: a fridge warms up overnight.
func goesDead(a starter.Answers) string {
	if len(a.Live) > 0 || len(a.Accessories) == 0 {
		return ""
	}
	return "with the key or the house switch off only alarms and float switches stay live; a fridge or heater that must run then is named with --live\n"
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

	answered int      // lines that were given, empty ones too
	ended    bool     // the input did before the last question
	taken    []string // what was taken as usual since
}

// sayTaken says what no answer was given for, once the input had ended.
func (q *questions) sayTaken() {
	if q.ended {
		fmt.Fprint(q.out, report.Prose("The input ended; taken as usual: "+strings.Join(q.taken, "; ")+"."))
	}
}

// answer is what a flag says, else the answer, else the usual. At the end of
// the input everything is usual, which is said in the end. What cannot be is asked
// again; ? explains.
func (q *questions) answer(x starter.Question, flag string) string {
	usual := x.Usual(q.got, q.lib)
	if flag != "" || !q.ask {
		return cmp.Or(flag, usual)
	}
	for {
		if q.ended {
			q.taken = append(q.taken, x.Short()+" "+usual)
			return usual
		}
		fmt.Fprintf(q.out, "%s [%s]: ", x.Ask, usual)
		if !q.in.Scan() {
			fmt.Fprintln(q.out)
			q.ended = true
			continue
		}
		q.answered++
		text := strings.TrimSpace(q.in.Text())
		switch text {
		case "":
			return usual
		case "?":
			explain := x.Explain
			if x.List != "" {
				explain += " " + wording.And(q.lib.Names(x.List)) + "."
			}
			fmt.Fprint(q.out, report.Prose(explain))
			continue
		}
		text = x.Spelt(text)
		with := q.got
		x.Put(&with, text)
		_, err := starter.Write(with, q.lib)
		if err == nil {
			return text
		}
		fmt.Fprintln(q.out, harmless(err.Error()))
	}
}
