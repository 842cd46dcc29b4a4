package cell

// Widen gives every cell the room that it takes in another way of drawing the same
// circuit too: with findings, or with solved values.
func (s *Cells) Widen(other *Cells) {
	for i, c := range s.List {
		o := other.List[i]
		c.Lead = max(c.Lead, o.Lead)
		c.Wide = max(c.Wide, c.Body, o.Body)
		c.Cellar, c.Bar, c.Turn = max(c.Cellar, o.Cellar), max(c.Bar, o.Bar), max(c.Turn, o.Turn)
		for k, r := range c.Rows {
			r.Top, r.Bottom = max(r.Top, o.Rows[k].Top), max(r.Bottom, o.Rows[k].Bottom)
		}
		if len(c.Ways) == 0 || c.Part.InReturn {
			continue
		}
		for _, out := range c.Outlets {
			if out.Dx == c.Body {
				out.Dx = c.Wide
			}
		}
		c.Body, c.Box = c.Wide, c.Wide
	}
}

// Dress turns cells where they stand into those of another way of drawing the circuit,
// and tells whether they have the room for it; if not, nothing is changed.
func (s *Cells) Dress(other *Cells) bool {
	for i, c := range s.List {
		o := other.List[i]
		if o.Lead > c.Lead || o.Body > max(c.Wide, c.Body) || o.Cellar > c.Cellar {
			return false
		}
		for k, r := range c.Rows {
			if o.Rows[k].Top > r.Top || o.Rows[k].Bottom > r.Bottom {
				return false
			}
		}
	}
	for i, c := range s.List {
		o := other.List[i]
		c.Caption, c.Flat, c.FlatReturns = o.Caption, false, false
		if (len(c.Ways) == 0 || c.Part.InReturn) && len(c.Outlets) == 0 {
			c.Box = o.Box
			c.RunMore += c.Body - o.Body
			c.Body = o.Body
		}
	}
	return true
}

// Room is the width that a cell takes in its column.
func (c *Cell) Room() int { return c.Lead + max(c.Body, c.Wide) }
