package schematic

// routeAll gives every hop of a page its track and sets the places of the
// columns. It returns an inlet to take out when nets cannot pass each other.
func (p *page) routeAll() (stuck *inlet) {
	channels := make([]channel, max(len(p.columns)-1, 0))
	for _, n := range p.nets {
		for _, h := range n.hops {
			channels[h.col].hops = append(channels[h.col].hops, h)
		}
	}
	for i := range channels {
		if stuck := channels[i].route(); stuck != nil {
			return stuck
		}
	}
	p.measureColumns(channels)
	return nil
}

// measureColumns sets the lead and body widths and packs the columns.
func (p *page) measureColumns(channels []channel) {
	n := len(p.columns)
	p.leads, p.widths, p.columnX = make([]int, n), make([]int, n), make([]int, n)
	x := 0
	for col, list := range p.columns {
		body := 0
		blank := 0
		for _, c := range list {
			if c.kind == blankCell { // stands under leads and bodies alike
				blank = c.body
				continue
			}
			p.leads[col] = max(p.leads[col], c.lead)
			body = max(body, c.body)
		}
		p.widths[col] = max(p.leads[col]+body, blank)
		p.columnX[col] = x
		x += p.widths[col]
		if col < len(channels) {
			x += channels[col].tracks + 1
		}
	}
	p.setBodies()
}

func (p *page) setBodies() {
	for col, list := range p.columns {
		for _, c := range list {
			c.x = p.columnX[col] + p.leads[col]
		}
	}
}

// placeColumns shares the width that is left among the channels and centres
// what remains.
func (p *page) placeColumns(total int) {
	const most = 6 // a wider gap tears the drawing apart
	left := total - p.width()
	gaps := len(p.columns) - 1
	for col := 1; col <= gaps && left > 0; col++ {
		add := min(left/(gaps-col+1), most)
		left -= add
		for k := col; k <= gaps; k++ {
			p.columnX[k] += add
		}
	}
	for k := range p.columnX {
		p.columnX[k] += max(left, 0) / 2
	}
	p.setBodies()
}

// spread gives the page air between its cells, and the columns the width that
// is left. It tells whether the page still fits its sheet.
func (a *arrangement) spread(p *page, air int) bool {
	p.solveRows(air)
	if p.height > a.paper.rowsM() && air > 0 {
		return false
	}
	if p.routeAll() != nil { // with other rows another wire may be stuck
		if air > 0 {
			return false
		}
		p.solveRows(0)
		p.routeAll()
	}
	columns := a.paper.columnsM()
	if p.width() > columns && air > 0 {
		return false
	}
	p.side = columns-p.width() >= panelM
	if p.side {
		columns -= panelM
	}
	a.flatten(p, columns-p.width())
	p.placeColumns(columns)
	return true
}
