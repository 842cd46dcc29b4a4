package fault

import "fusewright/harness/network/circuit"

// Latest is the short of a fuse for which it opens last, in a state of the source: the weakest
// short that it has to open for.
type Latest struct {
	*Short
	State int
}

// Result is the short in its state.
func (l Latest) Result() *Result { return &l.Results[l.State] }

// Latest finds, for each fuse that opens for a short, the one for which it opens last: of all
// places along wires and inside parts; of equal ones that with the least current through the
// fuse, and of those the first.
func (s *Study) Latest() map[*circuit.Branch]Latest {
	latest := map[*circuit.Branch]Latest{}
	for _, sh := range s.Shorts {
		for state := range sh.Results {
			r := &sh.Results[state]
			if r.Device == nil || r.Bare {
				continue
			}
			if was, met := latest[r.Device]; !met || r.SlowS > was.Result().SlowS || r.SlowS == was.Result().SlowS && r.DeviceA < was.Result().DeviceA {
				latest[r.Device] = Latest{sh, state}
			}
		}
	}
	return latest
}

// Lies says where a short lies, with its wire in words.
func (sh *Short) Lies(wire func(*circuit.Wire) string) string {
	switch sh.Where {
	case Inside:
		return "inside " + sh.In()
	case Between:
		return "at " + sh.At + " on " + wire(sh.Wire)
	}
	return "at the " + string(sh.Where) + " of " + wire(sh.Wire)
}
