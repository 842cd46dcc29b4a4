package rules_test

import (
	"fmt"
	"maps"
	"slices"

	"fusewright/harness/design"
	"fusewright/library"
)

// dial changes one thing of a design in the unsafe direction.
type dial struct {
	name string
	at   []float64 // its places, from what the design has on
	fine bool      // it may stand anywhere between them
	set  func(*design.Design, float64)
	// eases are the rules that the change truly eases, with the reason.
	eases map[string]string
}

// What each kind of dial truly eases.
var (
	resistanceEases = map[string]string{
		"load-overvoltage":       "what the wire takes of the voltage the load no longer gets",
		"fuse-breaking-capacity": "more resistance on the way makes the short smaller",
		"fuse-not-selective":     "more resistance on the way makes the shorts smaller at which the two are compared",
	}
	longerEases  = map[string]string{"wire-too-short": "a longer wire reaches through the runs"}
	thinnerEases = map[string]string{"no-terminal-fits": "a wire too thick for its barrel may fit when it is thinner"}
	powerEases   = map[string]string{"load-overvoltage": "a larger load draws the voltage of its feed down"}
	ratingEases  = map[string]string{
		"fuse-under-load":          "a larger fuse bears more",
		"feed-fuse-under-branches": "a larger fuse bears more",
		"fuse-inrush":              "a larger fuse outlasts a larger start",
		"voltage-drop":             "a larger fuse has less resistance",
		"load-undervoltage":        "a larger fuse has less resistance",
		"fuse-grading":             "the larger of two fuses in series is better graded when it stands upstream",
		"fuse-not-selective":       "the larger of two fuses in series opens later",
	}
)

func with(a, b map[string]string) map[string]string {
	both := maps.Clone(a)
	maps.Copy(both, b)
	return both
}

func dialsOf(d *design.Design, kind string) []*dial {
	switch kind {
	case "ambient":
		return ambientDials(d)
	case "length", "thinner":
		return wireDials(d, kind)
	case "power":
		return powerDials(d)
	case "rating":
		return ratingDials(d)
	}
	return coverDials(d)
}

// given is a quantity as if the design said it.
func given(x float64) design.Quantity { return design.Quantity{Value: x, Text: "turned"} }

// ambientDials heat each place and each run, past the limits of all wires: class,
// class less margin, the same at the worst case, and those of relays.
func ambientDials(d *design.Design) (list []*dial) {
	limits := []float64{125}
	for _, c := range connectionsOf(d) {
		for _, k := range []float64{0, 1, 2, 3} {
			limits = append(limits, c.feed.Wire.Type.ClassC-k*d.Practice.HotSpotMarginC)
		}
	}
	slices.Sort(limits)
	limits = slices.Compact(limits)
	from := func(c float64) []float64 {
		at := []float64{c}
		for _, limit := range limits {
			for _, off := range []float64{-1e-6, 0, 1e-6} {
				if limit+off > c {
					at = append(at, limit+off)
				}
			}
		}
		return append(at, max(c, limits[len(limits)-1])+40)
	}
	for i, p := range d.Places {
		list = append(list, &dial{name: "ambient of " + p.Name, at: from(p.AmbientC.Or(30)), fine: true,
			set: func(d *design.Design, x float64) { d.Places[i].AmbientC = given(x) }})
	}
	for i, r := range d.Runs {
		least := max(r.AmbientC.Or(30), r.From.AmbientC.Or(30), r.To.AmbientC.Or(30))
		list = append(list, &dial{name: "ambient of run " + r.Name, at: from(least), fine: true,
			set: func(d *design.Design, x float64) { d.Runs[i].AmbientC = given(x) }})
	}
	return list
}

// wireDials lengthen each wire, or make it thinner. The loads keep their power, so
// that a wire with more resistance never carries less.
func wireDials(d *design.Design, kind string) (list []*dial) {
	for i, c := range connectionsOf(d) {
		spec, wire := c.feed.Wire, func(d *design.Design) *design.WireSpec {
			for _, l := range d.Loads {
				l.Behaves = design.ConstantPower
			}
			return &connectionsOf(d)[i].feed.Wire
		}
		name := fmt.Sprintf("wire %d, of %s", i+1, c.part)
		if kind == "length" {
			list = append(list, &dial{name: "length of " + name, at: geometric(spec.LengthM.Or(0.5), 2.2, 8), fine: true,
				eases: with(resistanceEases, longerEases), set: func(d *design.Design, x float64) { wire(d).LengthM = given(x) }})
			continue
		}
		sizes := slices.SortedFunc(slices.Values(spec.Type.Sizes), func(a, b *library.WireSize) int {
			return int(1e6 * (b.AreaMm2 - a.AreaMm2))
		})
		sizes = sizes[slices.Index(sizes, spec.Size):]
		list = append(list, &dial{name: "thinner " + name, at: indices(len(sizes)), eases: with(resistanceEases, thinnerEases),
			set: func(d *design.Design, x float64) { wire(d).Size = sizes[int(x)] }})
	}
	return list
}

// geometric are places each so many times the one before.
func geometric(from, times float64, n int) (at []float64) {
	for range n {
		at = append(at, from)
		from *= times
	}
	return at
}

func indices(n int) (at []float64) {
	for i := range n {
		at = append(at, float64(i))
	}
	return at
}

func powerDials(d *design.Design) (list []*dial) {
	for i, l := range d.Loads {
		list = append(list, &dial{name: "power of " + l.Name, at: geometric(l.PowerW, 1.6, 9), fine: true, eases: powerEases,
			set: func(d *design.Design, x float64) { d.Loads[i].PowerW = x }})
	}
	return list
}

// ratingDials put larger fuses into holders and ways.
func ratingDials(d *design.Design) (list []*dial) {
	add := func(name string, t *library.FuseType, r *library.FuseRating, set func(*design.Design, *library.FuseRating)) {
		if t == nil || r == nil {
			return
		}
		larger := slices.DeleteFunc(slices.Clone(t.Ratings), func(x *library.FuseRating) bool { return x.RatingA < r.RatingA })
		list = append(list, &dial{name: "rating of " + name, at: indices(len(larger)), eases: ratingEases,
			set: func(d *design.Design, x float64) { set(d, larger[int(x)]) }})
	}
	for i, f := range d.Fuses {
		add(f.Name, f.Type, f.Rating, func(d *design.Design, r *library.FuseRating) { d.Fuses[i].Rating = r })
	}
	for i, b := range d.Blocks {
		for k, w := range b.Ways {
			add(b.Name+" "+w.Number, w.FuseType, w.Fuse, func(d *design.Design, r *library.FuseRating) {
				d.Blocks[i].Ways[k].Fuse = r
			})
		}
	}
	return list
}

// coverDials go from what protects against everything to a bare loom. A cover keeps
// the heat in, so what is said of the wires' currents may ease.
func coverDials(d *design.Design) (list []*dial) {
	keeps := map[string]string{}
	for _, rule := range []string{"fuse-over-wire", "return-below-fuse", "wire-over-current", "fuse-wire-curve",
		"short-overheats-wire", "shared-return-thin"} {
		keeps[rule] = "a wire without a cover stays cooler"
	}
	covers := []*library.Cover{d.Library.Cover("corrugated conduit"), d.Library.Cover("braided sleeve"),
		d.Library.Cover("PVC loom tape"), nil}
	for i, r := range d.Runs {
		list = append(list, &dial{name: "cover of " + r.Name, at: indices(len(covers)), eases: keeps,
			set: func(d *design.Design, x float64) { d.Runs[i].Cover = covers[int(x)] }})
	}
	return list
}
