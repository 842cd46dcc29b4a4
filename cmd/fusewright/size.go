package main

import (
	"bytes"
	"fmt"
	"runtime/debug"

	"fusewright/harness/design/edit"
	"fusewright/harness/network/circuit"
	"fusewright/harness/sizing"
	"fusewright/render/report"
)

// sizeCmd prints what is chosen for what the design leaves open, with reasons.
type sizeCmd struct {
	designArg
	Write bool `help:"Write the choices and the labels of parts and wires into the design file and show the lines that change."`
	format
}

// Run chooses, explains and prints; with --write it changes the file.
func (c *sizeCmd) Run(io *streams, cli *program) error {
	defer debug.SetGCPercent(debug.SetGCPercent(300)) // a fifth less time for some tens of MiB
	if c.Write && c.Design == "-" {
		return fmt.Errorf("--write needs a design file, not standard input")
	}
	in, err := c.texts(io, cli)
	if err != nil {
		return err
	}
	d, err := in.read()
	if err != nil {
		return err
	}
	plan, err := sizing.Complete(d)
	if err != nil {
		return err
	}
	if plan == nil {
		if _, err := circuit.Build(d); err != nil {
			return err
		}
		plan = &sizing.Plan{Design: d}
	} else if err := plan.Explain(); err != nil {
		return err
	}
	err = printed(io, func(b *bytes.Buffer) error {
		if c.json() {
			return report.WriteJSON(b, newSizingReport(plan))
		}
		writeSizing(b, plan)
		return nil
	})
	if err == nil && c.Write {
		err = c.write(io, in, plan)
	}
	if err != nil {
		return err
	}
	return failOn{"fault"}.verdict(plan.Remaining)
}

// write puts the choices into the file after proving that the new text reads to
// the same values.
func (c *sizeCmd) write(io *streams, in *inputs, plan *sizing.Plan) error {
	var changes []edit.Change
	for _, choice := range plan.Choices {
		for _, s := range choice.Set {
			changes = append(changes, edit.Change{Path: choice.Path, Key: s.Key, Value: s.Value})
		}
	}
	was := in.design.Data
	now, err := edit.Set(was, changes)
	if err != nil {
		return err
	}
	in.design.Data = now
	d, err := in.read()
	if err != nil {
		return fmt.Errorf("the choices do not fit into the file as it is written: %w", err)
	}
	if !sizing.SameValues(d, plan.Design) {
		return fmt.Errorf("the choices do not fit into the file as it is written; set them by hand")
	}
	if now, err = numbered(io, in, now); err != nil || bytes.Equal(was, now) {
		return err
	}
	err = writeFile(io, c.Design, func(b *bytes.Buffer) error { b.Write(now); return nil })
	if err != nil || c.json() {
		return err
	}
	return printed(io, func(b *bytes.Buffer) error {
		b.WriteString("\n" + harmless(edit.Diff(in.design.File, was, now)))
		return nil
	})
}

// sizingReport is the JSON shape of a plan.
type sizingReport struct {
	Fusewright int             `json:"fusewright_sizing"`
	Choices    []sizingChoice  `json:"choices"`
	CopperG    float64         `json:"copper_g"`
	LeftG      float64         `json:"left_over_g"`
	Sizes      int             `json:"wire_sizes"`
	Terminals  int             `json:"crimp_parts"`
	Plugs      int             `json:"connector_families"`
	Proven     bool            `json:"proven"`
	AsIfOn     []string        `json:"sized_as_if_on,omitempty"` // loads that no situation turns on
	Lacking    []string        `json:"lacking,omitempty"`        // what the library has nothing for
	Remaining  []sizingFinding `json:"remaining"`
	WaysOut    []sizingWayOut  `json:"ways_out"`
	Elsewhere  []sizingFinding `json:"no_size_mends,omitempty"` // dangers and faults for which another part or feed is the remedy
	Caution    string          `json:"caution"`
}

type sizingChoice struct {
	Kind     string `json:"kind"`
	Part     string `json:"part"`
	Line     int    `json:"line"`
	Value    string `json:"value"`
	Usual    string `json:"in_usual_insulation,omitempty"`
	Decided  string `json:"decided_by"`
	RunnerUp string `json:"runner_up,omitempty"`
	Lost     string `json:"why_it_lost,omitempty"`
}

type sizingFinding struct {
	Rule     string `json:"rule"`
	Severity string `json:"severity"`
	What     string `json:"what"`
	Line     int    `json:"line"`
	// Conflicts are what would mend it and what that brings.
	Conflicts []sizingConflict `json:"conflicts,omitempty"`
}

type sizingConflict struct {
	Mend string `json:"mend"`
	Rule string `json:"rule"`
	What string `json:"what"`
}

type sizingWayOut struct {
	What   string  `json:"what"`
	ExtraG float64 `json:"extra_cost_g"`
	Left   int     `json:"findings_left"`
}

func newSizingReport(p *sizing.Plan) sizingReport {
	r := sizingReport{Fusewright: report.Version, CopperG: p.Cost.CopperG, LeftG: p.LeftG, Sizes: p.Cost.Sizes,
		Terminals: p.Cost.Terminals, Plugs: p.Cost.Plugs, Proven: p.Proven, AsIfOn: p.AsIfOn, Lacking: p.Lacking, Caution: report.CautionOf(p.Design),
		Choices: []sizingChoice{}, Remaining: []sizingFinding{}, WaysOut: []sizingWayOut{}}
	for _, c := range p.Choices {
		r.Choices = append(r.Choices, sizingChoice{string(c.Kind), c.Part, c.Pos.Line, c.Value, c.Usual, c.Decided, c.RunnerUp, c.Lost})
	}
	for _, f := range p.Remaining {
		x := sizingFinding{Rule: f.Rule, Severity: f.Severity.String(), What: f.What, Line: f.Pos.Line}
		for _, c := range p.Conflicts {
			if c.Of == f {
				x.Conflicts = append(x.Conflicts, sizingConflict{c.Mend, c.Against.Rule, c.Against.What})
			}
		}
		r.Remaining = append(r.Remaining, x)
	}
	for _, f := range p.Elsewhere {
		r.Elsewhere = append(r.Elsewhere, sizingFinding{Rule: f.Rule, Severity: f.Severity.String(), What: f.What, Line: f.Pos.Line})
	}
	for _, o := range p.WaysOut {
		r.WaysOut = append(r.WaysOut, sizingWayOut{o.What, o.ExtraG, o.Left})
	}
	return r
}
