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

// turnOn gives the loads that no situation turns on one in which they are sized, at cruise
// and beside what the situation that draws most has on: wires that lie together heat
// together. What is dead there gets one of its own. They stay in the design while the search
// is at work, see during.
func (s *search) turnOn(c *circuit.Circuit, loads []*circuit.Branch) (*verdict, error) {
	all := s.busiest(c)
	for _, b := range loads {
		all = append(all, b.Load.Load)
	}
	s.addSituation("all on", all, loads[0].Load.Load)
	v, err := s.judge()
	if err != nil {
		return nil, err
	}
	alone := false
	for _, b := range loads {
		if !v.turnsOn(b) {
			l := b.Load.Load
			s.addSituation(l.Name+" on", []*design.Load{l}, l)
			alone = true
		}
	}
	if alone {
		if v, err = s.judge(); err != nil {
			return nil, err
		}
	}
	for _, b := range loads { // where its feed is dead even so, it is not
		if v.turnsOn(b) {
			s.asIfOn = append(s.asIfOn, b.Load.Load.Name)
		}
	}
	slices.Sort(s.asIfOn)
	return v, nil
}

func (s *search) addSituation(name string, on []*design.Load, at *design.Load) {
	s.d.Situations = append(slices.Clip(s.d.Situations), &design.Situation{Name: name, Key: design.KeyOn,
		EngineRPM: s.d.Charging.CruiseRPM.Value, On: on, With: s.d.Conditions, Pos: at.Pos})
}

// busiest are the loads of the situation whose loads are rated for most.
func (s *search) busiest(c *circuit.Circuit) (on []*design.Load) {
	mostA := 0.0
	for _, x := range s.d.Situations {
		sumA := 0.0
		for _, b := range c.Branches {
			if b.Load != nil && slices.Contains(x.On, b.Load.Load) {
				sumA += b.Load.RatedA()
			}
		}
		if sumA > mostA {
			mostA, on = sumA, slices.Clone(x.On)
		}
	}
	return on
}

func (v *verdict) turnsOn(load *circuit.Branch) bool {
	return slices.ContainsFunc(v.sols, func(s *solve.Solution) bool { return s.LoadOn[load.Index] })
}

// during does something while a design has other situations.
func during(d *design.Design, situations []*design.Situation, do func() error) error {
	was := d.Situations
	d.Situations = situations
	defer func() { d.Situations = was }()
	return do()
}
