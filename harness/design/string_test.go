package design_test

import (
	"strings"
	"testing"

	"fusewright/harness/design"
)

const inSeries = `fusewright: 1
title: t
system: 24 V
practice: camper
battery: {chemistry: AGM, capacity: 100 Ah, in series: 2, link: {size: 35 mm², length: 250 mm}}
batteries: {house: {chemistry: AGM, capacity: 100 Ah, in series: 2, link: {size: 35 mm², length: 250 mm}, fed by: battery, wire: {length: 1 m}}}
loads: {lamp: {power: 5 W, fed by: battery, wire: {length: 1 m}, returns to: house negative, return wire: {length: 1 m}}}
`

// A string has its count and its link, makes the system's voltage, and feeds from its posts alone.
func TestBatteriesInSeries(t *testing.T) {
	d, err := design.Read("x.yaml", []byte(inSeries), nil)
	if err != nil {
		t.Fatal(err)
	}
	b := d.Battery
	if b.Count() != 2 || len(b.Links) != 1 || b.Links[0].Wire.Size.Label != "35 mm²" || b.EachV(24) != 12 || !b.Links[0].Wire.Fitted || d.Batteries[0].Store.Links[0].Wire.Fitted {
		t.Errorf("%+v", b)
	}
	for name, x := range map[string]struct{ old, new, want string }{
		"no link":       {", link: {size: 35 mm², length: 250 mm}}\nbatt", "}\nbatt", "x.yaml:5:10: battery is 2 batteries in series, and the cable between them is not given (expected `link: {size: 35 mm², length: 250 mm}`, as it is)"},
		"one of them":   {"in series: 2, link: {size: 35 mm², length: 250 mm}}\nbatt", "link: {size: 35 mm², length: 250 mm}}\nbatt", "x.yaml:5:51: battery has a link, and is one battery (expected `in series: 2` beside it, or no `link`)"},
		"counted as 1":  {"in series: 2", "in series: 1", `battery, in series: "1" (expected a whole number from 2 to 8)`},
		"three of 8 V":  {"in series: 2", "in series: 3", "x.yaml:5:10: battery: 3 batteries in series do not make 24 V (expected 2 of 12 V or 4 of 6 V)"},
		"no size":       {"size: 35 mm², length", "length", "link of battery: its size is not given, and sizing chooses none (expected `size`, such as 35 mm²)"},
		"no length":     {"size: 35 mm², length: 250 mm", "size: 35 mm²", "link of battery: its length is not given, and no run leads from post to post (expected `length`, such as 250 mm)"},
		"side by side":  {"length: 250 mm", "length: 250 mm, parallel: 2", "link of battery: 2 side by side (expected one cable of the size that is needed)"},
		"second tapped": {"lamp: {power: 5 W, fed by: battery", "lamp: {power: 5 W, fed by: battery 2", `load "lamp" is tapped from between the batteries of "battery", 2 in series: it empties one of them, and charging then overcharges the rest (expected a converter among the ` + "`chargers`, such as 24 V to 12 V converter 10 A, fed by battery)"},
		"middle tapped": {"lamp: {power: 5 W, fed by: battery", "lamp: {power: 5 W, fed by: house middle", "such as 24 V to 12 V converter 10 A, fed by house)"},
		"back to it":    {"house negative", "house link", "such as 24 V to 12 V converter 10 A, fed by house)"},
	} {
		text := strings.Replace(inSeries, x.old, x.new, 1)
		if _, err := design.Read("x.yaml", []byte(text), nil); text == inSeries || err == nil || !strings.Contains(err.Error(), x.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
	single := strings.Replace(strings.ReplaceAll(inSeries, ", in series: 2, link: {size: 35 mm², length: 250 mm}", ""), "fed by: battery,", "fed by: battery 2,", 1)
	if _, err := design.Read("x.yaml", []byte(single), nil); err == nil || strings.Contains(err.Error(), "converter") {
		t.Errorf("of one battery: %v", err)
	}
}
