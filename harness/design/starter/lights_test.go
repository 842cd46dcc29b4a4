package starter_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/design/starter"
	"fusewright/library"
)

// TestLights: what is shown in which position, and where it stands, by hand from COLREGS rules 23, 25
// and 30 and annex I (from memory): under power sidelights, sternlight and steaming light, or below
// 12 m sidelights and one all-round light; under sail sidelights and sternlight; at anchor one
// all-round light.
func TestLights(t *testing.T) {
	for name, c := range map[string]struct {
		lights    string
		positions string
		places    string
		lacks     string
	}{
		"sailing boat": {"port light, starboard light, stern light, steaming light, anchor light",
			"off: , under sail: running, under power: running steaming, at anchor: all-round", "bow bow stern mast masthead", ""},
		"open boat": {"bow light, all-round light", "off: , under power: running all-round, at anchor: all-round", "bow stern", ""},
		"sail, and a motor below 12 m": {"bow light, stern light, all-round light",
			"off: , under sail: running stern, under power: running all-round, at anchor: all-round", "bow stern mast", ""},
		"no sternlight": {"port light, starboard light, steaming light", "off: , under power: running", "bow bow mast",
			"a sternlight and an anchor light"},
		"nothing white forward": {"bow light, stern light", "off: , under sail: running", "bow stern",
			"a steaming light, or an all-round one, for under power and an anchor light"},
		"no sidelights": {"stern light, anchor light", "off: , under sail: stern, under power: all-round, at anchor: all-round", "stern mast", "sidelights"},
	} {
		t.Run(name, func(t *testing.T) {
			var list []string
			for _, l := range strings.Split(c.lights, ", ") {
				list = append(list, l+": LED navigation lamp")
			}
			src, err := starter.Write(starter.Answers{Vehicle: "boat", Accessories: list}, library.Default())
			if err != nil {
				t.Fatal(err)
			}
			d, err := design.Read("new.yaml", src, library.Default())
			if err != nil {
				t.Fatal(err)
			}
			var positions, places []string
			for _, s := range d.Switches {
				for _, p := range s.Positions {
					positions = append(positions, p.Name+": "+strings.Join(p.Outputs, " "))
				}
			}
			for _, l := range d.Loads {
				places = append(places, l.At.Name)
			}
			lacks := "The rules want besides: " + c.lacks + "."
			if got := strings.Join(positions, ", "); got != c.positions || strings.Join(places, " ") != c.places {
				t.Errorf("positions %q, want %q; places %q, want %q\n%s", got, c.positions, places, c.places, src)
			}
			if strings.Contains(string(src), "want besides") != (c.lacks != "") || c.lacks != "" && !strings.Contains(string(src), lacks) {
				t.Errorf("does not say %q\n%s", lacks, src)
			}
		})
	}
}

// TestSharesNoSwitch: why not is said as it is.
func TestSharesNoSwitch(t *testing.T) {
	for together, want := range map[string]string{
		"port light + stern light": "", "port light + steaming light": "it hangs on the one of the navigation lights",
		"bilge pump + radio": "a float switch works it", "radio + alarm": "it stays live",
	} {
		_, err := starter.Write(starter.Answers{Vehicle: "boat", Together: []string{together}, Accessories: []string{"port light",
			"stern light", "steaming light", "bilge pump", "radio", "alarm"}}, library.Default())
		if got := fmt.Sprint(err); want == "" && err != nil || !strings.Contains(got, want) {
			t.Errorf("%s: %s, want %q", together, got, want)
		}
	}
}
