package report

import (
	"math"

	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/protection"
)

// StudyVersion is the version of the study's JSON shape; see Version.
const StudyVersion = 1

// StudyReport is the fault study and the protection study in print order.
type StudyReport struct {
	Fusewright int     `json:"fusewright_study"`
	Design     Heading `json:"design"`
	// Greatest and Least are what the two currents of each short rest on.
	Greatest string          `json:"greatest"`
	Least    string          `json:"least"`
	Shorts   []StudyShort    `json:"shorts"`
	Fuses    []StudyFuse     `json:"fuses"`
	Lost     []StudyLost     `json:"lost_returns"`
	Abreast  []StudyAbreast  `json:"one_of_several_wires_lost,omitempty"`
	Strung   []StudyStrung   `json:"loads_in_series,omitempty"`
	Welded   []StudyWeld     `json:"welded_contacts"`
	High     StudyCondition  `json:"overvoltage"`
	Reverse  StudyCondition  `json:"reversed_battery"`
	Exposed  []StudyExposure `json:"exposed"`
	// Starter turns in Starts; one that is assumed is the library's.
	Starter        string        `json:"starter,omitempty"`
	StarterAssumed bool          `json:"starter_assumed,omitempty"`
	SoundStartV    *float64      `json:"sound_start_v,omitempty"`
	Starts         []StudyStart  `json:"starts"`
	Corners        *CornerReport `json:"corners,omitempty"`
	Caution        string        `json:"caution"`
}

// StudyShort is a bolted short in both states of the source.
type StudyShort struct {
	Ref      string      `json:"ref"`   // wire number, or the part's designation
	Part     string      `json:"part"`  // whose feed the wire is, or the part shorted inside
	Where    string      `json:"where"` // near end, between, far end, inside
	At       string      `json:"at,omitempty"`
	AlongM   *float64    `json:"along_m,omitempty"`
	Fed      bool        `json:"fed"`
	Greatest *ShortState `json:"greatest,omitempty"`
	Least    *ShortState `json:"least,omitempty"`
	Verdict  string      `json:"verdict"`
}

// ShortState is a short in one state of the source; null = never, or not known.
type ShortState struct {
	Amperes  *float64 `json:"amperes"`
	Opens    string   `json:"opens,omitempty"` // the fuse that clears it
	Assumed  bool     `json:"type_assumed,omitempty"`
	FastS    *float64 `json:"soonest_s"`
	SlowS    *float64 `json:"latest_s"`
	BreaksA  *float64 `json:"breaking_capacity_a,omitempty"`
	Wire     string   `json:"hottest_wire,omitempty"`
	EndC     *float64 `json:"end_c"`
	LimitC   *float64 `json:"limit_c"`
	StandsS  *float64 `json:"wire_stands_s"`
	Margin   *float64 `json:"margin"`
	Exceeded string   `json:"breaking_capacity_exceeded_by,omitempty"`
}

// StudyFuse is a device against its wires, loads and the devices above it.
type StudyFuse struct {
	Ref       string      `json:"ref"`
	Part      string      `json:"part"`
	Feeds     []string    `json:"feeds"` // by name, in branch order
	Type      string      `json:"type,omitempty"`
	Assumed   bool        `json:"type_assumed,omitempty"`
	RatingA   *float64    `json:"rating_a"`
	AmbientC  *float64    `json:"ambient_c"`
	RunsA     *float64    `json:"runs_a"`
	Situation string      `json:"situation,omitempty"`
	CarriesA  *float64    `json:"carries_a"`
	Share     *float64    `json:"share"`
	BehindA   *float64    `json:"short_behind_a"`
	BreaksA   *float64    `json:"breaking_capacity_a"`
	Wires     []FuseWire  `json:"wires"`
	Starts    []FuseStart `json:"starts"`
	Above     []FuseAbove `json:"above"`
}

// FuseWire is a device against a wire; the margin is the time that the wire
// stands over the latest opening at the worst current.
type FuseWire struct {
	Wire     string   `json:"wire"`
	Size     string   `json:"size"`
	FromA    *float64 `json:"from_a"`
	ToA      *float64 `json:"to_a"`
	WorstA   *float64 `json:"worst_a"`
	OpensS   *float64 `json:"latest_s"`
	StandsS  *float64 `json:"wire_stands_s"`
	Margin   *float64 `json:"margin"` // null = the wire stands every such current for good
	Known    bool     `json:"published"`
	KnownMin *float64 `json:"margin_where_published"`
	Parallel bool     `json:"other_feeds,omitempty"`
	Note     string   `json:"note,omitempty"`
	Missing  []string `json:"missing,omitempty"`
}

// FuseStart is a device against the start of a load.
type FuseStart struct {
	Load      string   `json:"load"`
	Ref       string   `json:"ref"`
	Share     *float64 `json:"share"`
	Margin    *float64 `json:"margin"` // soonest opening over elapsed time; null = no start to speak of
	MeltShare *float64 `json:"share_of_melting_i2t"`
	Holds     bool     `json:"holds"`
	Note      string   `json:"note,omitempty"`
}

// FuseAbove is a device against one nearer the source.
type FuseAbove struct {
	Ref     string   `json:"ref"`
	Part    string   `json:"part"`
	UpToA   *float64 `json:"selective_up_to_a"`
	Verdict string   `json:"at_shorts"` // selective, not sure, not known, upper first
	AtA     *float64 `json:"at_a"`
	LowerS  *float64 `json:"lower_latest_s"`
	UpperS  *float64 `json:"upper_soonest_s"`
	By      string   `json:"by,omitempty"`
	Note    string   `json:"note,omitempty"`
}

// NewStudy makes the report of a review's studies.
func NewStudy(r *harness.Review) *StudyReport {
	rep := &StudyReport{Fusewright: StudyVersion, Design: heading(r.Design), Shorts: []StudyShort{},
		Fuses: []StudyFuse{}, Lost: []StudyLost{}, Welded: []StudyWeld{}, Exposed: []StudyExposure{}, Starts: []StudyStart{},
		Corners: NewCorners(r), Caution: CautionOf(r.Design)}
	if s := r.Faults; s != nil {
		rep.Greatest, rep.Least = s.States[fault.Strong], s.States[fault.Weak]
		for _, sh := range s.Shorts {
			rep.Shorts = append(rep.Shorts, shortRow(r.Circuit, sh))
		}
		rep.addSingle(s)
	}
	if r.Protection != nil {
		for _, f := range r.Protection.Fuses {
			rep.Fuses = append(rep.Fuses, fuseRow(r.Circuit, f))
		}
	}
	rep.addStarts(r)
	return rep
}

func shortRow(c *circuit.Circuit, sh *fault.Short) StudyShort {
	row := StudyShort{Where: string(sh.Where), At: sh.At, Fed: sh.Fed, Verdict: string(verdictOf(c, sh))}
	if sh.Wire != nil {
		row.Ref, row.Part, row.AlongM = sh.Wire.Number, sh.Wire.To.Part.Name, finite(sh.AlongM)
	} else {
		row.Ref, row.Part = sh.Part.Ref, sh.In()
	}
	if sh.Fed {
		row.Greatest, row.Least = shortState(&sh.Results[fault.Strong]), shortState(&sh.Results[fault.Weak])
	}
	return row
}

func shortState(r *fault.Result) *ShortState {
	s := &ShortState{Amperes: finite(r.CurrentA), FastS: finite(r.FastS), SlowS: finite(r.SlowS), Assumed: r.Assumed}
	if r.Device != nil {
		s.Opens = r.Device.Fuse.Ref
		if r.BreaksA > 0 {
			s.BreaksA = finite(r.BreaksA)
		}
	}
	if r.Exceeded != nil {
		s.Exceeded = r.Exceeded.Fuse.Ref
	}
	if h := r.Worst; h != nil {
		s.Wire, s.EndC, s.LimitC = h.Wire.Number, finite(h.EndC), finite(h.LimitC)
		s.StandsS, s.Margin = finite(h.DamageS), finite(h.Margin())
	}
	return s
}

// shortVerdict is a short in two words, the gravest that holds in either state.
type shortVerdict string

// The verdicts.
const (
	cleared    shortVerdict = "cleared"
	notFed     shortVerdict = "not fed"
	behind     shortVerdict = "behind a diode" // what charges feeds it alone, which limits itself
	noFuse     shortVerdict = "no fuse"
	stub       shortVerdict = "stub" // from the battery to its first fuse, no longer than is allowed
	tooWeak    shortVerdict = "may never open"
	wireHurt   shortVerdict = "wire damaged"
	limited    shortVerdict = "converter limits" // to what every wire on the way carries for good
	overBreaks shortVerdict = "over breaking capacity"
)

func verdictOf(c *circuit.Circuit, sh *fault.Short) shortVerdict {
	if !sh.Fed && sh.Behind {
		return behind
	}
	if !sh.Fed {
		return notFed
	}
	worst := cleared
	for i := range sh.Results {
		r := &sh.Results[i]
		switch {
		case (r.Device == nil || r.Bare) && sh.Wire != nil && (c.IsPost(sh.Wire.From.Node) || c.IsPost(sh.Wire.To.Node)) && c.Tail(sh.Wire):
			return stub
		case r.Device == nil && r.Limited && (r.Worst == nil || r.Worst.Survives()):
			worst = limited
		case r.Device == nil || r.Bare:
			return noFuse
		case r.Worst != nil && !r.Worst.Survives():
			worst = wireHurt
		case r.TooWeak() && worst != wireHurt:
			worst = tooWeak
		case r.Exceeded != nil && worst == cleared:
			worst = overBreaks
		}
	}
	return worst
}

func fuseRow(c *circuit.Circuit, f *protection.Fuse) StudyFuse {
	row := StudyFuse{Ref: f.Branch.Fuse.Ref, Part: placeOf(f.Branch), Feeds: c.BelowBranch(f.Branch).Names(), Assumed: f.Assumed,
		AmbientC: finite(f.Device.AmbientC), RunsA: finite(f.RunningA), CarriesA: finite(f.Running.CarriesA),
		Share: finite(f.Running.Share), BehindA: finite(f.FaultA),
		Wires: []FuseWire{}, Starts: []FuseStart{}, Above: []FuseAbove{}}
	if f.Device.Type != nil {
		row.Type = f.Device.Type.Name
		if !f.Assumed && f.Device.Type.BreakingA > 0 {
			row.BreaksA = finite(f.Device.Type.BreakingAt(c.Design.NominalV()))
		}
	}
	if f.Device.Rating != nil {
		row.RatingA = finite(f.Device.Rating.RatingA)
	}
	if f.Situation != nil {
		row.Situation = f.Situation.Name
	}
	for i := range f.Wires {
		row.Wires = append(row.Wires, fuseWire(&f.Wires[i]))
	}
	for _, s := range f.Starts {
		row.Starts = append(row.Starts, FuseStart{Load: s.Load.Part.Name, Ref: s.Load.Part.Ref, Share: finite(s.Share),
			Margin: finite(s.Margin), MeltShare: finite(s.MeltShare), Holds: s.StartHolds, Note: s.Note})
	}
	for i := range f.Above {
		row.Above = append(row.Above, fuseAbove(&f.Above[i]))
	}
	return row
}

// placeOf is the fuse's part, with the way of a block.
func placeOf(b *circuit.Branch) string {
	if b.Part == nil {
		return ""
	}
	if b.Part.Kind == circuit.Block {
		for _, t := range b.Part.Terminals {
			if t.Node == b.B && t.FuseRef != "" {
				return b.Part.Name + " " + t.Name
			}
		}
	}
	return b.Part.Name
}

func fuseWire(w *protection.Wire) FuseWire {
	row := FuseWire{Wire: w.Wire.Number, FromA: finite(w.FromA), ToA: finite(w.ToA), WorstA: finite(w.WorstA),
		OpensS: finite(w.OpenS), StandsS: finite(w.DamageS), Margin: finite(w.Ratio), Known: w.OpenKnown,
		KnownMin: finite(w.KnownRatio), Parallel: w.Parallel, Note: w.Note, Missing: w.Missing}
	if w.Wire.Spec.Size != nil {
		row.Size = w.Wire.Spec.Size.Label
	}
	return row
}

func fuseAbove(p *protection.Pair) FuseAbove {
	row := FuseAbove{Ref: p.Above.Fuse.Ref, Part: placeOf(p.Above), UpToA: finite(p.UpToA), By: p.Shorts.By, Note: p.Shorts.Note,
		LowerS: finite(p.Shorts.DownS), UpperS: finite(p.Shorts.UpS)}
	row.AtA = finite(math.Max(p.Shorts.FailsA, p.Shorts.UpToA))
	switch {
	case p.Inverted != nil:
		row.Verdict, row.AtA = "upper first", finite(p.InvertedA)
		row.LowerS, row.UpperS = finite(p.DownS), finite(p.UpS)
	case p.At == nil:
		row.Verdict, row.AtA = "no short", nil
	case p.Shorts.Selective:
		row.Verdict = "selective"
	case p.Shorts.Known:
		row.Verdict = "not sure"
	default:
		row.Verdict = "not known"
	}
	return row
}
