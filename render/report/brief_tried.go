package report

import (
	"fmt"
	"strings"

	"fusewright/harness/remedy"
	"fusewright/harness/review/finding"
)

// remedies prints what was tried against a cause: beside the remedy what mends more,
// changes of one effect on one line.
func (x *Brief) remedies(c *remedy.Cause, headed, decided bool) {
	say := func(word, text string) { x.prose(fmt.Sprintf("   %-8s", word), text) }
	about := func(t *remedy.Trial) string {
		if headed && c.Remedy != nil && t.About == c.Remedy.About {
			return t.Will
		}
		return t.About + ": " + t.Will
	}
	most := 0
	switch {
	case c.Remedy != nil && c.Remedy.Guess:
		say("meant?", c.Remedy.Will+effect(c.Remedy))
		return
	case c.Remedy != nil:
		say("fix", about(c.Remedy)+effect(c.Remedy))
		most = len(c.Remedy.Mends)
	case !decided: // said under the first of several rules
		x.decide(c.Findings[0])
	}
	var texts, effects []string
	shown := map[string]bool{}
	for _, t := range c.Tried {
		if len(t.Mends) <= most || shown[t.About] || x.tried[t.About+t.Will] {
			continue
		}
		shown[t.About], x.tried[t.About+t.Will] = true, true
		if n := len(texts); n > 0 && effects[n-1] == effect(t) {
			texts[n-1] += " or " + about(t)
			continue
		}
		texts, effects = append(texts, about(t)), append(effects, effect(t))
	}
	for i, text := range texts {
		say("tried", text+effects[i])
	}
}

// decide says what to change where nothing that was tried clears a finding.
func (x *Brief) decide(f *finding.Finding) { x.prose("   decide  ", x.row[f].Change) }

// effect is what came of a change.
func effect(t *remedy.Trial) string {
	var parts []string
	for _, n := range []struct {
		many int
		word string
	}{{len(t.Mends), "clears"}, {len(t.Eases), "improves"}, {len(t.Worsens), "worsens"}} {
		if n.many > 0 {
			parts = append(parts, fmt.Sprintf("%s %d", n.word, n.many))
		}
	}
	text := ""
	if len(parts) > 0 {
		text = ", " + strings.Join(parts, ", ")
	}
	return text + brought(t)
}

// brought says what a change brings.
func brought(t *remedy.Trial) string {
	if n := len(t.Breaks); n > 0 {
		return fmt.Sprintf(", adds %d (%s)", n, strings.Join(brings(t), ", "))
	}
	return ""
}
