package report

import (
	"fmt"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/study/cranking"
)

// StudyStart is what a start of the engine leaves of the voltage in one case.
type StudyStart struct {
	Case     string      `json:"case"`
	AmbientC *float64    `json:"ambient_c"`
	Charge   *float64    `json:"charge"`
	StarterA *float64    `json:"starter_a"`
	PostsV   *float64    `json:"posts_v"`
	StarterV *float64    `json:"starter_v"`
	NeedsV   *float64    `json:"starter_needs_v"`
	FirstV   *float64    `json:"first_moment_v"`
	Drops    []string    `json:"relays_that_let_go"`
	Loads    []StartLoad `json:"loads"`
	On       []string    `json:"on"` // the loads that are where the posts have PostsV
	// LinkedV is PostsV with the voltage-sensing Relays of links to further batteries still closed; Further are those batteries.
	Relays  []string    `json:"relays,omitempty"`
	LinkedV *float64    `json:"posts_relays_closed_v,omitempty"`
	Further []StartBank `json:"further_batteries,omitempty"`

	turns  bool
	flowsA *float64 // through the starter: less than StarterA where it stands
}

// StartBank is what a further battery gives over its links while the starter turns: as the relays stand then, and with those that sense still closed.
type StartBank struct {
	Battery string   `json:"battery"`
	GivesA  *float64 `json:"gives_a"`
	LinkedA *float64 `json:"gives_relays_closed_a"`
}

// StartLoad is a load that is on while the engine is started.
type StartLoad struct {
	Ref    string   `json:"ref"`
	Part   string   `json:"part"`
	Volts  *float64 `json:"volts"`
	NeedsV *float64 `json:"needs_v,omitempty"`

	resets bool // as resets-at-start has it
}

func (rep *StudyReport) addStarts(r *harness.Review) {
	s := r.Cranking
	if s == nil {
		return
	}
	rep.Starter, rep.StarterAssumed, rep.SoundStartV = s.Start.Starter, s.Start.Assumed, finite(s.LeastV)
	rep.Starts = append(rep.Starts, startRows(s)...)
}

func startRows(s *cranking.Study) (rows []StudyStart) {
	for _, k := range s.Cases {
		row := StudyStart{Case: k.Name, AmbientC: finite(k.CelsiusC), Charge: finite(k.Charge), StarterA: finite(k.CurrentA),
			PostsV: finite(k.PostsV), StarterV: finite(k.StarterV), NeedsV: finite(k.NeedsV), FirstV: finite(k.FirstV), Drops: []string{}, Loads: []StartLoad{}, On: []string{}, turns: k.Turns(), flowsA: finite(k.FlowsA)}
		for _, relay := range k.Drops {
			row.Drops = append(row.Drops, relay.Ref+" "+relay.Name)
		}
		for _, l := range k.Loads {
			x := StartLoad{Ref: l.Part.Ref, Part: l.Part.Name, Volts: finite(l.Volts), resets: s.Resets(l)}
			if d, ok := l.Part.Source.(*design.Load); ok && d.NeedsV() > 0 {
				x.NeedsV = finite(d.NeedsV())
			}
			row.Loads = append(row.Loads, x)
		}
		for _, p := range k.On {
			row.On = append(row.On, p.Name)
		}
		for _, p := range s.Relays() {
			row.Relays = append(row.Relays, p.Name)
		}
		for _, h := range k.Helpers {
			row.Further = append(row.Further, StartBank{h.Part.Name, finite(h.GivesA), finite(h.HeldA)})
		}
		row.LinkedV = finite(k.HeldV)
		rows = append(rows, row)
	}
	return rows
}

// startShort says in few words what the posts have while the engine is started, in mild air and in the
// cold, and with loads which one has less than it needs in mild air; "" = not known.
func startShort(starts []StudyStart, loads bool) string {
	if len(starts) < 2 {
		return ""
	}
	mild, cold := starts[0], starts[1]
	text := fmt.Sprintf("posts %s at %s", volts(mild.PostsV), amps(mild.flowsA)+mild.turning())
	if linked := volts(mild.LinkedV); mild.LinkedV != nil && linked != volts(mild.PostsV) {
		text += fmt.Sprintf(", %s with %s still closed", linked, wording.And(mild.Relays))
	}
	text += fmt.Sprintf("; at %s %s", celsius(cold.AmbientC), volts(cold.PostsV)+cold.turning())
	if len(mild.On) > 0 {
		text += "; on: " + wording.Few(mild.On, 3)
	}
	if len(mild.Drops) > 0 {
		text += "; lets go: " + wording.Few(mild.Drops, 3)
	}
	if x := mild.shortest(func(x *StartLoad) bool { return x.resets }); loads && x != nil {
		text += fmt.Sprintf("; %s gets %s, needs %s", x.Part, volts(x.Volts), volts(x.NeedsV))
	}
	return text
}

// startsTable has a row for each case, with the load that is shortest of what it needs.
func startsTable(rep *StudyReport) *Table {
	t := newTable("battery, air", ">starter", ">at the posts", ">first moment", "least to spare", ">gets", ">needs")
	for _, s := range rep.Starts {
		load, gets, needs := "–", "–", "–"
		if x := s.shortest(func(*StartLoad) bool { return true }); x != nil {
			load, gets, needs = x.Ref+" "+x.Part, volts(x.Volts), volts(x.NeedsV)
		}
		t.add(s.Case+", "+celsius(s.AmbientC), amps(s.flowsA), volts(s.PostsV)+s.turning(), volts(s.FirstV), load, gets, needs)
	}
	t.Note = fmt.Sprintf("A sound start in mild air leaves %s at the posts. The first moment, the starter still at rest, lasts under a tenth of a second.",
		volts(rep.SoundStartV))
	if len(rep.Starts) > 0 {
		t.Note += " On meanwhile: " + wording.And(rep.Starts[0].On) + "."
		t.Note += rep.Starts[0].linked()
	}
	for _, s := range rep.Starts {
		if len(s.Drops) > 0 {
			t.Note += fmt.Sprintf(" Relays that let go, %s: %s.", s.Case, wording.And(s.Drops))
		}
	}
	title := "Starting the engine with " + rep.Starter
	if rep.StarterAssumed {
		title += ", the library's that suits the battery: the design has none"
	}
	return t.titled(title, "no starter or battery is known")
}

// linked says what further batteries give, and what the posts have with the relays between them open and still closed.
func (s StudyStart) linked() (text string) {
	give := func(of func(StartBank) *float64) []string {
		var list []string
		for _, x := range s.Further {
			if a := of(x); a != nil && *a > 0 {
				list = append(list, x.Battery+" gives "+amps(a))
			}
		}
		return list
	}
	if list := give(func(x StartBank) *float64 { return x.GivesA }); len(list) > 0 {
		text = fmt.Sprintf(" On full batteries in mild air %s over its link.", wording.And(list))
	}
	if list := give(func(x StartBank) *float64 { return x.LinkedA }); s.LinkedV != nil && len(list) > 0 {
		text += fmt.Sprintf(" With %s still closed, as soon after a stop, %s to the first of these starts, and the posts have %s in place of %s.", wording.And(s.Relays), wording.And(list), volts(s.LinkedV), volts(s.PostsV))
	}
	return text
}

// shortest is the load of some with the least above what it needs; nil when none says what that is.
func (s StudyStart) shortest(of func(*StartLoad) bool) *StartLoad {
	var least *StartLoad
	for i := range s.Loads {
		if x := &s.Loads[i]; x.NeedsV != nil && x.Volts != nil && of(x) && (least == nil || *x.Volts-*x.NeedsV < *least.Volts-*least.NeedsV) {
			least = x
		}
	}
	return least
}

// turning says of a start that fails that it does.
func (s StudyStart) turning() string {
	if s.turns {
		return ""
	}
	return ", does not turn"
}
