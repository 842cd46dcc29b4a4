package derivation

import (
	"math"

	"fusewright/harness/network/circuit"
	"fusewright/harness/study/fault"
)

// asked lists the figures of a review: of its loads, wires, fuses and situations.
func (b *book) asked() (list []Asked) {
	add := func(what string, make func(*book) *Tree) { list = append(list, Asked{what, make}) }
	for _, br := range b.c.Branches {
		if br.Kind == circuit.LoadBranch && br.Load.Load != nil && !br.Load.Standby {
			if _, in := b.worstDrop(br); in >= 0 {
				add("drop of "+br.Part.Name, func(b *book) *Tree { return b.dropTree(br) })
				add("volts at "+br.Part.Name, func(b *book) *Tree { return b.voltsTree(br) })
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

func (b *book) addWire(w *circuit.Wire, add func(string, func(*book) *Tree)) {
	carries := false
	if worst, in := b.worstAmps(w.Branch); in >= 0 && worst.Corner > traceA {
		carries = true
	}
	if b.set.Model.Wires[w.Index].Known {
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
	if sh, _ := b.slowest(br); sh != nil {
		add("time to open of "+br.Fuse.Ref, func(b *book) *Tree { return b.openTree(br) })
	}
	add("rating of "+br.Fuse.Ref, func(b *book) *Tree { return b.ratingTree(br) })
}

func (b *book) addSituations(add func(string, func(*book) *Tree)) {
	if b.r.Budget == nil {
		return
	}
	for _, l := range b.r.Budget.Lines {
		if l.Usable && l.Situation.EngineRPM > 0 && b.d.Charging.Present() {
			add("spare in "+l.Situation.Name, func(b *book) *Tree { return b.spareTree(l) })
		}
	}
	for _, list := range [...][]int{{0}, {1}} {
		lines := b.r.Budget.Lines
		if list[0] == 1 {
			lines = b.r.Budget.KeyOff
		}
		for _, l := range lines {
			if l.Usable && !math.IsInf(l.BatteryHours, 1) && !math.IsNaN(l.BatteryHours) {
				add("hours in "+l.Situation.Name, func(b *book) *Tree { return b.hoursTree(l) })
			}
		}
	}
	if days := b.r.Budget.StandbyDays; b.r.Budget.Left != nil && !math.IsInf(days, 1) && !math.IsNaN(days) {
		add("days parked", func(b *book) *Tree { return b.daysTree() })
	}
}
