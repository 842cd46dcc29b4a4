package layout

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"fusewright/harness/design/lengths"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/frame"
	"fusewright/render/scene"
)

func number(r *formboard.Run) string { return strconv.Itoa(r.Number) }

func diameterText(u lengths.Unit, mm float64) string {
	if mm <= 0 {
		return "not known"
	}
	return u.Width(mm)
}

// lying are the wires of a run, of parted ones the piece that lies in it.
func lying(r *formboard.Run) (list []*circuit.Wire) {
	for _, w := range r.Bundle.Wires {
		for _, piece := range w.Cut() {
			if slices.Contains(piece.Route, r.Bundle) {
				w = piece
			}
		}
		list = append(list, w)
	}
	return list
}

// wireNumbers lists wires with neighbours drawn together: "W2, W4–W9", pieces of parted
// ones by themselves.
func wireNumbers(r *formboard.Run) string {
	var out []string
	wires := lying(r)
	whole := func(w *circuit.Wire) bool { return unicode.IsDigit(rune(w.Number[len(w.Number)-1])) }
	for i := 0; i < len(wires); {
		j := i
		for j+1 < len(wires) && wires[j+1].Index == wires[j].Index+1 && whole(wires[j]) && whole(wires[j+1]) {
			j++
		}
		if j-i < 2 { // two are no shorter drawn together
			out, j = append(out, wires[i].Number), i
		} else {
			out = append(out, wires[i].Number+"–"+wires[j].Number)
		}
		i = j + 1
	}
	return strings.Join(out, ", ")
}

func coverText(r *formboard.Run) string {
	if c := r.Bundle.Run.Cover; c != nil {
		return c.Name
	}
	return "no cover"
}

// runLines is what stands beside a run's number.
func runLines(u lengths.Unit, r *formboard.Run, level detail) []string {
	if level == numberOnly {
		return nil
	}
	lines := []string{
		fmt.Sprintf("Ø %s, %s", diameterText(u, r.OuterMm), wording.Count(len(r.Bundle.Wires), "wire", "wires")),
		coverText(r),
	}
	if level == wireLists {
		lines = append(lines, scene.Wrap(wireNumbers(r), frame.SmallMM, 34, scene.Regular)...)
	}
	return lines
}

// runWords is a run in a sentence, for readers of the picture's text.
func runWords(u lengths.Unit, r *formboard.Run) string {
	return fmt.Sprintf("%s %s, bundle %s %[2]s, %[4]s, wires %[5]s", u.Dim(r.Length), u.Small(), diameterText(u, r.OuterMm),
		coverText(r), wireNumbers(r))
}

// spotWords is what stands under a place's name.
func spotWords(s *formboard.Spot) []string {
	var lines []string
	switch {
	case s.Copy:
		return []string{"loop cut open:", "joins the same place"}
	case len(s.Inlines) > 0:
		for _, x := range s.Inlines {
			lines = append(lines, x.Part.Ref+" "+x.Part.Name+", "+x.Part.Plug.String(), "sockets towards "+wording.And(x.Towards(x.Sockets)))
		}
	case s.Breakout():
		lines = append(lines, fmt.Sprintf("breakout of %d runs", len(s.Limbs)))
	}
	if len(s.Others) > 0 {
		lines = append(lines, "goes on: "+sectionList(s.Others))
	}
	return lines
}

func sectionList(numbers []int) string {
	const most = 4
	var out []string
	for _, n := range numbers[:min(most, len(numbers))] {
		out = append(out, strconv.Itoa(n))
	}
	text := "section " + strings.Join(out, ", ")
	if len(numbers) > most {
		text += " …"
	}
	return text
}

// atMost is the greatest distance of clamps as a bench takes it, without the unit: whole
// centimetres below it, such as 600 mm for 24 in, or inches as they are.
func atMost(u lengths.Unit, mm float64) string {
	if !u.Feet() {
		mm = 10 * math.Floor(mm/10+1e-9)
	}
	return u.Dim(mm)
}

// roughMM is how closely the place of a clamp is said.
const roughMM = 5.0

// clampText lists the places of clamps from the run's first place.
func clampText(u lengths.Unit, r *formboard.Run) string {
	var out []string
	for _, mm := range r.Supports {
		if !u.Feet() {
			mm = roughMM * math.Round(mm/roughMM) // nobody sets a clamp more closely
		}
		out = append(out, u.Near(mm))
	}
	return strings.Join(out, ", ")
}

// remarks are what else the bench must know of a run.
func remarks(r *formboard.Run) string {
	var out []string
	run := r.Bundle.Run
	if run.Flexes {
		words := "flexes: leave free between the clamps"
		if r.Spacing() > r.SupportMm {
			words += ", further apart than supports may be"
		}
		out = append(out, words)
	}
	if run.Chafes {
		out = append(out, "chafes")
	}
	if run.Pinches {
		out = append(out, "may be pinched")
	}
	if run.Near.Given() {
		out = append(out, "near "+run.Near.Value)
	}
	if r.LoopAt != nil {
		out = append(out, "closes a loop at "+r.LoopAt.Name+"; drawn cut open")
	}
	return strings.Join(out, "; ")
}
