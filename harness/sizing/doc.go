// Package sizing chooses what a design leaves open: wire sizes, fuse types and
// ratings, relay forms, blocks, plugs, covers, crimp parts, chargers. Complete fills the
// choices into the design; Explain says of each which constraint decided it, what
// came second and why it lost, and of what no choice meets, what stands against
// mending it and which changes to the design would.
//
// What is allowed is judged by the rules alone: every candidate that counts is
// built, solved with warm wires, put through the fault and protection studies
// and through package rules, and only findings about sizes and ratings decide
// (see answersFor). The quick estimates of this package only say where to look.
//
// Among what is allowed the least cost wins, in grams of copper:
//
//	cost = copper of the wires chosen + thickerG for each doubling of their areas
//	over handyMm2 + distinctSizeG for each different wire size in the harness +
//	distinctTerminalG for each different crimp part + distinctPlugG for each
//	different connector family + plugGPerA for each ampere of a chosen family's
//	rating + fuseGPerA for each ampere of a chosen fuse's rating, fuseGPerKA for each
//	kiloampere that its type breaks, otherTypeG for a type that is not the usual one, unableG
//	for one that breaks less than a short at its place can drive and unableGPerA for each
//	ampere above unableA of such a one of another type
//
// What no cost outweighs: feed and return of a part lie at most MostApart sizes of a
// shop apart, and no wire is thinner than what hangs on it (see beforeFuses). A better
// insulation than the usual one is taken where the design leaves it open, the place is
// hot and it costs less than the copper (see insulated).
//
// The search first finds a good design: fuses from the loads upward, each wire
// the smallest that its own constraints let through, then voltage drop shared
// out within each set of stock sizes, then single changes. For designs with
// few open values it goes on: every combination that could be cheaper is listed
// by cost with bounds that never leave a good one out, and tried in that order
// until one passes. Then Plan.Proven is true; otherwise the result is the best
// that the heuristic found.
//
// Judging is what takes the time. Only what sizing mends is judged; what hangs on a
// kind of wire or fuse alone is worked out once a search (conductor.Rater.Kept),
// a verdict is looked at once, and moves in circuits that share nothing but what
// lies above them are judged in one pass (see try). BenchmarkExplain has the growth.
package sizing

// The trade between copper and variety, in grams of copper. They are common
// practice, no source: a further wire size is a further thing to order, to keep
// apart on the bench and to set the crimping tool for; a further crimp part a
// bag of them; a further connector family a bag of housings and seals for both
// halves; a smaller plug takes less room, and a smaller fuse protects more
// closely, which no copper outweighs: so many grams an ampere that a rating never
// grows for a thinner wire; a fuse that breaks more is a larger one with studs,
// and one of another than the usual type is to be kept in stock; one that does not break what
// a short drives where it stands is put up with where no other has about the rating, as every
// factory does, and the larger it is, the less. Thick wire is stiff, and its
// crimps are too large for small contacts: two sizes of a shop double an area at least, and
// more than one above what a wire asks for is not worth a size or a crimp part less. What is
// left over of the lengths bought does not count: it serves for repairs and the next job.
const (
	thickerG          = 90.0
	handyMm2          = 0.75 // no thinner wire is handier
	distinctSizeG     = 40.0 // the copper of four and a half metres of 1 mm²
	distinctTerminalG = 10.0
	distinctPlugG     = 20.0
	plugGPerA         = 0.5
	fuseGPerA         = 35.0
	fuseGPerKA        = 20.0
	otherTypeG        = 200.0
	unableG           = 300.0
	unableGPerA       = 1.0
	unableA           = 60.0
)

// A fuse below leastShopA is hard to come by, since the boxes of a shop begin with it: it counts as
// one of rareA, so that the next larger ones come first; and one of fewHaveA as one of fewHaveAsA, behind that of
// 5 A (common practice, no source).
const (
	leastShopA = 3.0
	rareA      = 3.5
	fewHaveA   = 4.0
	fewHaveAsA = 5.5
)

// copperGPerMm2M is the mass of a metre of 1 mm²: 8.89 g/cm³ (IEC 60028).
const copperGPerMm2M = 8.89
