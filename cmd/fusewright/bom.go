package main

// bomCmd prints the bill of materials.
type bomCmd struct {
	designArg
	Out string `short:"o" help:"Write it to this file instead: .csv, or .pdf for pages." placeholder:"FILE" type:"path"`
}

// Validate refuses endings of other kinds.
func (c *bomCmd) Validate() error { return endsIn("--out", c.Out, ".csv", ".pdf") }

// Run prints CSV, or writes it or pages.
func (c *bomCmd) Run(io *streams, cli *program) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	return listed(io, c.Out, review, billPaper)
}
