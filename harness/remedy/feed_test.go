package remedy_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/remedy"
)

// behind is a bilge pump with a float that hangs on the battery switch.
const behind = `
practice: marine
wire: {insulation: tinned marine 105 °C metric}
loads:
  bilge pump: {type: bilge pump, at: rear, fed by: [float switch, pump by hand], returns to: battery negative, stays live: "must run unattended"}
switches:
  isolator: {type: battery switch 100 A, at: battery tray, fed by: main, wire: {size: 10 mm², length: 100 mm}, stays live: "turns the boat off"}
  pump by hand: {type: sealed rocker 20 A, at: rear, fed by: pump joint, stays live: "works the pump"}
  float switch: {type: float switch 15 A, at: rear, fed by: pump joint, stays live: "pumps unattended"}
splices:
  pump joint: {at: battery tray, fed by: PUMP, wire: {length: 100 mm}}
fuses:
  main: {type: blade E, rating: 50 A, at: battery tray, fed by: battery, wire: {size: 10 mm², length: 50 mm}}
`

// TestOwnFeed: a pump behind the battery switch is taken to the battery: with a fuse of its
// own where it has none, with the one that it has, and thin wires again where they were
// left open; one that is fed so already gets no such remedy.
func TestOwnFeed(t *testing.T) {
	for name, c := range map[string]struct{ text, about, was, will string }{
		"no fuse of its own": {with(behind, "PUMP", "isolator"), "pump joint, wire", "fed by isolator",
			"blade C 5 A at battery, wires left open 1 mm²"},
		"its own fuse": {with(behind, "PUMP", "pump fuse") +
			"  pump fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: isolator, wire: {size: 10 mm², length: 100 mm}}\n",
			"pump fuse", "fed by isolator", "fed by battery"},
		"at the battery": {with(behind, "PUMP", "pump fuse") +
			"  pump fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {length: 100 mm}}\n", "", "", ""},
	} {
		r := reviewtest.Of(t, []byte(example.Design(c.text)))
		found := false
		for _, x := range r.Remedies().Causes {
			for _, f := range x.Findings {
				if f.Rule == "bilge-pump-isolated" {
					found = true
					if x.Remedy == nil || x.Remedy.About != c.about || x.Remedy.Was != c.was || x.Remedy.Will != c.will {
						t.Errorf("%s: %+v", name, x.Remedy)
					}
				}
			}
		}
		if found != (c.about != "") {
			t.Errorf("%s: isolated is %v", name, found)
		}
	}
}

func with(text, old, now string) string { return strings.Replace(text, old, now, 1) }

// TestUnfusedHeavyLoad: 100 A without a fuse is mended by a fuse of another type than the
// usual one, whose ratings end below it.
func TestUnfusedHeavyLoad(t *testing.T) {
	p := reviewtest.Of(t, []byte(example.Design(`
loads:
  heater: {power: 1200 W, behaves: resistor, maximum fuse: 200 A, at: rear, fed by: battery, wire: {size: 35 mm²}, returns to: battery negative, return wire: {size: 35 mm²}, stays live: "heats the tank", own switch: true}
`))).Remedies()
	for _, c := range p.Causes {
		if c.Findings[0].Rule == "unfused-conductor" {
			if c.Remedy == nil || c.Remedy.About != "heater, wire" || !strings.HasSuffix(c.Remedy.Will, "125 A at battery") {
				t.Errorf("%+v", c.Remedy)
			}
			return
		}
	}
	t.Error("no unfused conductor")
}

// TestFuseOfALink: what is tried in the cable to another battery is no fuse for the little that flows while both are
// full. By hand: the engine gives 28 A, which over the 0.8 that the practice lets a fuse carry is 35 A; with 29 A the
// next rating is 40 A; a fuse of 20 A at the far end is for the cable, so 20 A here too.
func TestFuseOfALink(t *testing.T) {
	src, err := os.ReadFile("../../testdata/rules/link-end-unfused.yaml")
	if err != nil {
		t.Fatal(err)
	}
	unfused := with(string(src), "fed by: start end", "fed by: battery")
	for name, c := range map[string]struct{ src, want string }{
		"the engine's current": {unfused, "blade C 35 A at battery"},
		"an ampere more":       {with(unfused, "6000 rpm: 28 A", "6000 rpm: 29 A"), "blade C 40 A at battery"},
		"fused at the far end": {strings.NewReplacer("fed by: charging relay,", "fed by: house end,",
			"  start end: {type: blade C, rating: 20 A, at: battery tray, fed by: battery", "  house end: {type: blade C, rating: 20 A, at: rear, fed by: charging relay").Replace(unfused), "blade C 20 A at battery"},
	} {
		found := false
		for _, x := range reviewtest.Of(t, []byte(c.src)).Remedies().Causes {
			for _, trial := range append([]*remedy.Trial{x.Remedy}, x.Tried...) {
				if trial == nil || trial.About != "charging relay, wire" || !strings.Contains(trial.Will, " at battery") {
					continue
				}
				if !found && trial.Will != c.want {
					t.Errorf("%s: %s, want %s", name, trial.Will, c.want)
				}
				found = true
			}
		}
		if !found {
			t.Errorf("%s: no fuse is tried", name)
		}
	}
}
