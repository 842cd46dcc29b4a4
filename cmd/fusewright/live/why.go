package live

import (
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
		if err != nil {
			return nil, Refusal(err.Error())
		}
		return tree, nil
	}},
}
