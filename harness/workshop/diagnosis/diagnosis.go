// Package diagnosis reckons from readings taken at the bench, or on a drive, what is wrong with a
// harness and where. It solves the network of the design with one fault, or two, in every place
// where there may be one, and weighs by how much each agrees with all readings together: least
// squares, each reading weighed by the meter and by what a sound harness may differ from its
// design (loads, contacts, air, battery: the tolerances of the design and of the library), each
// fault by how often its kind occurs.
//
// What the readings cannot tell apart is named together. Nothing here prints.
package diagnosis

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design/problem"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/library"
)

// UsualMeter is the class that is taken where the readings name none.
const UsualMeter = "common"

// Diagnosis is what readings say. Its shares add up to 1.
type Diagnosis struct {
	Date     string    `json:"date,omitempty"`
	By       string    `json:"by,omitempty"`
	Design   string    `json:"design,omitempty"`
	Revision string    `json:"revision,omitempty"` // of the design, as it was measured
	Meter    string    `json:"meter"`              // class, with its error in words
	Readings []*Judged `json:"readings"`
	Passed   int       `json:"passed"`
	Failed   int       `json:"failed"`
	Doubtful int       `json:"doubtful"`
	// Certain is wrong by what was seen or by a reading that stands for itself.
	Certain []string `json:"certain,omitempty"`
	// Wrong tells that a reading is out of its bounds, or that all together are not of a sound harness.
	Wrong bool    `json:"wrong"`
	Sound float64 `json:"sound"` // share of nothing being wrong that the network tells of
	// Unexplained stands first where no explanation is as likely as that the network has none.
	Unexplained  string         `json:"unexplained,omitempty"`
	Explanations []*Explanation `json:"explanations,omitempty"`
	Next         *Next          `json:"next,omitempty"`
	Measured     []*Measured    `json:"measured,omitempty"`
	Withheld     []*Withheld    `json:"withheld,omitempty"` // figures that are not taken while something bears on them
	Advice       string         `json:"advice,omitempty"`   // what to do by hand, by the kind of what is named
	Notes        []string       `json:"notes,omitempty"`    // what cannot be told, and what the shares rest on
}

// Explanation is one thing, or two, that would explain the readings.
type Explanation struct {
	Elements []string `json:"elements"` // designations: "W16"
	Text     string   `json:"text"`
	Share    float64  `json:"share"`
	// Alike names what else would have given the same readings, as near as the meter can tell.
	Alike []string `json:"alike,omitempty"`
	Sums  []Sum    `json:"sums,omitempty"`
	// RuledOut are elements on the way to what reads wrong that the other readings clear.
	RuledOut []string `json:"ruled_out,omitempty"`
	Fits     bool     `json:"fits"` // agrees with all readings as well as a meter lets it
}

// Sum is one line of what the size of a fault is reckoned from.
type Sum struct {
	Label string `json:"label"`
	Sum   string `json:"sum"`
	Value string `json:"value"`
	Note  string `json:"note,omitempty"`
}

// criedShare is how little likely a sound harness must be before readings that are all within their
// bounds are said to hint at something.
const criedShare = 0.02

// Of diagnoses a circuit by readings. The error is a problem.List.
func Of(c *circuit.Circuit, t *bench.Test, f *readings.File) (*Diagnosis, error) {
	d, _, _, err := of(c, t, f)
	return d, err
}

// of is Of with the model and the candidates, likeliest first.
func of(c *circuit.Circuit, t *bench.Test, f *readings.File) (*Diagnosis, *model, []*candidate, error) {
	lib := c.Design.Library
	if lib == nil {
		lib = library.Default()
	}
	class, err := meterOf(lib, f)
	if err != nil {
		return nil, nil, nil, err
	}
	placed, problems := readings.Match(t, f.Readings)
	m := newModel(c, class, lib)
	problems = append(problems, twice(placed)...)
	problems = append(problems, m.take(t, placed)...)
	if err := problems.Few(readings.MostSaid).Err(); err != nil {
		return nil, nil, nil, err
	}
	d := &Diagnosis{Date: f.Date, By: f.By, Design: f.Design, Revision: f.Revision, Meter: meterWords(class), Readings: judge(placed, class), Sound: 1}
	for _, j := range d.Readings {
		switch j.Verdict {
		case Pass:
			d.Passed++
		case Fail:
			d.Failed++
		case Doubtful:
			d.Doubtful++
		}
	}
	d.Certain = append(holders(c, placed), certain(placed, d.Readings)...)
	m.unfed(placed, d.Readings)
	var list []*candidate
	if len(m.sensors) > 0 {
		m.settle()
		list = m.tell(d, notFed(placed, d.Readings))
	}
	d.Wrong = d.Failed > 0 || d.Sound < criedShare
	if !d.Wrong {
		d.Explanations, d.Unexplained, d.Next, d.Advice = nil, "", nil, ""
	}
	m.notes(d, placed)
	return d, m, list, nil
}

func meterOf(lib *library.Library, f *readings.File) (*library.Meter, error) {
	name := f.Meter
	if name == "" {
		name = UsualMeter
	}
	if class := lib.Meter(name); class != nil {
		return class, nil
	}
	if name == UsualMeter {
		return library.Default().Meter(name), nil
	}
	names := lib.Names("meters")
	return nil, problem.List{{Pos: f.MeterPos, What: fmt.Sprintf("there is no class of meters %q", name), Expected: fmt.Sprint(names), Nearest: problem.Nearest(name, names)}}
}

func meterWords(m *library.Meter) string {
	return fmt.Sprintf("%s: volts %s %% and %g digits, clamp %s %% and %g A (%s)", m.Name, trim(100*m.VoltShare), m.Digits, trim(100*m.ClampShare), m.ClampA, m.Source.Certainty)
}

func trim(v float64) string { return fmt.Sprintf("%.3g", v) }

// certain are the failed looks, and the failed readings that the network has no part in.
func certain(placed []*readings.Placed, judged []*Judged) (list []string) {
	for i, p := range placed {
		if judged[i].Verdict == Fail && p.Check != nil && p.Check.Posts() && noSupply(p) {
			list = append(list, fmt.Sprintf("%s, %s: reads %s. Supply or lead first: is it on, its fuse whole, black on minus and red on plus? What else was read there is not held against it.",
				p.Check.Number, what(p.Check), judged[i].Reads))
			continue
		}
		if judged[i].Verdict != Fail || p.Check == nil || p.Check.Probe != nil && p.Section.Kind != bench.Charging && p.Section.Kind != bench.Live {
			continue
		}
		c := p.Check
		name := fmt.Sprintf("%s, %s", c.Number, what(c))
		switch p.Section.Kind {
		case bench.Fuses:
			if p.Quantity == "" { // a rating that was read: see holders
				list = append(list, fmt.Sprintf("%s: reads %s and must be %s. Another fuse than the design's no longer guards the wire it was chosen for, or opens in use.", name, judged[i].Reads, c.Text))
			}
		case bench.Isolation:
			list = append(list, fmt.Sprintf("%s: %s. The feed touches the frame, or a load is still plugged in: pull the fuses on its way one by one until it rises.", name, judged[i].Reads))
		case bench.Charging, bench.Live:
			list = append(list, fmt.Sprintf("%s: %s, %s. This goes by the charging system and the charge of the battery, not by the harness alone.", name, judged[i].Reads, judged[i].Why))
		default:
			list = append(list, fmt.Sprintf("%s: %s.", name, judged[i].Reads))
		}
	}
	return list
}

// candidate is an explanation with all fits that are of the same elements.
type candidate struct {
	*fit
	share float64
	alike []*candidate
}

// candidates gathers fits by element and gives them their shares; the rest is the sound circuit's.
func candidates(sound *fit, fits []*fit) (list []*candidate, soundShare float64) {
	top := sound.logP
	if len(fits) > 0 {
		top = math.Max(top, fits[0].logP)
	}
	sum := math.Exp(sound.logP - top)
	for _, f := range fits {
		w := math.Exp(f.logP - top)
		if !(w > 1e-9) {
			continue
		}
		sum += w
		i := slices.IndexFunc(list, func(c *candidate) bool { return sameFaultElements(c.faults, f.faults) })
		if i < 0 {
			list = append(list, &candidate{fit: f, share: w})
			continue
		}
		if list[i].share += w; list[i].point == nil && f.point != nil {
			list[i].fit = f
		}
	}
	for _, c := range list {
		c.share /= sum
	}
	slices.SortStableFunc(list, func(a, b *candidate) int {
		switch {
		case a.share > b.share:
			return -1
		case a.share < b.share:
			return 1
		}
		return 0
	})
	return list, math.Exp(sound.logP-top) / sum
}

func sameFaultElements(a, b []*fault) bool {
	if len(a) != len(b) {
		return false
	}
	for _, x := range a {
		if !slices.ContainsFunc(b, func(y *fault) bool { return y.element() == x.element() }) {
			return false
		}
	}
	return true
}
