package scene

// Put draws what stands on another sheet, its top left corner at a place.
func (s *Sheet) Put(other *Sheet, at Point) {
	for _, item := range other.Items {
		switch {
		case item.Path != nil:
			p := *item.Path
			p.Points = make([]Point, len(item.Path.Points))
			for i, q := range item.Path.Points {
				p.Points[i] = q.Add(at)
			}
			item.Path = &p
		case item.Text != nil:
			t := *item.Text
			t.At = t.At.Add(at)
			item.Text = &t
		case item.Begin != nil && item.Begin.ID != "":
			g := *item.Begin
			g.ID = s.UniqueID(g.ID)
			item.Begin = &g
		}
		s.Items = append(s.Items, item)
	}
}
