package placement

// passes is the most rounds of exchanges; each round costs about the square of
// the wires of a column, and few drawings need more than three.
const passes = 8

// transpose exchanges neighbours in a column where that takes crossings away,
// or, at the same number of crossings, brings them into the order given. The
// engine's own rounds can end before such an exchange.
func transpose(columns [][]int, nodes []Node, edges []Edge) {
	left, right := make([][]link, len(nodes)), make([][]link, len(nodes))
	for _, e := range edges {
		right[e.From] = append(right[e.From], link{e.Out, e.To, e.In})
		left[e.To] = append(left[e.To], link{e.In, e.From, e.Out})
	}
	place := make([]int, len(nodes))
	for _, list := range columns {
		for k, i := range list {
			place[i] = k
		}
	}
	for range passes {
		changed := false
		for _, list := range columns {
			for k := 1; k < len(list); k++ {
				a, b := list[k-1], list[k]
				now := crossed(left[a], left[b], place) + crossed(right[a], right[b], place)
				then := crossed(left[b], left[a], place) + crossed(right[b], right[a], place)
				if then < now || then == now && b < a {
					list[k-1], list[k] = b, a
					place[a], place[b] = k, k-1
					changed = true
				}
			}
		}
		if !changed {
			return
		}
	}
}

// link is one wire seen from a node: its own point, the other node, and the
// point there.
type link struct{ own, node, point int }

// crossed counts the pairs of wires that cross when the first node stands above
// the second.
func crossed(upper, lower []link, place []int) (n int) {
	for _, u := range upper {
		for _, l := range lower {
			switch {
			case place[u.node] > place[l.node]:
				n++
			case u.node == l.node && u.point > l.point:
				n++
			}
		}
	}
	return n
}
