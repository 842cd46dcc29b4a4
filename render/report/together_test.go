package report_test

import (
	"bytes"
	"strings"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/render/report"
)

// TestTogetherText: the boat's demo asks too much at idle, on purpose; the text
// must say how much, what goes off first, and never a critical load.
func TestTogetherText(t *testing.T) {
	r := reviewtest.File(t, "../../designs/reed-skiff.yaml")
	rep := report.NewBudget(r)
	rows := rep.Together
	var text bytes.Buffer
	if err := report.WriteBudget(&text, rep); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"idle, 800 rpm", "cruise, 3500 rpm", "night cutting, 800 rpm",
		" at the regulated voltage; shed first: ", "short with all off but what is critical or always on"} {
		if !strings.Contains(strings.Join(strings.Fields(text.String()), " "), want) {
			t.Errorf("no %q in\n%s", want, text.String())
		}
	}
	critical := map[string]bool{}
	for _, i := range rows.Items {
		critical[i.Name] = i.Critical
	}
	for _, c := range rows.Choices {
		for _, off := range c.SwitchOff {
			if critical[off] {
				t.Errorf("%s: critical %s is to go off", c.Name, off)
			}
		}
	}
	t.Log(text.String())
}
