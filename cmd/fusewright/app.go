package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/alecthomas/kong"

	"fusewright/harness/design/problem"
)

// The exit codes, the same for every command.
const (
	exitClean    = 0 // done, and no finding at or above the chosen severity
	exitFindings = 1 // done, with findings at or above the chosen severity
	exitBadInput = 2 // the command line, the design or a library file is wrong
	exitFailure  = 3 // something outside the input failed, such as writing a file
)

// program is the command line.
type program struct {
	Library []string         `help:"Add a library file of your own; may be given several times." placeholder:"FILE" type:"existingfile"`
	Quiet   bool             `short:"q" help:"Print only mistakes, warnings and what was asked for; check prints nothing and answers with its exit code."`
	Version kong.VersionFlag `help:"Print the version."`

	Build    buildCmd    `cmd:"" help:"Make everything: schematic, cut list, bill of materials, budget, findings."`
	Check    checkCmd    `cmd:"" help:"Print the findings, most severe first."`
	Size     sizeCmd     `cmd:"" help:"Choose what the design leaves open (wires, fuses, relays, blocks, plugs, covers) and say why."`
	New      newCmd      `cmd:"" help:"Write a commented design to start from."`
	Survey   surveyCmd   `cmd:"" help:"Print what to measure before designing, with blanks, or put what was measured into a design."`
	Fmt      fmtCmd      `cmd:"" help:"Tidy a design's spacing and quantities; comments stay."`
	Diff     diffCmd     `cmd:"" help:"Show what changed between two designs, or two git revisions of one."`
	Draw     drawCmd     `cmd:"" help:"Draw the schematic as SVG, PDF, PNG or DXF."`
	Serve    serveCmd    `cmd:"" help:"Show the design in a browser and follow its file."`
	Cut      paperCmd    `cmd:"" help:"Print the cut list as CSV." set:"out=Write it to this file instead: .csv, or .pdf for pages."`
	Bom      paperCmd    `cmd:"" help:"Print the bill of materials as CSV, or write it as PDF." set:"out=Write it to this file instead: .csv, or .pdf for pages."`
	Budget   reportCmd   `cmd:"" help:"Print the charging budget, or draw it." set:"out=Draw it to this file instead: .svg or .pdf."`
	Ride     rideCmd     `cmd:"" help:"Follow the battery through a ride: charge, voltage, currents."`
	Bench    reportCmd   `cmd:"" help:"Print the bench test, or write it as sheets to fill in." set:"out=Write it as PDF to this file instead, with blanks for the readings."`
	Diagnose diagnoseCmd `cmd:"" help:"Tell from readings of the bench test or of a drive what is wrong and where, and what to read next."`
	Study    reportCmd   `cmd:"" help:"Print what happens in every short circuit and single fault, and each fuse against its wires." set:"out=Write it to this file instead: .txt, or .pdf for pages."`
	Netlist  netlistCmd  `cmd:"" help:"Print the circuit in a situation as a SPICE netlist, or write it."`
	Why      whyCmd      `cmd:"" help:"Explain a figure of a design: the formula with its values, and where each comes from."`
	Explain  explainCmd  `cmd:"" help:"Explain a rule: meaning, formula, limits, source."`
	Parts    partsCmd    `cmd:"" help:"List the parts of the library."`
	Calc     calcCmd     `cmd:"" help:"Answer a question at the bench without a design."`
	Schema   schemaCmd   `cmd:"" help:"Print the JSON Schema of the design format, for editors."`
	Validate validateCmd `cmd:"" help:"Print how the program compares with published sources."`
	Export   exportCmd   `cmd:"" help:"Write the design for other programs: JSON model, SPICE, DOT, CSV, DXF."`
	Replay   replayCmd   `cmd:"" help:"Solve an exported model again and compare the results."`
	Licences licencesCmd `cmd:"" help:"Print the licences of what the program is linked with."`
	Complete completeCmd `cmd:"" help:"Print a completion script for a shell."`
	Man      manCmd      `cmd:"" help:"Print the manual page."`
}

const description = `Designs, checks and draws low-voltage DC accessory wiring.

  fusewright build designs/fen-runner.yaml
  fusewright check designs/reed-skiff.yaml
  fusewright calc drop 4mm² 12A 3m --loop

Exit codes: 0 clean, 1 findings at or above the chosen severity, 2 bad input,
3 failure. Wiring can burn: local codes, the makers' instructions and licensed
practice come first.`

// streams are what a command reads from and writes to.
type streams struct {
	in       io.Reader
	out, err io.Writer
	quiet    bool
	read     []string // files read so far, which nothing written may replace
}

// exitCode is an error that carries nothing but how to end.
type exitCode int

func (e exitCode) Error() string { return fmt.Sprintf("exit code %d", int(e)) }

// outside marks a failure that is not the input's fault.
type outside struct{ err error }

func (o outside) Error() string { return o.err.Error() }
func (o outside) Unwrap() error { return o.err }

// run is the whole program: arguments in, exit code out.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	var cli program
	code := -1
	printing := &watched{w: stdout}
	stdout = printing
	parser, err := newParser(&cli, stdout, stderr, func(c int) { code = c })
	if err != nil {
		fmt.Fprintln(stderr, "fusewright: error:", err)
		return exitFailure
	}
	ctx, err := parser.Parse(args)
	if err == nil && code < 0 { // else help was asked for
		err = refuseOverwriting(ctx)
	}
	if err == nil && code < 0 {
		if err = ctx.BindToProvider(cli.library); err == nil {
			err = ctx.Run(&streams{in: stdin, out: stdout, err: stderr, quiet: cli.Quiet}, &cli)
		}
	}
	if printing.lost != nil {
		err = outside{printing.lost}
	} else if code >= 0 {
		return code
	}
	told := plainWriter{stderr}
	ended := ending(err, told)
	hint(err, told)
	return ended
}

// newParser makes the parser of the command line from its fields.
func newParser(cli *program, stdout, stderr io.Writer, exit func(int)) (*kong.Kong, error) {
	app, err := kong.New(cli,
		kong.Name("fusewright"),
		kong.Description(description),
		kong.Writers(stdout, stderr),
		kong.Exit(exit),
		kong.ConfigureHelp(kong.HelpOptions{Compact: true}),
		kong.Vars{"version": versionText()},
	)
	if err == nil {
		addExamples(app)
	}
	return app, err
}

// hint says where to look after a slip on the command line.
func hint(err error, stderr io.Writer) {
	var slip *kong.ParseError
	if !errors.As(err, &slip) {
		return
	}
	command := "fusewright"
	if slip.Context != nil {
		for _, step := range slip.Context.Path {
			if step.Command != nil {
				command += " " + step.Command.Name
			}
		}
	}
	fmt.Fprintf(stderr, "hint: '%s --help' shows what it takes, with examples\n", command)
}

// ending prints an error and chooses the exit code.
func ending(err error, stderr io.Writer) int {
	var code exitCode
	var list problem.List
	var out outside
	switch {
	case err == nil:
		return exitClean
	case errors.As(err, &code):
		return int(code)
	case errors.As(err, &list):
		fmt.Fprintln(stderr, list)
		return exitBadInput
	case errors.As(err, &out):
		fmt.Fprintln(stderr, "fusewright: error:", err)
		return exitFailure
	}
	fmt.Fprintln(stderr, "fusewright: error:", err)
	return exitBadInput
}
