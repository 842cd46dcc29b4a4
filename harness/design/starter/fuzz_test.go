package starter

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/proof/fuzztest"
	"fusewright/library"
)

// FuzzWrite: whatever a builder answers, there is a design that reads, or an
// error that says what is wrong.
func FuzzWrite(f *testing.F) {
	for i, v := range Vehicles() {
		a, _ := Defaults(v)
		f.Add(i, a.Title, a.Battery, a.Capacity, a.Regulated, a.Output, a.Idle, a.Cruise, "horn", "radio")
		f.Add(i, "a: b # \"c\"", "agm", "1e3 Ah", "14 V", "1000 rpm: 10 A", "1000 rpm", "1000 rpm", "", "heated grips")
	}
	lib := library.Default()
	f.Fuzz(func(t *testing.T, vehicle int, title, battery, capacity, regulated, output, idle, cruise, one, two string) {
		fuzztest.Within(t, func() {
			kinds := Vehicles()
			a := Answers{Vehicle: kinds[((vehicle%len(kinds))+len(kinds))%len(kinds)], Title: title, Battery: battery,
				Capacity: capacity, Regulated: regulated, Output: output, Idle: idle, Cruise: cruise}
			if len(title) > 3 { // what is said of the accessories comes from the same words
				a.Together, a.Live, a.Fitted, a.Lengths = []string{one + "+" + two}, []string{one}, []string{two}, []string{title}
			}
			for _, name := range []string{one, two} {
				if name != "" {
					a.Accessories = append(a.Accessories, name)
				}
			}
			src, err := Write(a, lib)
			if err != nil {
				if err.Error() == "" {
					t.Fatal("an error without words")
				}
				return
			}
			if _, err := design.Read("new.yaml", src, lib); err != nil {
				t.Fatalf("%v\n%s", err, src)
			}
		})
	})
}
