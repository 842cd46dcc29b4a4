package ride_test

import (
	"context"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"sort"
	"strconv"
	"strings"
	"testing"
	"time"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/referencetest"
	"fusewright/harness/study/ride"
	"fusewright/library"
)

// TestAgainstNgspice runs rides as transients of the reference simulator, leg by
// leg: every wire, contact and load of the network, and the battery as a
// capacitor that holds the state of charge (1 V = full) and steers a source, its
// resistance and what it accepts, all written down anew from the library's rows.
// Each leg starts at the charge with which the simulator ended the one before, less what a start of the engine takes.
//
// Charge must agree within 5e-5 and the posts within 0.2 mV: the error that both
// allow in a time step, and the straight lines between the voltages at which the
// ride solves the network.
func TestAgainstNgspice(t *testing.T) {
	program := referencetest.Program(t, "ngspice")
	for _, name := range []string{"fen-runner.yaml", "reed-skiff.yaml"} {
		t.Run(name, func(t *testing.T) { compareTransient(t, program, name) })
	}
}

// marsh is a ride of the boat.
const marsh = `rides:
  day:
    start charge: 90 %
    legs:
      - {lasts: 20 min, engine: idle, on: [bow lamps, mast lamp, deck wash, plotter], ambient: 8 °C}
      - {lasts: 30 min, engine: cruise, on: [bow lamps, plotter, radio], ambient: 8 °C}
      - {lasts: 60 min, key: on, on: [work light, mast lamp], ambient: 30 °C}
      - {lasts: 30 min, key: off}
      - {lasts: 15 min, engine: 2000 rpm, on: [plotter, deck wash], ambient: 25 °C}
`

func compareTransient(t *testing.T, program, name string) {
	rides := day
	if name == "reed-skiff.yaml" {
		rides = marsh
	}
	c := demo(t, name, rides)
	r := simulate(t, c, ride.Options{})
	worstV, worstQ, compared := 0.0, 0.0, 0
	charge := r.Ride.StartCharge.Value
	for i, l := range r.Legs {
		charge -= l.StartAh / c.Design.Battery.CapacityAh.Value
		times, columns := transient(t, program, netlist(c, l, []float64{charge}, pointsOf(r, i)[0].BusV), "v(n1)", "v(q)")
		volts, charges := columns[0], columns[1]
		charge = charges[len(charges)-1]
		for _, p := range pointsOf(r, i) {
			compared++
			worstV = math.Max(worstV, math.Abs(between(times, volts, p.TimeS-l.FromS)-p.BusV))
			worstQ = math.Max(worstQ, math.Abs(between(times, charges, p.TimeS-l.FromS)-p.Charge))
		}
	}
	t.Logf("%d moments: charge within %.2g, posts within %.2g V", compared, worstQ, worstV)
	if compared < 100 || !(worstV <= 2e-4) || !(worstQ <= 5e-5) {
		t.Errorf("%d moments: charge within %.2g (5e-5 allowed), posts within %.2g V (0.2 mV allowed)", compared, worstQ, worstV)
	}
}

// three are a start battery, a house battery that a cable joins to it, and a bow battery of lithium behind a diode.
const three = `fusewright: 1
title: three batteries
system: 12 V
practice: camper
battery: {chemistry: AGM, capacity: 80 Ah, rate: 20 h, resistance: 4 mΩ, at: tray}
charging: {regulated: 14.4 V, output: {900 rpm: 30 A, 2000 rpm: 60 A}, idle: 900 rpm, cruise: 2000 rpm, hot derating: 0 %}
places: {tray: {ambient: 25 °C}}
wire: {size: 16 mm², slack: 2 m}
batteries:
  house: {chemistry: AGM, capacity: 100 Ah, rate: 20 h, resistance: 5 mΩ, at: tray, fed by: link}
  bow: {chemistry: LiFePO4, capacity: 60 Ah, resistance: 6 mΩ, at: tray, fed by: one way}
fuses: {link: {type: class T, rating: 110 A, at: tray, fed by: battery}}
diodes: {one way: {type: diode isolator 70 A, at: tray, fed by: battery}}
loads:
  cabin: {power: 96 W, rated at: 12 V, behaves: constant power, symbol: LED, at: tray, own switch: yes, fed by: house, returns to: battery negative}
  thruster: {power: 60 W, rated at: 12 V, behaves: motor, at: tray, own switch: yes, fed by: bow, returns to: battery negative}
  lamp: {power: 55 W, rated at: 12 V, behaves: filament lamp, at: tray, own switch: yes, fed by: battery, returns to: battery negative}
rides:
  day: {start charge: 80 %, charge: {house: 60 %, bow: 50 %}, legs: [LEGS]}
`

// TestSeveralBatteriesAgainstNgspice is the same with further batteries, which feed and charge each other.
func TestSeveralBatteriesAgainstNgspice(t *testing.T) {
	program := referencetest.Program(t, "ngspice")
	c := build(t, strings.Replace(three, "LEGS", "{lasts: 40 min, engine: idle, on: [lamp, thruster], ambient: 10 °C}, {lasts: 1 h, engine: cruise, on: [lamp, cabin], ambient: 10 °C}, "+
		"{lasts: 2 h, key: off, on: [cabin], ambient: 20 °C}, {lasts: 30 min, key: on, on: [lamp, cabin, thruster], ambient: 20 °C}, {lasts: 20 min, engine: cruise, on: []}", 1))
	r := simulate(t, c, ride.Options{})
	asked, charges := []string{"v(n1)", "v(q)"}, []float64{r.Ride.StartCharge.Value}
	for _, b := range c.Branches {
		if b.Kind == circuit.BatteryBranch && b.A != c.Positive() {
			asked = append(asked, fmt.Sprintf("v(%s)", nodeName(b.A)), fmt.Sprintf("v(q%d)", len(charges)))
			charges = append(charges, r.Ride.Charge[b.Part.Source.(*design.Bank)])
		}
	}
	worstV, worstQ, compared := 0.0, 0.0, 0
	for i, l := range r.Legs {
		charges[0] -= l.StartAh / c.Design.Battery.CapacityAh.Value
		times, columns := transient(t, program, netlist(c, l, charges, pointsOf(r, i)[0].BusV), asked...)
		for k := range charges {
			charges[k] = columns[2*k+1][len(times)-1]
		}
		for _, p := range pointsOf(r, i) {
			compared++
			have := []float64{p.BusV, p.Charge}
			for _, b := range p.Banks {
				have = append(have, b.V, b.Charge)
			}
			for k := range charges {
				worstV = math.Max(worstV, math.Abs(between(times, columns[2*k], p.TimeS-l.FromS)-have[2*k]))
				worstQ = math.Max(worstQ, math.Abs(between(times, columns[2*k+1], p.TimeS-l.FromS)-have[2*k+1]))
			}
		}
	}
	t.Logf("%d moments: charges within %.2g, posts within %.2g V", compared, worstQ, worstV)
	if compared < 100 || !(worstV <= 2e-4) || !(worstQ <= 5e-5) {
		t.Errorf("%d moments: charges within %.2g (5e-5 allowed), posts within %.2g V (0.2 mV allowed)", compared, worstQ, worstV)
	}
}

// pointsOf are the moments of one leg.
func pointsOf(r *ride.Result, leg int) []ride.Point {
	from := 0
	for i := 1; i < len(r.Points) && leg > 0; i++ {
		if r.Points[i].TimeS == r.Points[i-1].TimeS { // a leg ends and the next begins
			leg--
			from = i
		}
	}
	to := from + 1
	for to < len(r.Points) && r.Points[to].TimeS > r.Points[to-1].TimeS {
		to++
	}
	return r.Points[from:to]
}

func between(x, y []float64, at float64) float64 {
	i := min(max(sort.SearchFloat64s(x, at), 1), len(x)-1)
	return y[i-1] + (y[i]-y[i-1])*(at-x[i-1])/(x[i]-x[i-1])
}

// transient runs the netlist and reads the time and what is asked for.
func transient(t *testing.T, program, text string, asked ...string) (times []float64, columns [][]float64) {
	t.Helper()
	columns = make([][]float64, len(asked))
	dir := t.TempDir()
	data := filepath.Join(dir, "out.txt")
	file := filepath.Join(dir, "ride.cir")
	text += fmt.Sprintf(".control\nrun\nset wr_singlescale\nwrdata %s %s\nquit\n.endc\n.end\n", data, strings.Join(asked, " "))
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	// A simulator that finds no way forward may turn for ever: it is stopped and
	// the case fails.
	ctx, stop := context.WithTimeout(context.Background(), 2*time.Minute)
	defer stop()
	said, err := exec.CommandContext(ctx, program, "-b", "-n", file).CombinedOutput()
	raw, readErr := os.ReadFile(data)
	if readErr != nil {
		t.Fatalf("ngspice wrote nothing (%v):\n%s", err, said)
	}
	for line := range strings.Lines(string(raw)) {
		f := strings.Fields(line)
		if len(f) < len(asked)+1 {
			continue
		}
		for k := range len(asked) + 1 {
			x, err := strconv.ParseFloat(f[k], 64)
			if err != nil {
				t.Fatal(err)
			}
			if k == 0 {
				times = append(times, x)
			} else {
				columns[k-1] = append(columns[k-1], x)
			}
		}
	}
	if len(times) < 50 || times[len(times)-1] < 60 {
		t.Fatalf("ngspice gave up:\n%s", said)
	}
	return times, columns
}

// netlist is one leg from a state of charge on, of the first battery and of further ones. The simulator's search for its
// operating point starts near a voltage of the posts.
func netlist(c *circuit.Circuit, l *ride.Leg, charges []float64, nearV float64) string {
	d := &strings.Builder{}
	length := l.ToS - l.FromS
	fmt.Fprintf(d, "leg\n.options reltol=1e-6 abstol=1e-9 vntol=1e-7 itl4=100\n.tran %.6g %.6g 0 %.6g\n",
		length/500, length, length/500)
	at := &design.Situation{Key: l.Leg.Key, EngineRPM: l.Leg.EngineRPM, On: l.Leg.On}
	sol := solve.Solve(c, at, solve.Options{BatteryV: nearV, BatteryOhm: 1e-6, NoCharging: true})
	present := circuit.Present(c, at)
	for i, v := range sol.NodeV {
		if i > 0 {
			fmt.Fprintf(d, "Rleak%d n%d 0 1e9\n", i, i)
			if !math.IsNaN(v) {
				fmt.Fprintf(d, ".nodeset v(n%d)=%.9g\n", i, v)
			}
		}
	}
	warmth(d, c.Design, l)
	further := 0
	for i, b := range c.Branches {
		a, z := nodeName(b.A), nodeName(b.B)
		switch {
		case b.Kind == circuit.BatteryBranch && b.A == c.Positive():
			store(d, &c.Design.Battery, "", a, z, charges[0])
		case b.Kind == circuit.BatteryBranch:
			further++
			store(d, &b.Part.Source.(*design.Bank).Store, fmt.Sprint(further), a, z, charges[further])
		case b.Kind == circuit.DiodeBranch:
			x := b.Diode.Type
			fmt.Fprintf(d, "B%[1]d %[2]s %[3]s I=v(%[2]s,%[3]s)>%[4]g ? %.12[5]g+(v(%[2]s,%[3]s)-%[4]g)/%.12[6]g : v(%[2]s,%[3]s)/%.12[7]g\n",
				i, a, z, x.KneeV, x.KneeV/x.LeakOhm(), b.Ohm, x.LeakOhm())
		case b.Kind == circuit.ChargerBranch && engineRuns(l.Leg):
			fmt.Fprintf(d, "Bcharge n1 0 I=-min(max((%.9g-v(n1))/%.9g,0),%.12g)\n", c.Design.Charging.RegulatedV.Value,
				b.Ohm, charging.OutputA(c.Design, l.Leg.EngineRPM))
		case b.Kind == circuit.LoadBranch && present[i]:
			fmt.Fprintf(d, "B%d %s %s I=%s\n", i, a, z, loadLaw(b.Load, "abs(v("+a+","+z+"))"))
		case b.Kind == circuit.ContactBranch && !sol.Closed[i],
			b.Kind == circuit.ChargerBranch, b.Kind == circuit.LoadBranch:
		default:
			fmt.Fprintf(d, "R%d %s %s %.9g\n", i, a, z, math.Max(b.Ohm, 1e-6))
		}
	}
	return d.String()
}

func engineRuns(l *design.Leg) bool { return l.Key == design.KeyOn && l.EngineRPM > 0 }

func nodeName(n *circuit.Node) string {
	if n.Index == 0 {
		return "0"
	}
	return fmt.Sprintf("n%d", n.Index)
}

// loadLaw writes a load's current at a voltage v, duty averaged.
func loadLaw(l *circuit.LoadSpec, v string) string {
	duty := l.Duty
	if duty <= 0 || l.Standby {
		duty = 1
	}
	p, rated := l.PowerW*duty, l.RatedV
	fold := func(edge, above float64, law string) string {
		return fmt.Sprintf("%s>%.9g ? %s : %s*%.12g", v, edge, law, v, above/edge)
	}
	switch {
	case !(p > 0) || !(rated > 0):
		return "0"
	case l.Standby:
		return fold(0.2*rated, p/rated, fmt.Sprintf("%.12g", p/rated))
	case l.Behaves == design.FilamentLamp:
		edge := solve.LampEdge * rated
		return fold(edge, p/rated*math.Pow(solve.LampEdge, solve.LampExponent),
			fmt.Sprintf("%.12g*pow(%s/%.9g,%.9g)", p/rated, v, rated, solve.LampExponent))
	case l.Behaves == design.ConstantPower:
		edge := solve.PowerFold * rated
		return fold(edge, p/edge, fmt.Sprintf("%.12g/%s", p, v))
	case l.Behaves == design.Motor:
		return fold(solve.TorqueEdge*rated, p/rated, fmt.Sprintf("%.12g", p/rated))
	}
	return fmt.Sprintf("%s*%.12g", v, p/(rated*rated))
}

// warmth writes the temperature of all batteries, which follow the air as the first one does.
func warmth(d *strings.Builder, of *design.Design, l *ride.Leg) {
	fmt.Fprintf(d, "Bwarm warm 0 V=%.9g+%.9g*exp(-time/%.9g)\n", l.AmbientC, l.BatteryC-l.AmbientC, battery.Of(of).LagS())
}

// store writes a battery between two nodes from the library's rows, and not by package battery,
// but for its resistance when full and the time with which it follows the air. Its nodes and elements end in x.
func store(d *strings.Builder, of *design.Battery, x, plus, minus string, charge float64) {
	chem, ah, hours := of.Chemistry, of.CapacityAh.Value, of.RateH.Or(of.Chemistry.RatedH)
	rest, accepts := "", ""
	for _, row := range chem.OpenCircuit {
		rest += fmt.Sprintf(",%.9g,%.9g", row.Charge, row.Volts)
	}
	for _, row := range acceptanceRows(chem) {
		accepts += fmt.Sprintf(",%.9g,%.9g", row.Charge, math.Log(row.Share))
	}
	full := battery.New(of, 12).Ohm(1, 25)
	put := func(format string, numbers ...any) {
		fmt.Fprintf(d, strings.NewReplacer("@", x, "POSTS", "v("+plus+","+minus+")", "PLUS", plus, "MINUS", minus).Replace(format)+"\n", numbers...)
	}
	put("Bcold@ cold@ 0 V=pow(%.9g,max(25-v(warm),0)/43)", chem.ColdOhmRatio)
	put("Bmost@ most@ 0 V=%.12g/v(cold@)", ah*chem.ChargeShare)
	put("Brest@ emf@ 0 V=pwl(v(q@)%s)+(v(warm)-25)*%.9g", rest, chem.OpenCircuitVPerC)
	put("Bin@ rin@ 0 V=%.12g*min((1+%.9g*(1-v(q@)))*v(cold@),10)", full, chem.EmptyOhmRatio-1)
	put("Btake@ take@ 0 V=min(%.12g/v(cold@)*exp(pwl(v(q@)%s)),v(most@))", ah, accepts)
	put("Brch@ rch@ 0 V=max(max(14.4-v(emf@),0.1)/v(take@),v(rin@))")
	// Out of the battery, negative = charging, as a voltage to be used twice.
	put("Bamps@ amps@ 0 V=POSTS<=v(emf@) ? (v(emf@)-POSTS)/v(rin@) : -min((POSTS-v(emf@))/v(rch@),v(most@))")
	put("Bbat@ MINUS PLUS I=v(amps@)")
	put("Cq@ q@ 0 %.12g", ah*3600)
	put(".ic v(q@)=%.12g", charge)
	put("Btaken@ q@ 0 I=v(amps@)>0 ? v(amps@)*pow(max(v(amps@)*%.12g,1),%.9g) : v(amps@)*%.9g", hours/ah, chem.Peukert-1, chem.ChargeEfficiency)
	leak := -math.Log(1-chem.SelfDischarge) / (30 * 24) * ah
	put("Bleak@ q@ 0 I=v(q@)*%.12g*pow(2,(v(warm)-20)/10)", leak)
}

// acceptanceRows holds the first row towards empty.
func acceptanceRows(chem *library.Chemistry) []library.AcceptedAt {
	first := chem.Acceptance[0]
	return append([]library.AcceptedAt{{Charge: -1, Share: first.Share}}, chem.Acceptance...)
}
