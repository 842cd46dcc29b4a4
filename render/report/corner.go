package report

import (
	"math"
	"slices"

	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
)

// CornerReport is the worst of each figure over the situations, at nominal and at
// its worst corner, with what it is held against.
type CornerReport struct {
	Tolerances []CornerTolerance `json:"tolerances"`
	Loads      []CornerLoad      `json:"loads"`
	Wires      []CornerWire      `json:"wires"`
	Fuses      []CornerFuse      `json:"fuses"`
	// Unsettled says which situations in which state have no operating point, or
	// no steady wire temperatures.
	Unsettled []string `json:"unsettled,omitempty"`
}

// CornerTolerance is a tolerance that the corners rest on.
type CornerTolerance struct {
	Name   string   `json:"name"`
	Value  *float64 `json:"value"`
	Unit   string   `json:"unit"`
	Source string   `json:"source"`
}

// CornerFigure is a figure in the situation in which its corner is worst.
type CornerFigure struct {
	Nominal   *float64 `json:"nominal"`
	Likely    *float64 `json:"likely"`
	Corner    *float64 `json:"corner"`
	Situation string   `json:"situation"`
	State     string   `json:"state"` // the source and contacts of the corner
}

// CornerLoad is a load that is on in some situation. Drops are shares of the
// system voltage.
type CornerLoad struct {
	Ref    string       `json:"ref"`
	Part   string       `json:"part"`
	Drop   CornerFigure `json:"drop_share"`
	Wires  CornerFigure `json:"wires_drop_share"` // where nominal, which decides, is worst
	LimitS *float64     `json:"drop_limit_share"`
	Volts  CornerFigure `json:"volts"`

	in []loadIn // the situations of the three figures, each once
}

// loadIn is the three figures of a load in one situation.
type loadIn struct{ wires, drop, volts CornerFigure }

// CornerWire is a wire that carries current in some situation.
type CornerWire struct {
	Number  string       `json:"number"`
	Size    string       `json:"size"`
	Amperes CornerFigure `json:"amperes"`
	Celsius CornerFigure `json:"conductor_c"`
	// Allowed at the ambient of nominal and of the corner.
	Allowed       AllowedRow `json:"allowed"`
	AllowedCorner AllowedRow `json:"allowed_corner"`
}

// AllowedRow is what a wire may carry by both reckonings.
type AllowedRow struct {
	AmbientC *float64 `json:"ambient_c"`
	Amperes  *float64 `json:"amperes"`
	HeatA    *float64 `json:"by_heat_balance_a"`
	TableA   *float64 `json:"by_table_a"` // null = the practice has no table for it
	Governs  string   `json:"governs"`
	LimitC   *float64 `json:"limit_c"` // class less the margin
}

// CornerFuse is a fuse and its continuous load.
type CornerFuse struct {
	Ref          string       `json:"ref"`
	Part         string       `json:"part"`
	RatingA      *float64     `json:"rating_a"`
	Amperes      CornerFigure `json:"amperes"`
	BearsA       *float64     `json:"bears_a"`
	BearsCornerA *float64     `json:"bears_corner_a"`
}

// NewCorners makes the corner tables of a review; nil when it has no corners.
func NewCorners(r *harness.Review) *CornerReport {
	s := r.Corners
	if s == nil {
		return nil
	}
	rep := &CornerReport{Tolerances: []CornerTolerance{}, Loads: []CornerLoad{}, Wires: []CornerWire{}, Fuses: []CornerFuse{}}
	for _, t := range s.Tolerances.Rows {
		rep.Tolerances = append(rep.Tolerances, CornerTolerance{t.Name, finite(t.Value), t.Unit, t.Source.String()})
	}
	for _, b := range r.Circuit.Branches {
		switch {
		case b.Kind == circuit.LoadBranch && b.Load.Load != nil && !b.Load.Standby:
			rep.addLoad(r, b)
		case b.Kind == circuit.WireBranch:
			rep.addWire(r, b.Wire)
		case b.Kind == circuit.FuseBranch && b.Fuse != nil && !b.Fuse.Factory:
			rep.addFuse(r, b)
		}
	}
	rep.addUnsettled(r)
	return rep
}

// cornerFigure scales a value into its row; situation is -1 when there is none.
func cornerFigure(r *harness.Review, v corner.Value, situation int, scale float64) CornerFigure {
	f := CornerFigure{Nominal: finite(v.Nominal * scale), Likely: finite(v.Likely * scale), Corner: finite(v.Corner * scale), State: v.At.String()}
	if situation >= 0 {
		f.Situation = r.Corners.Solution(situation).Situation.Name
	}
	return f
}

func (rep *CornerReport) addLoad(r *harness.Review, b *circuit.Branch) {
	s := r.Corners
	on := func(i int) bool { return s.Solution(i).LoadOn[b.Index] }
	drop := func(i int) corner.Value { return s.Drop(i, b) }
	way := r.Circuit.WayConductors(b.Part)
	wires := func(i int) corner.Value {
		return s.Figure(i, 1, func(x *solve.Solution) float64 { return WayDropV(x, b, way(x.BranchA)) })
	}
	volts := func(i int) corner.Value { return s.LoadV(i, b) }
	_, dropIn := s.WorstIn(1, corner.AtWorst, on, drop)
	if dropIn < 0 {
		return
	}
	_, wiresIn := s.WorstIn(1, corner.AtNominal, on, wires)
	_, voltsIn := s.WorstIn(-1, corner.AtWorst, on, volts)
	perV := 1 / r.Design.NominalV()
	figures := func(i int) loadIn {
		return loadIn{cornerFigure(r, wires(i), i, perV), cornerFigure(r, drop(i), i, perV), cornerFigure(r, volts(i), i, 1)}
	}
	limit, _ := corner.HeldDrop(r.Design, b.Load.Load)
	row := CornerLoad{Ref: b.Part.Ref, Part: b.Part.Name, LimitS: finite(limit),
		Wires: figures(wiresIn).wires, Drop: figures(dropIn).drop, Volts: figures(voltsIn).volts}
	var seen []int
	for _, i := range []int{wiresIn, dropIn, voltsIn} {
		if !slices.Contains(seen, i) {
			seen, row.in = append(seen, i), append(row.in, figures(i))
		}
	}
	rep.Loads = append(rep.Loads, row)
}

// WayDropV is what the wires of a load's way lose; zero where the load is off.
func WayDropV(s *solve.Solution, load *circuit.Branch, way []*circuit.Branch) float64 {
	sum := 0.0
	for _, w := range way {
		if s.LoadOn[load.Index] {
			sum += math.Abs(s.Volts(w))
		}
	}
	return sum
}

func always(int) bool { return true }

func (rep *CornerReport) addWire(r *harness.Review, w *circuit.Wire) {
	s := r.Corners
	amps, in := s.WorstIn(1, corner.AtWorst, always, func(i int) corner.Value { return s.Amps(i, w.Branch) })
	if in < 0 || amps.Corner == 0 {
		return
	}
	temp, hotIn := s.WorstIn(1, corner.AtWorst, always, func(i int) corner.Value { return s.WireC(i, w) })
	row := CornerWire{Number: w.Number, Amperes: cornerFigure(r, amps, in, 1), Celsius: cornerFigure(r, temp, hotIn, 1),
		Allowed: allowedRow(s, w, false), AllowedCorner: allowedRow(s, w, true)}
	if w.Spec.Size != nil {
		row.Size = w.Spec.Size.Label
	}
	rep.Wires = append(rep.Wires, row)
}

// allowedRow is what a wire may carry where it is laid, at the design's ambient
// or that of the corner.
func allowedRow(s *corner.Set, w *circuit.Wire, hot bool) AllowedRow {
	l := &s.Model.Wires[w.Index]
	if hot {
		l = &s.Hot.Wires[w.Index]
	}
	if !l.Known {
		return AllowedRow{AmbientC: finite(l.AmbientC)}
	}
	return AllowedRow{AmbientC: finite(l.AmbientC), Amperes: finite(l.AllowedA), HeatA: finite(l.HeatA),
		TableA: finite(l.TableA), Governs: l.Governs, LimitC: finite(l.LimitC)}
}

func (rep *CornerReport) addFuse(r *harness.Review, b *circuit.Branch) {
	s := r.Corners
	amps, in := s.WorstIn(1, corner.AtWorst, always, func(i int) corner.Value { return s.Amps(i, b) })
	if in < 0 || b.Fuse.Rating == nil {
		return
	}
	row := CornerFuse{Ref: b.Fuse.Ref, RatingA: finite(b.Fuse.Rating.RatingA), Amperes: cornerFigure(r, amps, in, 1),
		BearsA:       finite(corner.FuseBearsA(r.Design, b, 0)),
		BearsCornerA: finite(corner.FuseBearsA(r.Design, b, s.Hot.AboveK))}
	if b.Part != nil {
		row.Part = b.Part.Name
	}
	rep.Fuses = append(rep.Fuses, row)
}

func (rep *CornerReport) addUnsettled(r *harness.Review) {
	for state, results := range r.Corners.Results {
		for i, x := range results {
			if x.Why != "" {
				rep.Unsettled = append(rep.Unsettled,
					r.Corners.Solution(i).Situation.Name+", "+corner.State(state).String()+": "+x.Why)
			}
		}
	}
}

// addCorners fills in what a situation's corners and wire temperatures add to
// its rows; the rows are in the order of the circuit's branches.
func (row *Situation) addCorners(r *harness.Review, i int) {
	s := r.Corners
	if s == nil {
		return
	}
	nominal := s.Results[corner.Nominal][i]
	row.HeatWhy = nominal.Why
	if !nominal.Usable() {
		return
	}
	load, wire := 0, 0
	for _, b := range r.Circuit.Branches {
		switch {
		case b.Kind == circuit.LoadBranch && b.Load.Load != nil:
			if nominal.Solution.LoadOn[b.Index] {
				row.Loads[load].addCorner(s, i, b)
			}
			load++
		case b.Kind == circuit.WireBranch:
			w, at := &row.Wires[wire], s.WireC(i, b.Wire)
			w.CornerAmperes = finite(s.Amps(i, b).Corner)
			w.ConductorC, w.CornerConductorC = finite(at.Nominal), finite(at.Corner)
			wire++
		}
	}
}

func (row *LoadRow) addCorner(s *corner.Set, i int, b *circuit.Branch) {
	drop := s.Drop(i, b)
	row.DropV, row.CornerDropV = finite(drop.Nominal), finite(drop.Corner)
	row.CornerVolts = finite(s.LoadV(i, b).Corner)
}
