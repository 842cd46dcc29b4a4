package main

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"github.com/alecthomas/kong"

	"fusewright/render/report"
)

// manCmd prints the manual page.
type manCmd struct{}

// Run prints the page in the man macros, made from the command line's own model.
func (c *manCmd) Run(s *streams, _ *program) error {
	app, err := newParser(&program{}, io.Discard, io.Discard, func(int) {})
	if err != nil {
		return err
	}
	return printed(s, func(b *bytes.Buffer) error {
		manPage(b, app)
		return nil
	})
}

func manPage(w io.Writer, app *kong.Kong) {
	fmt.Fprintf(w, ".TH FUSEWRIGHT 1 \"\" \"%s\" \"User Commands\"\n", roff(versionText()))
	section(w, "NAME", "fusewright - designs, checks and draws low-voltage DC accessory wiring")
	fmt.Fprint(w, ".SH SYNOPSIS\n.B fusewright\n[\\fIflags\\fR] \\fIcommand\\fR [\\fIarguments\\fR]\n")
	section(w, "DESCRIPTION", "Reads one YAML description of a harness and writes findings with numbers, "+
		"a schematic, a cut list, a bill of materials, a charging budget and more. "+
		"Where a command takes a design, - stands for standard input.")
	fmt.Fprint(w, ".SH FLAGS OF EVERY COMMAND\n")
	manFlags(w, app.Model.Flags)
	fmt.Fprint(w, ".SH COMMANDS\n")
	for _, leaf := range app.Model.Leaves(true) {
		manCommand(w, leaf)
	}
	fmt.Fprint(w, ".SH EXIT STATUS\n")
	for _, row := range [][2]string{
		{"0", "Done, and no finding at or above the chosen severity."},
		{"1", "Done, with findings at or above the chosen severity, or with differences."},
		{"2", "The command line, the design or a library file is wrong."},
		{"3", "Something outside the input failed, such as writing a file."},
	} {
		fmt.Fprintf(w, ".TP\n.B %s\n%s\n", row[0], roff(row[1]))
	}
	fmt.Fprintf(w, ".SH ENVIRONMENT\n.TP\n.B NO_COLOR\n%s\n.TP\n.B XDG_CACHE_HOME\n%s\n",
		roff("Set to anything, it keeps colours off terminals."),
		roff("Where the compiled code of the drawing engine is kept between runs."))
	section(w, "CAUTION", report.Caution)
}

func section(w io.Writer, title, text string) {
	fmt.Fprintf(w, ".SH %s\n%s\n", title, roff(text))
}

func manCommand(w io.Writer, leaf *kong.Node) {
	fmt.Fprintf(w, ".SS %s\n%s\n", roff(strings.TrimPrefix(leaf.Summary(), "fusewright ")), roff(leaf.Help))
	for _, p := range leaf.Positional {
		fmt.Fprintf(w, ".TP\n.I %s\n%s\n", roff(p.Name), roff(p.Help))
	}
	var own []*kong.Flag
	for n := leaf; n.Parent != nil; n = n.Parent {
		own = append(own, n.Flags...)
	}
	manFlags(w, own)
	if leaf.Detail != "" {
		fmt.Fprint(w, ".PP\n.nf\n")
		for _, line := range strings.Split(strings.TrimRight(leaf.Detail, "\n"), "\n") {
			fmt.Fprintln(w, roff(line))
		}
		fmt.Fprint(w, ".fi\n")
	}
}

func manFlags(w io.Writer, flags []*kong.Flag) {
	for _, f := range flags {
		if f.Hidden {
			continue
		}
		name := "\\fB" + roff("--"+f.Name) + "\\fR"
		if f.Short != 0 {
			name = "\\fB" + roff("-"+string(f.Short)) + "\\fR, " + name
		}
		if !f.IsBool() {
			name += "=\\fI" + roff(f.FormatPlaceHolder()) + "\\fR"
		}
		fmt.Fprintf(w, ".TP\n%s\n%s\n", name, roff(f.Help))
	}
}

// roff makes text that the macros print as it is.
func roff(s string) string {
	s = strings.NewReplacer(`\`, `\e`, "-", `\-`, "'", `\(aq`, "`", `\(ga`, "^", `\(ha`, "~", `\(ti`).Replace(s)
	if strings.HasPrefix(s, ".") {
		s = `\&` + s
	}
	return s
}
