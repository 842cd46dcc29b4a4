package sizing

import "sort"

// ascending sorts by a figure and leaves equal ones in their order.
func ascending[T any](list []T, by func(T) float64) []T {
	sort.SliceStable(list, func(i, j int) bool { return by(list[i]) < by(list[j]) })
	return list
}
