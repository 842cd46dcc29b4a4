package derivation

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"fusewright/harness"
	"fusewright/harness/design/problem"
)

// Asked is a figure that can be asked for.
type Asked struct {
	What string
	also []string // other names of it
	make func(*book) *Tree
}

// Names lists what can be asked of a review.
func Names(r *harness.Review) (names []string) {
	for _, a := range newBook(r).asked() {
		names = append(names, a.What)
	}
	return names
}

// Unknown is a figure that is not there, with the nearest that are.
type Unknown struct {
	What    string
	Nearest []string
}

func (u *Unknown) Error() string {
	if len(u.Nearest) == 0 {
		return fmt.Sprintf("no figure %q", u.What)
	}
	return fmt.Sprintf("no figure %q (did you mean %s?)", u.What, `"`+strings.Join(u.Nearest, `", "`)+`"`)
}

// Of derives a figure of a review: "drop of left lamp". The error is an *Unknown.
func Of(r *harness.Review, what string) (*Tree, error) {
	b := newBook(r)
	all := b.asked()
	want := fold(what)
	if _, err := strconv.Atoi(want); err == nil {
		want = "finding " + want
	}
	for _, a := range all {
		if fold(a.What) == want || slices.ContainsFunc(a.also, func(name string) bool { return fold(name) == want }) {
			t := a.make(b)
			t.What = a.What
			for i, text := range t.Answer {
				t.Answer[i] = capital(text)
			}
			return t, nil
		}
	}
	return nil, &Unknown{what, nearest(want, all)}
}

// fold makes what people type comparable.
func fold(s string) string {
	words := strings.Fields(strings.ToLower(s))
	out := words[:0]
	for _, w := range words {
		if w != "the" && w != "of" && w != "at" && w != "in" {
			out = append(out, w)
		}
	}
	return strings.Join(out, " ")
}

// capital begins a sentence.
func capital(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(r)) + text[n:]
}

// mostNear is how many choices a miss offers.
const mostNear = 3

func nearest(want string, all []Asked) (out []string) {
	left := map[string]string{}
	var names []string
	for _, a := range all {
		left[fold(a.What)] = a.What
		names = append(names, fold(a.What))
	}
	if problem.Nearest(want, names) == "" {
		return sharing(want, all)
	}
	for len(out) < mostNear {
		near := problem.Nearest(want, names)
		if near == "" {
			break
		}
		out = append(out, left[near])
		kept := names[:0]
		for _, n := range names {
			if n != near {
				kept = append(kept, n)
			}
		}
		names = kept
	}
	return out
}

// sharing are the first names with most of the words of a question that resembles none.
func sharing(want string, all []Asked) (out []string) {
	most := 1
	for _, a := range all {
		n := 0
		have := strings.Fields(fold(a.What))
		for _, w := range strings.Fields(want) {
			if slices.Contains(have, strings.Trim(w, `"`)) {
				n++
			}
		}
		if n > most {
			most, out = n, nil
		}
		if n == most && len(out) < mostNear {
			out = append(out, a.What)
		}
	}
	return out
}
