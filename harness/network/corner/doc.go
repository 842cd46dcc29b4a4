// Package corner works out how far the figures of a design may be off: each
// situation is solved at nominal, with each tolerance of the library alone at its
// bound, and at three worst states, all with every load's power high and every
// place hotter whose ambient the design does not give: a given one is the highest
// that is expected, and a margin on it would be taken twice.
//
//   - Weak: the battery down to its reserve for starting, the regulated voltage
//     low, the charging system hot, contacts aged and fuses hot. The
//     worst for the voltage of loads, and for the current of those that keep
//     their power.
//   - High: battery full, regulated voltage high, the charging system still cold,
//     contacts aged and fuses hot.
//     The worst for the drop before a load that takes more at more volts.
//   - Fresh: as High with new contacts. The worst for its current.
//
// A corner figure is the worst of the three and of nominal. A likely figure is
// nominal with the deviations of one tolerance at a time (loads, contacts, places,
// source) combined by the root of the sum of their squares: independent tolerances
// are seldom all at their bounds (ISO/IEC Guide 98-3, 5.1.2, law of propagation,
// from memory). The loads' powers count as one tolerance, which is on the safe side. Wires are warm in
// all of them (package warm) and have the standard's maximum resistance at
// nominal too, since no less is known of them.
package corner
