package design

import (
	"fmt"
	"slices"

	"fusewright/harness/design/problem"

	"gopkg.in/yaml.v3"
)

// Condition tells whether it is one that situations name, such as "main beam", and no
// state of the key.
func (w When) Condition() bool { return w != "" && !slices.Contains(whenWords, string(w)) }

// notConditions are words for a state of the key that the format calls otherwise.
var notConditions = map[string]When{
	"ignition": WhenKey, "ign": WhenKey, "acc": WhenKey, "accessory": WhenKey, "switched": WhenKey, "on": WhenKey, "key on": WhenKey,
	"engine": WhenRunning, "engine running": WhenRunning,
	"yes": WhenAlways, "permanent": WhenAlways, "battery": WhenAlways, "live": WhenAlways,
}

// conditionKey reads a state of the key, or the name of a condition.
func conditionKey[T any](k Key, to func(*T) *When) key[T] {
	k.Kind, k.Choices = KindCondition, whenWords
	return key[T]{Key: k, read: func(r *reader, t *T, f field) {
		s, ok := r.sentence(f, maxName)
		if !ok {
			return
		}
		word := fold(s.Value)
		nearest := string(notConditions[word])
		if nearest == "" {
			nearest = problem.Nearest(word, whenWords)
		}
		switch {
		case slices.Contains(whenWords, word):
			*to(t) = When(word)
			return
		case nearest != "" || word == "no" || word == "off":
			r.add(problem.Problem{Pos: s.Pos, What: fmt.Sprintf("%s: unknown word %s", f, quoted(s.Value)),
				Expected: k.expected(), Nearest: nearest})
			return
		}
		*to(t) = r.condition(s)
		r.hot = append(r.hot, hotDraft{f.where, s})
	}}
}

// hotDraft is where a condition is named by what is live with it.
type hotDraft struct {
	of   where
	name Text
}

// condition is a condition in the spelling that it has first.
func (r *reader) condition(t Text) When {
	if first, ok := r.conditions[fold(t.Value)]; ok {
		return first
	}
	r.conditions[fold(t.Value)] = When(t.Value)
	r.d.Conditions = append(r.d.Conditions, When(t.Value))
	return When(t.Value)
}

// withKey reads the conditions that hold in a situation or leg.
func withKey() key[stateDraft] {
	return key[stateDraft]{Key: Key{Name: "with", Kind: KindConditions, Default: "none; of a leg, as in its `situation`", Example: "[main beam]",
		Doc: "the conditions that hold, by the names that taps give as `hot`"},
		read: func(r *reader, x *stateDraft, f field) {
			if n := follow(f.node); n.Kind == yaml.SequenceNode && len(n.Content) == 0 {
				x.without = true
				return
			}
			x.with = r.texts(f, maxName)
		}}
}

// conditionsOf looks up what holds in a situation or leg; a leg's own stand in place of
// those of the situation that it is like.
func (r *reader) conditionsOf(x *stateDraft, as *Situation) []When {
	if x.with == nil && !x.without {
		return as.With
	}
	var list []When
	for _, t := range x.with {
		switch w, ok := r.conditions[fold(t.Value)]; {
		case !ok:
			names := make([]string, len(r.d.Conditions))
			for i, c := range r.d.Conditions {
				names[i] = string(c)
			}
			what := fmt.Sprintf("%s: no tap is live with %s", x.of, quoted(t.Value))
			if len(names) == 0 {
				r.report(t.Pos, what, "a condition that a tap names as `hot`")
				continue
			}
			r.noName(t.Pos, what, t.Value, names)
		case slices.Contains(list, w):
			r.report(t.Pos, fmt.Sprintf("%s: %s is named twice", x.of, quoted(t.Value)), "each name once")
		default:
			list = append(list, w)
		}
	}
	return list
}

// checkConditions reports conditions that no situation or leg sets, where the design
// gives situations: what hangs on them would never be looked at.
func (r *reader) checkConditions() {
	set := map[When]bool{}
	var given []string
	for _, s := range r.d.Situations {
		for _, w := range s.With {
			if !set[w] {
				given = append(given, string(w))
			}
			set[w] = true
		}
	}
	if r.derived {
		return
	}
	for _, h := range r.hot {
		if !set[r.conditions[fold(h.name.Value)]] {
			r.add(problem.Problem{Pos: h.name.Pos, What: fmt.Sprintf("%s, hot: no situation has %s", h.of, quoted(h.name.Value)),
				Nearest:  problem.Nearest(fold(h.name.Value), given),
				Expected: fmt.Sprintf("%s, or a condition that a situation names as `with: [%s]`", oneOf(whenWords), short(h.name.Value))})
		}
	}
}
