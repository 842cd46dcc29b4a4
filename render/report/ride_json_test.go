package report

import (
	"encoding/json"
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/study/cranking"
	"fusewright/harness/study/ride"
)

// What the text of a ride says of starts and of the reserve as the battery cools stands in its JSON, from the same values.
func TestRideJSONHasWhatItsTextSays(t *testing.T) {
	start := battery.Start{Starter: "starter", CurrentA: 300}
	barred := &cranking.Study{Start: start, BoardA: 299, Cases: []cranking.Case{{CelsiusC: 20, Charge: 1, CurrentA: 300, PostsV: 9}}}
	weak := &cranking.Study{Start: start, Cases: []cranking.Case{{CelsiusC: 20, Charge: 1, CurrentA: 300, PostsV: 0.5, StarterV: 0.4, NeedsV: 7}}}
	sound := &cranking.Study{Start: start, Cases: []cranking.Case{{CelsiusC: 20, Charge: 1, CurrentA: 300, PostsV: 9}}}
	for _, c := range []struct {
		name   string
		starts *cranking.Study
		want   map[string]any
	}{
		{"protection", barred, map[string]any{"starter": "starter", "starter_a": 300.0, "protection_a": 299.0}},
		{"does not turn", weak, map[string]any{"starter": "starter", "starter_a": 300.0, "posts_v": 0.5, "starter_v": 0.4, "starter_needs_v": 7.0, "ambient_c": 20.0, "charge": 1.0}},
		{"turns", sound, nil},
		{"not known", nil, nil},
	} {
		leg := &ride.Leg{Leg: &design.Leg{Key: design.KeyOn, EngineRPM: 1000}, ToS: 60, FromReserve: 0.6, StartReserve: 0.65, StartAh: 0.4, ToCharge: 0.5}
		r := RideOf(&ride.Result{Ride: &design.Ride{Legs: []*design.Leg{leg.Leg}}, Legs: []*ride.Leg{leg}, Points: []ride.Point{{Reserve: 0.6}, {TimeS: 60, Reserve: 0.62}},
			EndCharge: 0.63, LowestCharge: 0.5, ColdestC: -5, StartAh: 0.4, ReserveS: 30, EmptyS: math.NaN()}, c.starts)
		text, err := json.Marshal(r)
		if err != nil {
			t.Fatal(err)
		}
		var got struct {
			Legs []struct {
				First   float64 `json:"first_start_reserve"`
				Highest float64 `json:"start_reserve"`
				StartAh float64 `json:"start_ah"`
			}
			Course struct {
				Reserve []float64 `json:"start_reserve"`
			}
			Starts  int            `json:"starts"`
			StartAh float64        `json:"start_ah"`
			Planned int            `json:"planned_legs"`
			End     float64        `json:"end_start_reserve"`
			Coldest float64        `json:"coldest_battery_c"`
			NoStart map[string]any `json:"no_start"`
		}
		if err := json.Unmarshal(text, &got); err != nil {
			t.Fatal(err)
		}
		if len(got.NoStart) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got.NoStart, c.want)
		}
		for key, want := range c.want {
			if got.NoStart[key] != want {
				t.Errorf("%s: %s is %v, want %v", c.name, key, got.NoStart[key], want)
			}
		}
		if got.Starts != 1 || got.StartAh != 0.4 || got.Planned != 1 || got.End != 0.62 || got.Coldest != -5 || len(got.Legs) != 1 ||
			got.Legs[0].First != 0.6 || got.Legs[0].Highest != 0.65 || got.Legs[0].StartAh != 0.4 || len(got.Course.Reserve) != 2 || got.Course.Reserve[1] != 0.62 {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}
