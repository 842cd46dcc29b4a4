package rules_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/library"
)

func monoFiles() (out []string) {
	for _, g := range strings.Split(os.Getenv("MONO"), ",") {
		l, _ := filepath.Glob("../../" + g)
		out = append(out, l...)
	}
	return out
}

// feedRef is one feed or return of a part.
type feedRef struct {
	part string
	feed *design.Feed
}

func feedsOf(d *design.Design) (out []feedRef) {
	add := func(part string, lists ...[]design.Feed) {
		for _, l := range lists {
			for i := range l {
				out = append(out, feedRef{part, &l[i]})
			}
		}
	}
	for _, x := range d.Fuses {
		add(x.Name, x.FedBy)
	}
	for _, x := range d.Relays {
		add(x.Name, x.FedBy, x.Coil.FedBy, x.Coil.Returns)
	}
	for _, x := range d.Blocks {
		add(x.Name, x.FedBy)
	}
	for _, x := range d.Switches {
		add(x.Name, x.FedBy)
	}
	for _, x := range d.Loads {
		add(x.Name, x.FedBy, x.Returns)
	}
	for _, x := range d.Grounds {
		add(x.Name, x.Returns)
	}
	for _, x := range d.Splices {
		add(x.Name, x.FedBy)
	}
	return out
}

// served are a part and all that hangs on it.
func served(d *design.Design, part string) map[string]bool {
	on := map[string]bool{part: true}
	for grown := true; grown; {
		grown = false
		for _, f := range feedsOf(d) {
			if p := f.feed.From.Part; p != nil && on[p.PartName()] && !on[f.part] {
				on[f.part], grown = true, true
			}
		}
	}
	return on
}

func dialsOf(d *design.Design) (out []*dial) {
	kinds := os.Getenv("DIALS")
	want := func(k string) bool { return kinds == "" || strings.Contains(kinds, k) }
	var classes []float64
	for _, f := range feedsOf(d) {
		c := f.feed.Wire.Type.ClassC
		if !slices.Contains(classes, c) {
			classes = append(classes, c)
		}
	}
	ambients := func(from float64) (at []float64) {
		for x := from; x < 150; x += 9 {
			at = append(at, x)
		}
		for _, c := range append(classes, 105, 125, 85) {
			for _, k := range []float64{0, 10, 20, 30} {
				for _, e := range []float64{-0.1, -1e-6, 0, 1e-6, 0.1} {
					if c-k+e >= from {
						at = append(at, c-k+e)
					}
				}
			}
		}
		slices.Sort(at)
		return slices.Compact(at)
	}
	if want("ambient") {
		for i, p := range d.Places {
			out = append(out, &dial{name: "ambient of " + p.Name, at: ambients(p.AmbientC.Or(20)), fine: true,
				set: func(d *design.Design, x float64) { d.Places[i].AmbientC = design.Quantity{Value: x, Text: "x"} }})
		}
		for i, p := range d.Runs {
			out = append(out, &dial{name: "ambient of run " + p.Name, at: ambients(max(p.AmbientC.Or(20), p.From.AmbientC.Or(20), p.To.AmbientC.Or(20))), fine: true,
				set: func(d *design.Design, x float64) { d.Runs[i].AmbientC = design.Quantity{Value: x, Text: "x"} }})
		}
	}
	for i, f := range feedsOf(d) {
		if want("length") {
			from := f.feed.Wire.LengthM.Or(0.5)
			var at []float64
			for k := 0; k < 14; k++ {
				at = append(at, from)
				from *= 1.6
			}
			out = append(out, &dial{name: fmt.Sprintf("length of feed %d of %s", i, f.part), at: at, fine: true, on: served(d, f.part),
				set: func(d *design.Design, x float64) {
					feedsOf(d)[i].feed.Wire.LengthM = design.Quantity{Value: x, Text: "x"}
				}})
		}
		if want("thin") {
			sizes := slices.Clone(f.feed.Wire.Type.Sizes)
			slices.SortFunc(sizes, func(a, b *library.WireSize) int { return int(1e6 * (b.AreaMm2 - a.AreaMm2)) })
			k := slices.Index(sizes, f.feed.Wire.Size)
			if k < 0 {
				continue
			}
			sizes = sizes[k:]
			var at []float64
			for z := range sizes {
				at = append(at, float64(z))
			}
			out = append(out, &dial{name: fmt.Sprintf("thinner feed %d of %s", i, f.part), at: at, on: served(d, f.part),
				set: func(d *design.Design, x float64) { feedsOf(d)[i].feed.Wire.Size = sizes[int(x)] }})
		}
	}
	if want("power") {
		for i, l := range d.Loads {
			from := l.PowerW
			var at []float64
			for k := 0; k < 14; k++ {
				at = append(at, from)
				from *= 1.35
			}
			out = append(out, &dial{name: "power of " + l.Name, at: at, fine: true,
				set: func(d *design.Design, x float64) { d.Loads[i].PowerW = x }})
		}
	}
	if want("fuse") {
		for i, f := range d.Fuses {
			var rest []*library.FuseRating
			for _, r := range f.Type.Ratings {
				if r.RatingA >= f.Rating.RatingA {
					rest = append(rest, r)
				}
			}
			at := make([]float64, len(rest))
			for k := range rest {
				at[k] = float64(k)
			}
			out = append(out, &dial{name: "rating of " + f.Name, at: at,
				set: func(d *design.Design, x float64) { d.Fuses[i].Rating = rest[int(x)] }})
		}
	}
	if want("cover") {
		covers := []*library.Cover{}
		for i, r := range d.Runs {
			if r.Cover != nil {
				out = append(out, &dial{name: "cover of " + r.Name, at: []float64{0, 1}, on: map[string]bool{r.Name: true},
					set: func(d *design.Design, x float64) {
						if x == 1 {
							d.Runs[i].Cover = nil
						}
					}})
			}
		}
		_ = covers
	}
	return out
}
