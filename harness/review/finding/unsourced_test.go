package finding

import "testing"

// A margin is one from where it is as large as what is not sure.
func TestNoMargin(t *testing.T) {
	for _, c := range []struct {
		name   string
		u      Unsourced
		share  float64
		margin bool
	}{
		{"below", Unsourced{Part: 0.25, Of: 1, Margin: 0.24, Unit: "V"}, 0.25, false},
		{"at", Unsourced{Part: 0.25, Of: 1, Margin: 0.25, Unit: "V"}, 0.25, true},
		{"above", Unsourced{Part: 0.25, Of: 1, Margin: 0.26, Unit: "V"}, 0.25, true},
		{"all of it", Unsourced{Part: 3, Of: 2, Margin: 2, Unit: "A"}, 1, false},
		{"none", Unsourced{Of: 1, Unit: "V"}, 0, true},
		{"not looked at", Unsourced{}, 0, true},
	} {
		if c.u.Share() != c.share || c.u.NoMargin() == c.margin {
			t.Errorf("%s: share %g, no margin %t", c.name, c.u.Share(), c.u.NoMargin())
		}
	}
}
