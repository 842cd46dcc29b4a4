package ride_test

import (
	"fmt"
	"testing"

	"fusewright/harness/study/ride"
)

// A pump of 2.8 A on a battery of 14 Ah, the engine standing.
func ExampleSimulate() {
	c := build(&testing.B{}, fmt.Sprintf(bench, "AGM", "14 Ah", "10 h", motor("pump", "2.8 A"), "100 %",
		"      - {lasts: 3 h, on: [pump]}\n"))
	r, err := ride.Simulate(c, c.Design.Rides[0], ride.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f %% left after 3 h\n", 100*r.EndCharge)
	fmt.Printf("starting is not sure from %.0f min on\n", r.ReserveS/60)
	// Output:
	// 35 % left after 3 h
	// starting is not sure from 111 min on
}
