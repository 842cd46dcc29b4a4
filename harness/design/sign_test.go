package design

import "testing"

// Every behaviour has a sign for loads that give none.
func TestEveryBehaviourHasItsSign(t *testing.T) {
	for _, b := range Behaviours {
		if usualSign[b] == "" {
			t.Errorf("%s has no sign", b)
		}
	}
}
