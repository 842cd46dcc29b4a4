package library

// Cover finds a sleeve or conduit by name or alias; nil when there is none.
func (l *Library) Cover(name string) *Cover { return find(l.Covers, name, coverNames) }

func coverNames(c *Cover) (string, []string) { return c.Name, c.Aliases }
