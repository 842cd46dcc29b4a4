package schematic

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/synth"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/solved"
)

// The halves of a reversing contactor and the motor between them stand on one sheet.
func TestHalvesStandTogether(t *testing.T) {
	text, err := os.ReadFile("testdata/reversing.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, size := range []string{"A4", "A3", "Letter"} {
		for _, relays := range []string{"assembled", "detached"} {
			d := planned(t, "reversing.yaml", text, Options{Size: size, Relays: relays})
			sheet := map[string]int{}
			for _, c := range d.List {
				if !c.Coil {
					sheet[c.Part.Name] = c.Sheet
				}
			}
			for _, three := range [][]string{{"winch in", "winch out", "winch"}, {"raise", "lower", "lift"}} {
				if a, b, c := sheet[three[0]], sheet[three[1]], sheet[three[2]]; a != b || b != c || a == 0 {
					t.Errorf("%s, %s: %v on sheets %d, %d, %d", size, relays, three, a, b, c)
				}
			}
		}
	}
}

// What explains the drawing and found no room is told of on a sheet, and has sheets of
// its own.
func TestAbsentLegendIsTold(t *testing.T) {
	absent := 0
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		review := demo(t, name)
		for _, v := range variants(review) {
			v.Size = "A4"
			d := laidOut(t, review, v)
			found, legend := words(d.Paint()), d.Legend()
			told := 0
			for text, n := range found {
				if strings.HasSuffix(text, ": cover or later sheet") {
					told += n
				}
			}
			if len(d.Lists.Absent) > 0 {
				absent++
			}
			if want := min(len(d.Lists.Absent), 1); told != want || min(len(legend), 1) != want {
				t.Errorf("%s%s: %d lists absent, told %d times, %d sheets of legend", name, v.name, len(d.Lists.Absent), told, len(legend))
			}
			for _, list := range d.Lists.Absent {
				if words(legend)[list.Title] != 1 {
					t.Errorf("%s%s: %s is not in the legend", name, v.name, list.Title)
				}
			}
		}
	}
	if absent == 0 {
		t.Error("no drawing lacks room: the test proves nothing")
	}
}

// A larger paper is proposed where it saves a sheet, and there alone.
func TestLargerPaper(t *testing.T) {
	for _, c := range []struct {
		name, size string
		wires      int
		want       string
	}{
		{"one sheet", "A4", 10, ""}, {"two sheets of A4", "A4", 25, "A3"}, {"two sheets of Letter", "Letter", 25, "Tabloid"}, {"already large", "A3", 80, ""},
	} {
		review := assessed(t, "generated.yaml", synth.YAML(c.wires, 3))
		sheets, err := Draw(review, Options{Size: c.size})
		if err != nil {
			t.Fatal(err)
		}
		got, then, err := Larger(review, Options{Size: c.size}, len(sheets))
		if err != nil || got != c.want || got != "" && then >= len(sheets) {
			t.Errorf("%s: %q, %d sheets for %d, %v, want %q", c.name, got, then, len(sheets), err, c.want)
		}
	}
}

// No sheet of a set stands three quarters empty where the circuit could be shared out
// otherwise.
func TestSheetsAreEven(t *testing.T) {
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		review := demo(t, name)
		for _, size := range []string{"A4", "A3"} {
			for _, v := range variants(review) {
				v.Size = size
				d := laidOut(t, review, v)
				for _, p := range d.Pages {
					if p.Height < d.Rows/4 {
						t.Errorf("%s %s%s: sheet %d fills %d of %d rows", name, size, v.name, p.Index+1, p.Height, d.Rows)
					}
				}
			}
		}
	}
}

// No circuit stands on a sheet before that of its feed; on A4 one may, where that saves a sheet.
func TestNobodyTurnsBack(t *testing.T) {
	for _, name := range []string{"fen-runner", "reed-skiff", "hay-wain", "sedge-sloop"} {
		for _, size := range []string{"A4", "A3"} {
			d, err := plan(demo(t, name), Options{Size: size})
			if err != nil {
				t.Fatal(err)
			}
			flags, back := 0, 0
			for _, p := range d.Pages {
				for _, c := range p.Cells {
					for _, in := range c.Inlets {
						if c.Kind != cell.Part || !d.ComesByFlag(p, in) || d.Outs[in.Source] == nil {
							continue
						}
						if flags++; d.Outs[in.Source].Sheet <= c.Sheet || in.Wire.Role == circuit.CoilFeedWire {
							continue
						}
						if back++; size != "A4" || back > 1 {
							t.Errorf("%s %s: %s on sheet %d is fed from sheet %d", name, size, c.Part.Ref, c.Sheet, d.Outs[in.Source].Sheet)
						}
					}
				}
			}
			if flags == 0 && len(d.Pages) > 1 {
				t.Errorf("%s %s: no flag on %d sheets", name, size, len(d.Pages))
			}
		}
	}
}

// No sheet before the last stands half empty where circuits that it feeds fit on it.
func TestFirstSheetsAreFilled(t *testing.T) {
	for _, name := range []string{"hay-wain"} {
		review := demo(t, name)
		for _, situation := range []string{"", solved.HeaviestSituation(review)} {
			d, err := plan(review, Options{Situation: situation})
			if err != nil {
				t.Fatal(err)
			}
			for _, p := range d.Pages[:len(d.Pages)-1] {
				if p.Height < d.Rows/2 {
					t.Errorf("%s %s: sheet %d fills %d of %d rows", name, situation, p.Index+1, p.Height, d.Rows)
				}
			}
		}
	}
}

// What a block feeds from one way stands on one sheet, wherever it has been moved.
func TestCircuitsStayWhole(t *testing.T) {
	for seed := int64(1); seed <= 4; seed++ {
		d := planned(t, "generated.yaml", synth.YAML(80, seed), Options{Size: "A4"})
		for _, p := range d.Pages {
			for _, c := range p.Cells {
				if c.Kind != cell.Part || len(c.Ways) == 0 {
					continue
				}
				for _, o := range c.Outlets {
					sheets := map[int]bool{}
					for _, in := range d.Feeds[o.Term] {
						sheets[in.Cell.Sheet] = true
					}
					if len(sheets) > 1 {
						t.Errorf("seed %d: what %s %s feeds stands on %d sheets", seed, c.Part.Ref, o.Term.Name, len(sheets))
					}
				}
			}
		}
	}
}

// A drawing with room for the values of a situation takes no more sheets than were found
// for it, whatever was tried in between.
func TestRoomForValuesTakesNoSheet(t *testing.T) {
	for _, name := range []string{"plough-lift-and-lamp", "winch-breaker-that-closes-again", "winch-through-the-signal-ground"} {
		text, err := os.ReadFile("../../testdata/corpus/blind/second/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		if d := planned(t, name, text, Options{Size: "A4"}); d.Count() != 2 {
			t.Errorf("%s: %d sheets", name, d.Count())
		}
	}
}
