package design

import (
	"strings"
	"testing"

	"fusewright/library"
)

// Limits of the design stand in its own copy of the practice, with whose they are; the
// library's stays as it was.
func TestOwnLimits(t *testing.T) {
	const head = "fusewright: 1\ntitle: t\nsystem: 12 V\npractice: camper\nbattery: {chemistry: AGM, capacity: 12 Ah}\n"
	d, err := Read("t.yaml", []byte(head+"limits: {drop aim: 2 %, fuse load: 70 %, fuse over wire: 90 %, smallest wire: 1.5 mm², smallest flexing wire: 2 mm²}\n"), nil)
	if err != nil {
		t.Fatal(err)
	}
	p, base := d.Practice, library.Default().Practice("camper")
	if p == base || p.Name != "camper" || base.DropAim != 0.03 || base.Source["drop aim"].Text == ownLimitSource {
		t.Fatal("the library's practice was changed")
	}
	for name, c := range map[string][2]float64{"aim": {p.DropAim, 0.02}, "load": {p.FuseLoadShare, 0.7}, "wire": {p.FuseWireShare, 0.9},
		"size": {p.MinMm2, 1.5}, "flexing": {p.MinFlexMm2, 2}, "the camper's": {p.DropOther, 0.05}} {
		if c[0] != c[1] {
			t.Errorf("%s: %g, want %g", name, c[0], c[1])
		}
	}
	if s := p.Source["least mm2"]; s.Text != ownLimitSource || s.Certainty != library.UserData {
		t.Errorf("source %v", s)
	}
	if d, _ := Read("t.yaml", []byte(head), nil); d.Practice != base {
		t.Error("a copy for nothing")
	}
	for limit, want := range map[string]string{"fuse load: 9 %": "10 % to 100 %", "fuse over wire: 101 %": "10 % to 100 %",
		"smallest wire: 0.04 mm²": "0.05 mm² to 10 mm²", "drop aim: 51 %": "0.1 % to 50 %"} {
		if _, err := Read("t.yaml", []byte(head+"limits: {"+limit+"}\n"), nil); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", limit, err)
		}
	}
}
