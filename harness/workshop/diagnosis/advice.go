package diagnosis

import "slices"

// handWork is what is to be done, battery isolated, about a kind of fault. Common practice, no source.
var handWork = []struct {
	kinds []string
	text  string
}{
	{[]string{jointOfWire, jointAtPlug, groundPoint, fuseHolder}, "Undo the joint that is named and look for green, for a loose crimp, for paint under the ring. " +
		"A bad crimp is cut off and made anew, never squeezed again."},
	{[]string{brokenWire}, "Follow the wire that is named from end to end: there, whole, crimped fast, seated in its plug?"},
	{[]string{thinnerWire}, "Hold the size of the wire that is named against the cut list."},
	{[]string{swappedWires}, "Follow both wires from end to end before either is moved."},
	{[]string{blownFuse}, "Take the fuse that is named out: right rating, whole, seated? Find what blew it before another of the design's rating goes in."},
	{[]string{contactBad, stuckContact}, "Take the wires off the contact that is named and read its ohms, open and closed."},
	{[]string{coilBad}, "Take the wires off the coil that is named, read its ohms and its printed volts."},
	{[]string{loadPower, deadLoad}, "Hold the label of the load that is named against the design: the part that was meant, plugged in, set and switched on?"},
}

// advice is what to do by hand about what best explains the readings and what cannot be told from it.
func advice(top *candidate) string {
	kinds := map[string]bool{}
	for _, c := range append([]*candidate{top}, top.alike...) {
		for _, f := range c.faults {
			kinds[f.kind] = true
		}
	}
	text := ""
	if kinds[wrongReading] {
		text = "First take the doubted reading again, at the points that the sheet names; see that the meter is on the right scale and its leads are sound. "
	}
	work := ""
	for _, w := range handWork {
		if slices.ContainsFunc(w.kinds, func(k string) bool { return kinds[k] }) {
			work += w.text + " "
		}
	}
	if work != "" {
		text += "Then, by hand: everything off, battery isolated. " + work
	}
	return text + "Then take the failed readings again."
}
