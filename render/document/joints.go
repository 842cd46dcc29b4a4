package document

import (
	"fmt"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/cutting"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// jointTable lays the splices and taps: what comes together, the one crimp part that takes
// it, and where along the loom it is made. Nothing where there are none.
func (b *book) jointTable(r *harness.Review) {
	list := cutting.Joints(r.Circuit)
	if len(list) == 0 {
		return
	}
	u := lengths.Of(r.Design)
	b.head("Splices and taps")
	b.para("Each is one joint in one crimp part, chosen by all its copper: all wires in the barrel, then an adhesive-lined tube over "+
		"it, unless the part has its own. For a tap cut the factory wire: both its ends and ours go in. Its copper is not known, and is taken "+
		"as ours, coming and going (common practice, no source): look, and take a larger part where it is thicker.", smallQuiet)
	t := report.NewTable("joint", "wires", ">copper", "crimp part", "where", "besides")
	for _, j := range list {
		var wires []string
		for _, w := range j.Wires {
			wires = append(wires, w.End(w.From.Part == j.Part).Number)
		}
		if j.Part.Kind == circuit.Tap {
			wires = append(wires, "factory")
		}
		if j.Lead {
			wires = append(wires, "its lead")
		}
		t.Add(j.Part.Ref+" "+j.Part.Name, strings.Join(wires, " "), quantity.Plain(j.CopperMm2, quantity.Area), jointPart(&j), jointPlace(u, &j), jointHow(u, &j))
	}
	b.lay(t, column{head: "made", wide: 10, align: scene.Middle, first: true})
}

// jointPart is the crimp part of a joint: one for all its wires, chosen by their copper.
func jointPart(j *cutting.Joint) string {
	switch {
	case j.Own:
		return "those of the wires: cut list"
	case j.Crimp == nil:
		return "none takes it: use a stud or a bus bar"
	}
	return "1 " + j.Crimp.Name
}

// jointPlace is the place of a joint, and its distance from an end that can be found.
func jointPlace(u lengths.Unit, j *cutting.Joint) string {
	text := ""
	if j.Part.Place != nil {
		text = j.Part.Place.Name
	}
	if j.Lead {
		return wording.Present([]string{text, "at its lead"}, ", ")
	}
	if j.From == nil {
		return wording.Present([]string{text, "at its slack"}, ", ")
	}
	return wording.Present([]string{text, u.Text(j.Along) + " along the loom from " + j.From.Address()}, ", ")
}

// jointHow is what is to be known of a joint besides.
func jointHow(u lengths.Unit, j *cutting.Joint) string {
	tap, ok := j.Part.Source.(*design.Tap)
	switch {
	case ok:
		return "tap of “" + tap.Name + "”; " + tapFuse(u, j, tap)
	case j.Own:
		return "as the design's `ends` say"
	case j.Fold:
		return "fold the thinner wire back until it fills the barrel"
	}
	return ""
}

// tapFuse is what protects our wire from the factory's on.
func tapFuse(u lengths.Unit, j *cutting.Joint, tap *design.Tap) string {
	var fuses []string
	for _, f := range j.Fuses {
		fuses = append(fuses, fmt.Sprintf("%s %s, %s on", f.Fuse.Fuse.Ref, fuseRating(f), u.Text(f.LengthM)))
	}
	switch {
	case len(fuses) > 0:
		return "fuse " + wording.And(fuses)
	case tap.FuseA.Given():
		return "no fuse of its own: the factory's " + quantity.Plain(tap.FuseA.Value, quantity.Current) + " alone"
	}
	return "no fuse of its own, and the factory's is not given"
}

func fuseRating(f cutting.TapFuse) string {
	if f.Fuse.Fuse.Rating == nil {
		return "of unknown rating"
	}
	return quantity.Plain(f.Fuse.Fuse.Rating.RatingA, quantity.Current)
}
