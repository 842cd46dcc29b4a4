package compare

import (
	"testing"

	"fusewright/harness/design"
)

func connectorFields(x *design.Connector) fields {
	var f fields
	properties(&f, x)
	return f
}

// A connector that names nothing takes what passes, which is not nothing.
func TestConnectorWithoutNamesTakesWhatPasses(t *testing.T) {
	for want, x := range map[string]*design.Connector{
		"every wire that passes and no other connector takes": {},
		"horn": {Takes: []design.Part{&design.Load{Common: design.Common{Name: "horn"}}}},
	} {
		got := ""
		for _, f := range connectorFields(x) {
			if f.name == "takes" {
				got = f.text
			}
		}
		if got != want {
			t.Errorf("takes %q, want %q", got, want)
		}
	}
}
