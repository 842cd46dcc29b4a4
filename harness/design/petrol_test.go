package design_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/library"
)

// The papers of a boat speak of petrol until each place says that no vapour gathers there, or the
// design that a diesel drives it.
func TestNamesPetrol(t *testing.T) {
	for _, c := range []struct {
		name, practice, helm, bilge string
		vehicle                     string
		want                        bool
	}{
		{"a boat that says nothing", "marine", "", "", "invented", true},
		{"one place silent", "marine", "petrol vapour: no", "", "invented", true},
		{"every place without", "marine", "petrol vapour: no", "petrol vapour: no", "invented", false},
		{"one place with", "marine", "petrol vapour: no", "petrol vapour: yes", "invented", true},
		{"on land", "off-road", "", "", "invented", false},
		{"on land with", "off-road", "", "petrol vapour: yes", "invented", true},
		{"a diesel that says nothing", "marine", "", "", "invented sloop with a diesel inboard", false},
		{"a diesel with a place of vapour", "marine", "petrol vapour: yes", "", "invented sloop with a diesel inboard", true},
		{"a diesel and a petrol tender", "marine", "", "", "invented diesel yacht, its tender petrol", true},
		{"an outboard", "marine", "", "", "invented outboard skiff", true},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, err := design.Read("boat.yaml", []byte("fusewright: 1\ntitle: boat\nsystem: 12 V\npractice: "+c.practice+
				"\nvehicle: \""+c.vehicle+"\"\nbattery: {chemistry: AGM, capacity: 60 Ah, at: helm}\nplaces:\n  helm: {"+c.helm+"}\n  bilge: {"+c.bilge+"}\n"), library.Default())
			if err != nil {
				t.Fatal(err)
			}
			if got := d.NamesPetrol(); got != c.want {
				t.Errorf("speaks of petrol: %v, want %v", got, c.want)
			}
		})
	}
}
