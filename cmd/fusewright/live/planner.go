package live

import (
	"bytes"
	"encoding/json"
	"net/http"
	"net/url"

	"fusewright/render/page"
)

// plannerQuestions are those of the view.
var plannerQuestions = []question{
	{Method: http.MethodGet, Path: "/api/planner", Quick: true, Answer: planner},
	{Method: http.MethodPost, Path: "/api/outlook", Quick: true, Answer: outlook},
}

// planner answers what can be asked.
func planner(_ *Server, now *State, _ url.Values, _ []byte) (any, error) {
	return page.PlannerOf(now.Review), nil
}

// outlook answers a state: what is on, the engine's speed, the air, how long parked.
func outlook(_ *Server, now *State, _ url.Values, body []byte) (any, error) {
	var asked page.Asked
	if err := strictly(body, &asked); err != nil {
		return nil, err
	}
	p, state := now.Review.Outlook(), asked.State()
	if err := p.Check(state); err != nil {
		return nil, Refusal(err.Error())
	}
	return page.OutlookOf(now.Review, p.Compute(state)), nil
}

// strictly reads a body that holds one value of known fields.
func strictly(body []byte, into any) error {
	if err := decoded(body, into); err != nil {
		return Refusal("That is no question of this page: " + err.Error())
	}
	return nil
}

// decoded takes a body apart; keys that nobody knows are a mistake.
func decoded(body []byte, into any) error {
	d := json.NewDecoder(bytes.NewReader(body))
	d.DisallowUnknownFields()
	return d.Decode(into)
}
