package schematic

import (
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/network/circuit"
)

// Several feeds and returns at one part, blocks longer than a sheet, switched
// coils and names that are too long keep the rules of the drawing; so do fuses and
// contacts in returns, relays in one piece or apart.
func TestCornerCases(t *testing.T) {
	text, err := os.ReadFile("testdata/corners.yaml")
	if err != nil {
		t.Fatal(err)
	}
	back, err := os.ReadFile("testdata/back.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, relays := range []string{"assembled", "detached"} {
		t.Run("in returns, "+relays, func(t *testing.T) {
			own := append([]byte("sheet: {relays: "+relays+"}\n"), back[bytes.Index(back, []byte("title:")):]...)
			t.Logf("%+v", examine(t, planned(t, "back.yaml", append([]byte("fusewright: 1\n"), own...), Options{}), 12))
		})
	}
	for _, size := range []string{"A4", "A3", "Letter", "Tabloid"} {
		for _, bare := range []bool{false, true} {
			name := size
			if bare {
				name += " without findings"
			}
			t.Run(name, func(t *testing.T) {
				t.Logf("%+v", examine(t, planned(t, "corners.yaml", text, Options{Size: size, NoFindings: bare}), 12))
			})
		}
	}
}

// Motors between two halves of a reversing contactor keep the rules of the drawing.
func TestReversing(t *testing.T) {
	text, err := os.ReadFile("testdata/reversing.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, relays := range []string{"assembled", "detached"} {
		t.Run(relays, func(t *testing.T) {
			t.Logf("%+v", examine(t, planned(t, "reversing.yaml", text, Options{Size: "A3", Relays: relays}), 12))
		})
	}
}

func TestDrawRefuses(t *testing.T) {
	cases := []struct {
		name   string
		review *harness.Review
		size   string
		want   string
	}{
		{"nothing", nil, "", "no circuit"},
		{"no circuit", &harness.Review{}, "", "no circuit"},
		{"unknown paper", &harness.Review{Circuit: &circuit.Circuit{}}, "A44", `did you mean "A4"`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := Draw(c.review, Options{Size: c.size})
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want %q in it", err, c.want)
			}
		})
	}
}

// The poles of connectors stand on the wires that they part, clear of everything else.
func TestConnectorsInTheLoom(t *testing.T) {
	text, err := os.ReadFile("testdata/connectors.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, relays := range []string{"assembled", "detached"} {
		for _, bare := range []bool{false, true} {
			d := planned(t, "connectors.yaml", text, Options{Size: "A4", Relays: relays, NoFindings: bare})
			faults := checkNets(d)
			for i, sheet := range d.Paint() { // a parted line is in pieces, which checkDrawnAsRouted does not join
				if err := sheet.Validate(); err != nil {
					t.Error(err)
				}
				faults = slices.Concat(faults, checkGeometry(sheet), checkRoom(sheet), checkSymbols(d, d.Pages[i]))
			}
			for _, fault := range faults {
				t.Errorf("relays %s, bare %t: %s", relays, bare, fault)
			}
		}
	}
}
