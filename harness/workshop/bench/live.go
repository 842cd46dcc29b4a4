package bench

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// solved is a situation with its spread and its section.
type solved struct {
	situation *design.Situation
	spread
	section *Section
	// supplyV is the voltage of the supply in place of the running engine, supplyA
	// the most it must give; 0 = on the battery.
	supplyV, supplyA float64
	// overA is what it would draw of a supply that none gives; 0 = of none.
	overA float64
}

// Passes with the engine stopped stand in for situations that need it running: a
// supply or charger at the regulated voltage across the battery's posts, where it can
// give what they draw. Common practice, no source.
const (
	mostSupplyA   = 30.0 // of a usual bench supply
	fastIdleTimes = 1.5  // of the idle speed
	stepTimes     = 0.5  // by which fast idle is raised until the posts rise
	mostIdleTimes = 3.0  // of the idle speed, out of gear
)

// situations makes a section of each situation: with the key off first, then with
// the engine stopped, then those of the running engine, on a supply; then the short
// live check.
func (m *maker) situations() []*Section {
	var all []*solved
	for _, rank := range []int{0, 1, 2} {
		for _, s := range m.d.Situations {
			if order(s) != rank {
				continue
			}
			if s = benched(s); rank == 2 {
				s = stopped(s)
				if m.repeats(all, s) {
					continue
				}
			}
			all = append(all, m.pass(s))
		}
	}
	var out []*Section
	for _, s := range all {
		s.section = m.section(s)
		out = append(out, s.section)
	}
	m.volts(all)
	m.alone(all)
	m.ring(all)
	charging, use := m.charging()
	m.drops(append(all, charging...))
	return append(append(m.telling(out), m.live(all)...), use...)
}

// stopped is a situation with the engine stopped, all else as it is.
func stopped(s *design.Situation) *design.Situation {
	still := *s
	still.EngineRPM = 0
	if still.As == nil {
		still.As = s
	}
	return &still
}

// pass solves a situation; one that stands in for the running engine on the supply
// when that can give its current, else on the battery.
func (m *maker) pass(s *design.Situation) *solved {
	if s.As == nil || !circuit.Running(s.As) || m.d.Charging.RegulatedV.Value == 0 {
		return &solved{situation: s, spread: m.situation(s)}
	}
	p := &solved{situation: s, supplyV: m.d.Charging.RegulatedV.Value}
	m.postsV = p.supplyV
	p.spread = m.situation(s)
	m.postsV = 0
	if p.ok() {
		_, _, p.supplyA = p.of(func(sol *solve.Solution) float64 { return sol.BatteryA })
	}
	if !p.ok() || p.supplyA > mostSupplyA {
		return &solved{situation: s, spread: m.situation(s), overA: p.supplyA}
	}
	return p
}

// repeats tells whether a pass on the supply would be one again that is made: only
// the engine's speed differs.
func (m *maker) repeats(all []*solved, s *design.Situation) bool {
	return slices.ContainsFunc(all, func(o *solved) bool {
		return o.situation.As != nil && circuit.Running(o.situation.As) && o.situation.Key == s.Key && slices.Equal(o.situation.On, s.On) && slices.Equal(o.situation.With, s.With) &&
			slices.Equal(o.situation.Closed, s.Closed) && slices.Equal(o.situation.Set, s.Set) && slices.Equal(o.situation.Reversed, s.Reversed) && m.sameVehicle(o.situation, s)
	})
}

// sameVehicle tells whether the machine's own loads are the same in two situations.
func (m *maker) sameVehicle(a, b *design.Situation) bool {
	return slices.Equal(circuit.Present(m.c, a), circuit.Present(m.c, b))
}

// darkness is a part that is off with the key off, or on.
type darkness struct {
	part   *circuit.Part
	keyOff bool
}

// volts gives each load and block its reading once, where it lies lowest; what is off
// is read once with the key off and once with it on, in one row a pass.
func (m *maker) volts(all []*solved) {
	groups := make([]*Group, len(all))
	type lowest struct {
		check *Check
		in    int
	}
	type way struct { // a motor that turns both ways is read both ways, and a load in each position of its switch
		part      *circuit.Part
		where, by string
	}
	var order []way
	best, dark := map[way]lowest{}, map[darkness]bool{}
	for i, s := range all {
		if !s.ok() {
			continue
		}
		key := s.situation.Key == design.KeyOff
		groups[i] = &Group{Title: "Volts of blocks and loads, given as volts below the battery's"}
		var dead []*Check
		for _, p := range m.c.Parts {
			c := m.point(s, p)
			if c == nil {
				continue
			}
			if !c.Below {
				if was := (darkness{p, key}); !dark[was] {
					dark[was] = true
					dead = append(dead, c)
				}
				continue
			}
			key := way{p, c.Where, m.turnedTo(s, p)}
			was, met := best[key]
			if !met {
				order = append(order, key)
			}
			if !met || c.Nominal > was.check.Nominal {
				best[key] = lowest{c, i}
			}
		}
		if len(dead) > 0 {
			groups[i].Checks = append(groups[i].Checks, together(dead))
		}
	}
	for i, g := range groups {
		if g == nil {
			continue
		}
		var lit []*Check
		for _, key := range order {
			if best[key].in == i {
				lit = append(lit, best[key].check)
			}
		}
		if g.Checks = append(lit, g.Checks...); len(g.Checks) > 0 {
			all[i].section.Groups = append(all[i].section.Groups, g)
		}
	}
}

// turnedTo are the contacts of switches with positions that a load hangs on in a pass: "" = none. A block
// behind one is read where it lies lowest, as its contacts show in its loads.
func (m *maker) turnedTo(s *solved, p *circuit.Part) (by string) {
	if p.Kind != circuit.Load {
		return ""
	}
	for _, b := range p.Branches {
		if b.Load == nil || b.Load.Standby {
			continue
		}
		for _, k := range m.c.NeededBy(b) {
			if sw := k.Closer.Switch; sw != nil && sw.Lead().Positions != nil && s.nominal.Closed[k.Index] {
				by += fmt.Sprint(k.Index, " ")
			}
		}
	}
	return by
}

// together is one row of all that is dead in a pass.
func together(dead []*Check) *Check {
	if len(dead) == 1 {
		return dead[0]
	}
	var refs []string
	for _, c := range dead {
		refs = append(refs, c.Ref)
	}
	one := *dead[0]
	probe := *one.Probe
	probe.Volts = slices.Clone(probe.Volts)
	one.Probe = &probe
	one.Ref, one.Name, one.Where = strings.Join(refs, " "), "off", "across each"
	for _, c := range dead[1:] {
		one.High = math.Max(one.High, c.High)
		probe.Volts = append(probe.Volts, c.Probe.Volts...)
	}
	return &one
}

// live is what only the running engine shows: the posts and the main feeds at idle
// and at fast idle, with the loads of the heaviest situation that runs it on.
func (m *maker) live(passes []*solved) []*Section {
	idle := m.d.Charging.IdleRPM.Value
	var heaviest *design.Situation
	most := math.Inf(-1)
	brief := m.c.ForMoments()
	pulls := !slices.ContainsFunc(m.d.Situations, func(s *design.Situation) bool { return order(s) == 2 && len(pulling(s.On)) == 0 })
	for _, s := range m.d.Situations {
		if order(s) != 2 || len(pulling(s.On)) > 0 && !pulls {
			continue // a winch under its pull is nothing for a running engine on a stand
		}
		calm := *m.unconditional(benched(s)) // readings take longer than a horn is blown
		calm.On = slices.DeleteFunc(slices.Clone(calm.On), brief)
		s = &calm
		sol := m.plan.Network(s, m.usual()).Solution()
		if sol.Status != solve.Converged {
			continue
		}
		sum := 0.0
		for _, b := range m.c.Branches {
			if b.Load != nil && b.Load.Load != nil && !b.Follows() {
				sum += math.Abs(sol.Amps(b))
			}
		}
		if sum > most {
			heaviest, most = s, sum
		}
	}
	if heaviest == nil || !(idle > 0) {
		return nil
	}
	besides, fast := m.unlisted(m.plan.Network(heaviest, m.usual()).Solution()), m.rising(heaviest)
	sec := &Section{Kind: Live, Title: "Live: idle and fast idle, with the loads of " + heaviest.Name, Setup: append([]string{
		m.switched(heaviest, besides) + " Engine warm, outdoors, " + secured(m.d) + ". Never above fast idle." + m.leftOut(),
	}, timed(m.d, slices.Concat(heaviest.On, besides))...)}
	silent := m.onlyRunning(heaviest, passes)
	for _, speed := range []struct {
		name string
		rpm  float64
	}{{"Idle", idle}, {"Fast idle", fast}} {
		s := *heaviest
		s.EngineRPM = speed.rpm
		if s.As == nil {
			s.As = heaviest
		}
		p := &solved{situation: &s, spread: m.situation(&s)}
		title := speed.name + ", " + quantity.Plain(math.Round(speed.rpm), quantity.Speed)
		if !p.ok() {
			sec.Groups = append(sec.Groups, &Group{Title: title + ": no readings can be given (" + string(p.nominal.Status) + ")"})
			continue
		}
		g := &Group{Title: title, Checks: slices.Concat(m.allPosts(p), m.fromStud(p), m.anew(m.feeds(p)...))}
		if speed.rpm > idle {
			for _, part := range silent {
				if c := m.point(p, part); c != nil {
					g.Checks = append(g.Checks, c)
				}
			}
		}
		sec.Groups = append(sec.Groups, g)
	}
	return []*Section{sec}
}

// rising is the speed of fast idle: the least at which the posts come up to what the regulator holds in the worst case too, else the most.
func (m *maker) rising(s *design.Situation) float64 {
	idle, regulatedV := m.d.Charging.IdleRPM.Value, m.d.Charging.RegulatedV.Value
	for times := fastIdleTimes; times < mostIdleTimes; times += stepTimes {
		at := *s
		at.EngineRPM = times * idle
		sp := m.situation(&at)
		if _, low, _ := sp.of(func(sol *solve.Solution) float64 { return sol.NodeV[m.c.Positive().Index] }); sp.ok() && low >= regulatedV-2*m.tol.RegulatedV {
			return at.EngineRPM
		}
	}
	return mostIdleTimes * idle
}

// unlisted are the loads that draw though the situation does not list them: no switch of theirs parts them from the feed.
func (m *maker) unlisted(sol *solve.Solution) (list []*design.Load) {
	for _, b := range m.c.Branches {
		if b.Load != nil && b.Load.Load != nil && b.OfCharger() == nil && sol.On(b) && !slices.Contains(sol.Situation.On, b.Load.Load) {
			list = append(list, b.Load.Load)
		}
	}
	return list
}

// unconditional is a situation of the running engine without its conditions: one of them may want a gear engaged or a lever moved, and what comes
// with them is read with the engine stopped.
func (m *maker) unconditional(s *design.Situation) *design.Situation {
	if len(s.With) == 0 {
		return s
	}
	bare := *s
	bare.With = nil
	sol := m.plan.Network(&bare, m.usual()).Solution()
	bare.On = slices.DeleteFunc(slices.Clone(s.On), func(l *design.Load) bool {
		p := m.c.PartOf(l)
		return p != nil && !slices.ContainsFunc(p.Branches, sol.On)
	})
	return &bare
}

// leftOut says which conditions the running engine goes without.
func (m *maker) leftOut() string {
	var with []string
	for _, s := range m.d.Situations {
		for _, w := range s.With {
			if order(s) == 2 && !slices.Contains(with, string(w)) {
				with = append(with, string(w))
			}
		}
	}
	if len(with) == 0 {
		return ""
	}
	return " What comes with " + wording.And(with) + " is read with the engine stopped alone, in the situations above."
}

// onlyRunning are the parts that are alive with the engine running and in no pass.
func (m *maker) onlyRunning(s *design.Situation, passes []*solved) []*circuit.Part {
	run := &solved{situation: s, spread: spread{nominal: m.plan.Network(s, m.usual()).Solution()}}
	var list []*circuit.Part
	for _, p := range m.c.Parts {
		c := m.point(run, p)
		if c == nil || !c.Below {
			continue
		}
		if !slices.ContainsFunc(passes, func(o *solved) bool { return o.ok() && m.point(o, p).Below }) {
			list = append(list, p)
		}
	}
	return list
}

func order(s *design.Situation) int {
	switch {
	case s.Key == design.KeyOff:
		return 0
	case !circuit.Running(s):
		return 1
	}
	return 2
}

// section is one situation: posts, feeds, blocks and loads.
func (m *maker) section(s *solved) *Section {
	kind := InUse
	if s.situation.Key == design.KeyOff && len(s.situation.On)+len(s.situation.Closed)+len(s.situation.Held)+len(s.situation.With) == 0 {
		kind = Parked
	}
	sec := &Section{Kind: kind, Title: "Situation: " + s.situation.Name, Situation: s.situation, Setup: m.setup(s)}
	if s.supplyV > 0 {
		sec.Title += ", on a supply"
	} else if s.situation.As != nil && circuit.Running(s.situation.As) {
		sec.Title += ", on the battery"
	}
	if !s.ok() {
		sec.Trouble = "No readings can be given: " + string(s.nominal.Status) + ". " + s.nominal.Why
		return sec
	}
	source := &Group{Title: "Source and main feed", Checks: append(m.allPosts(s), m.anew(m.feeds(s)...)...)}
	if order(s.situation) == 0 {
		source.Checks = append(source.Checks, m.anew(m.standby(s))...)
	}
	sec.Groups = append(sec.Groups, source)
	if slices.ContainsFunc(source.Checks, func(c *Check) bool { return c.Basis == basisStandby }) {
		sec.Setup = append(sec.Setup, "In series or in place of a fuse the meter first on its 10 A input, on milliamperes only once that shows less than "+
			"its own fuse carries. While it is there, do not turn the key, and switch on nothing that this lead feeds.")
	}
	return sec
}

// setup is how to bring the situation about.
func (m *maker) setup(s *solved) []string {
	besides := m.unlisted(s.nominal)
	lines := []string{m.switched(s.situation, besides)}
	switch {
	case s.supplyV > 0:
		lines = append(lines, m.supplySays(s))
	case s.situation.As != nil && circuit.Running(s.situation.As):
		lines = append(lines, "Engine stopped, on the vehicle's own batteries through their fuses: "+m.overSays(s))
	case order(s.situation) == 0 && s.situation.LastsS == 0:
		lines = append(lines, "Wait until control units sleep, some minutes.")
	}
	if unlike := m.unlike(s.situation); len(unlike) > 0 {
		lines[len(lines)-1] += " " + strings.Join(unlike, " ")
	}
	if len(s.situation.With) > 0 && m.d.Charging.Present() {
		lines = append(lines, still(m.d)+", the engine stopped throughout: what brings these conditions about may engage a gear.")
	}
	return append(append(lines, m.stays(s)...), timed(m.d, slices.Concat(s.situation.On, besides))...)
}

// supplySays is which supply stands in for the charging system: one that gives what the battery takes besides, or the battery off.
func (m *maker) supplySays(s *solved) string {
	volts, loads := quantity.Plain(s.supplyV, quantity.Voltage), quantity.Format(math.Ceil(s.supplyA), quantity.Current)
	text := fmt.Sprintf("Engine stopped; the battery's leads off it, a supply of %s that gives %s across them in place of the charging system.", volts, loads)
	if bank := battery.Of(m.d); bank != nil {
		text += fmt.Sprintf(" Or the battery on them and a charger that gives %s: it takes some amperes itself while it is not full; wait until %s stand.",
			quantity.Format(math.Ceil(s.supplyA+bank.AcceptedA(1-UsualDischarge, battery.RatedC)), quantity.Current), volts)
	}
	return text
}

// overSays is why no supply stands in: what is on draws too much, or what charges would with it, which rests on the battery.
func (m *maker) overSays(s *solved) string {
	if _, _, drawnA := s.of(func(sol *solve.Solution) float64 { return sol.BatteryA }); s.ok() && drawnA <= mostSupplyA && s.overA > mostSupplyA {
		return fmt.Sprintf("at %s it draws up to %s, what charges another battery with it, more than a usual bench supply gives (30 A; common practice, no source). "+
			"On the battery that rests.", quantity.Plain(m.d.Charging.RegulatedV.Value, quantity.Voltage), quantity.Format(math.Ceil(s.overA), quantity.Current))
	}
	return "this draws more than a usual bench supply gives (30 A; common practice, no source). Keep it short."
}

// pullsA is from which current on a motor that is on for a time pulls what may not be
// at the bench. Common practice, no source.
const pullsA = 50.0

// briefS is up to how long at once what is on for a time is soon over its time while readings are taken. Common practice, no source.
const briefS = 120.0

// timed says how to go about what is made to be on for a time.
func timed(d *design.Design, on []*design.Load) []string {
	lines := pulling(on)
	for _, l := range on {
		longest := quantity.Format(l.LongestS(), quantity.Duration)
		switch {
		case !l.OnForS.Given() || l.LongestS() > briefS:
		case l.Starts():
			rest := ""
			if l.EveryS.Value > l.LongestS() {
				rest = ", then " + quantity.Format(l.EveryS.Value-l.LongestS(), quantity.Duration) + " of rest"
			}
			lines = append(lines, fmt.Sprintf("%s: one reading a start, for at most %s%s; %s, and the engine kept from firing as its maker says.", l.Name, longest, rest, secured(d)))
		case l.Behaves != design.Motor || l.PowerW <= pullsA*l.RatedV: // which pulling speaks of
			lines = append(lines, fmt.Sprintf("%s: for at most %s at a time, with as long a rest.", l.Name, longest))
		}
	}
	return lines
}

// pulling says of strong motors that are on for a time, such as winches, how to load them.
func pulling(on []*design.Load) (lines []string) {
	for _, l := range on {
		stated := l.OnForS.Pos.Line > 0 || l.Type != nil && l.Type.OnForS > 0
		if l.Behaves == design.Motor && stated && l.PowerW > pullsA*l.RatedV && !l.Starts() {
			lines = append(lines, fmt.Sprintf("%s: the figures are with its rated pull, on a safely rigged load and for at most %s at a time, nobody "+
				"in line with the rope. Without one let it run free: amperes and drops then lie lower, and are noted beside the figures.",
				l.Name, quantity.Format(l.LongestS(), quantity.Duration)))
		}
	}
	return lines
}

// switched is the key, the loads, those that are on besides, and the switches of a situation in words.
func (m *maker) switched(s *design.Situation, besides []*design.Load) string {
	text := "Key off."
	if s.Key == design.KeyOn {
		text = "Key on."
	}
	if len(s.With) > 0 {
		with := make([]string, len(s.With))
		for i, w := range s.With {
			with[i] = string(w)
		}
		text += " With " + wording.And(with) + "."
	}
	var on, switches []string
	for _, l := range s.On {
		on = append(on, l.Name)
	}
	closed := circuit.Contacts(m.c, s)
	at, _ := circuit.Positions(m.c, s)
	turned, plain := "", 0
	for _, p := range m.c.Parts {
		sw, ok := p.Source.(*design.Switch)
		switch {
		case !ok || sw.Pole != nil:
		case sw.Positions != nil:
			turned += " " + p.Ref + " " + p.Name + " at " + at[sw] + "."
		default:
			plain++
			if slices.ContainsFunc(p.Branches, func(b *circuit.Branch) bool { return b.Closer.Switch != nil && closed[b.Index] }) {
				switches = append(switches, p.Ref+" "+p.Name)
			}
		}
	}
	text += " Loads on: " + allOf(on, len(m.d.Loads)) + "."
	if len(besides) > 0 {
		var more []string
		for _, l := range besides {
			more = append(more, l.Name)
		}
		text += " On besides, for want of a switch of its own: " + wording.And(more) + "."
	}
	return text + " Switches closed: " + allOf(switches, plain) + "." + turned
}

// allOf lists names; where they are many and all of their kind, it says so.
func allOf(names []string, of int) string {
	const many = 8
	if len(names) == of && of > many {
		return fmt.Sprintf("all %d", of)
	}
	return wording.And(names)
}

// posts is the battery voltage, read first; the range is where the bounds hold.
func (m *maker) posts(s *solved) *Check {
	nominal, low, high := s.of(func(sol *solve.Solution) float64 { return sol.NodeV[m.c.Positive().Index] })
	low, high = widen(low, high, VoltShare, VoltFixedV/2)
	return &Check{Ref: m.battery(), Name: "battery", Where: postsOnly + "read first, keep it", Quantity: quantity.Voltage,
		Nominal: nominal, Low: low, High: high, Basis: basisVolts, Probe: s.between(m.c.Positive(), m.c.Negative())}
}

// allPosts are posts and the same of further batteries and of converters that run, against which what they feed is read.
func (m *maker) allPosts(s *solved) []*Check {
	list := []*Check{m.posts(s)}
	further := func(p *circuit.Part, at *circuit.Node, where string) {
		plus, minus := m.c.Supply(at)
		nominal, low, high := s.of(func(sol *solve.Solution) float64 { return sol.NodeV[plus.Index] - sol.NodeV[minus.Index] })
		low, high = widen(low, high, VoltShare, VoltFixedV/2)
		list = append(list, &Check{Ref: p.Ref, Name: p.Name, Where: where + "what it feeds is read against it", Quantity: quantity.Voltage,
			Nominal: nominal, Low: low, High: high, Basis: basisVolts, Probe: s.between(plus, minus)})
	}
	for _, post := range m.c.Posts()[1:] {
		further(post.Terminals[0].Part, post, postsOnly)
	}
	for _, p := range m.c.Parts {
		if out := p.Output(); out != nil && out.OfCharger().Converts() && s.nominal.NodeV[out.A.Index] > deadV {
			further(p, out.A, postsOnly+"out and −, ")
			m.supplies = append(m.supplies, p)
		}
	}
	return list
}

// fromStud reads what is lost between the charging system's own stud and each battery that it charges: the drop of an
// isolator's diodes, which no continuity test shows.
func (m *maker) fromStud(s *solved) (list []*Check) {
	stud := m.c.Stud()
	if stud == nil {
		return nil
	}
	g := stud.Terminals[0].Part
	for _, post := range m.c.Posts() {
		if len(m.c.ChargersAbove(firstAbove(post))) == 0 {
			continue
		}
		nominal, low, high := s.of(func(sol *solve.Solution) float64 { return sol.NodeV[stud.Index] - sol.NodeV[post.Index] })
		c := &Check{Ref: g.Ref, Name: g.Name, Where: "B+ to + of " + post.Terminals[0].Part.Ref, Quantity: quantity.Voltage, Nominal: nominal, Basis: basisVolts,
			Probe: s.between(stud, post)}
		c.Low, c.High = widen(low, high, VoltShare, VoltFixedV)
		list = append(list, c)
	}
	return list
}

// firstAbove is the node before a post, the post itself where nothing feeds it.
func firstAbove(post *circuit.Node) *circuit.Node {
	if from := post.FedBy(); len(from) > 0 {
		return from[0].A
	}
	return post
}

// feeds is the current of every wire that leaves a battery, and through taps.
func (m *maker) feeds(s *solved) []*Check {
	var out []*Check
	for _, w := range m.c.Wires {
		if w.Branch.Feeds() && m.c.IsPost(w.From.Node) {
			c := amps(s, w.Branch)
			c.Ref, c.Name = w.Number, "main feed"
			if c.Where += " " + w.Number + " to " + w.To.Part.Ref; c.Basis == basisStandby && w.To.Part.Kind == circuit.Fuse {
				c.Where = "meter in place of " + w.To.Part.Ref // a stout lead is not undone for it
			}
			out = append(out, c)
		}
	}
	for _, p := range m.c.Parts {
		if p.Kind == circuit.Tap && len(p.Branches) > 0 {
			c := amps(s, p.Branches[0])
			c.Ref, c.Name, c.Where = p.Ref, p.Name, c.Where+" its wires"
			out = append(out, c)
		}
	}
	return out
}

// battery is the battery's reference.
func (m *maker) battery() string { return m.c.Positive().Terminals[0].Part.Ref }

// seriesA is the current up to which a meter goes in series with the key off: a
// clamp is too coarse there, and above it the meter's own fuse is at risk.
const seriesA = 1.0

// amps is a reading of the current of a branch.
func amps(s *solved, b *circuit.Branch) *Check {
	c := current(s, func(sol *solve.Solution) float64 { return math.Abs(sol.Amps(b)) })
	c.Probe = s.at(Probe{Amps: b})
	return c
}

// standby is what the battery loses with the key off, the machine's own included.
func (m *maker) standby(s *solved) *Check {
	c := current(s, func(sol *solve.Solution) float64 { return sol.BatteryA })
	c.Ref, c.Name, c.Where = m.battery(), "all that is drawn", c.Where+" the battery's negative lead"
	c.Probe = s.at(Probe{Amps: m.batteryBranch()})
	return c
}

func current(s *solved, value func(*solve.Solution) float64) *Check {
	nominal, low, high := s.of(value)
	c := &Check{Quantity: quantity.Current, Nominal: nominal, Where: "clamp round", Basis: basisClamp}
	c.Low, c.High = widen(low, high, ClampShare, ClampFixedA)
	if order(s.situation) == 0 && high < seriesA {
		c.Where, c.Basis = "meter in series with", basisStandby
		c.Low, c.High = widen(low, high, StandbyShare, StandbyFixedA)
	}
	return c
}

// point is the voltage of a block or a load; nil for other parts.
func (m *maker) point(s *solved, p *circuit.Part) *Check {
	var plus, minus *circuit.Node
	where := "+ and −"
	switch p.Kind {
	case circuit.Block:
		plus, minus, where = p.Terminal("in").Node, m.c.Negative(), "input and battery −"
		if x := m.c.ConverterOf(plus); x != nil {
			minus, where = x.Output().B, "input and − of "+x.Ref
		}
	case circuit.Load:
		plus, minus = p.Terminal("+").Node, p.Terminal("-").Node
		if l, ok := p.Source.(*design.Load); ok && slices.Contains(s.situation.Reversed, l) {
			plus, minus, where = minus, plus, "− and +, the other way round"
		}
	default:
		return nil
	}
	c := m.below(s, plus, minus)
	c.Ref, c.Name, c.Where = p.Ref, p.Name, where
	return c
}

// below is how far the voltage between two nodes lies under the battery's; a
// dead point is said as such.
func (m *maker) below(s *solved, plus, minus *circuit.Node) *Check {
	volts := func(sol *solve.Solution) float64 {
		v := sol.NodeV[plus.Index] - sol.NodeV[minus.Index]
		if math.IsNaN(v) {
			return 0
		}
		return v
	}
	nominal := volts(s.nominal)
	if math.Abs(nominal) < deadV {
		return &Check{Quantity: quantity.Voltage, Nominal: 0, Low: nan(), High: deadV, Basis: basisDead, Probe: s.between(plus, minus)}
	}
	post, negative := m.c.Supply(plus)
	c := &Check{Quantity: quantity.Voltage, Below: true, Supply: post, ShowsV: nominal, Basis: basisVolts, Probe: s.between(plus, minus)}
	drop, low, high := s.of(func(sol *solve.Solution) float64 {
		return sol.NodeV[post.Index] - sol.NodeV[negative.Index] - volts(sol)
	})
	c.Nominal = drop
	c.Low, c.High = widen(low, high, VoltShare, VoltFixedV)
	return c
}
