package design_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/library"
)

// The papers of a boat speak of petrol until each place says that no vapour gathers there.
func TestNamesPetrol(t *testing.T) {
	for _, c := range []struct {
		name, practice, helm, bilge string
		want                        bool
	}{
		{"a boat that says nothing", "marine", "", "", true},
		{"one place silent", "marine", "petrol vapour: no", "", true},
		{"every place without", "marine", "petrol vapour: no", "petrol vapour: no", false},
		{"one place with", "marine", "petrol vapour: no", "petrol vapour: yes", true},
		{"on land", "off-road", "", "", false},
		{"on land with", "off-road", "", "petrol vapour: yes", true},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, err := design.Read("boat.yaml", []byte("fusewright: 1\ntitle: boat\nsystem: 12 V\npractice: "+c.practice+
				"\nbattery: {chemistry: AGM, capacity: 60 Ah, at: helm}\nplaces:\n  helm: {"+c.helm+"}\n  bilge: {"+c.bilge+"}\n"), library.Default())
			if err != nil {
				t.Fatal(err)
			}
			if got := d.NamesPetrol(); got != c.want {
				t.Errorf("speaks of petrol: %v, want %v", got, c.want)
			}
		})
	}
}
