package report

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"unicode"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/cutting"
)

// WriteDot writes the circuit as a graph in the DOT language: a box for each
// part, an arrow for each wire from the source to the load and back. It is for
// programs that lay out or search graphs; the schematic is the drawing to read.
func WriteDot(w io.Writer, r *harness.Review) error {
	out := bufio.NewWriter(w)
	fmt.Fprintf(out, "// %s\n", oneLine(CautionOf(r.Design)))
	fmt.Fprintf(out, "digraph circuit {\n\trankdir=LR;\n\tlabel=%s;\n", dotText(r.Design.Title.Value))
	fmt.Fprint(out, "\tnode [shape=box, fontname=\"sans-serif\"];\n\tedge [fontname=\"sans-serif\", fontsize=10];\n")
	for _, p := range r.Circuit.Parts {
		fmt.Fprintf(out, "\t%s [label=%s%s];\n", dotText(dotID(p)), dotText(p.Ref, p.Name, string(p.Kind)), dotShape(p.Kind))
	}
	for _, wire := range r.Circuit.Wires {
		fmt.Fprintf(out, "\t%s -> %s [label=%s, taillabel=%s, headlabel=%s%s];\n",
			dotText(dotID(wire.From.Part)), dotText(dotID(wire.To.Part)), dotText(wire.Number, wireWords(lengths.Of(r.Design), wire)),
			dotText(wire.From.Name), dotText(wire.To.Name), dotStyle(wire.Role))
	}
	for _, p := range r.Circuit.Parts {
		for _, t := range p.Terminals {
			if post := t.OnPost(); post != nil {
				fmt.Fprintf(out, "\t%s -> %s [label=%s, dir=none];\n", dotText(dotID(post.Part)), dotText(dotID(p)), dotText("bolted"))
			}
		}
	}
	fmt.Fprint(out, "}\n")
	return out.Flush()
}

// dotID is unique for a part: some have no reference designation.
func dotID(p *circuit.Part) string {
	if p.Ref != "" {
		return p.Ref
	}
	return fmt.Sprintf("part %d", p.Index)
}

// dotShape tells sources, joints and grounds from the rest.
func dotShape(k circuit.Kind) string {
	switch k {
	case circuit.Battery, circuit.Generator:
		return ", shape=box, penwidth=2"
	case circuit.Splice:
		return ", shape=point, width=0.12"
	case circuit.Ground:
		return ", shape=invtriangle"
	case circuit.Load:
		return ", shape=ellipse"
	}
	return ""
}

// dotStyle draws returns dashed and coil wires dotted.
func dotStyle(r circuit.Role) string {
	switch r {
	case circuit.ReturnWire:
		return ", style=dashed"
	case circuit.CoilFeedWire, circuit.CoilReturnWire:
		return ", style=dotted"
	}
	return ""
}

func wireWords(u lengths.Unit, w *circuit.Wire) string {
	words := []string{}
	if w.Spec.Size != nil {
		words = append(words, w.Spec.Size.Label)
	}
	return strings.Join(append(words, w.Spec.Colour.Code(), u.Cut(cutting.LengthM(w))), " ")
}

// dotText quotes lines of text: inside quotes only the quote and the backslash
// have a meaning.
func dotText(lines ...string) string {
	for i, line := range lines {
		lines[i] = strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(oneLine(line))
	}
	return `"` + strings.Join(lines, `\n`) + `"`
}

// oneLine keeps a text from the design on its line and off the terminal's
// controls: line ends and control characters become a space, marks that turn
// the reading direction go.
func oneLine(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.Is(unicode.Cf, r):
			return -1
		case unicode.IsControl(r) || unicode.Is(unicode.Zl, r) || unicode.Is(unicode.Zp, r):
			return ' '
		}
		return r
	}, s)
}
