package diagnosis

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
)

// round begins the words of a clamp's reading, to parts those of two points.
const round, to = "round ", " to "

// place finds where a reading of one's own is: between two terminals, "E1 − to G1 −", or by a clamp
// round a wire or what a source gives, "round W6", "round G2".
func (m *model) place(t *bench.Test, r *readings.Reading) (*bench.Probe, *problem.Problem) {
	s, wrong := m.situationOf(r)
	if wrong != nil {
		return nil, wrong
	}
	p := &bench.Probe{}
	p.Situation, p.Options = t.Pass(s)
	if r.Engine > 0 {
		run := *s
		run.EngineRPM = r.Engine
		if run.As == nil {
			run.As = s
		}
		p.Situation, p.Options = m.run(&run)
	}
	if what, ok := strings.CutPrefix(r.Check, round); ok {
		p.Amps = m.carrier(what)
		if p.Amps == nil {
			return nil, &problem.Problem{Pos: r.Pos, What: fmt.Sprintf("there is no wire and no source %q", what), Nearest: problem.Nearest(what, m.carriers()),
				Expected: "a clamp round a wire or the lead of a source, such as " + round + m.c.Wires[0].Number}
		}
		return p, nil
	}
	from, back, ok := strings.Cut(r.Check, to)
	if !ok {
		return nil, &problem.Problem{Pos: r.Pos, What: fmt.Sprintf("%q is no check", r.Check),
			Expected: `a number of the bench test, two points such as "E1 − to G1 −", or a wire such as "round W6"`}
	}
	var ends [2]*circuit.Node
	for i, text := range []string{from, back} {
		if ends[i] = m.terminal(text); ends[i] == nil {
			return nil, &problem.Problem{Pos: r.Pos, What: fmt.Sprintf("there is no terminal %q", text), Nearest: problem.Nearest(text, m.terminals()),
				Expected: "the part's designation and the terminal, such as " + m.terminals()[0]}
		}
	}
	p.Volts = []bench.Span{{Plus: ends[0], Minus: ends[1]}}
	return p, nil
}

// Unplaced says what is wrong with where a reading that the test does not ask for was taken; nil = nothing.
func Unplaced(c *circuit.Circuit, t *bench.Test, r *readings.Reading) error {
	if _, wrong := (&model{c: c}).place(t, r); wrong != nil {
		return errors.New(strings.TrimPrefix(wrong.String(), ": "))
	}
	return nil
}

// run keeps one situation for each engine speed, so that readings at one are of one state.
func (m *model) run(s *design.Situation) (*design.Situation, solve.Options) {
	for _, o := range m.states {
		if o.situation.As != nil && o.situation.As == s.As && o.situation.EngineRPM == s.EngineRPM && o.situation.Name == s.Name {
			return o.situation, o.opt
		}
	}
	return s, solve.Options{}
}

func (m *model) situationOf(r *readings.Reading) (*design.Situation, *problem.Problem) {
	var names []string
	for _, s := range m.c.Design.Situations {
		if strings.EqualFold(s.Name, r.In) {
			return s, nil
		}
		names = append(names, s.Name)
	}
	what := fmt.Sprintf("%s: there is no situation %q", r.Check, r.In)
	if r.In == "" {
		what = fmt.Sprintf("%s: the situation is not said", r.Check)
	}
	p := &problem.Problem{Pos: r.Pos, What: what, Nearest: problem.Nearest(r.In, names)}
	if p.Nearest == "" {
		p.Expected = strings.Join(names, ", ")
	}
	return nil, p
}

// carrier is the branch whose current a clamp reads: a wire's, or the only source of a part.
func (m *model) carrier(what string) *circuit.Branch {
	for _, w := range m.c.Wires {
		if strings.EqualFold(w.Number, what) {
			return w.Branch
		}
		for _, piece := range w.Pieces {
			if strings.EqualFold(piece.Number, what) {
				return w.Branch
			}
		}
	}
	for _, b := range m.c.Branches {
		if b.Part != nil && strings.EqualFold(b.Part.Ref, what) && slices.Contains([]circuit.BranchKind{circuit.BatteryBranch, circuit.ChargerBranch, circuit.OutputBranch}, b.Kind) {
			return b
		}
	}
	return nil
}

func (m *model) carriers() (names []string) {
	for _, w := range m.c.Wires {
		names = append(names, w.Number)
	}
	return names
}

// terminal finds a terminal by designation and name, of a splice or ground point by the designation.
func (m *model) terminal(text string) *circuit.Node {
	text = strings.ReplaceAll(text, "−", "-")
	ref, name, _ := strings.Cut(text, " ")
	for _, p := range m.c.Parts {
		if !strings.EqualFold(p.Ref, ref) {
			continue
		}
		for _, t := range p.Terminals {
			if strings.EqualFold(t.Name, name) || name == "" && len(p.Terminals) == 1 {
				return t.Node
			}
		}
	}
	return nil
}

func (m *model) terminals() (names []string) {
	for _, p := range m.c.Parts {
		for _, t := range p.Terminals {
			names = append(names, terminalName(t))
		}
	}
	return names
}

// terminalName is how a terminal is written at the bench: "E1 −", of splices and studs "X5".
func terminalName(t *circuit.Terminal) string {
	if len(t.Part.Terminals) == 1 {
		return t.Part.Ref
	}
	return t.Part.Ref + " " + strings.ReplaceAll(t.Name, "-", "−")
}
