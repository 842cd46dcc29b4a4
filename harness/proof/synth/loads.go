package synth

import (
	"fmt"
	"strings"

	"fusewright/library"
)

// insulation is a wire type with its sizes for the fuses of block ways.
type insulation struct{ name string }

var insulations = []insulation{{"ISO 6722 thin wall class C"}, {"ISO 6722 thin wall class B"},
	{"SAE J1128 TXL"}, {"SAE J1128 GXL"}, {"tinned marine 105 °C AWG"}}

// size is the label of the type's smallest size of an area or more.
func (i insulation) size(areaMm2 float64) string {
	return library.Default().WireType(i.name).SizeFor(areaMm2).Label
}

// wire writes a wire of the type.
func (i insulation) wire(areaMm2 float64, colour string) string {
	return fmt.Sprintf("{insulation: %s, size: %s, colour: %s}", i.name, i.size(areaMm2), colour)
}

// wayFuses are the fuses of block ways and the copper laid behind each: what a
// builder takes for short bundles, with room to spare.
var wayFuses = []struct{ ratingA, areaMm2 float64 }{{3, 1}, {5, 1}, {7.5, 2}, {10, 2.5}, {15, 4.6}}

// kinds are the loads that occur: behaviour, sign, power on a small vehicle.
var kinds = []struct {
	name, behaves, sign string
	watts               float64
	extra               string
}{
	{"lamp", "constant power", "LED", 18, ", minimum voltage: 9 V, tolerance: 10 %"},
	{"bulb", "filament lamp", "lamp", 21, ", inrush: {peak: 8, time: 3 ms}"},
	{"heater", "resistor", "heater", 36, ", tolerance: 10 %"},
	{"pump", "motor", "pump", 30, ", duty: 20 %, inrush: {peak: 3, time: 100 ms}"},
	{"fan", "motor", "motor", 24, ", duty: 50 %, inrush: {peak: 3, time: 150 ms}"},
	{"display", "constant power", "electronics", 8, ", critical: yes, minimum voltage: 9 V, polarised: yes"},
	{"probe", "resistor", "sensor", 2, ""},
	{"charger", "constant power", "socket", 15, ", own switch: yes, standby: 5 mA"},
	{"beacon", "filament lamp", "lamp", 5, ", own switch: yes"},
}

// block puts in the station's block and loads on its ways until the number of
// wires left comes down to until.
func (g *generator) block(s *station, until int) {
	g.left-- // the wire that feeds the block, written below
	var ways []string
	number := 0
	for g.left > until {
		number++
		fuse := wayFuses[1+g.rng.IntN(len(wayFuses)-1)]
		ways = append(ways, fmt.Sprintf("%d: {fuse: %g A, type: blade F}", number, fuse.ratingA))
		g.way(s, number, fuse.ratingA, fuse.areaMm2, until)
	}
	if number < 6 {
		ways = append(ways, fmt.Sprintf("%d: spare", number+1))
	}
	g.put("blocks", 0, "%s: {way limit: 20 A, total limit: 60 A, at: %s, fed by: %[1]s relay, "+
		"wire: {size: 6 mm²}, ways: {%[3]s}}", s.id, s.place, strings.Join(ways, ", "))
}

// way hangs one of several arrangements on a way: a load, a load or two behind
// a switch, or two or three loads behind a splice.
func (g *generator) way(s *station, number int, fuseA, areaMm2 float64, until int) {
	feed := fmt.Sprintf("%s %d", s.id, number)
	budget := g.left - until
	n := number * 10
	loads := 1
	switch {
	case budget == 2:
	case budget == 3 || (budget >= 5 && g.rng.IntN(3) == 0):
		feed = g.switched(s, n, feed, fuseA)
	case budget >= 7 && g.rng.IntN(2) == 0:
		feed, loads = g.spliced(s, n, feed, areaMm2), 2
	case budget == 1: // no load fits: a splice for later
		g.spliced(s, n, feed, areaMm2)
		return
	}
	for i := 0; i < loads; i++ {
		g.load(s, n+i, feed, fuseA/float64(loads), areaMm2)
	}
	if g.left-until == 1 { // use up the odd wire
		g.spliced(s, n+9, feed, areaMm2)
	}
}

// switched puts a switch after a feed and gives its name.
func (g *generator) switched(s *station, n int, feed string, fuseA float64) string {
	name := fmt.Sprintf("%s sw%d", s.id, n)
	area := 1.5
	for _, f := range wayFuses {
		if f.ratingA == fuseA {
			area = f.areaMm2
		}
	}
	g.put("switches", 1, "%s: {rating: %g A, at: %s, fed by: %s, wire: %s}", name, 2*fuseA, g.spot(s), feed,
		s.wire.wire(area, g.pick("YE", "OG", "BU", "GNYE")))
	return name
}

// spliced puts a splice after a feed and gives its name.
func (g *generator) spliced(s *station, n int, feed string, areaMm2 float64) string {
	name := fmt.Sprintf("%s sp%d", s.id, n)
	g.put("splices", 1, "%s: {at: %s, fed by: %s, wire: %s}", name, g.spot(s), feed,
		s.wire.wire(max(areaMm2, 1), "RD"))
	return name
}

// load puts in a load that takes less than its share of the fuse.
func (g *generator) load(s *station, n int, feed string, fuseA, areaMm2 float64) {
	k := kinds[g.rng.IntN(len(kinds))]
	name := fmt.Sprintf("%s %s%d", s.id, k.name, n)
	watts := k.watts * g.share * (0.8 + 0.4*g.rng.Float64())
	watts = max(0.5, min(watts, 0.25*fuseA*g.systemV))
	ratedV := g.systemV * 1.1
	g.loadA += watts / ratedV
	back := s.ground
	area := max(areaMm2, 1)
	wire := s.wire.wire(area, g.pick("RD", "RDWH", "OG", "BN", "YE", "PK"))
	g.put("loads", 2, "%s: {power: %.1f W, rated at: %.1f V, behaves: %s, symbol: %s%s, at: %s, fed by: %s, "+
		"wire: %s, returns to: %s, return wire: %s}", name, watts, ratedV, k.behaves, k.sign, k.extra, g.spot(s), feed,
		wire, back, s.wire.wire(area, "BK"))
	g.loadNames = append(g.loadNames, name)
}

func (g *generator) spot(s *station) string { return s.spots[g.rng.IntN(len(s.spots))] }
