package page

import (
	"encoding/json"
	"maps"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"

	"fusewright/harness"
	"fusewright/harness/study/outlook"
)

// PlannerAlone is the planner for a reader without the program: the answers that the program gives to the states
// that outlook.Beforehand chooses; no other is answered. Answers have much in common, so each
// value in them stands once, in Pool.
type PlannerAlone struct {
	Plan    *Planner            `json:"-"` // what can be asked, which stands in the model
	Speeds  []float64           `json:"speeds"`
	ParkedH []float64           `json:"parkedH"`
	Moves   map[string][]string `json:"moves"`  // by start, the controls that may be set
	Words   map[string]int      `json:"words"`  // by start, the place of what its controls are set to
	Pool    []json.RawMessage   `json:"pool"`   // values, each once
	States  map[string]int      `json:"states"` // by keyOf, the place of the answer
	Stands  map[string][]int    `json:"stands"` // by air in °C, the place of what is said of each of ParkedH

	places map[string]int
}

// PlannerFor makes the planner of the page that is one file. It solves some hundred states, on all
// processors; what comes of it does not depend on how many there are.
func PlannerFor(r *harness.Review) *PlannerAlone {
	p := r.Outlook()
	chosen := p.Beforehand()
	a := &PlannerAlone{Plan: PlannerOf(r), Speeds: chosen.Speeds, ParkedH: chosen.ParkedH, Moves: map[string][]string{},
		Words: map[string]int{}, States: map[string]int{}, Stands: map[string][]int{}, places: map[string]int{}}
	for start, controls := range chosen.Moves {
		a.Moves[start] = []string{}
		for _, c := range controls {
			a.Moves[start] = append(a.Moves[start], c.ID)
		}
	}
	for _, start := range p.Starts {
		a.Words[start.ID] = a.put(encoded(p.Words(start.State)))
	}
	answers := make([]*Outlook, len(chosen.States))
	next, wait := atomic.Int64{}, sync.WaitGroup{}
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(answers); i = int(next.Add(1)) - 1 {
				answers[i] = OutlookOf(r, p.Compute(chosen.States[i]))
			}
		})
	}
	wait.Wait()
	for i, s := range chosen.States {
		a.keep(s, answers[i], p.Words(s))
		air := number64(s.AirC)
		if a.Stands[air] != nil {
			continue
		}
		for _, s.ParkedH = range a.ParkedH {
			a.Stands[air] = append(a.Stands[air], a.put(encoded(parkedBig(r, s, p.Standing(s)))))
		}
	}
	return a
}

// keep puts an answer into the pool, without its state and what standing leaves.
func (a *PlannerAlone) keep(s outlook.State, o *Outlook, words map[string]string) {
	o.State, o.Big = Asked{}, o.Big[:len(o.Big)-1]
	a.States[a.keyOf(s, words)] = a.put(encoded(o))
}

// put is where a value stands in the pool: a list as the places of its items, an object as that of its names,
// below zero, and those of its values.
func (a *PlannerAlone) put(value json.RawMessage) int {
	at := []int{}
	switch value[0] {
	case '[':
		var items []json.RawMessage
		decode(value, &items)
		for _, item := range items {
			at = append(at, a.put(item))
		}
	case '{':
		var fields map[string]json.RawMessage
		decode(value, &fields)
		names := slices.Sorted(maps.Keys(fields))
		at = append(at, -1-a.place(encoded(names)))
		for _, name := range names {
			at = append(at, a.put(fields[name]))
		}
	default:
		return a.place(value)
	}
	return a.place(encoded(at))
}

func (a *PlannerAlone) place(value json.RawMessage) int {
	at, known := a.places[string(value)]
	if !known {
		at = len(a.Pool)
		a.places[string(value)], a.Pool = at, append(a.Pool, value)
	}
	return at
}

// keyOf names a state: its start, "off" or the engine speed, what each of the moves is set to; sealed/api.js does likewise.
func (a *PlannerAlone) keyOf(s outlook.State, words map[string]string) string {
	key := []string{s.Start, "off"}
	if s.KeyOn {
		key[1] = number64(s.SpeedPerMin)
	}
	for _, id := range a.Moves[s.Start] {
		key = append(key, words[id])
	}
	return strings.Join(key, "\n")
}

func number64(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// encoded and decode are JSON of values that have nothing in them that it cannot tell.
func encoded(v any) json.RawMessage {
	out, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	return out
}

func decode(from json.RawMessage, into any) {
	if err := json.Unmarshal(from, into); err != nil {
		panic(err)
	}
}
