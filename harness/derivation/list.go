package derivation

import (
	"maps"
	"math"
	"slices"
	"strings"

	"fusewright/harness/network/circuit"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/fault"
)

// asked lists the figures of a review: of its loads, wires, fuses and situations.
func (b *book) asked() (list []Asked) {
	add := func(what string, make func(*book) *Tree) { list = append(list, Asked{what, b.also(what), make}) }
	for _, br := range b.c.Branches {
		if br.Kind == circuit.LoadBranch && br.Load.Load != nil && !br.Load.Standby {
			if _, in := b.worstDrop(br); in >= 0 {
				add("drop of "+br.Part.Name, func(b *book) *Tree { return b.dropTree(br) })
				add("volts at "+br.Part.Name, func(b *book) *Tree { return b.voltsTree(br) })
			}
			if worst, in := b.worstAmps(br); in >= 0 && worst.Corner > traceA {
				add("current of "+br.Part.Name, func(b *book) *Tree { return b.ampsTree(br, ofPart(br.Part), br.Part.Name) })
			}
			add("limit of "+br.Part.Name, func(b *book) *Tree { return b.limitTree(br) })
		}
	}
	for _, w := range b.c.Wires {
		b.addWire(w, add)
	}
	for _, br := range b.c.Branches {
		if br.Kind == circuit.FuseBranch && br.Fuse != nil && br.Fuse.Rating != nil && br.Fuse.Ref != "" {
			b.addFuse(br, add)
		}
	}
	b.addSituations(add)
	b.addFindings(add)
	return list
}

// also are the other names of a figure: by the designation of a part in place of its name,
// of a fuse by its name, and of a situation by its engine speed.
func (b *book) also(what string) (names []string) {
	for _, word := range []string{"idle", "cruise"} {
		if l := b.leastAt(word); l != nil {
			if kind, found := strings.CutSuffix(what, " "+during(l.Situation.Name)); found {
				names = append(names, kind+" at "+word)
			}
		}
	}
	for _, p := range b.c.Parts {
		for _, word := range []string{" of ", " at "} {
			if kind, found := strings.CutSuffix(what, word+p.Name); found && p.Ref != "" {
				names = append(names, kind+word+p.Ref)
			}
			if kind, found := strings.CutSuffix(what, word+p.Ref); found && p.Kind == circuit.Fuse {
				names = append(names, kind+word+p.Name)
			}
		}
	}
	return names
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

func (b *book) addWire(w *circuit.Wire, add func(string, func(*book) *Tree)) {
	carries := false
	if worst, in := b.worstAmps(w.Branch); in >= 0 && worst.Corner > traceA {
		carries = true
	}
	if b.set().Model.Wires[w.Index].Known {
		add("allowed current of "+w.Number, func(b *book) *Tree { return b.allowedTree(w) })
	}
	if carries {
		add("current of "+w.Number, func(b *book) *Tree { return b.ampsTree(w.Branch, ofWire(w), wireWords(w)) })
		add("resistance of "+w.Number, func(b *book) *Tree { return b.ohmTree(w.Branch, ofWire(w), wireWords(w)) })
		add("temperature of "+w.Number, func(b *book) *Tree { return b.hotTree(w) })
	}
	if b.shortOf(w, fault.FarEnd) != nil && b.shortOf(w, fault.NearEnd) != nil {
		add("prospective short at "+w.Number, func(b *book) *Tree { return b.shortTree(w, true) })
		add("greatest short at "+w.Number, func(b *book) *Tree { return b.shortTree(w, false) })
	}
	add("crimps of "+w.Number, func(b *book) *Tree { return b.endsTree(w) })
	if !w.Spec.Fitted {
		add("cut length of "+w.Number, func(b *book) *Tree { return b.cutTree(w) })
	}
}

func (b *book) addFuse(br *circuit.Branch, add func(string, func(*book) *Tree)) {
	if worst, in := b.worstAmps(br); in >= 0 && worst.Corner > traceA {
		add("resistance of "+br.Fuse.Ref, func(b *book) *Tree { return b.ohmTree(br, ofFuse(br), fuseWords(br)) })
	}
	if b.latest(br) != nil {
		add("time to open of "+br.Fuse.Ref, func(b *book) *Tree { return b.openTree(br) })
	}
	add("rating of "+br.Fuse.Ref, func(b *book) *Tree { return b.ratingTree(br) })
}

func (b *book) addSituations(add func(string, func(*book) *Tree)) {
	for _, l := range b.r.Balanced().Lines {
		if l.Usable && l.Situation.EngineRPM > 0 && b.d.Charging.Present() {
			add("spare "+during(l.Situation.Name), func(b *book) *Tree { return b.spareTree(l) })
		}
	}
	for _, l := range slices.Concat(b.r.Balanced().Lines, b.r.Balanced().KeyOff) {
		if l.Usable {
			b.addHours(l, add)
		}
	}
	if days := b.r.Balanced().StandbyDays; b.r.Balanced().Left != nil && !math.IsInf(days, 1) && !math.IsNaN(days) {
		add("days parked", func(b *book) *Tree { return b.daysTree() })
	}
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
func (b *book) addHours(l *budget.Line, add func(string, func(*book) *Tree)) {
	finite := func(h float64) bool { return !math.IsInf(h, 0) && !math.IsNaN(h) }
	name, first := "", math.Inf(1)
	make := map[string]func(*book) *Tree{}
	if finite(l.BatteryHours) {
		name, first = "battery", l.BatteryHours
		make[name] = func(b *book) *Tree { return b.hoursTree(l) }
	}
	for _, bank := range l.Banks {
		if bank.Bank != nil && finite(bank.Hours) {
			make[bank.Bank.Name] = func(b *book) *Tree { return b.bankTree(l, bank) }
			if bank.Hours < first {
				name, first = bank.Bank.Name, bank.Hours
			}
		}
	}
	if name == "" {
		return
	}
	add("hours "+during(l.Situation.Name), make[name])
	for _, other := range slices.Sorted(maps.Keys(make)) {
		if len(make) > 1 {
			add("hours of "+other+" "+during(l.Situation.Name), make[other])
		}
	}
}
