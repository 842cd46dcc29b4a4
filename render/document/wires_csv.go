package document

import (
	"fmt"
	"io"
	"math"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/workshop/cutting"
)

// WiresCSV writes one row per wire with its data and, for each situation, the
// current from feed to load in amperes and the drop in volts. Cells of a
// situation that could not be solved are empty.
func WiresCSV(w io.Writer, r *harness.Review) error {
	head := []string{"wire", "role", "from", "to", "insulation", "size", "area mm2", "colour",
		"cut length m", "ambient C", "ohm at 20 C"}
	for _, s := range r.Solutions {
		head = append(head, "A in "+s.Situation.Name, "V lost in "+s.Situation.Name)
	}
	var rows [][]string
	for _, wire := range r.Circuit.Wires {
		rows = append(rows, wireCells(wire, r.Solutions))
	}
	return writeCSV(w, head, rows)
}

func wireCells(w *circuit.Wire, sols []*solve.Solution) []string {
	insulation, size, area := "", "", ""
	if w.Spec.Type != nil {
		insulation = w.Spec.Type.Name
	}
	if w.Spec.Size != nil {
		size, area = w.Spec.Size.Label, figure(w.Spec.Size.AreaMm2)
	}
	cells := []string{w.Number, string(w.Role), terminalName(w.From), terminalName(w.To), insulation, size, area,
		w.Spec.Colour.Code(), metres(cutting.LengthM(w)), figure(w.AmbientC), figure(w.ConductorOhm20 + w.EndsOhm)}
	for _, s := range sols {
		if s.Status != solve.Converged {
			cells = append(cells, "", "")
			continue
		}
		cells = append(cells, figure(s.Amps(w.Branch)), figure(math.Abs(s.Volts(w.Branch))))
	}
	return cells
}

func terminalName(t *circuit.Terminal) string {
	return fmt.Sprintf("%s:%s %s", t.Part.Ref, t.Name, t.Part.Name)
}

// figure prints six significant digits without an exponent, and nothing for
// what is not finite.
func figure(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	if math.Abs(v) < 5e-13 { // what is left of a difference
		return "0"
	}
	return strings.Replace(quantity.Digits(v, 6), "−", "-", 1) // a spreadsheet's minus
}
