package main

import (
	"bytes"
	"path/filepath"
	"slices"

	"github.com/alecthomas/kong"

	"fusewright/harness"
	"fusewright/harness/workshop/bench"
	"fusewright/render/document"
	"fusewright/render/report"
	"fusewright/render/svg"
)

// paperOf are the papers that have commands of their own, by the command's name.
var paperOf = map[string]*paper{
	"cut": cutListPaper, "bom": billPaper, "budget": budgetPaper, "bench": benchPaper, "study": studyPaper,
}

// paperCmd prints a paper's list as CSV, or writes the paper to a file. The name of
// the command says which.
type paperCmd struct {
	designArg
	Out string `short:"o" help:"${out}" placeholder:"FILE" type:"path"`
}

// Validate refuses endings of files that the paper does not have.
func (c *paperCmd) Validate(ctx *kong.Context) error {
	var endings []string
	for _, e := range paperOf[ctx.Selected().Name].endings() {
		endings = append(endings, "."+e)
	}
	slices.Sort(endings)
	return endsIn("--out", c.Out, endings...)
}

// Run prints the list, or writes it or pages.
func (c *paperCmd) Run(io *streams, cli *program, ctx *kong.Context) error {
	p := paperOf[ctx.Selected().Name]
	return c.run(io, cli, p, func(b *bytes.Buffer, r *harness.Review) error { return p.texts[0].write(b, r) })
}

// run writes a paper to the file that is asked for, else prints another form of it.
func (c *paperCmd) run(io *streams, cli *program, p *paper, printing func(*bytes.Buffer, *harness.Review) error) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	if c.Out != "" {
		return writeFile(io, c.Out, p.as(review, filepath.Ext(c.Out)))
	}
	return printed(io, func(b *bytes.Buffer) error { return printing(b, review) })
}

// reportCmd is paperCmd for a paper that is printed as text or JSON.
type reportCmd struct {
	paperCmd
	format
}

// Run prints the report, or writes the paper.
func (c *reportCmd) Run(io *streams, cli *program, ctx *kong.Context) error {
	name := ctx.Selected().Name
	return c.run(io, cli, paperOf[name], func(b *bytes.Buffer, r *harness.Review) error {
		rep, asText := reportOf[name](b, r)
		if c.json() {
			return report.WriteJSON(b, rep)
		}
		return asText()
	})
}

// reportOf makes what a reportCmd prints: the report as JSON has it, and how to
// write it as text.
var reportOf = map[string]func(*bytes.Buffer, *harness.Review) (rep any, asText func() error){
	"budget": func(b *bytes.Buffer, r *harness.Review) (any, func() error) {
		rep := report.NewBudget(r)
		return rep, func() error { return report.WriteBudget(b, rep) }
	},
	"bench": func(b *bytes.Buffer, r *harness.Review) (any, func() error) {
		test := bench.Make(r.Circuit)
		rep := report.NewBench(report.New(r), test)
		return rep, func() error { return report.WriteBench(b, rep, test) }
	},
	"study": func(b *bytes.Buffer, r *harness.Review) (any, func() error) {
		rep := report.NewStudy(r)
		return rep, func() error { return report.WriteStudy(b, rep) }
	},
}

// printed renders to memory first, so that a failure prints nothing.
func printed(io *streams, write func(*bytes.Buffer) error) error {
	var buf bytes.Buffer
	if err := write(&buf); err != nil {
		return err
	}
	if _, err := io.out.Write(buf.Bytes()); err != nil {
		return outside{err}
	}
	return nil
}

// budgetPicture draws the page with the chart, which is the first.
func budgetPicture(b *bytes.Buffer, r *harness.Review) error {
	sheets, err := document.Budget(r)
	if err != nil {
		return err
	}
	return svg.Write(b, sheets[0])
}
