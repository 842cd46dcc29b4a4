package synth

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// Random writes a design that no builder would draw but that reads without
// problems: 5 to 60 parts, each fed by one or two of those before it, so that
// feeds part and meet again; long thin and short thick wires; every behaviour;
// relays whose coils hang anywhere; grounds behind grounds. It is for tests of
// the network solver, not for looking at. Voltages may sag, but total demand is
// kept where an operating point exists in nearly every case.
func Random(seed int64) []byte {
	r := &scatter{rng: rand.New(rand.NewPCG(uint64(seed), 0x5eed)), outs: []string{"battery"},
		backs: []string{"battery negative"}}
	r.grounds()
	for i, n := 0, 5+r.rng.IntN(56); i < n; i++ {
		r.part(i)
	}
	r.loads(2 + r.rng.IntN(12))
	return r.text()
}

// scatter collects the parts of a random design.
type scatter struct {
	rng      *rand.Rand
	outs     []string // what can feed
	backs    []string // what can take current back
	sections [7]strings.Builder
	loadList []string
	switches []string
}

// The sections in the order of the file.
const (
	inFuses = iota
	inRelays
	inBlocks
	inSwitches
	inLoads
	inGrounds
	inSplices
)

var scatterNames = [...]string{"fuses", "relays", "blocks", "switches", "loads", "grounds", "splices"}

func (r *scatter) put(section int, format string, args ...any) {
	fmt.Fprintf(&r.sections[section], "  "+format+"\n", args...)
}

// feed picks what feeds a part, two of them now and then.
func (r *scatter) feed() string {
	a := r.outs[r.rng.IntN(len(r.outs))]
	if b := r.outs[r.rng.IntN(len(r.outs))]; a != b && r.rng.IntN(4) == 0 {
		return "[" + a + ", " + b + "]"
	}
	return a
}

func (r *scatter) back() string { return r.backs[r.rng.IntN(len(r.backs))] }

// wire is one of any size and of up to six metres, of some lengths several side by side.
func (r *scatter) wire() string {
	sizes := []string{"0.75 mm²", "1 mm²", "1.5 mm²", "2.5 mm²", "4 mm²", "6 mm²", "10 mm²"}
	size, lengthMm, more := sizes[r.rng.IntN(len(sizes))], 50+r.rng.IntN(5950), ""
	if n := lengthMm % 32; n >= 2 && n <= 4 {
		more = fmt.Sprintf(", parallel: %d", n)
	}
	return fmt.Sprintf("{size: %s, length: %d mm%s}", size, lengthMm, more)
}

func (r *scatter) grounds() {
	for i := 0; i < 1+r.rng.IntN(4); i++ {
		name := fmt.Sprintf("g%d", i)
		if r.rng.IntN(2) == 0 {
			r.put(inGrounds, "%s: {kind: frame stud, frame resistance: %d mΩ}", name, 1+r.rng.IntN(20))
		} else {
			r.put(inGrounds, "%s: {kind: ground block, returns to: %s, wire: %s}", name, r.back(), r.wire())
		}
		r.backs = append(r.backs, name)
	}
}

// part adds one part that passes current on.
func (r *scatter) part(i int) {
	name := fmt.Sprintf("p%d", i)
	switch r.rng.IntN(5) {
	case 0:
		r.put(inFuses, "%s: {type: blade C, rating: %d A, fed by: %s, wire: %s}", name,
			[]int{3, 5, 10, 20, 30}[r.rng.IntN(5)], r.feed(), r.wire())
		r.outs = append(r.outs, name)
	case 1:
		r.put(inRelays, "%s: {form: mini changeover, fed by: %s, wire: %s, coil: {fed by: %s, wire: %s, "+
			"returns to: %s, return wire: %s, suppressed by: resistor}}", name, r.feed(), r.wire(), r.feed(), r.wire(),
			r.back(), r.wire())
		r.outs = append(r.outs, name+" 87", name+" 87a")
	case 2:
		r.put(inBlocks, "%s: {way limit: 30 A, total limit: 60 A, fed by: %s, wire: %s, ways: {1: {fuse: 10 A}, "+
			"2: {fuse: none}, 3: spare}}", name, r.feed(), r.wire())
		r.outs = append(r.outs, name+" 1", name+" 2")
	case 3:
		r.put(inSwitches, "%s: {rating: 20 A, fed by: %s, wire: %s}", name, r.feed(), r.wire())
		r.outs, r.switches = append(r.outs, name), append(r.switches, name)
	default:
		r.put(inSplices, "%s: {fed by: %s, wire: %s}", name, r.feed(), r.wire())
		r.outs = append(r.outs, name)
	}
}

func (r *scatter) loads(n int) {
	behaviours := []string{"resistor", "filament lamp", "constant power", "motor"}
	for i := 0; i < n; i++ {
		name := fmt.Sprintf("l%d", i)
		extra := ""
		if r.rng.IntN(4) == 0 {
			extra = ", own switch: yes, standby: 20 mA"
		}
		r.put(inLoads, "%s: {power: %d W, rated at: 12 V, behaves: %s%s, fed by: %s, wire: %s, returns to: %s, "+
			"return wire: %s}", name, 1+r.rng.IntN(30), behaviours[r.rng.IntN(4)], extra, r.feed(), r.wire(), r.back(),
			r.wire())
		r.loadList = append(r.loadList, name)
		if i%3 == 0 { // further ones may hang on it
			r.outs, r.backs = append(r.outs, name), append(r.backs, name)
		}
	}
}

func (r *scatter) text() []byte {
	var b strings.Builder
	b.WriteString("fusewright: 1\ntitle: Random network\nvehicle: none; written by a program for tests\n" +
		"system: 12 V\npractice: off-road\n\nbattery: {chemistry: AGM, capacity: 20 Ah}\n\n" +
		"charging:\n  regulated: 14.2 V\n  output: {1000 rpm: 9 A, 5000 rpm: 40 A}\n  idle: 1000 rpm\n  cruise: 5000 rpm\n")
	for i, name := range scatterNames {
		if r.sections[i].Len() > 0 {
			fmt.Fprintf(&b, "\n%s:\n%s", name, &r.sections[i])
		}
	}
	half := strings.Join(r.loadList[:len(r.loadList)/2], ", ")
	closed := strings.Join(r.switches[:len(r.switches)/2], ", ")
	fmt.Fprintf(&b, "\nsituations:\n  parked: {key: off}\n  halted: {key: on, on: [%s], closed: [%s]}\n"+
		"  idling: {key: on, engine: idle, on: all}\n  driving: {key: on, engine: cruise, on: [%[1]s]}\n", half, closed)
	return []byte(b.String())
}
