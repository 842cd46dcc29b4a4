package protection

import (
	"fmt"
	"testing"

	"fusewright/harness/fusing"
	"fusewright/library"
)

func TestZ3(t *testing.T) {
	lib := library.Default()
	for _, dn := range lib.FuseTypes {
		for _, un := range lib.FuseTypes {
			for _, r := range dn.Ratings {
				for _, q := range un.Ratings {
					if q.RatingA < 1.6*r.RatingA || q.RatingA > 31 {
						continue
					}
					for _, i := range []float64{100, 200, 300, 400} {
						a, k1 := fusing.Device{dn, r, 40}.Open(i).SlowS, true
						b, k2 := fusing.Device{un, q, 40}.Open(i).SlowS, true
						if k1 && k2 && b <= a {
							fmt.Println(dn.Name, r.RatingA, un.Name, q.RatingA, i, a, b)
							break
						}
					}
				}
			}
		}
	}
}
