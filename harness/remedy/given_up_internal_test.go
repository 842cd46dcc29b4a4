package remedy

import (
	"slices"
	"testing"

	"fusewright/harness/study/budget"
	"fusewright/harness/study/together"
)

// What a night can do without: comfort first, of as much weight what takes most, never a lamp
// or what is meant to stay live; and where the budget sheds something, that first.
func TestWithoutComfortFirst(t *testing.T) {
	const common = "at: rear, fed by: lamp fuse, returns to: frame, behaves: constant power, own switch: yes"
	x := testerOf(t, `
loads:
  left lamp: {power: 20 W, symbol: LED, `+common+`}
  radio: {power: 10 W, symbol: electronics, `+common+`}
  map: {power: 20 W, symbol: electronics, `+common+`}
  grips: {power: 30 W, symbol: heater, `+common+`}
  night watch: {power: 1 W, symbol: electronics, stays live: theft, `+common+`}
situations:
  day: {engine: cruise, on: all}
  night: {engine: cruise, on: all}
`)
	x.hands = together.Weigh(x.Circuit, nil, &budget.Budget{})
	will := func() (list []string) {
		for _, l := range x.without("night") {
			list = append(list, l.Will)
		}
		return list
	}
	if want := []string{"without grips", "without grips and map", "without grips, map and radio"}; !slices.Equal(will()[:3], want) {
		t.Errorf("%q", will())
	}
	item := func(name string) *together.Item {
		return x.hands.Items[slices.IndexFunc(x.hands.Items, func(i *together.Item) bool { return i.Name == name })]
	}
	x.hands.Choices = []*together.Choice{{Situation: x.Design.Situations[1], SwitchOff: []*together.Item{item("map")}}}
	if want := []string{"without map", "without grips and map"}; !slices.Equal(will()[:2], want) {
		t.Errorf("%q", will())
	}
}
