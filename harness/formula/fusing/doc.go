// Package fusing is what overcurrent devices do: how soon and how late a fuse,
// breaker or PTC opens at a current, whether it opens before a wire is hurt,
// whether it carries its load and the load's start, and which of two in series
// opens first.
//
// All curves come from the library's opening-time bands; where nothing is
// published the result says so and the worst is assumed: no upper limit is
// "never opens" against a wire, no lower limit is "opens at once" against a
// load. No function panics.
//
// Results are estimates for planning from typical data: the makers' own curves
// and licensed practice come first.
package fusing
