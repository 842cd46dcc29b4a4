package library

import (
	"strings"

	"gopkg.in/yaml.v3"
)

// The certainties a row can have, surest first.
const (
	TwoSources     = "two sources"
	OneSource      = "one source"
	Computed       = "computed"
	FromMemory     = "from memory"
	CommonPractice = "common practice, no source"
	UserData       = "user data"
)

// Certainties lists every certainty, surest first. "user data" is for a
// user's own library file.
var Certainties = []string{TwoSources, OneSource, Computed, FromMemory, CommonPractice, UserData}

// String gives the text with its certainty, for printing beside a number, once where
// the text ends in it.
func (s Source) String() string {
	if strings.HasSuffix(s.Text, s.Certainty) {
		return s.Text
	}
	return s.Text + " (" + s.Certainty + ")"
}

// Unsourced tells whether a row is from memory or has no source. A row without any word
// on it is as little sure; a user's own is the user's word.
func (s Source) Unsourced() bool {
	return s.Certainty == FromMemory || s.Certainty == CommonPractice || s.Certainty == ""
}

// readSources reads the file's named sources, which rows refer to by name.
func (r *reader) readSources(top *row) {
	v := top.get("sources")
	if v == nil {
		return
	}
	all, ok := r.newRow(v, "\"sources\"")
	if !ok {
		return
	}
	for i := 0; i+1 < len(v.Content); i += 2 {
		name := v.Content[i].Value
		m, ok := r.newRow(v.Content[i+1], "source \""+name+"\"")
		if !ok {
			continue
		}
		s := Source{Text: m.needText("text"), Certainty: r.certainty(m)}
		if s.Certainty == "" {
			m.missing("certainty")
		}
		m.finish()
		r.sources[name] = s
		all.get(name)
	}
}

// certainty reads the key of that name; "" when it is not given.
func (r *reader) certainty(m *row) string {
	s := m.text("certainty")
	if s == "" {
		return ""
	}
	for _, c := range Certainties {
		if c == s {
			return s
		}
	}
	r.reportUnknown(m.values["certainty"], "certainty", s, Certainties)
	return ""
}

// source reads where a row's numbers come from: `source` is a named source of
// the file or a text, `certainty` says how sure. What is left out comes from
// the row around it, except that a new text needs its own certainty, unless all
// around is user data.
func (r *reader) source(m *row, around Source) Source {
	s := around
	if text := m.text("source"); text != "" {
		named, known := r.sources[text]
		switch {
		case known:
			s = named
		case text == FromMemory || text == CommonPractice:
			s = Source{Text: text, Certainty: text}
		default:
			s = Source{Text: text}
			if around.Certainty == UserData { // another sheet, no surer
				s.Certainty = UserData
			}
		}
	}
	if c := r.certainty(m); c != "" {
		s.Certainty = c
	}
	return s
}

// sourced reports a row that says nothing of where its numbers come from.
func (r *reader) sourced(n *yaml.Node, s Source) {
	if s.Text == "" {
		r.report(n, "\"source\" is missing",
			"a document with table or clause, \"from memory\" or \"common practice, no source\"", "")
	} else if s.Certainty == "" {
		r.report(n, "\"certainty\" is missing", "one of: "+strings.Join(Certainties, "; "), "")
	}
}
