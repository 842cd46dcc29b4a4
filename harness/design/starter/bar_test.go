package starter_test

import (
	"strings"
	"testing"

	"fusewright/harness/design/starter"
	"fusewright/library"
)

// TestNegativeBar: a post takes four lugs afloat (ABYC E-11, two sources). By hand: the panel's bus, the
// cable to the other battery, the charging relay's coil and a bilge pump are four; a second pump is one more.
// At the positive post the main fuse, the link and two pumps are four; a third pump is one more.
func TestNegativeBar(t *testing.T) {
	for _, c := range []struct {
		pumps []string
		bar   bool
		plus  bool
	}{{[]string{"bilge pump"}, false, false}, {[]string{"bilge pump", "aft pump: bilge pump"}, true, false},
		{[]string{"bilge pump", "aft pump: bilge pump", "fore pump: bilge pump"}, true, true}} {
		src, err := starter.Write(starter.Answers{Vehicle: "boat", Second: "80 Ah", Accessories: append([]string{"VHF radio"}, c.pumps...)}, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		text := string(src)
		if got := strings.Contains(text, "negative post bar: {"); got != c.bar {
			t.Errorf("%q: bar %v\n%s", c.pumps, got, text)
		}
		if got := strings.Contains(text, "fed by: positive post bar 3, "); got != c.plus || c.plus && strings.Count(text, "fed by: house,") != 2 {
			t.Errorf("%q: bar %v at the positive post\n%s", c.pumps, got, text)
		}
		if direct := strings.Count(text, "returns to: house negative"); c.bar && direct != 1 {
			t.Errorf("%d return to the post beside the bar\n%s", direct, text)
		}
	}
}
