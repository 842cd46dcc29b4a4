package synth

import "fmt"

// station is one relay with its block and what hangs on it.
type station struct {
	id      string
	place   string
	spots   []string // places of its loads
	feed    string   // what feeds its relay
	trigger string   // what feeds its coil
	ground  string   // where its own ground goes
	wire    insulation
}

// plain writes a harness of a few wires: one fuse at the battery, and loads
// spliced to it.
func (g *generator) plain() {
	g.put("places", 0, "battery bay: {ambient: 40 °C}")
	g.put("places", 0, "dash: {ambient: 35 °C}")
	g.put("runs", 0, "- {name: main, from: battery bay, to: dash, length: %d mm, cover: braided sleeve}",
		g.between(300, 900, 50))
	g.put("grounds", 0, "frame stud: {kind: frame stud, at: dash}")
	g.put("fuses", 1, "main: {type: blade C, rating: 15 A, at: battery bay, fed by: battery, "+
		"wire: {size: 4 mm², length: 120 mm}}")
	s := &station{id: "dash", place: "dash", spots: []string{"dash"}, ground: "frame stud", wire: insulations[0]}
	feed, n := "main", 0
	for g.left >= 2 {
		n++
		if g.left == 3 || g.left >= 7 {
			feed = g.switched(s, n, feed, 15)
		}
		g.load(s, n, feed, 15, 4)
	}
}

// zones writes a harness of relays and blocks: for one station, straight from
// the battery; for more, in zones behind fuses of their own.
func (g *generator) zones() {
	g.put("places", 0, "battery bay: {ambient: 45 °C}")
	for zone := 1; g.left > 0; zone++ {
		if g.left < 2*stationWires {
			g.smallZone(zone)
		} else {
			g.zone(zone)
		}
	}
}

// smallZone is a station with its own fuse at the battery, of all wires left.
func (g *generator) smallZone(n int) {
	z := g.zonePlace(n)
	g.tap(z)
	g.put("fuses", 1, "%s main: {type: blade C, rating: 25 A, at: battery bay, fed by: battery, "+
		"wire: {size: 6 mm², length: 140 mm}}", z)
	g.station(z, 1, z+" trigger", z+" main", g.left)
}

// zone is a fuse at the battery, a block, and a station on each of its ways.
func (g *generator) zone(n int) {
	z := g.zonePlace(n)
	g.tap(z)
	g.put("fuses", 1, "%s main: {type: strip SF30, rating: 80 A, at: battery bay, fed by: battery, "+
		"wire: {size: 25 mm², length: 150 mm}}", z)
	ways := ""
	count := min(zoneStations, g.left/stationWires)
	for i := 1; i <= count; i++ {
		ways += fmt.Sprintf("%d: {fuse: 30 A, type: blade C}, ", i)
	}
	g.put("blocks", 1, "%s feeder: {way limit: 40 A, total limit: 150 A, at: %[1]s, fed by: %[1]s main, "+
		"wire: {size: 25 mm²}, ways: {%s%d: spare}}", z, ways, count+1)
	g.put("splices", 1, "%s key line: {at: %[1]s, fed by: %[1]s trigger, wire: {size: 1 mm², colour: VT}}", z)
	for i := 1; i <= count && g.left > 0; i++ {
		g.station(z, i, z+" key line", fmt.Sprintf("%s feeder %d", z, i), min(g.left, g.between(26, 34, 1)))
	}
}

// zonePlace makes the zone's place with its run from the battery and a stud.
func (g *generator) zonePlace(n int) string {
	z := fmt.Sprintf("zone%d", n)
	g.put("places", 0, "%s: {ambient: %d °C}", z, g.between(30, 50, 5))
	g.put("runs", 0, "- {name: %s trunk, from: battery bay, to: %[1]s, length: %d mm, cover: %s}", z,
		g.between(400, 1200, 50), g.pick("braided sleeve", "corrugated conduit"))
	g.put("grounds", 0, "%s stud: {kind: frame stud, at: %[1]s, frame resistance: 2 mΩ}", z)
	return z
}

// tap makes the zone's key-switched trigger with its own small fuse.
func (g *generator) tap(z string) {
	g.put("taps", 0, "%s key: {at: %[1]s, hot: key, fuse: 5 A, spare: 2 A, supervised: no}", z)
	g.put("fuses", 1, "%s trigger: {type: blade F, rating: 3 A, at: %[1]s, fed by: %[1]s key, "+
		"wire: {size: 1 mm², colour: VT}}", z)
}

// station is a relay, its block, and loads until its share of wires is used up.
func (g *generator) station(z string, n int, trigger, feed string, wires int) {
	if g.left-wires < plainBelow {
		wires = g.left // too few would be left over for another
	}
	until := g.left - wires
	s := &station{id: fmt.Sprintf("%s s%d", z, n), feed: feed, trigger: trigger,
		ground: z + " stud", wire: insulations[g.rng.IntN(len(insulations))]}
	g.stationPlaces(s, z)
	g.relay(s)
	g.block(s, until)
}

// stationPlaces puts a station at the end of a run of its own, with two spots
// for loads beyond it.
func (g *generator) stationPlaces(s *station, z string) {
	s.place = s.id
	g.put("places", 0, "%s: {ambient: %d °C, wet: %s}", s.place, g.between(25, 40, 5), g.pick("yes", "no"))
	g.put("runs", 0, "- {name: %s loom, from: %s, to: %[1]s, length: %[3]d mm, cover: corrugated conduit}", s.id, z,
		g.between(200, 700, 50))
	for _, side := range []string{"left", "right"} {
		spot := s.id + " " + side
		s.spots = append(s.spots, spot)
		g.put("places", 0, "%s: {ambient: %d °C}", spot, g.between(20, 40, 5))
		g.put("runs", 0, "- {name: %s loom, from: %s, to: %[1]s, length: %[3]d mm, flexes: %[4]s, cover: braided sleeve}",
			spot, s.place, g.between(200, 900, 50), g.pick("yes", "no", "no"))
	}
}

// relay puts in the relay and its coil, some with a switch before the coil, and
// the station's ground.
func (g *generator) relay(s *station) {
	trigger, back := s.trigger, s.id+" bar"
	if g.rng.IntN(4) == 0 {
		trigger = s.id + " arm"
		g.put("switches", 1, "%s: {type: handlebar switch, at: %s, fed by: %s, wire: {size: 1 mm², colour: VT}}",
			trigger, s.spots[0], s.trigger)
	}
	form := g.pick("mini make", "mini changeover")
	if g.systemV == 24 {
		form += " 24 V"
	}
	g.put("grounds", 1, "%s: {kind: ground block, at: %s, limit: 60 A, returns to: %s, wire: {size: 10 mm²}}", back,
		s.place, s.ground)
	g.put("relays", 3, "%s relay: {form: %s, at: %s, fed by: %s, wire: {size: 6 mm²}, coil: {fed by: %s, "+
		"wire: {size: 1 mm², colour: VT}, returns to: %s, return wire: {size: 1 mm²}, suppressed by: %s}}", s.id, form,
		s.place, s.feed, trigger, back, g.pick("resistor", "diode", "zener"))
	s.ground = back
}
