package finding

// Unsourced is how much of what a finding is judged by rests on values of the library
// from memory or without a source, or on assumed ones.
type Unsourced struct {
	Part, Of float64 // volts lost, or amperes allowed
	Margin   float64 // from what is judged to its limit, in the same unit
	Unit     string  // "V", "A"; "" = not looked at
}

// Share is the part as a share, 0 to 1.
func (u Unsourced) Share() float64 {
	if !(u.Part > 0 && u.Of > 0) {
		return 0
	}
	return min(1, u.Part/u.Of)
}

// NoMargin tells whether what is not sure is more than what lies between the figure and
// its limit: it might as well be on the other side.
func (u Unsourced) NoMargin() bool { return u.Share() > 0 && u.Margin < u.Part }
