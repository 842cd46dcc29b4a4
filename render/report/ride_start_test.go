package report

import "testing"

// The text of what starts took out of the charges of a ride.
func TestRideStartsText(t *testing.T) {
	for _, c := range []struct {
		ride Ride
		want string
	}{
		{Ride{starts: 0, startAh: 0.3}, ""},
		{Ride{starts: 1}, ""},
		{Ride{starts: 1, startAh: 0.3}, " Of the charge 0.3 Ah is for starting the engine, once."},
		{Ride{starts: 3, startAh: 0.3}, " Of the charge 0.9 Ah is for starting the engine, 3 times."},
	} {
		if got := c.ride.startsText(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// A ride that was left before its end claims nothing of what comes after.
func TestRideLeftBeforeItsEnd(t *testing.T) {
	at := func(v float64) *float64 { return &v }
	r := Ride{Legs: make([]RideLeg, 2), planned: 28, EndCharge: at(0.9)}
	if got, want := r.Outcome(), "The charge stays above the start reserve: the engine can be stopped anywhere on this ride and starts again."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	r.LeftS = at(12840)
	if got, want := r.Outcome(), "Followed to 3:34 h only, in leg 2 of 28; what comes after is not known. Until then the charge stays above the start reserve."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := r.end(), "3:34 h, where it was left,"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// What a start leaves, in few words: the load is named that has less than it needs in mild air.
func TestStartShort(t *testing.T) {
	at := func(v float64) *float64 { return &v }
	rows := func(gets float64) []StudyStart {
		return []StudyStart{{AmbientC: at(20), StarterA: at(120), PostsV: at(9.6), Loads: []StartLoad{{Part: "plotter", Volts: at(gets), NeedsV: at(9)}}},
			{AmbientC: at(0), StarterA: at(167), PostsV: at(0.5)}}
	}
	for gets, want := range map[float64]string{
		9:    "posts 9.60 V at 120 A; at 0 °C does not turn",
		8.99: "posts 9.60 V at 120 A; at 0 °C does not turn; plotter gets 8.99 V, needs 9.00 V",
	} {
		if got := startShort(rows(gets)); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if got := startShort(nil); got != "" {
		t.Errorf("of no case %q", got)
	}
}
