package live

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"net/http"
	"net/url"

	"fusewright/harness"
	"fusewright/harness/remedy/whatif"
	"fusewright/render/page"
	"fusewright/render/report"
)

// whatIfQuestions are those of the view.
var whatIfQuestions = []question{
	{Method: http.MethodGet, Path: "/api/offers", Answer: offers},
	{Method: http.MethodPost, Path: "/api/whatif", Answer: tryChanges},
	{Method: http.MethodPost, Path: "/api/write", Writes: true, Answer: writeChanges},
}

// changesAsked are values for some of the offers; Of is the text that they were offered for.
type changesAsked struct {
	Of      string `json:"of"`
	Changes []struct {
		At    string `json:"at"`
		Value string `json:"value"`
	} `json:"changes"`
}

func (a *changesAsked) list() (list []whatif.Change) {
	for _, c := range a.Changes {
		list = append(list, whatif.Change{At: c.At, Value: c.Value})
	}
	return list
}

// digest tells one text from another.
func digest(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:16])
}

func offers(s *Server, now *State, _ url.Values, _ []byte) (any, error) {
	review, err := now.aside()
	if err != nil {
		return nil, Refusal(err.Error())
	}
	w, err := page.WhatIfOf(review, now.Text)
	if err != nil {
		return nil, Refusal(err.Error())
	}
	return map[string]any{"offers": w.Offers, "of": digest(now.Text), "writes": s.opt.Write != nil}, nil
}

// mostAlone is how many changes are tried each by itself too.
const mostAlone = 6

// tryChanges answers what changes come to, together and each by itself.
func tryChanges(s *Server, now *State, _ url.Values, body []byte) (any, error) {
	review, o, asked, err := tried(s, now, body)
	if err != nil {
		return nil, err
	}
	t := page.TriedOf(review, o)
	t.Caution = report.CautionOf(review.Design)
	if list := asked.list(); len(list) > 1 && len(list) <= mostAlone {
		for i, c := range list {
			one, err := whatif.Try(review, now.Text, list[i:i+1], s.opt.Assess)
			if err != nil {
				t.Alone = append(t.Alone, page.AloneRow{What: c.At + " " + c.Value, Mends: []int{}, Trouble: err.Error()})
				continue
			}
			t.Alone = append(t.Alone, page.Alone(c.Value, one))
		}
	}
	return t, nil
}

// tried is a review of the design, with what the changes of a body come to.
func tried(s *Server, now *State, body []byte) (*harness.Review, *whatif.Outcome, *changesAsked, error) {
	asked := &changesAsked{}
	if err := strictly(body, asked); err != nil {
		return nil, nil, nil, err
	}
	if asked.Of != digest(now.Text) {
		return nil, nil, nil, Refusal("The file has changed meanwhile; the values are offered anew.")
	}
	review, err := now.aside()
	if err != nil {
		return nil, nil, nil, err
	}
	o, err := whatif.Try(review, now.Text, asked.list(), s.opt.Assess)
	if whatif.IsWrong(err) {
		err = Refusal(err.Error())
	}
	return review, o, asked, err
}

// writeChanges puts the changed text, which was reviewed, into the file, if that is still the
// one that the changes were made of.
func writeChanges(s *Server, now *State, _ url.Values, body []byte) (any, error) {
	_, o, _, err := tried(s, now, body)
	if err != nil {
		return nil, err
	}
	there, err := s.opt.Read()
	if err != nil {
		return nil, err
	}
	if !bytes.Equal(there, now.Text) {
		return nil, Refusal("The file has changed meanwhile; nothing was written.")
	}
	if err := s.opt.Write(o.Text); err != nil {
		return nil, err
	}
	return map[string]int{"lines": len(o.Lines)}, nil
}
