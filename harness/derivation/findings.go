package derivation

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
)

// findingTree explains the figure that decides a finding, and its limit.
func (b *book) findingTree(f *finding.Finding) *Tree {
	t := &Tree{Situation: f.Situation, File: f.Pos.File, Line: f.Pos.Line}
	g := f.Figure
	if !g.Given() {
		t.Answer = []string{sentence(f.What), "No figure decides it: what the rule looks for is there, or is not."}
		t.finish(solvedExact("no figure decides it", plain, 0), nil)
		t.Root.Value = "–"
		t.Next = []string{"explain " + f.Rule}
		return t
	}
	root := b.decider(f)
	var limit *value
	if !math.IsNaN(g.Limit) {
		limit = b.limitOf(f)
	}
	t.finish(root, limit)
	if f.Unsourced.NoMargin() {
		t.noMargin(root, limit)
	}
	t.Answer = []string{sentence(f.What)}
	if limit != nil {
		t.Answer = append(t.Answer, fmt.Sprintf("What decides it is %s against %s%s.", t.Root.Value, t.Limit.Value, beyond(g)))
	} else {
		t.Answer = append(t.Answer, fmt.Sprintf("What decides it is %s.", t.Root.Value))
	}
	t.Next = []string{"explain " + f.Rule}
	return t
}

func sentence(text string) string {
	if text == "" {
		return ""
	}
	return text + "."
}

func beyond(g figure.Figure) string {
	if over := float64(g.Worse) * (g.Value - g.Limit); over > 0 {
		return ", " + quantity.Format(over, g.Of) + " beyond it"
	}
	return ""
}

// dims are the dimensions of figures of findings.
var dims = map[quantity.Dimension]*dimension{quantity.Voltage: volts, quantity.Current: amps, quantity.Resistance: ohms, quantity.Share: percent,
	quantity.Length: metres, quantity.Temperature: celsius, quantity.Duration: seconds, quantity.Charge: ampH, quantity.Power: watts,
	quantity.Speed: rpm, quantity.Area: mm2, quantity.CurrentSquareTime: a2s}

func dimOf(of quantity.Dimension) *dimension {
	if d := dims[of]; d != nil {
		return d
	}
	return plain
}

// as tells whether a value is the figure.
func as(x, figure float64) bool { return math.Abs(x-figure) <= 1e-6*math.Abs(figure)+1e-12 }

// asRuled is a figure as the rule reckons it, where no derivation leads to it.
func asRuled(f *finding.Finding, x float64) *value {
	name := "figure"
	for _, n := range f.Numbers {
		if as(quantity.In(n.Value, n.Unit, quantity.OfUnit(n.Unit)), x) {
			name = n.Name
			break
		}
	}
	return solved(name, dimOf(f.Figure.Of), x, "worked out by the rule "+f.Rule+"; see explain "+f.Rule)
}

// decider is the figure of a finding, derived where something that can be asked is that
// very figure.
func (b *book) decider(f *finding.Finding) *value {
	for _, c := range b.candidates(f) {
		if x := c.find(b, f.Figure); x != nil {
			return x
		}
	}
	for _, x := range b.plainOnes(f) {
		if as(x.v, f.Figure.Value) {
			return x
		}
	}
	return asRuled(f, f.Figure.Value)
}

// limitOf is what the figure is held against.
func (b *book) limitOf(f *finding.Finding) *value {
	g := f.Figure
	for _, x := range b.limits(f) {
		if as(x.v, g.Limit) {
			return x
		}
	}
	x := solved("limit", dimOf(g.Of), g.Limit, f.Source)
	switch {
	case strings.Contains(f.Source, "from memory"), strings.Contains(f.Source, "no source"):
		x.mark, x.rests = Unsure, shares{onNothing: 1}
	case strings.Contains(f.Source, "two sources"):
		x.mark, x.rests = TwoSources, shares{onPublished: 1}
	case strings.Contains(f.Source, "one source"):
		x.mark, x.rests = OneSource, shares{onPublished: 1}
	case strings.Contains(f.Source, "set by the design"):
		x.mark, x.rests = Yours, shares{onDesign: 1}
	}
	return x
}

// candidate is a figure of solutions that a finding may be decided by.
type candidate struct {
	number func(*solve.Solution) float64
	make   func(*view) *value
}

// find looks for the situation and state in which a candidate is the figure.
func (c candidate) find(b *book, g figure.Figure) *value {
	for at := range b.set().Results[corner.Nominal] {
		if !b.set().Usable(at) {
			continue
		}
		for state := corner.Nominal; int(state) < len(b.set().Results); state++ {
			if r := b.set().Results[state][at]; r.Usable() && as(c.number(r.Solution), g.Value) {
				return c.make(b.view(at, state))
			}
		}
		if likely := b.set().Figure(at, float64(g.Worse), c.number); as(likely.Likely, g.Value) {
			return c.likely(b, at, likely, float64(g.Worse))
		}
	}
	return nil
}

// likely is nominal with the deviations of one tolerance at a time.
func (c candidate) likely(b *book, at int, v corner.Value, sign float64) *value {
	nominal := c.make(b.view(at, corner.Nominal))
	nominal.label = "at nominal"
	var moved []*value
	most := 0.0
	for _, bounds := range corner.Alone() {
		if x := c.alone(b, at, bounds, nominal, sign); x != nil {
			moved, most = append(moved, x), math.Max(most, x.v)
		}
	}
	from, squares := []*value{nominal}, []string{}
	for _, x := range moved {
		if x.v > counts*most {
			from, squares = append(from, x), append(squares, "{}²")
		}
	}
	sum := map[bool]string{true: "{} + ", false: "{} − "}[sign > 0]
	x := of("as is likely", nominal.dim, v.Likely, sum+"√("+strings.Join(squares, " + ")+")", from...)
	return x.sourced("ISO/IEC Guide 98-3, 5.1.2, from memory").orSolved("bounded by the worst case")
}

// counts is the share of the largest deviation from which another one shows in the root of
// their squares.
const counts = 1e-4

// alone is by how much a tolerance alone makes a figure worse; nil = it does not.
func (c candidate) alone(b *book, at int, bounds []corner.State, nominal *value, sign float64) (most *value) {
	for _, state := range bounds {
		if !b.set().Results[state][at].Usable() {
			continue
		}
		x := c.make(b.view(at, state))
		by := sign * (x.v - nominal.v)
		if !(by > 0) || most != nil && by <= most.v {
			continue
		}
		x.label = "with " + state.String()
		pair := []*value{x, nominal}
		if sign < 0 {
			pair = []*value{nominal, x}
		}
		most = of("by "+state.String()+" alone", x.dim, by, "{} − {}", pair...)
	}
	return most
}

// candidates are those of the part or wire that a finding is about.
func (b *book) candidates(f *finding.Finding) (list []candidate) {
	if w := b.wire(f.Ref); w != nil {
		list = append(list, ampsOf(w.Branch))
	}
	for _, br := range b.c.Branches {
		named := br.Part != nil && (br.Part.Name == f.Part || br.Part.Ref == f.Ref)
		if s, ok := sourceOf(br).(*design.Switch); ok && named && len(f.Uses) > 0 && br.Closer != nil {
			list = append(list, b.useOf(br, s, f.Uses))
		}
		switch {
		case named && br.Kind == circuit.LoadBranch && br.Load.Load != nil && !br.Load.Standby:
			list = append(list, b.dropShare(br), b.wiresShare(br), voltsOf(br))
		case named && (br.Kind == circuit.FuseBranch || br.Kind == circuit.ContactBranch || br.OfCoil()):
			list = append(list, ampsOf(br))
		case named && br.Dropper():
			list = append(list, heatOf(br), ampsOf(br))
		case br.Fuse != nil && br.Fuse.Ref != "" && br.Fuse.Ref == f.Ref:
			list = append(list, ampsOf(br))
		}
	}
	return list
}

func sourceOf(br *circuit.Branch) any {
	if br.Part == nil {
		return nil
	}
	return br.Part.Source
}

func (b *book) wire(number string) *circuit.Wire {
	for _, w := range b.c.Wires {
		if w.Number == number {
			return w
		}
	}
	return nil
}

func ampsOf(br *circuit.Branch) candidate {
	return candidate{func(s *solve.Solution) float64 { return math.Abs(s.BranchA[br.Index]) }, func(v *view) *value { return v.amps(br) }}
}

// heatOf is the heat of a resistor.
func heatOf(br *circuit.Branch) candidate {
	return candidate{func(s *solve.Solution) float64 { a := s.Amps(br); return a * a * br.Ohm }, func(v *view) *value { return v.heatW(br) }}
}

func voltsOf(load *circuit.Branch) candidate {
	return candidate{func(s *solve.Solution) float64 { return s.LoadV(load) }, func(v *view) *value {
		v.drop(load)
		if x := v.left[load]; x != nil {
			return x
		}
		return v.loadV(load)
	}}
}

func (b *book) dropShare(load *circuit.Branch) candidate {
	nominal := b.c.NominalAt(load.A)
	return candidate{func(s *solve.Solution) float64 { return (s.PostsV(load) - s.LoadV(load)) / nominal }, func(v *view) *value {
		x := v.drop(load)
		return of("lost, of the system voltage", percent, x.v/nominal, "{} ÷ {}", x, b.nominalV(load)).by(x)
	}}
}

// wiresShare is what the wires of a load's way lose.
func (b *book) wiresShare(load *circuit.Branch) candidate {
	nominal, way := b.c.NominalAt(load.A), b.c.WayConductors(load.Part)
	lost := func(s *solve.Solution) (sum float64) {
		for _, w := range way(s.BranchA) {
			sum += math.Abs(s.Volts(w))
		}
		return sum
	}
	return candidate{func(s *solve.Solution) float64 { return lost(s) / nominal }, func(v *view) *value {
		var list []*value
		for _, w := range way(v.sol.BranchA) {
			if math.Abs(v.sol.Volts(w)) > 0 {
				list = append(list, v.element(w))
			}
		}
		x := sum("lost in its wires", volts, lost(v.sol), list...)
		return of("lost in its wires, of the system voltage", percent, x.v/nominal, "{} ÷ {}", x, b.nominalV(load)).by(x)
	}}
}

// plainOnes are figures that hang on no solution.
func (b *book) plainOnes(f *finding.Finding) (list []*value) {
	if w := b.wire(f.Ref); w != nil {
		list = append(list, lengthOf(w))
	}
	for _, l := range b.r.Balanced().Lines {
		if l.Situation.Name == f.Situation && l.Usable && f.Rule == "charging-deficit" {
			spare := b.spare(l)
			demand := demandOf(spare, l.OutputA-l.SpareA)
			list = append(list, demand, b.likelyDemand(l, demand))
		}
	}
	for _, br := range b.c.Branches {
		if br.Part != nil && br.Part.Name == f.Part && br.IsCoil() && br.Ohm > 0 {
			list = append(list, of("coil at the system voltage", amps, b.c.DrawA(br), "{} ÷ {}", b.nominalV(br), newOhm(br)))
		}
	}
	return slices.Concat(list, b.startOf(f), b.startsOver(f), b.shortsOf(f), b.ratingsOf(f), b.gradings(f), b.openings(f))
}

// startOf is what a start leaves, of a finding at the battery.
func (b *book) startOf(f *finding.Finding) (list []*value) {
	if br := b.batteryBranch(); br != nil && br.Part != nil && br.Part.Name == f.Part && f.Figure.Of == quantity.Voltage {
		return b.startVs()
	}
	return nil
}

// shortsOf are the shorts of a wire, or inside a part, with the current of a finding.
func (b *book) shortsOf(f *finding.Finding) (list []*value) {
	if f.Figure.Of != quantity.Current {
		return nil
	}
	for _, sh := range b.r.Faulted().Shorts {
		if of := sh.Wire != nil && sh.Wire.Number == f.Ref || sh.Wire == nil && sh.Part.Name == f.Part; !of || !sh.Fed {
			continue
		}
		for state := range sh.Results {
			if as(sh.Results[state].CurrentA, f.Figure.Value) {
				list = append(list, b.short(sh, state))
			}
		}
	}
	return list
}

// openings are the latest openings of fuses at the currents at which their wires have the
// least margin.
func (b *book) openings(f *finding.Finding) (list []*value) {
	for _, fuse := range b.r.Guarded().Fuses {
		for i := range fuse.Wires {
			w := &fuse.Wires[i]
			if w.Wire.Number != f.Ref {
				continue
			}
			for _, a := range []float64{w.WorstA, w.KnownWorstA, w.HurtA} {
				if read, ratingA, ok := fuse.Device.LatestEdge(a); ok && ratingA > 0 {
					multiple := of("times the rating of "+deviceName(fuse.Branch), plain, read.M, "{} ÷ {}",
						solved("current at which the wire has the least margin", amps, a, "of all from the rating to the short"), b.coldRating(fuse.Branch, ratingA))
					list = append(list, opening(fuse.Device, read, multiple))
				}
			}
		}
	}
	return list
}

// gradings are the ratings of fuses over that of the fuse that a finding is about.
func (b *book) gradings(f *finding.Finding) (list []*value) {
	for _, down := range b.ratingsOf(f) {
		for _, up := range b.c.Branches {
			if up.Fuse != nil && up.Fuse.Rating != nil && up.Fuse.Rating.RatingA > 0 && f.Figure.Of == quantity.Number {
				above := b.rating(up)
				above.label += " of " + deviceName(up)
				list = append(list, of("ratio of the ratings", plain, above.v/down.v, "{} ÷ {}", above, down))
			}
		}
	}
	return list
}

// demandOf is what is drawn, of a balance.
func demandOf(spare *value, demandA float64) *value {
	if len(spare.from) < 3 {
		return asValue(demandA)
	}
	return sum("drawn, each load at its average", amps, demandA, spare.from[1:]...)
}

// likelyDemand is what is drawn, with what the tolerance of each load's power adds.
func (b *book) likelyDemand(l *budget.Line, demand *value) *value {
	v := b.averageView(l.Held)
	var more []*value
	most := 0.0
	for _, br := range l.Held.Circuit.Branches {
		a := math.Abs(l.Held.BranchA[br.Index])
		if br.Load == nil || math.IsNaN(a) {
			continue
		}
		factor := b.set().Tolerances.PowerFactor(br)
		if x := of("by the tolerance of "+loadName(br), amps, a*(factor-1), "{} × ({} − 1)", v.amps(br), v.highest(br, factor)); x.v > 0 {
			more, most = append(more, x), math.Max(most, x.v)
		}
	}
	from, squares := []*value{demand}, []string{}
	for _, x := range more {
		if x.v > counts*most {
			from, squares = append(from, x), append(squares, "{}²")
		}
	}
	return of("likely demand", amps, l.LikelyA, "{} + √("+strings.Join(squares, " + ")+")", from...).
		sourced("ISO/IEC Guide 98-3, 5.1.2, from memory").orSolved("demand with the tolerances of the loads")
}

func asValue(a float64) *value { return solved("drawn", amps, a, "solved together") }

// ratingsOf are the ratings of the fuse that a finding is about.
func (b *book) ratingsOf(f *finding.Finding) (list []*value) {
	for _, br := range b.c.Branches {
		if br.Fuse != nil && br.Fuse.Rating != nil && (br.Fuse.Ref == f.Ref || br.Part != nil && br.Part.Name == f.Part) {
			list = append(list, b.rating(br))
		}
	}
	return list
}

// limits are what a finding may be held against.
func (b *book) limits(f *finding.Finding) (list []*value) {
	if w := b.wire(f.Ref); w != nil && b.set().Model.Wires[w.Index].Known {
		list = append(list, b.allowed(w))
	}
	for _, l := range b.r.Balanced().Lines {
		if l.Situation.Name == f.Situation && l.Usable && f.Rule == "charging-deficit" {
			list = append(list, b.output(l))
		}
	}
	if len(b.startOf(f)) > 0 {
		list = append(list, b.startLimits()...)
	}
	if len(b.startsOver(f)) > 0 {
		list = append(list, assumed("a long start", seconds, b.r.Cranking.Start.Seconds, "common practice, no source"))
	}
	for _, br := range b.c.Branches {
		if br.Part == nil || br.Part.Name != f.Part || br.Kind != circuit.LoadBranch || br.Load.Load == nil {
			continue
		}
		if f.Figure.Of == quantity.Share {
			list = append(list, b.dropLimit(br).from[0])
			if br.Load.Load.TightDrop { // beyond which it is a fault
				list = append(list, b.limitFor(br, "a load that is not critical", false).from[0])
			}
		}
		if x := b.minV(br); x != nil {
			list = append(list, x)
		}
	}
	return append(list, b.ratingsOf(f)...)
}

// numbered are the findings by number, the first of each.
func (b *book) numbered() (list []*finding.Finding) {
	for _, f := range b.r.Judged() {
		if f.Number > 0 && !slices.ContainsFunc(list, func(x *finding.Finding) bool { return x.Number == f.Number }) {
			list = append(list, f)
		}
	}
	slices.SortStableFunc(list, func(x, y *finding.Finding) int { return x.Number - y.Number })
	return list
}

func findingName(f *finding.Finding) string { return "finding " + strconv.Itoa(f.Number) }
