package schematic

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
	"fusewright/render/scene"
	"fusewright/render/schematic/paint"
	"fusewright/render/schematic/parts"
)

// checkPlaces finds parts and grounds that stand within the outline of a place that is
// not theirs. It reads the drawn sheet.
func checkPlaces(d *paint.Drawing, s *scene.Sheet) (faults []string, boxes int) {
	place := map[string]string{} // by reference; a ground's name begins with it
	for _, p := range d.Circuit.Parts {
		if p.Place != nil && p.Ref != "" {
			place[p.Ref] = p.Place.Name
		}
	}
	drawn := takeApart(s)
	outlines := map[*scene.Group]scene.Rect{}
	for _, p := range drawn.items {
		if p.group != nil && p.group.Class == "place" && p.item.Path != nil {
			outlines[p.group] = p.item.Bounds()
		}
	}
	seen := map[*scene.Group]bool{}
	for _, p := range drawn.items {
		if p.item.Path == nil || p.group == nil || seen[p.group] {
			continue
		}
		ref := ""
		switch {
		case p.group.Class == "part":
			ref, _, _ = strings.Cut(strings.TrimPrefix(p.group.ID, "part-"), "-")
		case p.group.Class == "ground":
			ref, _, _ = strings.Cut(strings.TrimPrefix(p.group.Title, "to "), " ")
		}
		if ref == "" {
			continue
		}
		seen[p.group] = true
		b := p.item.Bounds()
		mid := scene.Point{X: b.X + b.W/2, Y: b.Y + b.H/2}
		for g, box := range outlines {
			if box.Contains(scene.Rect{X: mid.X, Y: mid.Y}) && g.Title != place[ref] {
				faults = append(faults, fmt.Sprintf("%s of %q stands in the outline of %q", p.group.Title, place[ref], g.Title))
			}
		}
	}
	return faults, len(outlines)
}

// Outlines of places hold what is there and nothing else: no ground of elsewhere.
func TestPlacesHoldTheirOwn(t *testing.T) {
	designs := map[string][]byte{}
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		text, err := os.ReadFile("../../designs/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		designs[name] = text
	}
	for seed := int64(1); seed <= 6; seed++ {
		designs[fmt.Sprint("seed ", seed)] = synth.YAML(10*int(seed), seed)
	}
	boxes, abroad := 0, 0
	for name, text := range designs {
		review := reviewtest.Built(t, text)
		for _, w := range review.Circuit.Wires {
			if parts.IsReturn(w) && w.From.Part.Place != w.To.Part.Place && w.From.Part.Kind == circuit.Load {
				abroad++
			}
		}
		for _, size := range []string{"A4", "A3"} {
			for _, relays := range []string{"assembled", "detached"} {
				d := laidOut(t, review, variant{places: true, Options: Options{Size: size, Relays: relays}})
				for _, s := range d.Paint() {
					faults, n := checkPlaces(d, s)
					boxes += n
					for _, f := range faults {
						t.Errorf("%s %s %s: %s", name, size, relays, f)
					}
				}
			}
		}
	}
	if boxes == 0 || abroad == 0 {
		t.Errorf("%d outlines, %d grounds elsewhere: the test proves nothing", boxes, abroad)
	}
	t.Logf("%d outlines, %d loads with grounds elsewhere", boxes, abroad)
}
