package report

import (
	"fmt"
	"math"
	"slices"
	"strconv"
)

// Agreement is how far two numbers of a model may lie apart and still count as
// the same: of their size, and absolutely below 1.
const Agreement = 1e-9

// Difference is one value that is not the same in two models.
type Difference struct {
	Path        string // "situations[2].node_v[7]"
	First, Then string // the two values in JSON, shortened; "" = not there
}

// String says where and what: "wires[3].size: "1 mm²" became "1.5 mm²"".
func (d Difference) String() string {
	switch {
	case d.First == "":
		return d.Path + ": new, " + d.Then
	case d.Then == "":
		return d.Path + ": gone, was " + d.First
	}
	return d.Path + ": " + d.First + " became " + d.Then
}

// Differences compares two models as plain values: at most so many differences,
// and how many numbers were compared.
func Differences(first, then any, most int) (list []Difference, numbers int) {
	c := &comparison{most: most}
	c.values("", first, then)
	return c.list, c.numbers
}

type comparison struct {
	most, numbers int
	list          []Difference
}

func (c *comparison) add(path, first, then string) {
	if len(c.list) < c.most {
		c.list = append(c.list, Difference{path, first, then})
	}
}

func (c *comparison) values(path string, first, then any) {
	switch a := first.(type) {
	case map[string]any:
		if b, same := then.(map[string]any); same {
			c.objects(path, a, b)
			return
		}
	case []any:
		if b, same := then.([]any); same {
			c.lists(path, a, b)
			return
		}
	case float64:
		if b, same := then.(float64); same {
			c.numbers++
			if math.Abs(a-b) <= Agreement*max(1, math.Abs(a), math.Abs(b)) {
				return
			}
		}
	default: // text, true, false, null
		if _, isList := then.([]any); isList {
			break
		}
		if _, isObject := then.(map[string]any); !isObject && first == then {
			return
		}
	}
	c.add(path, brief(first), brief(then))
}

// later are keys that models of earlier programs do not have: that is no difference.
var later = map[string]bool{"states": true}

func (c *comparison) objects(path string, a, b map[string]any) {
	var keys []string
	for k := range a {
		keys = append(keys, k)
	}
	for k := range b {
		if _, both := a[k]; !both {
			keys = append(keys, k)
		}
	}
	slices.Sort(keys)
	for _, k := range keys {
		at := k
		if path != "" {
			at = path + "." + k
		}
		first, hadIt := a[k]
		then, hasIt := b[k]
		switch {
		case !hadIt && later[k]:
		case !hadIt:
			c.add(at, "", brief(then))
		case !hasIt:
			c.add(at, brief(first), "")
		default:
			c.values(at, first, then)
		}
	}
}

func (c *comparison) lists(path string, a, b []any) {
	for i := range max(len(a), len(b)) {
		at := path + "[" + strconv.Itoa(i) + "]"
		switch {
		case i >= len(a):
			c.add(at, "", brief(b[i]))
		case i >= len(b):
			c.add(at, brief(a[i]), "")
		default:
			c.values(at, a[i], b[i])
		}
	}
}

// brief shows a value in a message: nothing that could confuse a terminal.
func brief(v any) string {
	const most = 60
	text := ""
	switch v := v.(type) {
	case nil:
		return "null"
	case string:
		text = strconv.QuoteToGraphic(v)
	case map[string]any:
		return fmt.Sprintf("an object of %d", len(v))
	case []any:
		return fmt.Sprintf("a list of %d", len(v))
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	default:
		text = fmt.Sprint(v)
	}
	if runes := []rune(text); len(runes) > most {
		return string(runes[:most]) + "…"
	}
	return text
}
