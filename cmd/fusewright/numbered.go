package main

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/design/edit"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// numbered is a design's text with the labels of its parts and wires written into
// it; those that stand for nothing any more are said.
func numbered(io *streams, in *inputs, text []byte) ([]byte, error) {
	c, err := circuitOf(in, text)
	if err != nil {
		return nil, err
	}
	list := c.Labels()
	now, err := edit.Numbers(text, c.Design.Revision.Value, list)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", in.design.File, err)
	}
	after, err := circuitOf(in, now)
	if err != nil {
		return nil, fmt.Errorf("the labels do not fit into the file as it is written: %w", err)
	}
	for i, p := range after.Parts {
		if p.Ref != c.Parts[i].Ref {
			return nil, fmt.Errorf("%s: the label %s would become %s; nothing was changed", in.design.File, c.Parts[i].Ref, p.Ref)
		}
	}
	for _, g := range c.Gone {
		io.note(fmt.Sprintf("%s: %s stood for %s, which is no more%s", g.Pos, g.Label, g.Of.Value, afterwards(c.Design)))
	}
	return now, nil
}

// afterwards says what becomes of a label whose part or wire is gone.
func afterwards(d *design.Design) string {
	if d.Lasting() {
		return "; it is not given again before the revision is another"
	}
	return "; it is free again, since the revision is another"
}

func circuitOf(in *inputs, text []byte) (*circuit.Circuit, error) {
	of := inputs{design: library.Text{File: in.design.File, Data: text}, libraries: in.libraries}
	d, err := of.read()
	if err != nil {
		return nil, err
	}
	return circuit.Build(d)
}
