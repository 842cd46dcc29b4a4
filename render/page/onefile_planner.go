package page

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness"
	"fusewright/harness/study/outlook"
)

// The states of the planner that are worked out for the page as one file: so many, fewer of a larger
// harness, at engine speeds so far apart. Our choice: a file that can be mailed, made in a twentieth of a second.
const (
	mostStates, fewestStates = 80, 12
	statesTimesWires         = 2000
	stepRPM                  = 1000.0
)

// plannerHeld is what the planner answers from when there is no server: answers to exact
// states. Nothing between them is guessed at.
type plannerHeld struct {
	StepRPM float64                      `json:"stepRpm"`
	Words   map[string]map[string]string `json:"words"`   // of each start: what its controls are set to
	Answers map[string]*Outlook          `json:"answers"` // by stateKey
	Says    string                       `json:"says"`    // to what is not among them
}

// holdPlanner works out each situation as it is, with the key turned, with each control otherwise, at
// speeds step by step; then the legs of rides; then situations with two controls otherwise, and so on
// until there are enough.
func holdPlanner(r *harness.Review) *plannerHeld {
	p := r.Outlook()
	h := &plannerHeld{StepRPM: stepRPM, Words: map[string]map[string]string{}, Answers: map[string]*Outlook{}}
	plan := plannerOf(r).(*Planner)
	most := min(mostStates, max(fewestStates, statesTimesWires/max(1, len(r.Circuit.Wires))))
	hold := func(s outlook.State) bool {
		key := stateKey(s)
		if h.Answers[key] == nil {
			if len(h.Answers) >= most {
				return false
			}
			h.Answers[key] = OutlookOf(r, p.Compute(s))
		}
		return true
	}
	var situations, legs []outlook.State
	for _, s := range plan.Starts {
		state := s.State.State()
		state.Set = map[string]string{}
		if s.Ride {
			legs = append(legs, state)
			continue
		}
		situations = append(situations, state)
		if hold(state) {
			h.Words[s.ID] = h.Answers[stateKey(state)].Words
		}
	}
	speeds := []float64{0}
	for _, m := range plan.Marks {
		speeds = append(speeds, m.RPM)
	}
	for rpm := stepRPM; rpm <= plan.MostRPM; rpm += stepRPM {
		speeds = append(speeds, rpm)
	}
	for _, s := range situations {
		turned := s
		turned.KeyOn, turned.SpeedPerMin = !s.KeyOn, 0
		hold(turned)
	}
	changes := further(p.Controls, []map[string]string{{}})
	h.holdChanged(situations, changes, hold)
	for _, s := range situations {
		for _, rpm := range speeds {
			at := s
			at.SpeedPerMin = rpm
			if s.KeyOn || rpm == 0 {
				hold(at)
			}
		}
	}
	for _, s := range legs {
		if hold(s) {
			h.Words[s.Start] = h.Answers[stateKey(s)].Words
		}
	}
	for len(changes) > 0 && len(h.Answers) < most {
		changes = further(p.Controls, changes)
		h.holdChanged(situations, changes, hold)
	}
	h.Says = fmt.Sprintf("This page is one file: it holds the situations as designed, at steps of %s, and with few switches otherwise. "+
		"For all else run fusewright serve with the design.", rpm(stepRPM))
	return h
}

// holdChanged holds situations with controls set otherwise than they have them.
func (h *plannerHeld) holdChanged(situations []outlook.State, changes []map[string]string, hold func(outlook.State) bool) {
	for _, set := range changes {
		for _, s := range situations {
			words := h.Words[s.Start]
			same := words == nil
			for id, word := range set {
				same = same || words[id] == word
			}
			if !same {
				s.Set = set
				hold(s)
			}
		}
	}
}

// further are all ways to set one more control, of those behind the last one that is set.
func further(controls []*outlook.Control, from []map[string]string) (list []map[string]string) {
	for _, set := range from {
		first := 0
		for i, c := range controls {
			if set[c.ID] != "" {
				first = i + 1
			}
		}
		for _, c := range controls[first:] {
			for _, word := range c.Words {
				more := maps.Clone(set)
				more[c.ID] = word
				list = append(list, more)
			}
		}
		if len(list) > mostStates*4 {
			break
		}
	}
	return list
}

// stateKey names a state: what the page makes of the same state in sealed/api.js.
func stateKey(s outlook.State) string {
	key := "off"
	if s.KeyOn {
		key = "on"
	}
	parts := []string{s.Start, key, strconv.FormatFloat(s.SpeedPerMin, 'f', -1, 64)}
	for _, id := range slices.Sorted(maps.Keys(s.Set)) {
		parts = append(parts, id+"="+s.Set[id])
	}
	return strings.Join(parts, "|")
}
