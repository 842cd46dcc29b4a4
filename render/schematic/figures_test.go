package schematic

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/paint"
	"fusewright/render/schematic/route"
)

var update = flag.Bool("update", false, "write the recorded figures anew")

// The sheets, bends and crossings of the demo designs and of fixed generated harnesses
// are recorded, and how full the emptiest sheet is, so that a change which makes layouts
// worse is seen. -update records them anew.
func TestFigures(t *testing.T) {
	var b strings.Builder
	b.WriteString("# design, or wires and seed; size: sheets, wires drawn, bends, crossings, rows of the emptiest sheet in %\n")
	row := func(name, size string, d *paint.Drawing) {
		low := d.Rows
		for _, p := range d.Pages {
			low = min(low, p.Height)
		}
		f := count(d)
		fmt.Fprintf(&b, "%s %s: %d %d %d %d %d\n", name, size, f.sheets, f.wires, f.bends, f.crossings, 100*low/d.Rows)
	}
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		review := demo(t, name)
		for _, size := range []string{"A4", "A3", "Letter", "Tabloid"} {
			for _, v := range variants(review) {
				v.Size = size
				row(name+v.name, size, laidOut(t, review, v))
			}
		}
	}
	for _, wires := range []int{10, 25, 40, 80, 160} {
		for seed := int64(1); seed <= 4; seed++ {
			review := assessed(t, "generated.yaml", synth.YAML(wires, seed))
			for _, size := range []string{"A4", "A3"} {
				row(fmt.Sprintf("%d %d", wires, seed), size, laidOut(t, review, variant{Options: Options{Size: size}}))
			}
		}
	}
	checkRecorded(t, "testdata/figures.txt", b.String())
}

// The same design gives the same sheets, byte for byte.
func TestDrawIsSteady(t *testing.T) {
	text, err := os.ReadFile("testdata/corners.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var first string
	for range 3 {
		sheets, err := Draw(reviewtest.Built(t, text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := svgText(t, sheets)
		if first == "" {
			first = got
		}
		if got != first {
			t.Fatal("two drawings of one design differ")
		}
	}
}

// One more load at the end moves no part to another sheet and turns no order
// round: the parts before it keep their order on the page.
func TestAddingALoadKeepsTheOrder(t *testing.T) {
	text, err := os.ReadFile("../../designs/fen-runner.yaml")
	if err != nil {
		t.Fatal(err)
	}
	more := strings.Replace(string(text), "\nsituations:",
		"\n  extra: {power: 5 W, behaves: constant power, at: handlebar, fed by: rear 5, returns to: front stud}\n\nsituations:", 1)
	order := func(text []byte) (refs []string) {
		d := planned(t, "fen-runner.yaml", text, Options{Size: "A3", NoFindings: true})
		for _, column := range d.Pages[0].Columns {
			for _, c := range column {
				if c.Kind == cell.Part && c.Part.Name != "extra" {
					refs = append(refs, c.Part.Name)
				}
			}
		}
		return refs
	}
	before, after := order(text), order([]byte(more))
	if strings.Join(before, "|") != strings.Join(after, "|") {
		t.Errorf("order before %v, after %v", before, after)
	}
}

// figures counts what makes a layout restless.
type figures struct{ sheets, wires, bends, crossings int }

func count(d *paint.Drawing) (f figures) {
	f.sheets = len(d.Pages) + len(d.Lists.Extras)
	for _, p := range d.Pages {
		for i, l := range p.Lines {
			f.wires++
			f.bends += max(len(l.Pts)-2, 0)
			for _, q := range p.Lines[:i] {
				if q.Net != l.Net {
					f.crossings += crossingsOf(l, q)
				}
			}
		}
	}
	return f
}

func crossingsOf(a, b route.Line) (n int) {
	for i := 1; i < len(a.Pts); i++ {
		for j := 1; j < len(b.Pts); j++ {
			if rectOf(a.Pts[i-1], a.Pts[i]).Overlaps(rectOf(b.Pts[j-1], b.Pts[j])) {
				n++
			}
		}
	}
	return n
}
