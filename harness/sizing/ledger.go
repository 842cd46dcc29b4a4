package sizing

import (
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// piece is a wire in a size with its ends: what it adds to a ledger.
type piece struct {
	sized
	ends   [2]end
	stock  int     // number of the search, see numbers
	crimps [2]int  // -1 = none
	usedG  float64 // copper, of a wire whose size is open

	rated    *view // for which the next is worked out
	allowedA float64
}

// number counts up the things that the ledgers of a search hold.
func (s *search) number(thing any) int {
	n, ok := s.numbers[thing]
	if !ok {
		n = len(s.numbers)
		s.numbers[thing] = n
	}
	return n
}

// remembered is the piece of a wire by what decides it; the circuits of a search
// number their wires alike.
func (s *search) remembered(x *circuit.Wire, key sized, ends func() [2]end) *piece {
	for len(s.pieces) <= x.Index {
		s.pieces = append(s.pieces, nil)
	}
	for _, p := range s.pieces[x.Index] {
		if p.sized == key {
			return p
		}
	}
	p := s.pieceOf(x, key.size, ends())
	p.sized = key
	s.pieces[x.Index] = append(s.pieces[x.Index], &p)
	return &p
}

// pieceOf is a wire in a size with ends.
func (s *search) pieceOf(x *circuit.Wire, z *library.WireSize, ends [2]end) piece {
	p := piece{ends: ends, stock: s.number(stock{x.Spec.Type, z}), crimps: [2]int{-1, -1}}
	if x.Spec.SizeAuto {
		p.usedG = copperG(x, z)
	}
	for i, e := range ends {
		if e.part != nil {
			p.crimps[i] = s.number(e.part)
		}
	}
	return p
}

// ledger is the cost of wires and crimp parts, kept while wires come and go.
type ledger struct {
	Cost         // fuses left out
	wires  []int // by stock
	crimps []int // by crimp part
	plugs  []int // by connector family
}

// put adds a wire, or takes it away (by -1).
func (l *ledger) put(p *piece, by int) {
	l.CopperG += float64(by) * p.usedG
	l.Sizes += tally(&l.wires, p.stock, by)
	for _, c := range p.crimps {
		if c >= 0 {
			l.Terminals += tally(&l.crimps, c, by)
		}
	}
}

// plug adds a plug, or takes it away (by -1); only what is chosen counts by its
// current.
func (l *ledger) plug(family int, open bool, maxA float64, by int) {
	l.Plugs += tally(&l.plugs, family, by)
	if open {
		l.PlugsA += float64(by) * maxA
	}
}

// tally counts one thing and tells by how much the number of things in use changes.
func tally(list *[]int, thing, by int) int {
	for len(*list) <= thing {
		*list = append(*list, 0)
	}
	n := &(*list)[thing]
	was := *n
	*n += by
	switch {
	case was == 0 && *n > 0:
		return 1
	case was > 0 && *n == 0:
		return -1
	}
	return 0
}
