package report

import (
	"strings"
	"testing"
)

// The row of a battery at rest says that the cold is why, and a remark when the sun is taken to shine.
func TestRideColdAndSun(t *testing.T) {
	rest, gives := 0.0, 1.2
	for _, c := range []struct {
		a     *float64
		coldS float64
		want  string
	}{{&rest, 3600, "at rest, too cold"}, {&rest, 0, "at rest"}, {&gives, 3600, "gives 1.20 A"}} {
		if got := atRest(c.a, c.coldS); got != c.want {
			t.Errorf("%g A, cold for %g s: %q, want %q", *c.a, c.coldS, got, c.want)
		}
	}
	from, day, short := 0.0, 48*3600.0, 3*3600.0
	for to, want := range map[*float64]string{
		&day:   "Leg 1: the sun is taken to shine from 8:00 h to 16:00 h, and so on, 2 times, in the middle of each 24 h.",
		&short: "Leg 1: the sun is taken to shine from 8:00 h to 16:00 h, in the middle of the leg and in proportion to a whole day.",
	} {
		leg := RideLeg{FromS: &from, ToS: to, Sun: []Sunlit{{8 * 3600, 16 * 3600}}}
		if to == &day {
			leg.Sun = append(leg.Sun, Sunlit{32 * 3600, 40 * 3600})
		}
		r := Ride{Legs: []RideLeg{leg}}
		if got := strings.Join(r.Remarks(), "\n"); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
