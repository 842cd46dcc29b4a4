// Package conductor is the one place of wire formulas: resistance, voltage
// drop, the area a drop needs, the heat balance of an insulated wire in still
// air, the current a wire may carry by that balance and by the practices'
// tables, and how long a wire stands a current that is too high.
//
// Each formula's comment gives its equation, units, range and source. Inputs
// are SI with areas in mm², diameters in mm and temperatures in °C, as the
// standards print them. No function panics: an input without meaning (a
// negative length, an area of zero) gives zero or +Inf as the comment says.
//
// The package knows wire types and current tables of the library. It knows no
// design, no network and no fuse: package fusing compares fuses with wires.
//
// Results are estimates for planning. Local codes, the makers' instructions and
// licensed practice come first.
package conductor
