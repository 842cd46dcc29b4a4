package solve

import "math"

// factor is a numeric factorisation of the conductance matrix, LDLᵀ without
// pivoting. The matrix is kept as conductances: between nodes, and from each
// node to the reference. Eliminating a node is then the star–mesh transform,
// which for positive conductances only adds and so loses no digits, however
// far apart milliohms and megohms are.
type factor struct {
	p      *pattern
	a      []float64 // conductance to each neighbour, siemens; overwritten by elimination
	excess []float64 // conductance to the reference, siemens
	l      []float64 // share of the pivot's current that goes to each neighbour
	d      []float64 // pivot: all conductance at the node when it is eliminated
}

func newFactor(p *pattern) *factor {
	n := len(p.pos)
	return &factor{p: p, a: make([]float64, len(p.col)), l: make([]float64, len(p.col)),
		excess: make([]float64, n), d: make([]float64, n)}
}

// clear empties the matrix before stamping.
func (f *factor) clear() {
	clear(f.a)
	clear(f.excess)
}

// run factorises what has been stamped. It returns -1, or the place of the
// first pivot that is not positive: then the matrix is not positive definite
// and the factorisation is not to be used.
func (f *factor) run() int {
	p, fill := f.p, 0
	for k := range f.d {
		start, end := int(p.rowStart[k]), int(p.rowStart[k+1])
		row, cols, lrow := f.a[start:end], p.col[start:end], f.l[start:end]
		sum, size := f.excess[k], math.Abs(f.excess[k])
		for _, g := range row {
			sum += g
			size += math.Abs(g)
		}
		if !(sum > 1e-13*size) {
			return k
		}
		f.d[k] = sum
		down := f.excess[k]
		for i, g := range row {
			share := g / sum
			lrow[i] = share
			f.excess[cols[i]] += share * down
			for _, h := range row[i+1:] {
				f.a[p.fillTo[fill]] += share * h
				fill++
			}
		}
	}
	return -1
}

// solve turns injected currents (by place) into voltages, in place.
func (f *factor) solve(b []float64) {
	p := f.p
	for k := range f.d {
		if b[k] == 0 {
			continue
		}
		for t := p.rowStart[k]; t < p.rowStart[k+1]; t++ {
			b[p.col[t]] += f.l[t] * b[k]
		}
	}
	for k := len(f.d) - 1; k >= 0; k-- {
		x := b[k] / f.d[k]
		for t := p.rowStart[k]; t < p.rowStart[k+1]; t++ {
			x += f.l[t] * b[p.col[t]]
		}
		b[k] = x
	}
}
