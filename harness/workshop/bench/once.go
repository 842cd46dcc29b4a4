package bench

import (
	"math"
	"slices"
	"strings"

	"fusewright/harness/design/wording"
)

// anew leaves out of the currents of a pass those that an earlier one has asked for in the
// same place, where the meter could not tell the two apart.
func (m *maker) anew(checks ...*Check) (list []*Check) {
	for _, c := range checks {
		if slices.ContainsFunc(m.asked, func(o *Check) bool {
			return o.Ref == c.Ref && o.Where == c.Where && math.Abs(o.Nominal-c.Nominal) <= ClampShare*o.Nominal
		}) {
			continue
		}
		m.asked, list = append(m.asked, c), append(list, c)
	}
	return list
}

// postsOnly begins the place of a reading that others are read against.
const postsOnly = "posts: "

// Posts tells of the reading at the posts of a battery.
func (c *Check) Posts() bool { return strings.HasPrefix(c.Where, postsOnly) }

// telling are the passes that ask for something besides the posts, which says nothing by
// itself; the others are named as left out.
func (m *maker) telling(passes []*Section) (list []*Section) {
	var silent []string
	for _, s := range passes {
		if s.Trouble == "" && !slices.ContainsFunc(s.Checks(), func(c *Check) bool { return !c.Posts() }) {
			silent = append(silent, s.Situation.Name)
			continue
		}
		list = append(list, s)
	}
	if len(silent) > 0 {
		m.missing = append(m.missing, "Without a pass of their own, because each of their readings is in another: "+wording.And(silent)+".")
	}
	return list
}
