package chart

import "slices"

// slot is a text that wants to stand at a place along a line.
type slot struct {
	want, size float64 // centre and length
	at         float64 // centre as set
}

// spread moves slots apart so that none overlap, each as near to where it wants
// to be as the others allow, all between low and high. It returns false when
// they do not fit. Neighbours that touch move as one block, the block to the
// mean of what its members want.
func spread(slots []*slot, low, high float64) bool {
	order := slices.Clone(slots)
	slices.SortStableFunc(order, func(a, b *slot) int {
		switch {
		case a.want < b.want:
			return -1
		case a.want > b.want:
			return 1
		}
		return 0
	})
	total := 0.0
	for _, s := range order {
		total += s.size
	}
	if total > high-low+1e-9 {
		return false
	}
	var blocks []block
	for i := range order {
		blocks = append(blocks, newBlock(order, i, 1, low, high))
		for n := len(blocks); n > 1 && blocks[n-2].end() > blocks[n-1].start+1e-9; n = len(blocks) {
			above, below := blocks[n-2], blocks[n-1]
			blocks = append(blocks[:n-2], newBlock(order, above.first, above.count+below.count, low, high))
		}
	}
	for _, b := range blocks {
		at := b.start
		for _, s := range order[b.first : b.first+b.count] {
			s.at = at + s.size/2
			at += s.size
		}
	}
	return true
}

// block is a run of touching slots.
type block struct {
	first, count int // places in the order
	start, size  float64
}

func newBlock(order []*slot, first, count int, low, high float64) block {
	b := block{first: first, count: count}
	mean := 0.0
	for _, s := range order[first : first+count] {
		// Where the block would start for this slot to get its wish.
		mean += s.want - s.size/2 - b.size
		b.size += s.size
	}
	b.start = max(low, min(mean/float64(count), high-b.size))
	return b
}

func (b block) end() float64 { return b.start + b.size }
