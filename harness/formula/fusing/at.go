package fusing

// SelectiveAt compares two devices in series at one current, down being nearer
// the fault, as Selective does at every current of a range.
func SelectiveAt(down, up Device, currentA float64) Selectivity {
	s := Selectivity{Known: true}
	if !complete(down) || !complete(up) || !(currentA > 0) {
		s.Known, s.Note = false, "a device's type or rating is not known"
		return s
	}
	if s.Selective = s.holds(down.curve(), up.curve(), currentA); s.Selective {
		s.UpToA = currentA
	} else {
		s.FailsA = currentA
	}
	return s
}
