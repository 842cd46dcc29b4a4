// Package bundle is the heat of wires laid together: how hot each of them gets
// for good and in on-times, what each may carry beside the others, and whether
// the heat balance or a practice's factor governs.
//
// The wires that carry current are a cylinder with evenly spread heat in still
// air:
//
//	Q  = Σ I²·R(Tc)                     of the wires that count
//	Q  = π·D·[h·(Ts − Ta) + ε·σ·(Ts⁴ − Ta⁴)]   the balance of package conductor
//	M  = Ts + Q·[(1 − 1/m)/4πk + Rcover]       hottest place between the wires
//	Tc = M + I²·R(Tc)·T1                 T1 through the wire's own insulation
//	D  = dmax·√(m/0.75) from m = 2 on,   m = Σd²/dmax²
//
// With one wire m is 1, D its own diameter and M its surface: then the package
// gives what package conductor gives, to the last digits that either is good for.
//
// A wire counts as part of the cylinder only as far as its heat makes the others
// hotter than they were without it. So a wire without current counts neither as
// loaded nor as insulation, one with little current never lends its size as
// cooling, and more current in any wire never makes another one cooler. A wire
// that does not count takes the temperature between those that do.
//
// The model lies on the unsafe side of the aircraft curves where a fifth to two
// fifths of the wires are loaded (up to 14 % in current), of the grouping factors
// of VDE 0298-4 and NEC relative to one wire (up to 13 %; in amperes VDE is met
// within 7 %) and of the electronic-cable chart at 3 to 5 wires (16 %): there the
// practice's factor governs, by Governing. The marine steps allow more than the
// model once all wires are loaded (0.50, 0.50, 0.40 against 0.42, 0.33, 0.27 at 12,
// 24, 40 wires): there the model governs.
//
// A practice's factor is entered with the wires that carry current. The aircraft
// curves, which count idle wires too, are up to 14 % lower than what then governs;
// who wants them read so gives Governing all the wires of the bundle.
//
// In time a wire is three heat capacities on a line (network), which tend to the
// steady state and begin with the short-circuit formula of package conductor.
//
// Not modelled: the heat capacity of a cover, sun, wind, walls that are touched, bundles side by side, the
// length of a bundle and heat along the wires, jacketed cable with air inside, and
// pulsed wires of different cycles.
//
// Results are estimates for planning. Local codes, the makers' instructions and
// licensed practice come first.
package bundle
