package solve

import (
	"fmt"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// Share of the system voltage at which a coil pulls in and releases when its
// relay form gives no voltages: the least and the most favourable shares of
// makers' data sheets (8 of 12 V, 1.2 of 12 V).
const (
	pullInShare  = 0.67
	dropOutShare = 0.10
)

// maxRounds ends the search for settled contacts: each relay may follow the
// one before it, so a chain of relays needs as many rounds as it is long.
const maxRounds = 60

func (n *Network) isContact(b int) bool {
	return b < len(n.plan.circuit.Branches) &&
		n.plan.circuit.Branches[b].Kind == circuit.ContactBranch
}

// settle solves with every coil at rest, lets the coils move the contacts, and
// repeats until nothing moves. If all coils moving at once
// goes in circles, they move one at a time, the first in the circuit first;
// if that goes in circles too, sensing relays that opened stay so; and if that
// does not help, the relays chatter.
func (n *Network) settle() {
	n.settleContacts()
	n.tellShare()
}

func (n *Network) settleContacts() {
	n.hunts, n.opened = nil, nil
	if n.settleBy(false) || n.settleBy(true) {
		return
	}
	if n.waitToClose() && n.settleBy(true) {
		return
	}
	n.status, n.factored, n.hunts = Chattering, false, nil
}

// waitToClose has sensing relays stay open once they opened, as their delay does
// for a while. False = there is none.
func (n *Network) waitToClose() bool {
	n.opened = make([]bool, len(n.coils))
	return slices.ContainsFunc(n.coils, func(k coil) bool { return k.senses })
}

// settleBy runs rounds; single moves one coil a round. False = it went in circles.
func (n *Network) settleBy(single bool) bool {
	if n.coils == nil {
		n.coils = coilsOf(n.plan.circuit)
	}
	pulled := make([]bool, len(n.coils))
	for i, k := range n.coils {
		pulled[i] = n.held(k) || !n.waits(k) && (n.was(k) || n.opt.Pulled != nil && n.opt.Pulled(k.branch))
	}
	seen := map[string]bool{}
	copy(n.closed, n.atRest)
	n.placeContacts(pulled)
	n.restConverters()
	for range maxRounds {
		n.operateConverters()
		moved := n.moveCoils(pulled, single)
		if moved == nil {
			return true
		}
		n.placeContacts(pulled)
		n.at, n.why = moved.A, fmt.Sprintf("coil %s pulls in and releases in turn", moved.Name)
		key := keyOf(pulled) + keyOf(n.opened)
		if seen[key] {
			return false
		}
		seen[key] = true
	}
	return false
}

func keyOf(states []bool) string {
	key := make([]byte, len(states))
	for i, s := range states {
		if s {
			key[i] = 1
		}
	}
	return string(key)
}

// coil is a relay coil with its contacts.
type coil struct {
	branch       *circuit.Branch
	relay        *design.Relay // nil = of no design
	make, rest   []int         // branch indices of make and break contacts
	pullV, dropV float64
	senses       bool    // by the voltage of its own feed
	closedA      float64 // of a sensing relay: its own draw while it is closed; 0 = as its coil
}

// coilsOf lists coils that move contacts, in branch order of their first contact.
func coilsOf(c *circuit.Circuit) []coil {
	coils := []coil{}
	at := map[*circuit.Branch]int{}
	find := func(b *circuit.Branch) *coil {
		i, ok := at[b]
		if !ok {
			i = len(coils)
			at[b] = i
			coils = append(coils, newCoil(c, b))
		}
		return &coils[i]
	}
	for i, b := range c.Branches {
		switch {
		case b.Closer == nil || b.Kind != circuit.ContactBranch || b.Closer.Latch != nil:
		case b.Closer.Coil != nil:
			k := find(b.Closer.Coil)
			k.make = append(k.make, i)
		case b.Closer.Break != nil:
			k := find(b.Closer.Break)
			k.rest = append(k.rest, i)
		}
	}
	return coils
}

func newCoil(c *circuit.Circuit, b *circuit.Branch) coil {
	k := coil{branch: b}
	if b.Part != nil {
		if r, ok := b.Part.Source.(*design.Relay); ok && r.Form != nil {
			k.relay = r
			k.pullV, k.dropV, k.senses, k.closedA = r.Form.PullInV, r.Form.DropOutV, r.Form.Senses, r.Form.ClosedA
		}
	}
	k.pullV = or(k.pullV, pullInShare*c.NominalAt(b.A))
	k.dropV = or(k.dropV, dropOutShare*c.NominalAt(b.A))
	return k
}

// DropOutV is the voltage below which a coil lets go.
func (s *Solution) DropOutV(c *circuit.Branch) float64 { return newCoil(s.Circuit, c).dropV }

// held tells of a relay that an off delay still keeps closed.
func (n *Network) held(k coil) bool {
	return k.relay != nil && slices.Contains(n.situation.Held, k.relay)
}

// waits tells of a relay that an on delay still keeps open.
func (n *Network) waits(k coil) bool {
	return k.relay != nil && slices.Contains(n.situation.Waiting, k.relay)
}

// was tells of a coil that had pulled in in the state before.
func (n *Network) was(k coil) bool {
	switch after := n.opt.After; {
	case after == nil:
		return false
	case len(k.make) > 0:
		return after.Closed[k.make[0]]
	default:
		return !after.Closed[k.rest[0]]
	}
}

// placeContacts sets the relay contacts from the coils.
func (n *Network) placeContacts(pulled []bool) {
	for i, k := range n.coils {
		if at := k.branch.Index; k.closedA > 0 {
			n.laws[at].Ohm = k.branch.Ohm
			if pulled[i] {
				n.laws[at].Ohm = k.pullV / k.closedA
			}
		}
		for _, b := range k.make {
			n.closed[b] = pulled[i]
		}
		for _, b := range k.rest {
			n.closed[b] = !pulled[i]
		}
	}
}

// moveCoils pulls in and releases coils at the present voltages. It returns the
// first coil that moved, or nil.
func (n *Network) moveCoils(pulled []bool, single bool) *circuit.Branch {
	var first *circuit.Branch
	factor := or(n.opt.PullInFactor, 1)
	for i, k := range n.coils {
		v := n.v[k.branch.A.Index] - n.v[k.branch.B.Index]
		limit := k.pullV * factor
		if pulled[i] {
			limit = k.dropV * factor
		}
		if v < 0 {
			v = -v
		}
		if now := n.held(k) || v >= limit && !n.waits(k); now != pulled[i] {
			if n.opened != nil && k.senses {
				if n.opened[i] {
					continue
				}
				if n.opened[i] = !now; !now {
					n.hunts = k.branch
				}
			}
			pulled[i] = now
			if first == nil {
				first = k.branch
			}
			if single {
				break
			}
		}
	}
	return first
}
