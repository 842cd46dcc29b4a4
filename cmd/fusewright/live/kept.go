package live

import (
	"bytes"
	"cmp"
	"fmt"
	"path/filepath"
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/harness/workshop/diagnosis"
)

// kept is the file of readings, with what the present design asks for.
type kept struct {
	of     *circuit.Circuit
	name   string
	file   *readings.File
	test   *bench.Test
	checks []place
	cut    []*circuit.Wire
}

// place is a check with what it is of.
type place struct {
	section *bench.Section
	group   *bench.Group
	check   *bench.Check
	in, of  string
}

// openKept reads the file; the error is what is wrong with it.
func (s *Server) openKept(now *State) (*kept, error) {
	k := &kept{of: now.Review.Circuit, file: &readings.File{}, test: bench.Make(now.Review.Circuit), cut: now.Review.Circuit.ToCut()}
	for _, section := range k.test.Sections {
		for _, g := range section.Groups {
			for _, c := range g.Checks {
				in, of := readings.Key(section, g, c)
				k.checks = append(k.checks, place{section, g, c, in, of})
			}
		}
	}
	if s.opt.Kept == nil {
		return k, nil
	}
	k.name = filepath.Base(readings.Beside(s.opt.File))
	text, err := s.opt.Kept()
	if err != nil || len(bytes.TrimSpace(text)) == 0 {
		return k, err
	}
	file, err := readings.Read(k.name, text)
	if err == nil {
		k.file = file
	}
	return k, err
}

// answer is the file as the page has it, with what is wrong with it.
func (k *kept) answer(wrong error) *keptAnswer {
	out := &keptAnswer{File: k.name, Meter: k.file.Meter, By: k.file.By, Date: k.file.Date, Readings: map[string]string{},
		Elsewhere: []elsewhere{}, Cut: []string{}, Changed: []string{}, Stale: []string{}}
	if wrong != nil {
		out.Problem = wrong.Error()
		return out
	}
	placed, stale := readings.Match(k.test, k.file.Readings)
	for _, r := range placed {
		if r.Check == nil {
			out.Elsewhere = append(out.Elsewhere, elsewhere{r.Reading.Check, r.In, r.Text})
			continue
		}
		out.Readings[r.Check.Number] = r.Text
	}
	for _, p := range stale {
		out.Stale = append(out.Stale, p.What)
	}
	for _, t := range k.file.Cut {
		is := k.wire(t.Wire)
		if is != nil && (t.Of == "" || readings.TickOf(is).Of == t.Of) {
			out.Cut = append(out.Cut, t.Wire)
		} else {
			out.Changed = append(out.Changed, t.Wire)
		}
	}
	return out
}

func (k *kept) wire(number string) *circuit.Wire {
	if i := slices.IndexFunc(k.cut, func(w *circuit.Wire) bool { return w.Number == number }); i >= 0 {
		return k.cut[i]
	}
	return nil
}

// take puts changes in, and says which not; a change of which nothing can be put in is refused whole.
func (k *kept) take(change *keptChange) (refused []string, err error) {
	if n := len(change.Readings) + len(change.Cut); n > len(k.checks)+len(k.cut)+mostElsewhere {
		return nil, Refusal(fmt.Sprintf("%d readings and ticks are more than the bench test of this design has.", n))
	}
	for _, word := range []struct{ into, from *string }{{&k.file.Meter, change.Meter}, {&k.file.By, change.By}, {&k.file.Date, change.Date}} {
		if word.from != nil {
			*word.into = *word.from
		}
	}
	for _, r := range change.Readings {
		if err := k.put(r); err != nil {
			refused = append(refused, fmt.Sprintf("%s: %v", r.Check, err))
		}
	}
	for _, t := range change.Cut {
		is := k.wire(t.Wire)
		if is == nil || readings.TickOf(is).Of != t.Of {
			refused = append(refused, t.Wire+" is another wire now: look at it, and tick it again")
			continue
		}
		k.file.Cut = slices.DeleteFunc(k.file.Cut, func(o *readings.Tick) bool { return o.Wire == t.Wire })
		if t.Done {
			k.file.Cut = append(k.file.Cut, readings.TickOf(is))
		}
	}
	k.sort()
	if n := len(change.Readings) + len(change.Cut); n > 0 && len(refused) == n && change.Meter == nil && change.By == nil && change.Date == nil {
		return nil, Refusal("Nothing of it can be kept: " + refused[0])
	}
	return refused, nil
}

// put sets or takes away one reading. One of the test is known by what it is of.
func (k *kept) put(r keptReading) error {
	if r.Of == "" {
		same := func(o *readings.Reading) bool { return o.Check == r.Check && o.In == r.In && o.Of == "" }
		if r.Reads == "" {
			k.drop(same)
			return nil
		}
		fresh := &readings.Reading{Check: r.Check, In: r.In}
		err := fresh.Take(r.Reads)
		if err == nil {
			err = diagnosis.Unplaced(k.of, k.test, fresh)
		}
		if err != nil {
			return err
		}
		k.drop(same)
		k.file.Readings = append(k.file.Readings, fresh)
		return k.few()
	}
	at := slices.IndexFunc(k.checks, func(p place) bool { return p.in == r.In && p.of == r.Of })
	if at < 0 {
		return fmt.Errorf("the test does not ask for it any more: %s", r.Of)
	}
	p := k.checks[at]
	var fresh *readings.Reading
	if r.Reads != "" {
		var err error
		if fresh, err = readings.For(p.section, p.group, p.check, r.Reads); err != nil {
			return err
		}
	}
	of := k.placed()
	k.drop(func(o *readings.Reading) bool { return of[o] == p.check })
	if fresh != nil {
		k.file.Readings = append(k.file.Readings, fresh)
	}
	return nil
}

// mostElsewhere is how many readings that the test does not ask for are kept: a fitter takes a few.
const mostElsewhere = 200

// few takes the last reading back where there are too many of those.
func (k *kept) few() error {
	n := 0
	for _, r := range k.file.Readings {
		if r.Of == "" && !r.Numbered() {
			n++
		}
	}
	if n <= mostElsewhere {
		return nil
	}
	k.file.Readings = k.file.Readings[:len(k.file.Readings)-1]
	return fmt.Errorf("more than %d readings that the test does not ask for", mostElsewhere)
}

func (k *kept) drop(which func(*readings.Reading) bool) {
	k.file.Readings = slices.DeleteFunc(k.file.Readings, which)
}

// placed are the checks of the readings that the test asks for.
func (k *kept) placed() map[*readings.Reading]*bench.Check {
	of := map[*readings.Reading]*bench.Check{}
	list, _ := readings.Match(k.test, k.file.Readings)
	for _, p := range list {
		of[p.Reading] = p.Check
	}
	return of
}

// sort puts readings into the order of the test, and ticks into that of the cut list; what is of
// neither stays behind.
func (k *kept) sort() {
	of, rank := k.placed(), map[*bench.Check]int{}
	for i, p := range k.checks {
		rank[p.check] = i - len(k.checks) // below 0, which is of what has none
	}
	slices.SortStableFunc(k.file.Readings, func(a, b *readings.Reading) int { return cmp.Compare(rank[of[a]], rank[of[b]]) })
	cut := map[string]int{}
	for i, w := range k.cut {
		cut[w.Number] = i - len(k.cut)
	}
	slices.SortStableFunc(k.file.Cut, func(a, b *readings.Tick) int { return cmp.Compare(cut[a.Wire], cut[b.Wire]) })
}
