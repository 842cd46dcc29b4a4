package purchase_test

import (
	"os"
	"strings"
	"testing"
)

// A relay with studs is screwed down: no socket is bought for it.
func TestNoSocketForStuds(t *testing.T) {
	text, err := os.ReadFile("../../../testdata/rules/ok/house-by-sensing-relay.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range billOf(t, string(text)).Lines {
		if strings.HasPrefix(line.Item, "socket for") {
			t.Errorf("%s is bought", line.Item)
		}
	}
}
