package validation

import (
	"fmt"
	"math"

	"fusewright/harness/formula/fusing"
	"fusewright/library"
)

// fuses compares the opening bands with the data sheets' points.
func fuses() []Comparison {
	return []Comparison{
		openings("max", "latest opening of blade fuses at published multiples", UnderBad,
			func(o fusing.Opening) float64 { return o.SlowS }),
		openings("min", "soonest opening of blade fuses at published multiples", OverBad,
			func(o fusing.Opening) float64 { return o.FastS }),
	}
}

// carry is the 100 h point: the program holds such a current for good.
const carry = 360000

func openings(edge, what string, side Side, of func(fusing.Opening) float64) Comparison {
	s := read("fuse_times")
	var p []pair
	for _, r := range s.rows {
		want := r.number("seconds")
		if r["edge"] != edge {
			continue
		}
		ft := library.Default().FuseType(r["type"])
		for _, rating := range ft.Ratings {
			if rating.RatingA < r.number("from_A") || rating.RatingA > r.number("to_A") {
				continue
			}
			o := fusing.OpenAt(ft, rating.RatingA, rating.RatingA*r.number("percent")/100, fusing.RatedC)
			got := of(o)
			if want == carry && math.IsInf(got, 1) {
				got = want
			}
			if !o.FastKnown && edge == "min" {
				got = math.NaN()
			}
			p = append(p, pair{fmt.Sprintf("%s %g A at %s %%", ft.Name, rating.RatingA, r["percent"]), got, want, 1e-6 * want})
		}
	}
	return compare(s.against(what, "the published value", side), p)
}
