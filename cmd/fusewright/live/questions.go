package live

import (
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"net/url"
	"slices"
)

// question is one that the page asks: JSON in, JSON out, of the design as it was read last.
type question struct {
	Method, Path string
	// Writes tells that a file is changed: it is there only when the server may write.
	Writes bool
	// Quick tells that it is not kept waiting by those that may take long on a large design.
	Quick bool
	// Answer takes the query of a GET, else the body. A refusal is what is wrong with the
	// question. It leaves Review as it is: a quick question is answered at the same time.
	Answer func(s *Server, now *State, query url.Values, body []byte) (any, error)
}

// questions are all that there are, by view.
func questions() []question {
	return slices.Concat(circuitQuestions, plannerQuestions, whatIfQuestions, whyQuestions, benchQuestions)
}

// Refusal says what is wrong with a question, as a sentence for the page.
type Refusal string

func (r Refusal) Error() string { return string(r) }

// answering makes the handler of a question.
func (s *Server) answering(q question) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		if q.Writes && s.opt.Write == nil {
			refuse(w, http.StatusForbidden, "The server was started to read only.")
			return
		}
		body, err := io.ReadAll(r.Body)
		if err != nil {
			refuse(w, http.StatusRequestEntityTooLarge, "More was sent than is taken.")
			return
		}
		now, err := s.State(r.Context())
		if err != nil {
			return
		}
		if now.Review == nil {
			refuse(w, http.StatusConflict, "There is no design that can be read yet.")
			return
		}
		line := &s.asked
		if q.Quick {
			line = &s.askedQuick
		}
		line.Lock()
		answer, err := q.Answer(s, now, r.URL.Query(), body)
		line.Unlock()
		var wrong Refusal
		var miss missed
		switch {
		case errors.As(err, &miss):
			send(w, http.StatusBadRequest, map[string]any{"problem": string(miss.Refusal), "near": miss.near})
			return
		case errors.As(err, &wrong):
			refuse(w, http.StatusBadRequest, string(wrong))
			return
		case err != nil:
			refuse(w, http.StatusInternalServerError, err.Error())
			return
		}
		send(w, http.StatusOK, answer)
	}
}

func refuse(w http.ResponseWriter, code int, why string) {
	send(w, code, map[string]string{"problem": why})
}

func send(w http.ResponseWriter, code int, answer any) {
	data, err := json.Marshal(answer)
	if err != nil {
		code, data = http.StatusInternalServerError, []byte(`{"problem":"the answer could not be written"}`)
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(code)
	w.Write(data)
}
