package fault_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/study/fault"
)

// apart is a bell that two circuits ring, each behind a diode of its own.
const apart = `fusewright: 1
title: two feeds apart
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 100 Ah, resistance: 3 mΩ, at: box}
places: {box: {ambient: 35 °C}, helm: {ambient: 35 °C}}
runs: [{from: box, to: helm, length: 3 m}]
wire: {size: 16 AWG}
fuses:
  pump fuse: {type: blade C, rating: 5 A, at: box, fed by: battery, wire: {length: 150 mm}}
  test fuse: {type: blade C, rating: 5 A, at: box, fed by: battery, wire: {length: 150 mm}}
switches:
  pump switch: {type: rocker 16 A, at: helm, fed by: pump fuse, positions: [manual, off, automatic]}
  float: {type: float switch 15 A, at: box, fed by: pump switch automatic}
  test button: {type: push button 3 A, momentary: yes, at: helm, fed by: test fuse}
diodes:
  from pump: {type: silicon diode 1 A, at: box, fed by: float, wire: {length: 200 mm}}
  from test: {type: silicon diode 1 A, at: helm, fed by: test button, wire: {length: 200 mm}}
loads:
  pump: {type: bilge pump, at: box, fed by: {float: {length: 1 m}, pump switch manual: {size: 16 AWG}}, returns to: battery negative, return wire: {length: 300 mm}}
  bell: {current: 150 mA, rated at: 12 V, symbol: horn, at: helm, fed by: [from pump, from test], returns to: battery negative}
situations:
  pumping: {key: off, on: [pump, bell], closed: [float], switches: {pump switch: automatic}}
`

// before is the wire by which a part of a name is fed, and whence.
type before struct{ from, to string }

func shortsOf(t *testing.T, text string) map[before]*fault.Short {
	t.Helper()
	out := map[before]*fault.Short{}
	for _, sh := range fault.Compute(buildtest.Circuit(t, []byte(text))).Shorts {
		if sh.Wire != nil && sh.Where == fault.NearEnd {
			out[before{sh.Wire.From.Part.Name, sh.Wire.To.Part.Name}] = sh
		}
	}
	return out
}

// A short before a diode sees nothing of what is beyond it: the current is that of the same
// circuit alone, and its own fuse clears it. One beyond both diodes is fed through both.
func TestDiodesBlockInShorts(t *testing.T) {
	alone := shortsOf(t, strings.NewReplacer("[from pump, from test]", "from pump",
		"  from test: {type: silicon diode 1 A, at: helm, fed by: test button, wire: {length: 200 mm}}\n", "").Replace(apart))
	for where, sh := range shortsOf(t, apart) {
		for state, r := range sh.Results {
			only := alone[where]
			if only == nil || where.from == "battery" {
				continue
			}
			if where.from == "from pump" { // by the other diode and 3.2 m of wire too
				if more := r.CurrentA / only.Results[state].CurrentA; more < 1.3 || !r.Parallel {
					t.Errorf("%v: %.3g times the current of one feed", where, more)
				}
				continue
			}
			if want := only.Results[state].CurrentA; math.Abs(r.CurrentA-want) > 1e-9*want {
				t.Errorf("%v: %.6g A, alone %.6g A", where, r.CurrentA, want)
			}
			if r.Device == nil || r.Device.Part.Name != only.Results[state].Device.Part.Name {
				t.Errorf("%v: cleared by %+v", where, r.Device)
			}
			if len(r.Seen.Net.Blocking) != 1 && where.from != "test fuse" {
				t.Errorf("%v: %d diodes block", where, len(r.Seen.Net.Blocking))
			}
		}
	}
}

// A diode found the wrong way round is taken to point with its feed, as all were.
func TestReversedDiodeStillConductsInShorts(t *testing.T) {
	sh := shortsOf(t, strings.Replace(apart, "fed by: float, wire", "reversed: yes, fed by: float, wire", 1))[before{"from pump", "bell"}]
	if sh == nil || !sh.Fed || sh.Results[fault.Strong].CurrentA < 50 {
		t.Errorf("%+v", sh)
	}
}
