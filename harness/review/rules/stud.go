package rules

import (
	"container/heap"
	"math"
	"slices"

	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
)

// guardStud spreads the protection from the charging system's own stud over what it feeds beside the batteries, where it
// drives more than what comes from those: behind diodes nothing does. The way to the batteries is its cable, which
// charging-cable-thin judges. What the machine gives at its stud it gives into a short as well, and no more.
func (f *facts) guardStud() {
	f.guardMachine, f.machineFed = map[*circuit.Branch]guard{}, make([]bool, len(f.c.Nodes))
	stud := f.c.Stud()
	if stud == nil {
		return
	}
	cable, machine := f.abovePosts(), make([]guard, len(f.c.Nodes))
	done := make([]bool, len(f.c.Nodes))
	for q := (&guardQueue{{stud, guard{A: math.Inf(1)}}}); q.Len() > 0; {
		at := heap.Pop(q).(reached)
		if done[at.node.Index] {
			continue
		}
		done[at.node.Index], machine[at.node.Index] = true, at.guard
		for _, b := range at.node.FeedsOn() {
			if !f.c.IsPost(b.B) && b.Passes(b.A) {
				heap.Push(q, reached{b.B, at.guard.behind(b)})
			}
		}
	}
	for _, b := range f.c.Branches {
		if b.Feeds() && !cable[b] && f.machineOver(machine[b.A.Index], f.guardAt(b)) {
			f.guardMachine[b], f.machineFed[b.B.Index] = machine[b.A.Index], true
		}
	}
	for i, fed := range f.machineFed {
		if fed && f.machineOver(machine[i], f.guards[i]) {
			f.guards[i] = machine[i]
		}
	}
}

// machineOver tells whether the machine drives more past a guard than batteries past theirs.
func (f *facts) machineOver(machine, batteries guard) bool {
	return math.Min(machine.A, f.machineColdA()) > batteries.A
}

// abovePosts are the branches by which the posts of batteries are fed.
func (f *facts) abovePosts() map[*circuit.Branch]bool {
	met := map[*circuit.Branch]bool{}
	for queue := f.c.Posts(); len(queue) > 0; queue = queue[1:] {
		for _, b := range queue[0].FedBy() {
			if !met[b] {
				met[b] = true
				if !f.c.IsPost(b.A) {
					queue = append(queue[:len(queue):len(queue)], b.A)
				}
			}
		}
	}
	return met
}

func (f *facts) machineColdA() float64 {
	cold, _ := charging.MostA(&f.d.Charging)
	return cold
}

// machineA is the most that reaches a branch which the charging system's own stud feeds: its cold output. Of a return it is that where
// all that draws back is fed so; +Inf where a battery feeds it.
func (f *facts) machineA(b *circuit.Branch) float64 {
	if len(f.guardMachine) == 0 {
		return math.Inf(1)
	}
	if b.Returns() {
		draws := f.c.DrawsBack(b)
		for _, x := range draws {
			if !f.machineFed[x.A.Index] {
				return math.Inf(1)
			}
		}
		if len(draws) > 0 {
			return f.machineColdA()
		}
	}
	if f.ofMachine(b) {
		return f.machineColdA()
	}
	return math.Inf(1)
}

// ofMachine tells of what the charging system's own stud feeds, and no battery so much.
func (f *facts) ofMachine(b *circuit.Branch) bool {
	_, ok := f.guardMachine[b]
	return ok
}

// bearsMachine tells of a wire that carries for good all that the charging system gives at its own stud: it needs no fuse.
func (f *facts) bearsMachine(w *circuit.Wire) bool {
	a := f.allowed(w)
	return a.known() && !over(w.Branch.ShareA(f.machineA(w.Branch)), a.ProvenA())
}

// machineReturns tells of a return wire of something that the charging system's own stud feeds without a fuse.
func (f *facts) machineReturns(w *circuit.Wire) bool {
	return isReturn(w) && len(f.guardMachine) > 0 && slices.ContainsFunc(f.c.DrawsBack(w.Branch), func(x *circuit.Branch) bool {
		return f.machineFed[x.A.Index] && f.guards[x.A.Index].open()
	})
}
