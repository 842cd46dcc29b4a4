package sizing

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// MostApart is how many sizes of a shop the feed and the return of a part may lie apart
// (common practice, no source). Where the ends keep one of them thin, the other gains
// little by more copper than that: a larger holder or a tail into it is the remedy.
const MostApart = 2

// besides are the slots of the other wire of each wire's part, where the two are chosen
// apart; -1 = none. Coils are left out: they take next to nothing.
func besides(slots []*slot) []int {
	at := map[home]int{}
	for i, x := range slots {
		if x.kind == WireSize {
			for _, y := range x.each() {
				at[y.home()] = i
			}
		}
	}
	list := slices.Repeat([]int{-1}, len(slots))
	for i, x := range slots {
		for _, y := range x.each() {
			if back, ok := at[home{owner: y.owner, role: circuit.ReturnWire}]; ok && x.kind == WireSize && y.role == circuit.FeedWire && back != i {
				list[i], list[back] = back, i
			}
		}
	}
	return list
}

// abreast takes from each wire the sizes that are further above the thickest of its
// part's other wire than MostApart, but the one that it needs by itself.
func (w *view) abreast(ok [][]int) {
	thickest := make([]*library.WireSize, len(ok))
	for i, list := range ok {
		if list != nil {
			thickest[i] = w.s.slots[i].sizes[list[len(list)-1]]
		}
	}
	for i, other := range w.s.beside {
		if other < 0 || ok[i] == nil || thickest[other] == nil {
			continue
		}
		most := someLargerMm2(w.s.slots[i].feeds[0].Wire.Type, thickest[other].AreaMm2)
		n := slices.IndexFunc(ok[i], func(z int) bool { return w.s.slots[i].sizes[z].AreaMm2 > most*1.001 })
		if n >= 0 {
			ok[i] = ok[i][:max(n, 1)]
		}
	}
}

// someLargerMm2 is the size of a shop that is MostApart larger than an area, or the largest.
func someLargerMm2(kind *library.WireType, mm2 float64) float64 {
	list := kind.ShopSizes()
	at := slices.IndexFunc(list, func(z *library.WireSize) bool { return z.AreaMm2 >= mm2*0.999 })
	if at < 0 || at+MostApart >= len(list) {
		return list[len(list)-1].AreaMm2
	}
	return list[at+MostApart].AreaMm2
}
