package protection

import (
	"fmt"
	"testing"

	"fusewright/harness/conductor"
	"fusewright/harness/fusing"
	"fusewright/library"
)

func TestZ2(t *testing.T) {
	lib := library.Default()
	for _, pr := range []string{"motorcycle", "marine"} {
	rater := conductor.NewRater(lib, lib.Practice(pr))
	for _, ft := range lib.FuseTypes {
		for _, wt := range lib.WireTypes {
			worst := 1e9
			var at string
			for _, sz := range wt.Sizes {
				c := conductor.Conditions{Type: wt, Size: sz, AmbientC: 40}
				a := rater.Allowed(c)
				for i := len(ft.Ratings) - 1; i >= 0; i-- {
					r := ft.Ratings[i]
					if r.RatingA > a.AllowedA {
						continue
					}
					p := fusing.ProtectsWire(fusing.Device{ft, r, 40}, rater.Damage(c).FaultTimeS, 20*r.RatingA)
					if p.KnownRatio < worst {
						worst = p.KnownRatio
						at = fmt.Sprintf("%s %g A allowed %.1f known %.2f at %.0f; all %.2f at %.0f", sz.Label, r.RatingA, a.AllowedA, p.KnownRatio, p.KnownWorstA, p.Ratio, p.WorstA)
					}
					break
				}
			}
			fmt.Println(pr, ft.Name, "|", wt.Name, "|", at)
		}
	}
	}
}
