package design

// Spoken is what texts call the thing that a design is for, by its kind.
type Spoken struct {
	Noun   string // "vehicle"
	Parked string // how it is left alone: "parked"
}

// Spoken follows the practice: what is afloat is a boat, and lies at its moorings.
func (d *Design) Spoken() Spoken {
	if d.Afloat() {
		return Spoken{Noun: "boat", Parked: "moored"}
	}
	return Spoken{Noun: "vehicle", Parked: "parked"}
}
