package live

import (
	"net/url"

	"fusewright/harness/design/edit"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/harness/workshop/diagnosis"
	"fusewright/render/report"
)

// diagnoseAnswer is what the kept readings say, with the lines of the design that what was measured changes.
type diagnoseAnswer struct {
	*diagnosis.Diagnosis
	Lines []report.DesignLine `json:"lines,omitempty"`
}

// diagnose reckons from the readings that are kept what is wrong and where. Those that the present test
// does not ask for are left out; the bench says so of each.
func diagnose(s *Server, now *State, _ url.Values, _ []byte) (any, error) {
	k, err := s.openKept(now)
	if err != nil {
		return nil, Refusal(err.Error())
	}
	file := *k.file
	file.Readings = nil
	placed, _ := readings.Match(k.test, k.file.Readings)
	for _, p := range placed {
		file.Readings = append(file.Readings, p.Reading)
	}
	d, err := diagnosis.Of(now.Review.Circuit, k.test, &file)
	if err != nil {
		return nil, Refusal(err.Error())
	}
	text := now.Text
	for _, m := range d.Measured {
		next, err := edit.Set(text, m.Set)
		if err != nil || len(m.Set) == 0 {
			continue
		}
		if _, err := s.opt.Assess(next); err == nil {
			text = next
		}
	}
	return diagnoseAnswer{d, report.ChangedLines(now.Text, text)}, nil
}
