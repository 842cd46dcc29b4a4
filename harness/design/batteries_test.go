package design_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/design"
)

// A part named as the negative post of a further battery would hide that post.
func TestNameOfAFurtherBatterysPost(t *testing.T) {
	src, err := os.ReadFile("../../testdata/rules/ok/house-by-sensing-relay.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for name, refused := range map[string]bool{"house negative": true, "House  Negative": true, "house two": false, "negative": false} {
		text := strings.Replace(string(src), "fuses:\n", "  "+name+": {chemistry: AGM, capacity: 30 Ah, at: rear, fed by: house end}\nfuses:\n", 1)
		_, err := design.Read("x.yaml", []byte(text), nil)
		if got := err != nil && strings.Contains(err.Error(), "also means terminal negative of \"house\""); got != refused {
			t.Errorf("%q: %v", name, err)
		}
	}
}
