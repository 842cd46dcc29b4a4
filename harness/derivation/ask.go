package derivation

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"fusewright/harness"
)

// Names lists what can be asked of a review.
func Names(r *harness.Review) (names []string) {
	b := newBook(r)
	for a := range b.asked() {
		if a.there() {
			names = append(names, a.What)
		}
	}
	for _, f := range b.numbered() {
		names = append(names, findingName(f))
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
		return fmt.Sprintf("no figure %q (expected one that why lists when no figure is named)", u.What)
	}
	return fmt.Sprintf("no figure %q (did you mean %s?)", u.What, `"`+strings.Join(u.Nearest, `", "`)+`"`)
}

// Of derives a figure of a review: "drop of left lamp", or as people ask for it, "voltage drop
// left lamp". Of a review that is open (harness.Open) it runs the stages that the figure needs.
// The error is an *Unknown.
func Of(r *harness.Review, what string) (*Tree, error) {
	b := newBook(r)
	a := b.meant(what)
	if a == nil {
		return nil, &Unknown{what, b.nearest(what)}
	}
	t := a.make()
	t.What = a.What
	for i, text := range t.Answer {
		t.Answer[i] = capital(text)
	}
	return t, nil
}

// meant is the figure that a question means; nil = none that is there.
func (b *book) meant(what string) *Asked {
	want := fold(what)
	if m := byNumber.FindStringSubmatch(want); m != nil {
		n, _ := strconv.Atoi(m[1])
		for _, f := range b.numbered() {
			if f.Number == n {
				return &Asked{What: findingName(f), make: func() *Tree { return b.findingTree(f) }}
			}
		}
		return nil
	}
	if a := b.named(want); a != nil {
		return a
	}
	for _, words := range append([]string{want}, otherwise(want)...) {
		for _, name := range b.understood(words) {
			if a := b.named(fold(name)); a != nil {
				return a
			}
		}
	}
	return nil
}

// byNumber is a finding by its number.
var byNumber = regexp.MustCompile(`^(?:finding )?(?:no\.? |number )?#?([0-9]{1,9})$`)

// named is the figure of a folded name; nil = none that is there.
func (b *book) named(want string) *Asked {
	called := func(name string) bool { return fold(name) == want }
	for a := range b.asked() {
		if (called(a.What) || slices.ContainsFunc(a.also, called)) && a.there() {
			return a
		}
	}
	return nil
}

// fold makes what people type comparable.
func fold(s string) string {
	words := strings.Fields(apart.ReplaceAllString(strings.ToLower(strings.TrimRight(s, " ?.!")), "$1$2"))
	out := words[:0]
	for _, w := range words {
		if w != "the" && w != "of" && w != "at" && w != "in" {
			out = append(out, w)
		}
	}
	return strings.Join(out, " ")
}

// apart is a number typed apart from its letter: "W 7".
var apart = regexp.MustCompile(`\b([wfkex]) ([0-9]+)\b`)

// capital begins a sentence.
func capital(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(r)) + text[n:]
}
