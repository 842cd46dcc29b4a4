package cutting

import "fusewright/harness/formula/conductor"

// PullSource is where the forces of PullTest come from.
const PullSource = "UL 486A, pull-out table on three crimp-guide sheets"

// pullN are the least forces in N that a crimp must hold, by gauge. See PullSource.
var pullN = []struct {
	awg int
	n   float64
}{{26, 13.4}, {24, 22.3}, {22, 35.6}, {20, 57.9}, {18, 89}, {16, 133.5}, {14, 222.5}, {12, 311.5}, {10, 356},
	{8, 400.5}, {6, 445}, {4, 623}, {2, 801}, {0, 1112.5}}

// PullTest is the least force in N that a test crimp on a conductor of an area
// in mm² must hold before it slips or breaks: that of the thickest gauge of the
// table which is no thicker. 0 when the conductor is thinner than the table.
func PullTest(areaMm2 float64) float64 {
	least := 0.0
	for _, row := range pullN {
		// Makers round the areas of gauges; a hundredth is less than half a size.
		if conductor.AWGAreaMm2(row.awg) <= areaMm2*1.01 {
			least = row.n
		}
	}
	return least
}
