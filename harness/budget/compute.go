package budget

import (
	"math"

	"fusewright/harness/charging"
	"fusewright/harness/circuit"
	"fusewright/harness/design"
	"fusewright/harness/quantity"
	"fusewright/harness/solve"
)

// Compute makes the balance of every situation with the key on, and the drain
// with the key off. Demand is counted at the regulated voltage, duty included:
// what the charging system must give for the battery to be left in peace. A
// situation that did not converge gives a line without numbers.
func Compute(c *circuit.Circuit, sols []*solve.Solution) *Budget {
	d := c.Design
	b := &Budget{VehicleA: vehicleA(c), Output: outputCurve(d)}
	for _, s := range sols {
		if s.Situation.Key == design.KeyOn {
			b.Lines = append(b.Lines, lineOf(s))
		}
	}
	b.StandbyA = drainA(Parked(c, sols))
	b.StandbyDays = StandbyDays(d, b.StandbyA)
	return b
}

// OutputBasis says in words what the output counts with.
func OutputBasis(d *design.Design) string {
	switch h := d.Charging.HotDerating; {
	case !d.Charging.Present():
		return "The design gives no charging output."
	case h.Given():
		return "Output is for the engine speed named, less " + quantity.Plain(h.Value, quantity.Share) + " hot derating."
	}
	return "Output is for the engine speed named, as stated: the design gives no hot derating, and a hot generator " +
		"may give less."
}

// curveSteps is how finely the output curve is drawn between two points.
const curveSteps = 8

// outputCurve is the charging output with hot derating.
func outputCurve(d *design.Design) []Point {
	var curve []Point
	rpm, amps := charging.New(d.Charging.Output).Points(curveSteps)
	for i := range rpm {
		curve = append(curve, Point{rpm[i], amps[i] * charging.HotShare(&d.Charging)})
	}
	return curve
}

// lineOf is the balance of one situation.
func lineOf(s *solve.Solution) *Line {
	d := s.Circuit.Design
	l := &Line{Situation: s.Situation, OutputA: charging.HotA(d, s.Situation.EngineRPM),
		Usable: s.Status == solve.Converged, BreakEvenRPM: math.NaN(), BatteryHours: math.Inf(1)}
	if !l.Usable {
		nan := math.NaN()
		l.VehicleA, l.AccessoryA, l.SpareA, l.BatteryHours = nan, nan, nan, nan
		return l
	}
	l.VehicleA, l.AccessoryA = demandA(s)
	demand := l.VehicleA + l.AccessoryA
	l.SpareA = l.OutputA - demand
	l.BreakEvenRPM = charging.BreakEven(d, demand)
	l.evenAtIdle = l.BreakEvenRPM == charging.BreakEven(d, 0)
	if l.SpareA < 0 {
		l.BatteryHours = hoursCovered(d, -l.SpareA)
	}
	return l
}

// demandA is the average current of the vehicle's loads and of the accessories
// (coils included) in a solution, brought to the regulated voltage when the
// engine runs.
func demandA(s *solve.Solution) (vehicle, accessory float64) {
	scale := 1.0
	if v := busV(s); s.Situation.EngineRPM > 0 && v > 0 {
		scale = s.Circuit.Design.Charging.RegulatedV.Or(v) / v
	}
	for _, b := range s.Circuit.Branches {
		a := s.BranchA[b.Index]
		if math.IsNaN(a) {
			continue
		}
		switch {
		case b.Load != nil && b.Load.Vehicle != nil:
			vehicle += a * solve.AtVoltage(b.Load.Behaves, scale)
		case b.Load != nil:
			accessory += a * solve.AtVoltage(b.Load.Behaves, scale) * dutyOf(b.Load)
		case isCoil(b):
			accessory += a * scale
		}
	}
	return vehicle, accessory
}

// busV is the voltage at the battery's posts.
func busV(s *solve.Solution) float64 {
	return s.NodeV[s.Circuit.Positive().Index] - s.NodeV[s.Circuit.Negative().Index]
}

// dutyOf is the share of the time an accessory draws. The vehicle's duty is
// already in the solution.
func dutyOf(l *circuit.LoadSpec) float64 {
	if l.Duty > 0 {
		return l.Duty
	}
	return 1
}

// isCoil tells whether a branch is a relay's coil or its suppressor.
func isCoil(b *circuit.Branch) bool {
	return b.Kind == circuit.ResistorBranch && b.Part != nil && b.Part.Kind == circuit.Relay
}

// vehicleA is what the vehicle's own loads draw with the engine running, duty
// counted, at the regulated voltage.
func vehicleA(c *circuit.Circuit) float64 {
	d := c.Design
	v := d.Charging.RegulatedV.Or(d.NominalV())
	sum := 0.0
	for _, l := range d.VehicleLoads {
		a := l.CurrentA.Value
		if l.PowerW.Given() {
			a = l.PowerW.Value / v
		}
		sum += a * l.Duty.Or(1)
	}
	return sum
}

// OutputA is the hot output of the charging system at an engine speed (rpm).
func OutputA(d *design.Design, rpm float64) float64 { return charging.HotA(d, rpm) }
