package live

import (
	"encoding/json"
	"net/http"
	"net/url"
	"slices"
	"testing"
)

// A figure that there is not is refused with those that come near: by its letters, or by a word.
func TestWhyMisses(t *testing.T) {
	address, _ := shown(t, demo, nil)
	for of, want := range map[string]string{"drop of left lamb": "drop of left lamp", "left lamp wattage": "drop of left lamp"} {
		code, text, _ := asked(t, "GET", "http://"+address+"/api/why?of="+url.QueryEscape(of), nil)
		var answer struct {
			Problem string
			Near    []string
		}
		if err := json.Unmarshal([]byte(text), &answer); err != nil || code != http.StatusBadRequest || answer.Problem == "" {
			t.Errorf("%s: %d %s %v", of, code, text, err)
		}
		if !slices.Contains(answer.Near, want) {
			t.Errorf("%s: %q are near, not %q", of, answer.Near, want)
		}
	}
}
