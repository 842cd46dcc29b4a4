package derivation

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/cranking"
)

// helped is the start in which a further battery gives most: as the relays stand then, else with those that sense still
// closed; nil = it gives nothing.
func (b *book) helped(part *circuit.Part) (s *solve.Solution, closed bool) {
	if b.r.Judged(); b.r.Cranking == nil {
		return nil, false
	}
	if s, a := cranking.Most(part, b.r.Cranking.Turning); a > traceA {
		return s, false
	}
	if s, a := cranking.Most(part, b.r.Cranking.Held); a > traceA {
		return s, true
	}
	return nil, false
}

// helpA is what passes a branch between a further battery and the first one in a start, or the battery itself.
func (b *book) helpA(part *circuit.Part, s *solve.Solution, br *circuit.Branch) *value {
	const how = "solved together: starter, batteries and what else is on"
	label, a := "from "+part.Name+" through "+elementName(br), math.Abs(s.Amps(br))
	if br.Part == part && br.Kind == circuit.BatteryBranch {
		label, a = "current out of "+part.Name, s.Given(br)
	}
	links, bank := b.c.Links(part.Terminal("+").Node), part.Branches[0]
	store := battery.New(&part.Source.(*design.Bank).Store, b.d.NominalV())
	if len(links) != 1 || store == nil || part.LinkWires() != nil {
		return solved(label, amps, a, how)
	}
	v := b.viewOf(s, solve.Options{})
	law := v.laws[bank.Index]
	inside, rest := v.innerOhm(bank, law.Ohm), v.restV(bank, law.EMFV)
	var way []*value
	total := 0.0
	for _, x := range slices.Concat(b.c.MainFeed(links[0].A).Branches, links, b.c.MainReturn(part.Terminal("-").Node, b.c.Negative()).Branches) {
		way, total = append(way, v.ohm(x)), total+s.Ohm[x.Index]
	}
	posts := s.NodeV[b.c.Positive().Index]
	first := solved("volts at the first battery's posts while the starter turns", volts, posts, how)
	from, what := rest, "inside "+part.Name+" and on its way"
	if given := s.Given(bank); math.Abs(given-a) > coilShare*a { // it has loads of its own
		from, what = of("volts behind the resistance of "+part.Name, volts, law.EMFV-given*law.Ohm, "{} − {} × {}", rest, inside, solved("current out of it", amps, given, how)), "on its way"
	} else {
		way, total = slices.Insert(way, 0, inside), total+law.Ohm
	}
	list, formula := []*value{from, first, sum(what, ohms, total, way...)}, "({} − {}) ÷ {}"
	switch more := a - (from.v-posts)/total; {
	case math.Abs(more) > besideShare*a:
		return solved(label, amps, a, how)
	case more > 1e-9*a:
		list, formula = append(list, solved("more by what else is on", amps, more, how)), formula+" + {}"
	case -more > 1e-9*a:
		list, formula = append(list, solved("less by what else is on", amps, -more, how)), formula+" − {}"
	}
	return of(label, amps, a, formula, list...).orSolved(how)
}

// besideShare is more than what hangs on a link beside the batteries, and returns by the same way, take from its current.
const besideShare = 0.2

// addStarts adds what the posts have at a start, and what further batteries give to it.
func (b *book) addStarts(add adding) bool {
	if !add("volts at", "start", func() bool { b.r.Judged(); return len(b.startVs()) > 0 }, b.startTree) {
		return false
	}
	for _, part := range b.c.Parts {
		if part.Kind != circuit.Bank {
			continue
		}
		if !add("start current of", part.Name, func() bool { s, _ := b.helped(part); return s != nil }, func() *Tree { return b.helpTree(part) }) {
			return false
		}
	}
	return true
}

// startTree explains what the posts of the full battery have while the starter turns, in mild air and in the cold.
func (b *book) startTree() *Tree {
	t := ofPart(b.batteryBranch().Part)
	list, k := b.startVs(), b.r.Cranking.Cases
	t.finish(list[0], b.startLimits()[1], list[1:]...)
	t.Answer = []string{fmt.Sprintf("The posts of the battery have %s while %s turns, in air of %s on a full battery.", t.Root.Value, b.r.Cranking.Start.Starter,
		quantity.Format(k[0].CelsiusC, quantity.Temperature))}
	if len(k) > 1 {
		t.Answer = append(t.Answer, fmt.Sprintf("At %s they have %s.", quantity.Format(k[1].CelsiusC, quantity.Temperature), quantity.Format(k[1].PostsV, quantity.Voltage)))
	}
	return t
}

func (b *book) helpTree(part *circuit.Part) *Tree {
	s, closed := b.helped(part)
	t := ofPart(part)
	t.Situation = s.Situation.Name
	if t.finish(b.helpA(part, s, b.c.Links(part.Terminal("+").Node)[0]), nil); closed {
		t.State = "sensing relays still closed"
	}
	k := b.r.Cranking.Cases[0]
	t.Answer = []string{fmt.Sprintf("%s gives %s to a start by %s, in mild air on full batteries.", part.Name, t.Root.Value, b.r.Cranking.Start.Starter)}
	if closed {
		t.Answer = append(t.Answer, fmt.Sprintf("With the relay open it gives nothing, and the posts have %s in place of %s.", (&value{v: k.PostsV, dim: volts, digits: 3}).text(), (&value{v: k.HeldV, dim: volts, digits: 3}).text()))
	}
	return t
}

// startsOver are currents of a start, and the opening times of fuses at them, of a finding about a link to a further battery.
func (b *book) startsOver(f *finding.Finding) (list []*value) {
	for _, part := range b.c.Parts {
		if part.Kind != circuit.Bank || f.Rule != "start-over-link" {
			continue
		}
		s, _ := b.helped(part)
		if s == nil {
			continue
		}
		for _, br := range b.c.Branches {
			switch {
			case br.Part == nil || br.Part.Name != f.Part:
			case br.Kind == circuit.ContactBranch, br.Kind == circuit.BatteryBranch:
				list = append(list, b.helpA(part, s, br))
			case br.Kind == circuit.FuseBranch && br.Fuse != nil && br.Fuse.Rating != nil:
				list = append(list, b.startOpening(br, b.helpA(part, s, br))...)
			}
		}
	}
	return list
}

// startOpening is the latest opening of a fuse at a current, and the middle of its band.
func (b *book) startOpening(br *circuit.Branch, draws *value) []*value {
	dev := br.Device(0)
	read, ratingA, ok := dev.LatestEdge(draws.v)
	if !ok {
		return nil
	}
	last := opening(dev, read, of("times its rating", plain, read.M, "{} ÷ {}", draws, b.coldRating(br, ratingA)))
	soon := dev.Open(draws.v).FastS
	return []*value{last, of("middle of the band", seconds, math.Sqrt(last.v*soon), "√({} × {})", last, solved("soonest opening", seconds, soon, "by the same band, read likewise"))}
}
