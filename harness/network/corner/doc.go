// Package corner works out how far the figures of a design may be off: each
// situation is solved at nominal and at three worst states, all with every place
// hotter and every load's power high by the library's tolerances.
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
// A corner figure is the worst of the three and of nominal. Wires are warm in
// all of them (package warm) and have the standard's maximum resistance at
// nominal too, since no less is known of them.
package corner
