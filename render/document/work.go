package document

import (
	"fmt"
	"math"

	"fusewright/harness/workshop/cutting"
	"fusewright/render/scene"
)

// workSteps are the order of work from the reel to the bench test.
var workSteps = []string{
	"Make one test crimp of each terminal and size and pull it: it must hold what stands below this list. The bill of materials has spares for this.",
	"Cut the wires from the top of the list, longest of a size first. Mark both ends before the next cut.",
	"Slide on whatever cannot go on later: heat-shrink, boots, seals, and sleeves that are not split.",
	"Strip to the length given. Cut off and strip again where a strand is broken, up to 10 AWG (AC 43.13-1B Table 11-13).",
	"Crimp with the tool that the terminal's maker names: insulated terminals in the die of their colour, open barrels in " +
		"a roll crimp of their size, lugs in a hexagon die (common practice, no source). Never tin a wire before crimping " +
		"(NASA-STD-8739.4).",
	"Look at each crimp: strands show at its end, no insulation is inside the barrel. Pull it by hand; shrink the sleeve.",
	"Lay the wires on the board by the layout sheets, longest runs first; tie, cover, and fit the clamps.",
	"Fit blocks, fuse holders, relay sockets and connectors by the connection table; tick each end. Leave the fuses out.",
	"Tighten studs and screws to their maker's torque: the library has none.",
	"Do the bench test: what needs no power on the bench, the rest in the vehicle before the panels go back.",
}

// orderOfWork writes the steps, a box to tick before each, and what a test
// crimp of each size of the list must hold.
func orderOfWork(b *book, rows []cutting.Row) {
	if len(rows) == 0 {
		return
	}
	step := scene.LineHeightMM(textSizeMM)
	b.head("Order of work")
	pen := scene.Pen(thinMM)
	for i, text := range workSteps {
		text = fmt.Sprintf("%d  %s", i+1, text)
		b.need(step * float64(len(scene.Wrap(text, textSizeMM, b.width()-6, scene.Regular))))
		b.sheet().Rect(scene.Rect{X: b.left() + 1, Y: b.y + 0.5, W: 2.8, H: 2.8}, &pen, nil)
		b.paraIn(text, plain, b.left()+6, b.width()-6)
		b.y += 0.9
	}
	b.y += 1
	pulls(b, rows)
}

// pulls lists the forces that test crimps must hold, by wire size.
func pulls(b *book, rows []cutting.Row) {
	text, last := "", ""
	for _, row := range rows {
		if row.Wire.Spec.Size == nil || row.Size == last {
			continue
		}
		last = row.Size
		force := "not in the table"
		if n := cutting.PullTest(row.Wire.Spec.Size.AreaMm2); n > 0 {
			force = fmt.Sprintf("%.0f N (%.0f lb)", n, math.Round(n/poundN))
		}
		text += ", " + row.Size + ": " + force
	}
	if text == "" {
		return
	}
	b.para("A test crimp must hold: "+text[2:]+". "+cutting.PullSource+"; a size between two gauges takes the thinner one's.", plain)
}

// poundN is the force of a pound in N: 0.45359237 kg at 9.80665 m/s².
const poundN = 4.4482216
