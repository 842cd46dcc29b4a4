package fault

import (
	"fusewright/harness/formula/conductor"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// devices is every fuse of a circuit where it stands, with its band worked out
// once for each type, rating and ambient.
type devices struct {
	at      []int32 // by branch: index + 1; 0 = no fuse
	known   []fusing.Device
	assumed []bool
	breaksA []float64 // by branch: see TrustedA
}

// kind is what a band depends on; of an assumed rating, which the library may
// not have, by its amperes.
type kind struct {
	device  *library.FuseType
	ratingA float64
	rating  *library.FuseRating
	ambient float64
}

func newDevices(c *circuit.Circuit, rater *conductor.Rater) *devices {
	out := &devices{at: make([]int32, len(c.Branches)), breaksA: make([]float64, len(c.Branches))}
	seen := map[kind]int32{}
	for i, b := range c.Branches {
		if b.Kind != circuit.FuseBranch || b.Fuse == nil {
			continue
		}
		out.breaksA[i] = TrustedA(c, b)
		d, assumed := Device(c, b)
		k := kind{d.Type, 0, d.Rating, d.AmbientC}
		if assumed && d.Rating != nil {
			k.ratingA, k.rating = d.Rating.RatingA, nil
		}
		at, ok := seen[k]
		if !ok {
			out.known, out.assumed = append(out.known, prepared(d, k, rater)), append(out.assumed, assumed)
			at = int32(len(out.known))
			seen[k] = at
		}
		out.at[i] = at
	}
	return out
}

// prepared is a device with its band worked out. One of an assumed rating that
// the library lacks has a rating of its own, and is not kept.
func prepared(d fusing.Device, k kind, rater *conductor.Rater) fusing.Device {
	if k.rating == nil {
		return d.Prepared()
	}
	return rater.Kept(k, func() any { return d.Prepared() }).(fusing.Device)
}

func (d *devices) of(b *circuit.Branch) (device fusing.Device, assumed bool) {
	k := d.at[b.Index] - 1
	return d.known[k], d.assumed[k]
}

// Device is the fuse of a branch where it stands, ready to be asked often;
// assumed tells that its type is not known: a factory fuse is taken as a blade
// fuse. The branch must be a fuse of the study's circuit.
func (s *Study) Device(b *circuit.Branch) (d fusing.Device, assumed bool) { return s.devices.of(b) }
