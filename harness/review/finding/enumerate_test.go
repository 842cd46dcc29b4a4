package finding

import (
	"slices"
	"testing"
)

// Numbers go by the order of the list; findings of one rule and cause share one.
func TestEnumerate(t *testing.T) {
	list := []*Finding{{Rule: "a", Part: "x"}, {Rule: "b", Cause: "f"}, {Rule: "a", Part: "y"}, {Rule: "b", Cause: "f"}, {Rule: "b", Cause: "g"}}
	Enumerate(list)
	var got []int
	for _, f := range list {
		got = append(got, f.Number)
	}
	if want := []int{1, 2, 3, 2, 4}; !slices.Equal(got, want) {
		t.Errorf("numbers %v, want %v", got, want)
	}
}
