package page

import (
	"encoding/json"
	"os/exec"
	"reflect"
	"strings"
	"testing"

	"fusewright/harness/proof/referencetest"
	"fusewright/harness/proof/reviewtest"
)

// asker asks the module that stands in place of a server what it is given, state by state.
const asker = `
import {readFileSync} from 'node:fs';
const {held, module, states} = JSON.parse(readFileSync(0, 'utf8'));
globalThis.document = {getElementById: () => ({textContent: JSON.stringify(held)})};
const api = await import('data:text/javascript,' + encodeURIComponent(module));
const ask = (s) => api.send('POST', '/api/outlook', s).catch((e) => ({trouble: e.message}));
process.stdout.write(JSON.stringify(await Promise.all(states.map(ask))));
`

// The page without its program gives the very answers that the program gives, and to what it was not asked
// beforehand none.
func TestAloneAgrees(t *testing.T) {
	node := referencetest.Program(t, "node")
	for _, file := range []string{"fen-runner.yaml", "hay-wain.yaml"} {
		r := reviewtest.File(t, "../../designs/"+file)
		alone, p := PlannerFor(r), r.Outlook()
		chosen := p.Beforehand()
		var states []Asked
		for i := 0; i < len(chosen.States); i += 5 {
			s := chosen.States[i]
			s.ParkedH = alone.ParkedH[i%len(alone.ParkedH)]
			states = append(states, asked(s))
		}
		known := len(states)
		for _, change := range []func(*Asked){func(a *Asked) { a.RPM = 1301 }, func(a *Asked) { a.AirC = 24 }, func(a *Asked) { a.Charge = 0.5 },
			func(a *Asked) { a.ParkedH = 1 }, func(a *Asked) { a.Set = map[string]string{"no such": "on"} }} {
			a := asked(p.Starts[1].State)
			a.ParkedH = alone.ParkedH[0]
			change(&a)
			states = append(states, a)
		}
		question, err := json.Marshal(map[string]any{"module": sealedAPI, "states": states,
			"held": map[string]any{"planner": alone, "model": map[string]any{"heading": map[string]string{"file": file}, "planner": alone.Plan}}})
		if err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command(node, "--input-type=module", "-e", strings.Replace(asker, "readFileSync(0", "readFileSync('/dev/stdin'", 1))
		cmd.Stdin = strings.NewReader(string(question))
		out, err := cmd.Output()
		if err != nil {
			t.Fatalf("%v: %s", err, err.(*exec.ExitError).Stderr)
		}
		var answers []*Outlook
		if err := json.Unmarshal(out, &answers); err != nil {
			t.Fatal(err)
		}
		legs := 0
		for i, a := range answers[:known] {
			s := states[i].State()
			want := &Outlook{}
			decode(encoded(OutlookOf(r, p.Compute(s))), want)
			if !reflect.DeepEqual(a, want) {
				t.Errorf("%s, %v:\n%s\nwith the program\n%s", file, states[i], encoded(a), encoded(want))
			}
			if strings.HasPrefix(s.Start, "ride ") {
				legs++
			}
		}
		if legs == 0 || known < 60 {
			t.Errorf("%s: %d states compared, %d of legs", file, known, legs)
		}
		for i, a := range answers[known:] {
			if !strings.Contains(a.Trouble, "fusewright serve "+file+" answers it") {
				t.Errorf("%s, %v: %q", file, states[known+i], a.Trouble)
			}
		}
	}
}
