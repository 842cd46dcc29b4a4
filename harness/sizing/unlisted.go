package sizing

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// unlisted are the loads that draw in no situation because none lists them.
func (v *verdict) unlisted() (list []*circuit.Branch) {
	for _, b := range v.c.Branches {
		on := func(s *solve.Solution) bool {
			return s.LoadOn[b.Index] || slices.Contains(s.Situation.On, b.Load.Load)
		}
		if b.Load != nil && b.Load.Load != nil && !b.Load.Standby && !slices.ContainsFunc(v.sols, on) {
			list = append(list, b)
		}
	}
	return list
}

// turnOn gives each load that no situation turns on one of its own, at cruise and with
// what shares its fuse, in which it is sized. They stay in the design while the search is
// at work, see during.
func (s *search) turnOn(c *circuit.Circuit, loads []*circuit.Branch) (*verdict, error) {
	for _, b := range loads {
		l := b.Load.Load
		on := []*design.Load{l}
		if fuse := lastFuse(c.MainFeed(b.A).Branches); fuse != nil {
			for _, x := range c.BelowBranch(fuse).Loads {
				if x != b && x.Load.Load != nil {
					on = append(on, x.Load.Load)
				}
			}
		}
		s.d.Situations = append(slices.Clip(s.d.Situations), &design.Situation{Name: l.Name + " on", Key: design.KeyOn,
			EngineRPM: s.d.Charging.CruiseRPM.Value, On: on, Pos: l.Pos})
	}
	v, err := s.judge()
	if err != nil {
		return nil, err
	}
	for _, b := range loads { // where its feed is dead even so, it is not
		if slices.ContainsFunc(v.sols, func(s *solve.Solution) bool { return s.LoadOn[b.Index] }) {
			s.asIfOn = append(s.asIfOn, b.Load.Load.Name)
		}
	}
	slices.Sort(s.asIfOn)
	return v, nil
}

// during does something while a design has other situations.
func during(d *design.Design, situations []*design.Situation, do func() error) error {
	was := d.Situations
	d.Situations = situations
	defer func() { d.Situations = was }()
	return do()
}
