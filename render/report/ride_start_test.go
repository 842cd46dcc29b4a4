package report

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/study/cranking"
	"fusewright/harness/study/ride"
)

// The text of what starts took out of the charges of a ride.
func TestRideStartsText(t *testing.T) {
	for _, c := range []struct {
		ride Ride
		want string
	}{
		{Ride{Starts: 0, StartAh: 0.3}, ""},
		{Ride{Starts: 1}, ""},
		{Ride{Starts: 1, StartAh: 0.3}, " Of the charge 0.3 Ah is for starting the engine, once."},
		{Ride{Starts: 3, StartAh: 0.3}, " Of the charge 0.9 Ah is for starting the engine, 3 times."},
	} {
		if got := c.ride.startsText(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// A ride that was left before its end claims nothing of what comes after.
func TestRideLeftBeforeItsEnd(t *testing.T) {
	at := func(v float64) *float64 { return &v }
	r := Ride{Legs: make([]RideLeg, 2), Planned: 28, EndCharge: at(0.9)}
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

// A ride promises no start that the study of starts denies: of a battery that does not turn the starter at the least of cold and of charge that the
// ride has, or a protection that does not let its current through.
func TestRideStartsAsTheStudySays(t *testing.T) {
	study := func(boardA float64, postsV ...float64) *cranking.Study {
		s := &cranking.Study{Start: battery.Start{Starter: "starter", CurrentA: 300}, BoardA: boardA}
		for i, v := range postsV {
			s.Cases = append(s.Cases, cranking.Case{CelsiusC: []float64{20, 0, 20}[i], Charge: []float64{1, 1, 0.6}[i], CurrentA: 300, StarterV: v, NeedsV: 7})
		}
		return s
	}
	const kept = "The charge stays above the start reserve"
	const sure = kept + ": the engine can be stopped anywhere on this ride and starts again."
	for _, c := range []struct {
		name             string
		starts           *cranking.Study
		coldestC, lowest float64
		want             string
	}{
		{"not known", nil, 20, 0.9, sure},
		{"no case", study(60), 20, 0.9, sure},
		{"turns", study(0, 9, 8, 7.5), -20, 0.5, sure},
		{"at its limits", study(300, 7, 7, 7), -20, 0.5, sure},
		{"protection", study(299, 9, 8, 7.5), 20, 0.9, kept + ". A start is not certain all the same: starter takes 300 A, and the battery's protection lets 299 A through."},
		{"full and mild", study(0, 6.99, 5, 4), 25, 0.9, kept + ". The battery does not turn the engine all the same: starter draws 300 A and gets 6.99 V of the 7.00 V that it needs, at 20 °C and 100 % of charge."},
		{"not so cold", study(0, 9, 6.99, 9), 1, 0.5, sure},
		{"so cold", study(0, 9, 6.99, 9), 0, 0.5, kept + ". The battery does not turn the engine all the same: starter draws 300 A and gets 6.99 V of the 7.00 V that it needs, at 0 °C and 100 % of charge."},
		{"not run down so far", study(0, 9, 8, 6.99), 20, 0.61, sure},
		{"run down", study(0, 9, 8, 6.99), 20, 0.6, kept + ". The battery does not turn the engine all the same: starter draws 300 A and gets 6.99 V of the 7.00 V that it needs, at 20 °C and 60 % of charge."},
	} {
		r := RideOf(&ride.Result{Ride: &design.Ride{}, Points: []ride.Point{{}}, EmptyS: math.NaN(), ReserveS: math.NaN(), ColdestC: c.coldestC, LowestCharge: c.lowest}, c.starts)
		if got := r.Outcome(); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// What a start leaves, in few words: the load is named that has less than it needs in mild air.
func TestStartShort(t *testing.T) {
	at := func(v float64) *float64 { return &v }
	rows := func(gets float64, drops ...string) []StudyStart {
		return []StudyStart{{AmbientC: at(20), StarterA: at(120), flowsA: at(120), PostsV: at(9.6), turns: true, Drops: drops, Loads: []StartLoad{{Part: "plotter", Volts: at(gets), NeedsV: at(9), resets: gets < 9}}},
			{AmbientC: at(0), StarterA: at(167), PostsV: at(6.5)}}
	}
	for gets, want := range map[float64]string{
		9:    "posts 9.60 V at 120 A; at 0 °C 6.50 V, does not turn",
		8.99: "posts 9.60 V at 120 A; at 0 °C 6.50 V, does not turn; plotter gets 8.99 V, needs 9.00 V",
	} {
		if got := startShort(rows(gets), true); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if got, want := startShort(rows(8.99, "K1 keyed"), false), "posts 9.60 V at 120 A; at 0 °C 6.50 V, does not turn; lets go: K1 keyed"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	linked, stands, on := rows(9), rows(9), rows(9)
	linked[0].LinkedV, linked[0].Relays = at(10.1), []string{"split relay"}
	stands[0].flowsA, stands[0].turns = at(80), false
	on[0].On = []string{"pump", "lamp"}
	for want, x := range map[string][]StudyStart{
		"posts 9.60 V at 120 A, 10.1 V with split relay still closed; at 0 °C 6.50 V, does not turn": linked,
		"posts 9.60 V at 80.0 A, does not turn; at 0 °C 6.50 V, does not turn":                       stands,
		"posts 9.60 V at 120 A; at 0 °C 6.50 V, does not turn; on: pump and lamp":                    on,
	} {
		if got := startShort(x, true); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if got := startShort(nil, true); got != "" {
		t.Errorf("of no case %q", got)
	}
}

// What further batteries give to a start stands in one line, with the relays between them open and still closed.
func TestStartLinked(t *testing.T) {
	at := func(v float64) *float64 { return &v }
	for _, c := range []struct {
		start StudyStart
		want  string
	}{
		{StudyStart{PostsV: at(11.6)}, ""},
		{StudyStart{PostsV: at(11.6), Further: []StartBank{{"house", at(0), nil}}}, ""},
		{StudyStart{PostsV: at(12), Further: []StartBank{{"house", at(46.6), nil}}}, " On full batteries in mild air house gives 46.6 A over its link."},
		{StudyStart{PostsV: at(11.6), LinkedV: at(12), Relays: []string{"split relay"}, Further: []StartBank{{"house", at(0), at(46.2)}}},
			" With split relay still closed, as soon after a stop, house gives 46.2 A to the first of these starts, and the posts have 12.0 V in place of 11.6 V."},
	} {
		if got := c.start.linked(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// What is said where nothing starts: once of the reserve and of the protection, and of the first battery before the others.
func TestRideOfLithium(t *testing.T) {
	s := &cranking.Study{Start: battery.Start{Starter: "starter", CurrentA: 300}, BoardA: 100, Cases: []cranking.Case{{}}}
	at := func(v float64) *float64 { return &v }
	r := RideOf(&ride.Result{Ride: &design.Ride{}, Points: []ride.Point{{Reserve: 0.3}}, EmptyS: 7200, Why: "is empty", ReserveS: 3600, EndCharge: 0.1,
		Frosts: []ride.Frost{{Leg: 1, Battery: "the battery", AirC: -8}, {Leg: 2, Battery: "the battery", AirC: -5}, {Leg: 0, Battery: "house"}}}, s)
	r.Further = []RideBank{{Name: "house", LowestCharge: at(0.6), UsualReserve: 0.1}}
	const want = "From 1:00 h on a start is not certain: the charge is below the start reserve, the state of charge that the battery needs at this temperature " +
		"to start the engine; at 2:00 h the battery is empty, and the ride ends. Nor is it before: starter takes 300 A, and the battery's protection lets 100 A through. " +
		"With 60.0 % at the lowest house stays above its usual reserve of 10 %."
	if got := r.Outcome(); got != want {
		t.Errorf("%q", got)
	}
	if got, want := strings.Join(r.Remarks(), " "), "In legs 2 and 3 the battery takes no charge: the air is below 0 °C. In leg 1 house takes no charge: the air is below 0 °C."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
