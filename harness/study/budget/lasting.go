package budget

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// Hours that a situation is taken to last, of which it says nothing: a night at
// anchor, a stop with the key off, and half an hour of riding or of a pause with the key
// on. A battery is expected to bear what is on with the engine stopped for so long, and
// what is on for a while at a time is used once in them. Common practice, no source.
const anchorHours, keyOffHours, spellHours = 8.0, 1.0, 0.5

// LastsS is how long a situation is taken to last, in seconds.
func LastsS(d *design.Design, s *design.Situation) float64 {
	switch {
	case s.LastsS > 0:
		return s.LastsS
	case s.Cranks():
		return longestStartS(s)
	case s.Key == design.KeyOn:
		return spellHours * 3600
	case d.Practice != nil && d.Practice.Afloat:
		return anchorHours * 3600
	}
	return keyOffHours * 3600
}

// longestStartS is how long the starters of a situation are on at once.
func longestStartS(s *design.Situation) (longest float64) {
	for _, l := range s.On {
		if l.Starts() {
			longest = max(longest, l.LongestS())
		}
	}
	return longest
}

// Average is how much of what each branch draws in a situation it draws on average.
func Average(d *design.Design, s *design.Situation) func(*circuit.Branch) float64 {
	return solve.AverageDraw(s, LastsS(d, s))
}
