package page

import (
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/proof/referencetest"
)

func reviewOf(t testing.TB, file string) *harness.Review {
	t.Helper()
	src, err := os.ReadFile("../../designs/" + file)
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read(file, src, nil)
	if err != nil {
		t.Fatal(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// runner asks the module of the page what it is given, state by state.
const runner = `
import {answer} from './planner_alone.mjs';
import {readFileSync} from 'node:fs';
const {alone, plan, states} = JSON.parse(readFileSync(0, 'utf8'));
process.stdout.write(JSON.stringify(states.map((s) => answer(alone, plan, s))));
`

// The page without its program answers as the program does: demand within some ten-thousandths, since
// wires are a little warmer in one state than in another, the battery's figures within a hundredth.
func TestAloneAgrees(t *testing.T) {
	node := referencetest.Program(t, "node")
	dir := t.TempDir()
	module, err := os.ReadFile("assets/planner_alone.js")
	if err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string]string{"planner_alone.mjs": string(module), "run.mjs": runner} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(data), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, file := range []string{"fen-runner.yaml", "reed-skiff.yaml"} {
		r := reviewOf(t, file)
		plan, alone, p := plannerOf(r).(*Planner), PlannerFor(r), r.Outlook()
		var states []Asked
		for _, s := range plan.Starts[:len(r.Design.Situations)] {
			for _, c := range plan.Controls {
				for _, word := range c.Words {
					for _, rpm := range []float64{0, 900, 1700, 3900} {
						x := s.State
						if x.Key == "on" {
							x.RPM = rpm
						}
						x.Set = map[string]string{c.ID: word}
						states = append(states, x)
					}
				}
			}
		}
		question, err := json.Marshal(map[string]any{"alone": alone, "plan": plan, "states": states})
		if err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command(node, filepath.Join(dir, "run.mjs"))
		cmd.Stdin = strings.NewReader(string(question))
		out, err := cmd.Output()
		if err != nil {
			t.Fatal(err)
		}
		var answers []Outlook
		if err := json.Unmarshal(out, &answers); err != nil {
			t.Fatal(err)
		}
		compared := 0
		for i, a := range answers {
			want := OutlookOf(r, p.Compute(states[i].State()))
			if strings.HasPrefix(a.Trouble, "not reckoned beforehand") {
				continue
			}
			if want.Trouble != "" || a.Trouble != "" {
				if (want.Trouble == "") != (a.Trouble == "") {
					t.Errorf("%s, %v: %q alone, %q with the program", file, states[i], a.Trouble, want.Trouble)
				}
				continue
			}
			compared++
			near := func(what string, got, want *float64, tolerance float64) {
				if (got == nil) != (want == nil) || got != nil && !(math.Abs(*got-*want) <= tolerance*(1+math.Abs(*want))) {
					t.Errorf("%s, %v: %s %v, with the program %v", file, states[i], what, text(got), text(want))
				}
			}
			near("demand", a.DemandA, want.DemandA, 5e-4)
			near("spare", a.SpareA, want.SpareA, 3e-3)
			near("even", a.EvenRPM, want.EvenRPM, 1e-3)
			for _, b := range a.Big {
				for _, w := range want.Big {
					x, errX := strconv.ParseFloat(b.Value, 64)
					y, errY := strconv.ParseFloat(w.Value, 64)
					if strings.Contains(b.Label, "battery") && b.Label == w.Label && b.Unit == w.Unit && errX == nil && errY == nil && math.Abs(x-y) > 0.015*math.Abs(y) {
						t.Errorf("%s, %v: %s %s %s, with the program %s", file, states[i], b.Label, b.Value, b.Unit, w.Value)
					}
				}
			}
		}
		if compared < len(answers)/2 {
			t.Errorf("%s: %d of %d states compared", file, compared, len(answers))
		}
		t.Logf("%s: %d states, %d kB", file, compared, len(question)/1000)
	}
}

func text(v *float64) any {
	if v == nil {
		return "none"
	}
	return *v
}
