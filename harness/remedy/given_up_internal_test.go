package remedy

import (
	"testing"

	"fusewright/harness/design"
)

// What a night can do without: comfort first, never a lamp or what is meant to stay live.
func TestWithoutComfortFirst(t *testing.T) {
	x := testerOf(t, "")
	load := func(name string, sign design.Sign, stays string) *design.Load {
		l := &design.Load{Sign: sign}
		l.Name, l.StaysLive.Value = name, stays
		return l
	}
	on := []*design.Load{load("tracker", design.SignElectronics, "theft"), load("left lamp", design.SignLED, ""),
		load("radio", design.SignElectronics, ""), load("grips", design.SignHeater, "")}
	x.Design.Situations = []*design.Situation{{Name: "day", On: on}, {Name: "night", On: on}}
	var got []string
	for _, l := range x.without("night") {
		got = append(got, l.Will)
	}
	if len(got) != 2 || got[0] != "without grips" || got[1] != "without grips and radio" {
		t.Errorf("%q", got)
	}
}
