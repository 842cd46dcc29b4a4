package fusing

import "math"

// holdMargin is how much longer than a load is on its fuse must hold the load's
// current. Source: manual of a thruster, a slow fuse that holds its draw for 5 min;
// of another, 3 min of running at the most (one source each).
const holdMargin = 5.0 / 3

// HoldsA is the largest current that a device holds for onS seconds, every everyS
// from start to start, at its ambient: by the soonest opening of its curve, which
// the heat of the cycles before shortens by (I rms / I carried)². It is zero where
// nothing above what the device carries for good is published, in A.
func (d Device) HoldsA(onS, everyS float64) float64 {
	if !complete(d) || !(onS > 0) || !(everyS > onS) {
		return 0
	}
	c := d.curve()
	holds := func(amps float64) bool {
		fast, known := c.fast(amps)
		heat := amps * amps * onS / everyS / (c.hotA * c.hotA)
		return known && fast*(1-heat) >= holdMargin*onS
	}
	least, most := c.hotA, 20*c.hotA
	if !(least > 0) || !holds(least*c.carries*1.01) { // a rating is not passed for good
		return 0
	}
	for range 40 {
		if mid := math.Sqrt(least * most); holds(mid) {
			least = mid
		} else {
			most = mid
		}
	}
	return least
}
