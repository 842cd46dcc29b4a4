package live

import (
	"errors"
	"fmt"
	"net/url"

	"fusewright/harness/derivation"
)

// whyQuestions are those of the view: what may be asked, and a figure with its derivation.
var whyQuestions = []question{
	{Method: "GET", Path: "/api/names", Answer: func(_ *Server, now *State, _ url.Values, _ []byte) (any, error) {
		return derivation.Names(now.Review), nil
	}},
	{Method: "GET", Path: "/api/why", Answer: func(_ *Server, now *State, query url.Values, _ []byte) (any, error) {
		tree, err := derivation.Of(now.Review, query.Get("of"))
		var unknown *derivation.Unknown
		if errors.As(err, &unknown) {
			return nil, missed{Refusal(fmt.Sprintf("No figure is called %q.", unknown.What)), unknown.Nearest}
		}
		if err != nil {
			return nil, Refusal(err.Error())
		}
		return tree, nil
	}},
}

// missed is a refusal with the names that come near.
type missed struct {
	Refusal
	near []string
}
