package ride

const dayS = 24 * 3600.0

// spell is a time of a leg in which the sun shines on the panels, or does not.
type spell struct {
	lastsS float64
	sun    bool
}

// Sunlit is a time of a ride in which the sun shines on the panels.
type Sunlit struct{ FromS, ToS float64 }

// spellsOf are the days and nights of a leg. A ride has no clock: the sun of a day stands in the middle of each 24 h from
// the beginning of the leg, and that of a rest shorter than a day in proportion in the middle of it, our choice. What panels
// give in all is so that of the situation's sun hours, however long the leg.
func spellsOf(l *Leg) (list []spell) {
	lit, left := SituationOf(l.Leg).Sunlit(), l.Leg.Lasts.Value
	if lit == 0 || lit == 1 {
		return []spell{{left, lit == 1}}
	}
	night := 0.0
	for left > 0 {
		day := min(left, dayS)
		dark := day * (1 - lit) / 2
		list = append(list, spell{night + dark, false}, spell{day * lit, true})
		night, left = dark, left-day
	}
	return append(list, spell{night, false})
}
