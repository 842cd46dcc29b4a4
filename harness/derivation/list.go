package derivation

import (
	"iter"
	"maps"
	"math"
	"slices"
	"strings"

	"fusewright/harness/network/circuit"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/fault"
)

// Asked is a figure that can be asked for.
type Asked struct {
	What string   // "drop of left lamp"
	also []string // other names of it
	is   func() bool
	make func() *Tree
}

// there tells whether the review has it; the stages that it takes to know that run then.
func (a *Asked) there() bool { return a.is == nil || a.is() }

// adding takes in a figure by its kind, "drop of", and what it is of.
type adding func(kind, of string, is func() bool, make func() *Tree) bool

// asked goes through the figures that a review of such loads, wires, fuses and situations may have.
func (b *book) asked() iter.Seq[*Asked] {
	return func(yield func(*Asked) bool) {
		add := func(kind, of string, is func() bool, make func() *Tree) bool {
			a := &Asked{What: kind + " " + of, is: is, make: make}
			for _, other := range b.names(of) {
				a.also = append(a.also, kind+" "+other)
			}
			a.also = append(a.also, b.called[a.What]...)
			return yield(a)
		}
		_ = b.addLoads(add) && b.addSpeeds(add) && b.addResistors(add) && b.addDiodes(add) && b.addTaps(add) && b.addBanks(add) && b.addWires(add) && b.addFuses(add) && b.addSituations(add) && b.addStarts(add)
	}
}

// carries tells whether a branch ever has current.
func (b *book) carries(br *circuit.Branch) func() bool {
	return func() bool {
		worst, in := b.worstAmps(br)
		return in >= 0 && worst.Corner > traceA
	}
}

func (b *book) addLoads(add adding) bool {
	for _, br := range b.c.Branches {
		if br.Kind != circuit.LoadBranch || br.Load.Load == nil || br.Load.Standby {
			continue
		}
		name := br.Part.Name
		on := func() bool { _, in := b.worstDrop(br); return in >= 0 }
		if !(add("drop of", name, on, func() *Tree { return b.dropTree(br) }) &&
			add("volts at", name, on, func() *Tree { return b.voltsTree(br) }) &&
			add("current of", name, b.carries(br), func() *Tree { return b.ampsTree(br, ofPart(br.Part), name) }) &&
			add("limit of", name, nil, func() *Tree { return b.limitTree(br) }) &&
			add("hours of", name, func() bool { return b.neverLasts(br) }, func() *Tree { return b.aloneTree(br) })) {
			return false
		}
	}
	return true
}

func (b *book) addResistors(add adding) bool {
	for _, br := range b.c.Branches {
		if !br.Dropper() {
			continue
		}
		name, on := br.Part.Name, b.carries(br)
		if !(add("heat of", name, on, func() *Tree { return b.heatTree(br) }) &&
			add("current of", name, on, func() *Tree { return b.ampsTree(br, ofPart(br.Part), name) }) &&
			add("resistance of", name, on, func() *Tree { return b.ohmTree(br, ofPart(br.Part), name) })) {
			return false
		}
	}
	return true
}

// names are the other names of what figures are of: a part's designation, a fuse's name, and
// of a situation its engine speed.
func (b *book) names(of string) []string {
	if b.called == nil {
		b.called = map[string][]string{}
		for _, p := range b.c.Parts {
			if p.Ref == "" {
				continue
			}
			b.called[p.Name] = append(b.called[p.Name], p.Ref)
			if p.Kind == circuit.Fuse {
				b.called[p.Ref] = append(b.called[p.Ref], p.Name)
			}
		}
	}
	return b.called[of]
}

// nameSpeeds has the situations with least to spare called by their engine speeds too.
func (b *book) nameSpeeds() {
	b.names("")
	for _, word := range []string{"idle", "cruise"} {
		if l := b.leastAt(word); l != nil {
			of := during(l.Situation.Name)
			if also := "at " + word; !slices.Contains(b.called[of], also) {
				b.called[of] = append(b.called[of], also)
			}
		}
	}
}

// leastAt is the situation with the engine at a speed in which least is to spare.
func (b *book) leastAt(speed string) (least *budget.Line) {
	at := map[string]float64{"idle": b.d.Charging.IdleRPM.Value, "cruise": b.d.Charging.CruiseRPM.Value}[speed]
	for _, l := range b.r.Balanced().Lines {
		if l.Usable && at > 0 && l.Situation.EngineRPM == at && (least == nil || l.SpareA < least.SpareA) {
			least = l
		}
	}
	return least
}

func (b *book) addWires(add adding) bool {
	for _, w := range b.c.Wires {
		br := w.Branch
		shorts := func() bool { return b.shortOf(w, fault.FarEnd) != nil && b.shortOf(w, fault.NearEnd) != nil }
		if !(add("allowed current of", w.Number, func() bool { return b.set().Model.Wires[w.Index].Known }, func() *Tree { return b.allowedTree(w) }) &&
			add("current of", w.Number, b.carries(br), func() *Tree { return b.ampsTree(br, ofWire(w), wireWords(w)) }) &&
			add("resistance of", w.Number, b.carries(br), func() *Tree { return b.ohmTree(br, ofWire(w), wireWords(w)) }) &&
			add("temperature of", w.Number, b.carries(br), func() *Tree { return b.hotTree(w) }) &&
			add("prospective short at", w.Number, shorts, func() *Tree { return b.shortTree(w, true) }) &&
			add("greatest short at", w.Number, shorts, func() *Tree { return b.shortTree(w, false) }) &&
			add("crimps of", w.Number, nil, func() *Tree { return b.endsTree(w) }) &&
			add("cut length of", w.Number, func() bool { return !w.Spec.Fitted }, func() *Tree { return b.cutTree(w) })) {
			return false
		}
	}
	return true
}

func (b *book) addFuses(add adding) bool {
	for _, br := range b.c.Branches {
		if br.Kind != circuit.FuseBranch || br.Fuse == nil || br.Fuse.Rating == nil || br.Fuse.Ref == "" {
			continue
		}
		ref := br.Fuse.Ref
		if !(add("rating of", ref, nil, func() *Tree { return b.ratingTree(br) }) &&
			add("time to open of", ref, func() bool { return b.latest(br) != nil }, func() *Tree { return b.openTree(br) }) &&
			add("resistance of", ref, b.carries(br), func() *Tree { return b.ohmTree(br, ofFuse(br), fuseWords(br)) })) {
			return false
		}
	}
	return true
}

func (b *book) addSituations(add adding) bool {
	b.nameSpeeds()
	for _, l := range b.r.Balanced().Lines {
		if l.Usable && l.Situation.EngineRPM > 0 && b.d.Charging.Present() &&
			!add("spare", during(l.Situation.Name), nil, func() *Tree { return b.spareTree(l) }) {
			return false
		}
	}
	for _, l := range slices.Concat(b.r.Balanced().Lines, b.r.Balanced().KeyOff) {
		if l.Usable && !b.addHours(l, add) {
			return false
		}
	}
	days := b.r.Balanced().StandbyDays
	return b.r.Balanced().Left == nil || math.IsInf(days, 1) || math.IsNaN(days) || add("days", "parked", nil, b.daysTree)
}

// during is a situation as it stands in a sentence: "in night cruise", "at anchor".
func during(situation string) string {
	for _, word := range []string{"at ", "under ", "on "} {
		if strings.HasPrefix(situation, word) {
			return situation
		}
	}
	return "in " + situation
}

// addHours adds how long batteries last in a situation: of several each, and without a name
// the one that is down first.
func (b *book) addHours(l *budget.Line, add adding) bool {
	finite := func(h float64) bool { return !math.IsInf(h, 0) && !math.IsNaN(h) }
	name, first := "", math.Inf(1)
	trees := map[string]func() *Tree{}
	if finite(l.BatteryHours) && !l.Opens {
		name, first = "battery", l.BatteryHours
		trees[name] = func() *Tree { return b.hoursTree(l) }
	}
	for _, bank := range l.Banks {
		if bank.Bank != nil && finite(bank.Hours) && !bank.Opens {
			trees[bank.Bank.Name] = func() *Tree { return b.bankTree(l, bank) }
			if bank.Hours < first {
				name, first = bank.Bank.Name, bank.Hours
			}
		}
	}
	if name == "" {
		return true
	}
	in := during(l.Situation.Name)
	if len(trees) == 1 {
		b.called["hours "+in] = []string{"hours of " + name + " " + in}
	}
	if !add("hours", in, nil, trees[name]) {
		return false
	}
	for _, other := range slices.Sorted(maps.Keys(trees)) {
		if len(trees) > 1 && !add("hours of "+other, in, nil, trees[other]) {
			return false
		}
	}
	return true
}
