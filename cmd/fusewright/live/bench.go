package live

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"net/url"
	"path/filepath"

	"fusewright/harness/workshop/bench/readings"
	"fusewright/render/page"
)

// benchQuestions are those of the view: the test, and the readings and ticks that are kept in a
// file beside the design.
var benchQuestions = []question{
	{Method: "GET", Path: "/api/bench", Answer: func(s *Server, now *State, _ url.Values, _ []byte) (any, error) {
		kept, err := s.openKept(now)
		return benchAnswer{page.BenchOf(now.Review), kept.answer(err)}, nil
	}},
	{Method: "GET", Path: "/api/kept", Answer: func(s *Server, now *State, _ url.Values, _ []byte) (any, error) {
		kept, err := s.openKept(now)
		return kept.answer(err), nil
	}},
	{Method: "PUT", Path: "/api/kept", Answer: keepReadings},
	{Method: "POST", Path: "/api/diagnose", Answer: diagnose},
	{Method: "GET", Path: "/api/layout", Answer: func(_ *Server, now *State, _ url.Values, _ []byte) (any, error) {
		return page.Layout(now.Review)
	}},
}

type benchAnswer struct {
	Test *page.Bench `json:"test"`
	Kept *keptAnswer `json:"kept"`
}

// keptAnswer is the file by the numbers of the present test.
type keptAnswer struct {
	File     string            `json:"file,omitempty"` // "" = it is kept nowhere but in the browser
	Meter    string            `json:"meter"`
	By       string            `json:"by"`
	Date     string            `json:"date"`
	Readings map[string]string `json:"readings"` // by the number of the check: "13.21 V"
	// Elsewhere are readings between other points than the test's.
	Elsewhere []elsewhere `json:"elsewhere"`
	Cut       []string    `json:"cut"`     // wires that are made
	Changed   []string    `json:"changed"` // wires that were ticked and are others now
	Stale     []string    `json:"stale"`   // readings that the present test does not ask for
	// Refused says what of a change was not taken, and Problem why the file cannot be read.
	Refused []string `json:"refused,omitempty"`
	Problem string   `json:"problem,omitempty"`
}

type elsewhere struct {
	Check string `json:"check"`
	In    string `json:"in"`
	Reads string `json:"reads"`
}

// keptChange is what one browser changes; all else stays as others have it.
type keptChange struct {
	Meter    *string       `json:"meter"`
	By       *string       `json:"by"`
	Date     *string       `json:"date"`
	Readings []keptReading `json:"readings"`
	Cut      []struct {
		Wire string `json:"wire"`
		Of   string `json:"of"` // what the wire was when it was ticked
		Done bool   `json:"done"`
	} `json:"cut"`
}

type keptReading struct {
	Check string `json:"check"`
	In    string `json:"in"`
	Of    string `json:"of"`    // "" = elsewhere than in the test
	Reads string `json:"reads"` // "" takes a reading away
}

// keepReadings puts the changes of one browser into the file as it is now, so that none of another's
// are lost, and puts the file in place whole.
func keepReadings(s *Server, now *State, _ url.Values, body []byte) (any, error) {
	var change keptChange
	if err := decoded(body, &change); err != nil || string(bytes.TrimSpace(body)) == "null" {
		return nil, Refusal(fmt.Sprint("These are no readings: ", cmp.Or(err, errors.New("nothing is in them"))))
	}
	if s.opt.Keep == nil {
		return nil, Refusal("Readings are kept in the browser alone.")
	}
	k, err := s.openKept(now)
	if err != nil {
		return nil, Refusal("The file beside the design cannot be read, and is left as it is: " + err.Error())
	}
	refused, err := k.take(&change)
	if err != nil {
		return nil, err
	}
	d := now.Review.Design
	k.file.Design, k.file.Revision = filepath.Base(s.opt.File), d.Revision.Value
	text := k.file.YAML()
	if _, err := readings.Read(k.name, text); err != nil {
		return nil, Refusal("The readings would not be read again: " + err.Error())
	}
	if err := s.opt.Keep(text); err != nil {
		return nil, err
	}
	s.kept.Add(1)
	s.hub.tell()
	answer := k.answer(nil)
	answer.Refused = refused
	return answer, nil
}
