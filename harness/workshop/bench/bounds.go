package bench

import (
	"fmt"
	"math"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// What bounds rest on besides the circuit. All are common practice, no source,
// unless the constant says otherwise.
const (
	VehicleTolerance = 0.20 // of the machine's own loads
	ContactLow       = 0.5  // contacts and joints against their data sheet
	ContactHigh      = 2.0
	UsualDischarge   = 0.2 // charge taken out of the first battery, engine stopped
	MostDischarge    = 0.5
	FurtherUsual     = 0.1 // of further ones, which are charged and rested before
	FurtherMost      = 0.2

	// Meter errors: a share of the reading and a fixed part for the last digits
	// and the touch of the probes.
	VoltShare, VoltFixedV       = 0.005, 0.04 // of a difference of two readings
	DropShare, DropFixedV       = 0.005, 0.002
	ClampShare, ClampFixedA     = 0.025, 0.1
	SupplyShare, SupplyFixedA   = 0.02, 0.02
	StandbyShare, StandbyFixedA = 0.015, 20e-6
	OhmShare, OhmFixed          = 0.01, 0.2 // two wires, leads subtracted
	FineOhmShare, FineOhmFixed  = 0.01, 1e-4
)

// boundsText says once how the bounds are made; tolerances by the library's rows.
func (m *maker) boundsText() []string {
	var rows []string
	for _, r := range m.tol.Rows {
		if behaviour, ok := strings.CutPrefix(r.Name, "power of "); ok {
			rows = append(rows, behaviour+" "+quantity.Format(r.Value, quantity.Share))
		}
	}
	further := []string{"", ""}
	if m.d.HasBanks() {
		further = []string{", further ones nine tenths", ", further ones full and four fifths full"}
	}
	fans := ""
	if m.c.HasFans() {
		fans = " A motor behind a dropping resistor is taken as a fan or pump, which draws less as it turns slower (from memory)."
	}
	return []string{
		"Expected readings come from a solution of the circuit with wires at 20 °C and the battery four fifths full" + further[0] + ".",
		fmt.Sprintf("Worst cases: the minimum and maximum of eight more solutions, with loads at their tolerance either way, relay coils "+
			"at 10 %% either way, contacts and joints at half and at twice their data, wires and coils at 10 °C and at 35 °C or the heat of their place, the battery full and half empty%s "+
			"(common practice, no source), the regulator %s either way. The meter's error is added at both ends.",
			further[1], quantity.Format(m.tol.RegulatedV, quantity.Voltage)),
		"Tolerance of a load: what the design says, else by behaviour: " + wording.And(rows) + " (the library's rows; their sources are in the " +
			"dossier); the " + m.c.Design.Spoken().Noun + "'s own loads 20 % (common practice, no source)." + fans,
		"Volts are given as volts below the battery posts: take the battery reading of the same section, " +
			"subtract the reading, compare.",
	}
}

// The words for what a bound rests on.
const (
	basisVolts   = "volts: worst cases; 0.5 % and 40 mV for two readings (common practice, no source)"
	basisClamp   = "amperes: worst cases; 2.5 % and 0.1 A for a clamp (common practice, no source)"
	basisDrop    = "drops: worst cases; 0.5 % and 2 mV (common practice, no source)"
	basisStandby = "standby: worst cases; 1.5 % and 20 µA for a meter in series (common practice, no source)"
	basisSupply  = "amperes: worst cases of loads, coils, contacts and the volts of the supply; 2 % and 20 mA for the supply's own reading " +
		"(common practice, no source)"
	basisDead = "dead points: 0.3 V, which a meter of high resistance can pick up from wires beside it " +
		"(common practice, no source)"
)

// deadV is the most a dead point may show.
const deadV = 0.3

// spread is the nominal solution of a state with those at its corners.
type spread struct {
	opt     solve.Options // of nominal
	nominal *solve.Solution
	corners []*solve.Solution
}

// ok tells whether there are readings to give.
func (s spread) ok() bool { return s.nominal.Status == solve.Converged }

// of is a reading at the nominal point and the range of it over the corners.
func (s spread) of(value func(*solve.Solution) float64) (nominal, low, high float64) {
	nominal = value(s.nominal)
	low, high = nominal, nominal
	for _, c := range s.corners {
		if v := value(c); !math.IsNaN(v) {
			low, high = math.Min(low, v), math.Max(high, v)
		}
	}
	return nominal, low, high
}

// widen adds a meter's error to a range that cannot be below zero.
func widen(low, high, share, fixed float64) (float64, float64) {
	return math.Max(0, low-math.Abs(low)*share-fixed), high + math.Abs(high)*share + fixed
}

// situation solves a situation as it is nominally on a bench and at the
// corners of loads, contacts and source. Corners that do not converge are said.
func (m *maker) situation(s *design.Situation) spread {
	first := m.usual()
	m.onSupply(&first, 0)
	m.pulled(&first)
	out := spread{opt: first, nominal: m.plan.Network(s, first).Solution()}
	if !out.ok() {
		return out
	}
	failed, corners := 0, 8
	if m.taking {
		corners = 32
	}
	for corner := range corners {
		opt := m.corner(corner&1 != 0, corner&2 != 0)
		m.source(&opt, corner&4 != 0)
		if m.taking {
			m.drawnDown(&opt, corner&8 != 0, corner&16 != 0)
		}
		m.onSupply(&opt, map[bool]float64{false: -1, true: 1}[corner&4 != 0])
		m.pulled(&opt)
		if sol := m.plan.Network(s, opt).Solution(); sol.Status == solve.Converged {
			out.corners = append(out.corners, sol)
		} else {
			failed++
		}
	}
	if failed > 0 {
		m.missing = append(m.missing, s.Name+": "+wording.Count(failed, "worst case", "worst cases")+
			" of "+fmt.Sprint(corners)+" have no solution, so its bounds are too narrow.")
	}
	return out
}

// onSupply puts a supply of the regulated voltage across the posts, off by the
// tolerance of a regulator to one side.
func (m *maker) onSupply(opt *solve.Options, side float64) {
	if m.postsV > 0 {
		opt.NoCharging, opt.BatteryOhm = true, supplyOhm
		opt.BatteryV = m.postsV + side*m.tol.RegulatedV
	}
}

// corner is loads and contacts at one end each. Coils go with the loads: cold ones draw most.
func (m *maker) corner(heavy, worn bool) solve.Options {
	side := -1.0
	if heavy {
		side = 1
	}
	opt := solve.Options{ContactFactor: ContactLow,
		LoadFactor: func(b *circuit.Branch) float64 { return 1 + side*m.tolerance(b) },
		WireTempC:  func(*circuit.Wire) float64 { return benchLowC }}
	if worn {
		opt.ContactFactor = ContactHigh
		opt.WireTempC = func(w *circuit.Wire) float64 { return math.Max(w.AmbientC, benchHighC) }
	}
	coilC := map[bool]float64{false: benchHighC, true: benchLowC}[heavy]
	for _, b := range m.c.Branches {
		if b.Dropper() {
			opt.Changes = append(opt.Changes, solve.SetOhm(b, b.Ohm*(1-side*ResistorTolerance)))
		}
		if !b.OfCoil() {
			continue
		}
		ohm := b.Ohm * (1 - side*CoilTolerance)
		if b.IsCoil() { // of copper, what a resistor beside it is not
			ohm = conductor.AtTemperature(ohm, coilC)
		}
		opt.Changes = append(opt.Changes, solve.SetOhm(b, ohm))
	}
	return opt
}

// source sets the battery and regulator low or high.
func (m *maker) source(opt *solve.Options, high bool) {
	opt.ColdCharging = high
	opt.Discharged, opt.BanksDischarged = 0, 0
	if !high {
		opt.Discharged, opt.BanksDischarged = MostDischarge, FurtherMost
	}
	regulated := m.d.Charging.RegulatedV.Value
	switch {
	case regulated == 0:
	case high:
		opt.RegulatedV = regulated + m.tol.RegulatedV
	default:
		opt.RegulatedV = regulated - m.tol.RegulatedV
	}
}

// drawnDown sets how cold machines are and how far the batteries are drawn down, each for itself: the cold machine
// gives most into the emptiest battery, and least beside another whose regulator holds more.
func (m *maker) drawnDown(opt *solve.Options, cold, most bool) {
	opt.ColdCharging = cold
	opt.Discharged, opt.BanksDischarged = takingLeast, takingLeast
	if most {
		opt.Discharged, opt.BanksDischarged = takingMost, takingMost
	}
}

// tolerance is how far a load's power may be off, as a share: the design's word,
// else the library's row of its behaviour.
func (m *maker) tolerance(b *circuit.Branch) float64 {
	switch {
	case b.Load == nil:
		return 0
	case b.Load.Vehicle != nil:
		return VehicleTolerance
	case b.Load.Load != nil && b.Load.Load.Tolerance.Given():
		return b.Load.Load.Tolerance.Value
	}
	return m.tol.Power[b.Load.Behaves]
}
