package rules

import (
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/review/finding"
)

// Every rule takes 30 °C where a place says nothing, as data-missing says: none
// prints another.
func TestOneAmbientWhereNoneIsGiven(t *testing.T) {
	silent := func(p *Pass) *Pass {
		for _, place := range p.d.Places {
			place.AmbientC = design.Quantity{}
		}
		return p
	}
	texts := func(found []*finding.Finding) string {
		var list []string
		for _, f := range found {
			list = append(list, f.What)
		}
		return strings.Join(list, "\n")
	}
	for _, r := range []*Rule{dataMissing, relayContactOverload} {
		said := texts(silent(passOf(t, r, r.Bad)).run())
		if !strings.Contains(said, "30 °C") || strings.Contains(said, "20 °C") {
			t.Errorf("%s:\n%s", r.Name, said)
		}
	}
}

// A coil that pulls in at 8 V at 20 °C needs 8 · (1 + 0.00393 · 10) = 8.3144 V
// where the ambient is left out.
func TestPullInWhereTheAmbientIsLeftOut(t *testing.T) {
	p := passOf(t, relayCoilVoltage, relayCoilVoltage.Mends())
	relay := part(t, p, "lamp relay")
	form := *relay.Source.(*design.Relay).Form
	form.PullInV, relay.Place = 8, nil
	relay.Source.(*design.Relay).Form = &form
	for volts, want := range map[float64]finding.Severity{8.31: finding.Fault, 8.32: none} {
		setVolts(p, relay.Coil(), volts)
		says(t, "coil voltage", p.run(), want)
	}
}
