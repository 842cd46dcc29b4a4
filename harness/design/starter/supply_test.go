package starter

import (
	"strings"
	"testing"

	"fusewright/library"
)

// TestWayToTheFrame: beside an inverter the return of a lithium house battery is left open, since a lead that chafes through
// behind the inverter's fuse returns by it; without one it is as thick as its link, and so it is afloat, where nothing returns by the hull.
func TestWayToTheFrame(t *testing.T) {
	for _, c := range []struct {
		vehicle, accessory, want string
	}{
		{"camper", "inverter", "returns to: battery negative}"},
		{"camper", "compressor fridge", "returns to: battery negative, return wire: {size: 16 mm²}}"},
		{"camper", "windlass", "returns to: battery negative, return wire: {size: 16 mm²}}"},
		{"off-road", "inverter", "returns to: battery negative, return wire: {length: 400 mm}}"},
		{"boat", "inverter", "returns to: battery negative, return wire: {size: 4 AWG, length: 400 mm}}"},
	} {
		text, err := Write(Answers{Vehicle: c.vehicle, Second: "LiFePO4 100 Ah", Accessories: []string{c.accessory}}, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		_, house, _ := strings.Cut(string(text), "\n  house: ")
		house, _, _ = strings.Cut(house, "\n")
		if !strings.HasSuffix(house, c.want) {
			t.Errorf("%s with %s: %s", c.vehicle, c.accessory, house)
		}
	}
}

// TestStrongMotorsOnTheMainFuse: no blade fuse of 20 A breaks what a house battery drives into a short at its post; behind
// the main fuse it need not.
func TestStrongMotorsOnTheMainFuse(t *testing.T) {
	text, err := Write(Answers{Vehicle: "camper", Second: "200 Ah", Solar: "200 W", Accessories: []string{"compressor fridge", "macerator pump"}}, library.Default())
	for _, want := range []string{"macerator pump fuse: {at: seat box, fed by: main, wire: {size: 10 mm²", "solar end: {at: seat box"} {
		if err != nil || !strings.Contains(string(text), want) {
			t.Errorf("no %q: %v", want, err)
		}
	}
}
