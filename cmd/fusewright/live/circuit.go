package live

import (
	"net/url"
	"slices"

	"fusewright/harness/design"
	"fusewright/render/page"
)

var circuitQuestions = []question{{Method: "GET", Path: "/api/circuit", Quick: true, Answer: circuitOf}}

// circuitOf answers with the circuit of what draws, of=E1, in a situation, in=night cruise;
// without one in that in which it loses most.
func circuitOf(_ *Server, now *State, query url.Values, _ []byte) (any, error) {
	in := -1
	if name := query.Get("in"); name != "" {
		in = slices.IndexFunc(now.Review.Design.Situations, func(s *design.Situation) bool { return s.Name == name })
		if in < 0 {
			return nil, Refusal("There is no such situation.")
		}
	}
	c := page.CircuitOf(now.Review, query.Get("of"), in)
	if c == nil {
		return nil, Refusal("Nothing of that name draws current.")
	}
	return c, nil
}
