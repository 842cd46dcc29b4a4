package diagnosis

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/warm"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
)

// holders says of each fuse holder with another rating in it than the design's what that means: which two
// are in each other's, and which wire what is in it does not guard. What endangers a wire comes first.
func holders(c *circuit.Circuit, placed []*readings.Placed) (list []string) {
	in := map[*circuit.Branch]float64{} // by holder: the rating that was read
	var wrong []*readings.Placed
	for _, p := range placed {
		if p.Check == nil || p.Section.Kind != bench.Fuses || p.Quantity == "" {
			continue
		}
		in[p.Check.Holder] = p.Value
		if otherRating(p) {
			wrong = append(wrong, p)
		}
	}
	if len(wrong) == 0 {
		return nil
	}
	laid, guards := warm.New(c).Wires, c.Guards()
	said := map[*readings.Placed]bool{}
	var calm []string
	for i, p := range wrong {
		if said[p] {
			continue
		}
		of, text := []*readings.Placed{p}, fmt.Sprintf("%s, %s: %s is in it and must be %s", p.Check.Number, what(p.Check), shown(p.Reading), p.Check.Text)
		if k := slices.IndexFunc(wrong[i+1:], func(o *readings.Placed) bool { return !said[o] && swappedFuses(p, o) }); k >= 0 {
			o := wrong[i+1+k]
			of = append(of, o)
			text = fmt.Sprintf("%s and %s are swapped: %s is in the holder of %s %s (check %s), and %s in that of %s %s (check %s)", p.Check.Ref, o.Check.Ref,
				shown(p.Reading), p.Check.Ref, p.Check.Name, p.Check.Number, shown(o.Reading), o.Check.Ref, o.Check.Name, o.Check.Number)
		}
		var bare []string
		for _, x := range of {
			said[x] = true
			bare = append(bare, unguarded(x.Check.Holder, laid, guards, in)...)
		}
		if len(bare) > 0 {
			list = append(list, "Danger: "+text+". That is more than "+wording.Few(bare, 3)+": an overload may burn the wire before the fuse opens. No power before the right fuse is in.")
			continue
		}
		calm = append(calm, text+". Another fuse than the design's no longer guards what it was chosen for, or opens in use.")
	}
	return append(list, calm...)
}

// otherRating tells of a holder with another rating in it than the design's.
func otherRating(p *readings.Placed) bool { return math.Abs(p.Value-p.Check.Nominal) > 1e-6 }

// swappedFuses tells of two holders in each of which the other's rating is, and the other's form of fuse fits,
// as far as it is known.
func swappedFuses(a, b *readings.Placed) bool {
	x, y := a.Check.Holder.Fuse.Type, b.Check.Holder.Fuse.Type
	return (x == y || x == nil || y == nil) && math.Abs(a.Value-b.Check.Nominal) < 1e-6 && math.Abs(b.Value-a.Check.Nominal) < 1e-6
}

// unguarded are the wires behind a holder that may carry less than what is in it lets through, with what
// they may carry: nor does a smaller fuse nearer to the battery guard them, through which all of it comes.
func unguarded(holder *circuit.Branch, laid []warm.Laid, guards circuit.Guards, in map[*circuit.Branch]float64) (list []string) {
	rating := func(b *circuit.Branch) float64 {
		if a, read := in[b]; read {
			return a
		}
		return b.Fuse.Rating.RatingA
	}
	through := rating(holder)
	if through <= holder.Fuse.Rating.RatingA {
		return nil
	}
	for b, n := holder, 0; n < len(guards); n++ {
		above := guards[b.Index]
		if above.Bare || len(above.Fuses) != 1 {
			break
		}
		if b = above.Fuses[0]; rating(b) > 0 {
			through = math.Min(through, rating(b))
		}
	}
	for i := range laid {
		l := &laid[i]
		beside := guards[l.Wire.Branch.Index].Fuses
		if !l.Known || !slices.Contains(beside, holder) {
			continue
		}
		all := through
		for _, b := range beside {
			if b != holder {
				all += rating(b)
			}
		}
		if l.Wire.Branch.ShareA(all) > l.AllowedA {
			list = append(list, l.Wire.Number+" "+l.Wire.Look()+" behind "+holder.Fuse.Ref+" may carry ("+quantity.Format(l.AllowedA, quantity.Current)+")")
		}
	}
	return list
}
