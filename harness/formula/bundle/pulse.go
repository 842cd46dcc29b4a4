package bundle

import (
	"math"
	"sync"

	"fusewright/harness/formula/conductor"
)

// Pulse is what flows through a wire for a time only: it takes more of that than
// for good.
type Pulse struct {
	Gain    float64 // of a pulsed current over one for good, both to the same temperature; 0 and 1 = none
	SteadyA float64 // of the wire's current, what flows for good
	UsedA   float64 // all of its current; beyond it each part is taken as larger by the same share
}

// MostA is the current with which the wire gets as hot at its hottest as with
// another for good: ForGoodA the other way round.
func (p Pulse) MostA(forGoodA float64) float64 {
	if used := p.scaled(p.UsedA, 1/p.Gain); p.beyond(forGoodA, used) {
		return p.UsedA * forGoodA / used
	}
	return p.scaled(forGoodA, p.Gain)
}

// ForGoodA is the current for good that makes a wire as hot as one of the pulse does
// at its hottest. Heats are added up: I² = S² + (A² − S²)/k² for A above S.
func (p Pulse) ForGoodA(amps float64) float64 {
	if p.beyond(amps, p.UsedA) {
		return p.scaled(p.UsedA, 1/p.Gain) * amps / p.UsedA
	}
	return p.scaled(amps, 1/p.Gain)
}

func (p Pulse) beyond(amps, used float64) bool { return p.SteadyA > 0 && p.UsedA > 0 && amps > used }

func (p Pulse) scaled(amps, by float64) float64 {
	if !(p.Gain > 1) || !(amps > p.SteadyA) {
		return amps
	}
	return math.Sqrt(p.SteadyA*p.SteadyA + by*by*(amps*amps-p.SteadyA*p.SteadyA))
}

// lone is what the gain of a wire hangs on.
type lone struct {
	conductor.Insulated
	ambientC, limitC float64
	Cycle
}

// gains are those found; a gain hangs on its key alone. They are forgotten when
// there are many, since designs may ask for any.
var gains struct {
	sync.Mutex
	known map[lone]float64
}

const mostGains = 4096

// GainOf is how many times its current for good a wire alone in still air may carry
// in the on-times of a cycle, with its conductor at the limit at the hottest of the
// settled cycles; 1 where nothing is known. Beside others that are pulsed with it,
// and under a cover, a wire is slower, and the gain is no less.
func GainOf(w conductor.Insulated, ambientC, limitC float64, cy Cycle) float64 {
	key := lone{w, ambientC, limitC, cy}
	gains.Lock()
	defer gains.Unlock()
	if g, ok := gains.known[key]; ok {
		return g
	}
	if len(gains.known) >= mostGains || gains.known == nil {
		gains.known = map[lone]float64{}
	}
	g := gain(key)
	gains.known[key] = g
	return g
}

// mostGain bounds what a short on-time may give: a pulse of many times the current
// is a question of the contacts and the crimps, not of the wire.
const mostGain = 4.0

// leastGain is from where a gain is worth its words: less is within the model's error.
const leastGain = 1.02

func gain(k lone) float64 {
	part := k.within().duty()
	b, err := New([]Wire{{Insulated: k.Insulated, LimitC: k.limitC, Pulsed: true}}, Place{AmbientC: k.ambientC})
	if err != nil || !(part > 0 && part < 1) || !(k.limitC > k.ambientC) {
		return 1
	}
	alone := b.AloneA(0)
	const hot = 300.0 // K over the limit: far enough, and a number where copper melts
	g := largest(math.Min(mostGain, 1/math.Sqrt(part)), func(g float64) float64 {
		return math.Min(hot, b.with(0, g*alone).Course(0, k.Cycle).Settled.ConductorC-k.limitC)
	})
	if g < leastGain {
		return 1
	}
	return g
}
