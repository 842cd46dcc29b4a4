package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// winchFor is a winch of a current on a wire of 16 mm² that is on for a time, and what
// is found of that wire by rule.
func winchFor(t *testing.T, amps float64, time string) map[string]*finding.Finding {
	t.Helper()
	src := example.Design(fmt.Sprintf(`
fuses:
  winch fuse: {type: strip SF51, rating: 125 A, at: battery tray, fed by: battery, wire: {size: 50 mm², length: 100 mm}}
loads:
  winch: {current: %g A, figure: highest, behaves: constant power, own switch: yes, at: battery tray, fed by: winch fuse, wire: {size: 16 mm², length: 300 mm}, returns to: battery negative, return wire: {size: 50 mm², length: 300 mm}%s}
situations:
  pulling: {key: on, engine: stopped, on: [winch]}
`, amps, time))
	found := map[string]*finding.Finding{}
	for _, f := range assess(t, "winch", []byte(src)) {
		if strings.Contains(f.What, "winch fuse to winch") || f.Rule == "fuse-under-load" {
			found[f.Rule] = f
		}
	}
	return found
}

// A wire that carries too much for good may do so for a minute every ten.
func TestWireForATime(t *testing.T) {
	for _, c := range []struct {
		name string
		amps float64
		time string
		want finding.Severity // 0 = no finding
		text string
	}{
		{"below, for good", 70, "", 0, ""},
		{"above, for good", 120, "", finding.Danger, " but may carry "},
		{"below, for a minute", 120, ", on for: 1 min, every: 10 min", 0, ""},
		{"above, for a minute", 185, ", on for: 1 min, every: 10 min", finding.Fault, " for 1 min every 10 min at "},
		{"above, for three minutes", 160, ", on for: 3 min, every: 30 min", finding.Fault, "; left on, it reaches its limit after "},
		{"how often is not said", 120, ", on for: 1 min", finding.Danger, " but may carry "},
	} {
		f := winchFor(t, c.amps, c.time)["wire-over-current"]
		switch {
		case f == nil && c.want == 0:
		case f == nil || f.Severity < c.want || c.want == 0 || !strings.Contains(f.What, c.text):
			t.Errorf("%s: %+v, want %v with %q", c.name, f, c.want, c.text)
		}
	}
}

// A protector may exceed what the wire carries for good where the wire is on for a
// time; not where it is on for good.
func TestProtectorForATime(t *testing.T) {
	if f := winchFor(t, 70, "")["fuse-over-wire"]; f == nil {
		t.Error("125 A over 16 mm² for good is not found")
	}
	if f := winchFor(t, 70, ", on for: 1 min, every: 10 min")["fuse-over-wire"]; f != nil {
		t.Errorf("on for a minute: %s", f.What)
	}
}

// A slow fuse may be smaller than the current of what is on for a time when its curve
// holds it; the limits are worked by hand in TestFuseInCycles. The converter draws more
// than its rated current on low volts.
func TestFuseHeldForATime(t *testing.T) {
	for _, c := range []struct {
		name string
		amps float64
		time string
		want string // "" = no fault
	}{
		{"held for a minute", 130, ", on for: 1 min, every: 10 min", ""},
		{"for good", 130, "", "continuously"},
	} {
		f := winchFor(t, c.amps, c.time)["fuse-under-load"]
		fault := f != nil && f.Severity >= finding.Fault
		if fault != (c.want != "") || fault && !strings.HasSuffix(f.What, c.want) {
			t.Errorf("%s: %+v, want %q", c.name, f, c.want)
		}
	}
}
