package sizing

import (
	"os"
	"testing"
)

// What stands in for a sensing relay that is too small senses too: a coil relay would join
// the batteries for as long as its coil is fed.
func TestSensingRelayStaysOne(t *testing.T) {
	text, err := os.ReadFile("../../testdata/rules/ok/house-by-sensing-relay.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d := read(t, string(text))
	list := forms(d, d.Relays[0])
	if len(list) == 0 {
		t.Fatal("no form is left")
	}
	for _, f := range list {
		if !f.Senses {
			t.Errorf("%s has a coil", f.Name)
		}
	}
}
