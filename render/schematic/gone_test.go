package schematic

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/review/compare"
)

// A load that is gone is crossed out on the sheet of what fed it, and its
// words are not cut short.
func TestGoneStandsWithItsFeed(t *testing.T) {
	text, err := os.ReadFile("../../designs/hay-wain.yaml")
	if err != nil {
		t.Fatal(err)
	}
	before := reviewtest.Built(t, text)
	plain, err := plan(before, Options{})
	if err != nil {
		t.Fatal(err)
	}
	now := reviewtest.Built(t, []byte(remove(string(text), 0)))
	d, err := planChanges(compare.Reviews(before, now), "revision A", Options{})
	if err != nil {
		t.Fatal(err)
	}
	gone, found := regexp.MustCompile(`^old A\d+, .*removed`), 0
	for i, s := range d.Paint() {
		for _, item := range s.Items {
			if item.Text == nil {
				continue
			}
			if gone.MatchString(item.Text.String) {
				found = i + 1
			}
			if strings.HasSuffix(item.Text.String, "· …") {
				t.Errorf("sheet %d: %s", i+1, item.Text.String)
			}
		}
	}
	if want := placesOf(plain)["panel block"].sheet; found != want || want < 2 {
		t.Errorf("listed on sheet %d, its block stands on sheet %d", found, want)
	}
}
