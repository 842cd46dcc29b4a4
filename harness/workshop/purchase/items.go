package purchase

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/cutting"
	"fusewright/library"
)

// wires adds one line per insulation, size and colour, by cut length.
func (b *builder) wires(c *circuit.Circuit) {
	for _, w := range c.ToCut() {
		size := "size not known"
		if w.Spec.Size != nil {
			size = w.Spec.Size.Label
		}
		if w.Spec.Type.Cores > 0 {
			b.core(w, size)
			continue
		}
		item := fmt.Sprintf("%s, %s, %s", w.Spec.Type.Name, size, w.Spec.Colour.Code())
		b.add(Wire, item, "m", cutting.Break(w).CutM, w.Number)
	}
}

// core adds a wire that is a core of a cable: of those of one part as many as there are cores
// lie in one cable, as long as the longest.
func (b *builder) core(w *circuit.Wire, size string) {
	owner := w.Owner()
	l := b.add(Wire, fmt.Sprintf("%s, %d × %s", w.Spec.Type.Name, w.Spec.Type.Cores, size), "m", 0, w.Number)
	cables := b.cables[l]
	if cables == nil {
		cables = map[*circuit.Part][]float64{}
		b.cables[l] = cables
	}
	before := cablesM(cables[owner], w.Spec.Type.Cores)
	cables[owner] = append(cables[owner], cutting.Break(w).CutM)
	l.Need += cablesM(cables[owner], w.Spec.Type.Cores) - before
}

// cablesM is the length of cables whose cores have some lengths, the longest together.
func cablesM(coresM []float64, cores int) (sumM float64) {
	sorted := slices.Sorted(slices.Values(coresM))
	for i := len(sorted) - 1; i >= 0; i -= cores {
		sumM += sorted[i]
	}
	return sumM
}

// parts adds what the parts themselves are; of what is already there nothing but the fuses
// of the ways of a block that new wires go on from.
func (b *builder) parts(c *circuit.Circuit) {
	for _, x := range c.Branches {
		if c.Idle(x) {
			b.idle[x.Fuse.Ref] = true
		}
	}
	for _, p := range c.Parts {
		if src, block := p.Source.(*design.Block); p.Fitted {
			if block {
				b.ways(src, p)
			}
			continue
		}
		switch src := p.Source.(type) {
		case *design.Fuse:
			b.fuse(src.Type, src.Rating, p.Ref)
			if src.Type.Kind == "fuse" {
				holder := "holder for one "
				if src.Post != nil {
					holder = "mount on a battery's post for one "
				}
				b.add(Holders, holder+src.Type.Name+sealed(p), "pcs", 1, p.Ref)
			}
		case *design.Bank:
			b.add(Batteries, batteryItem(&src.Store, c.Design.NominalV()), "pcs", float64(src.Store.Count()), p.Ref)
		case *design.Relay:
			b.relay(src, p)
		case *design.Block:
			b.block(src, p)
		case *design.Switch:
			if src.Pole == nil { // a pole comes with its handle
				b.add(Switches, switchItem(src, c.Design), "pcs", 1, p.Ref)
			}
		case *design.Diode:
			b.add(Diodes, src.Type.Name, "pcs", 1, p.Ref)
		case *design.DroppingResistor:
			b.add(Resistors, droppingItem(src), "pcs", 1, p.Ref)
		case *design.Charger:
			b.add(Chargers, src.Type.Name, "pcs", 1, p.Ref)
			if src.PanelW.Given() {
				b.add(Chargers, "solar panels, "+quantity.Plain(src.PanelW.Value, quantity.Power)+" together", "set", 1, p.Ref)
			}
		case *design.Load:
			item := loadItem(src)
			if src.SaidOhm() > 0 && len(src.InSeries()) > 1 {
				item = resistorItem(src, p.Branches[len(p.Branches)-1], c.Design)
			}
			b.add(Loads, item, "pcs", 1, p.Ref)
		case *design.Ground:
			b.add(Grounds, groundItem(src, p), "pcs", 1, p.Ref)
		}
	}
}

// fitted says what is left out since it is there already.
func (b *builder) fitted(c *circuit.Circuit) {
	var refs []string
	for _, p := range c.Parts {
		if p.Fitted {
			refs = append(refs, p.Ref)
		}
	}
	if refs = append(refs, c.FittedWires()...); len(refs) > 0 {
		b.missing = append(b.missing, "already fitted and left out: "+wording.And(refs))
	}
}

// resistorItem is a resistor in series with a load, by its ohms and the watts that it must bear at
// the highest voltage of ordinary use.
func resistorItem(l *design.Load, draws *circuit.Branch, d *design.Design) string {
	a := draws.Load.StringA * d.HighestV() / d.NominalV()
	return fmt.Sprintf("%s, %s, at least %s", l.Name, quantity.Plain(l.SaidOhm(), quantity.Resistance),
		quantity.Plain(math.Ceil(circuit.ResistorSpare*a*a*l.SaidOhm()), quantity.Power))
}

func droppingItem(x *design.DroppingResistor) string {
	item := "resistor, " + quantity.Plain(x.Ohm.Value, quantity.Resistance) + ", rating not given"
	if x.RatingW.Given() {
		item = strings.Replace(item, "rating not given", quantity.Plain(x.RatingW.Value, quantity.Power), 1)
	}
	if x.Cutout {
		item += ", with thermal fuse"
	}
	return item
}

// loadItem is an accessory by its type, or by its name when it has none, and its
// power.
func loadItem(l *design.Load) string {
	item := l.Name
	if l.Type != nil {
		item = l.Type.Name
	}
	if l.PowerW > 0 && !strings.HasSuffix(item, " W") {
		item += ", " + quantity.Plain(math.Round(l.PowerW*10)/10, quantity.Power)
	}
	return item
}

// groundItem is what a ground point is made of: a block by its ways and limit, a
// stud by the thread that the rings on it ask for.
func groundItem(g *design.Ground, p *circuit.Part) string {
	wires, thread := 0, ""
	for _, t := range p.Terminals {
		wires += len(t.Wires)
		if name, ok := strings.CutPrefix(t.Kind, "ring "); ok && thread == "" {
			thread = " " + name
		}
	}
	if g.Kind == design.FrameStud {
		return "bolt" + thread + " with nut and serrated washers, for a frame stud"
	}
	item := fmt.Sprintf("ground block, %d ways%s", wires, thread)
	if g.LimitA.Given() {
		item += ", " + quantity.Plain(g.LimitA.Value, quantity.Current)
	}
	return item
}

func (b *builder) fuse(t *library.FuseType, r *library.FuseRating, ref string) {
	if b.idle[ref] {
		return
	}
	item := t.Name + " " + quantity.Plain(r.RatingA, quantity.Current)
	if r.Colour != "" {
		item += ", " + r.Colour
	}
	l := b.add(Fuses, item, "pcs", 1, ref)
	l.resets = t.Kind == "breaker" || t.Kind == "ptc"
}

// sealed asks for a sealed holder or socket in a wet place: the library's rows
// of fuses and relays do not say.
func sealed(p *circuit.Part) string {
	if p.Place != nil && p.Place.Wet {
		return ", sealed"
	}
	return ""
}

func (b *builder) relay(r *design.Relay, p *circuit.Part) {
	item := r.Form.Name
	for _, delay := range []struct {
		of   design.Quantity
		word string
	}{{r.OnDelayS, "on"}, {r.OffDelayS, "off"}} {
		if delay.of.Given() {
			item += ", " + delay.word + " delay of " + quantity.Plain(delay.of.Value, quantity.Duration)
		}
	}
	switch r.Coil.Suppressed {
	case "resistor", "diode", "zener":
		item += ", coil with " + r.Coil.Suppressed
	}
	if r.Half != nil { // comes with the other
		return
	}
	b.add(Relays, item, "pcs", 1, p.Ref)
	if r.Form.ContactEnd == "" { // what has studs is screwed down
		b.add(Holders, "socket for "+r.Form.Family+sealed(p), "pcs", 1, p.Ref)
	}
}

func (b *builder) block(src *design.Block, p *circuit.Part) {
	item := fmt.Sprintf("block, %d ways", len(src.Ways))
	if src.Type != nil {
		item = src.Type.Name
	}
	b.add(Blocks, item, "pcs", 1, p.Ref)
	b.ways(src, p)
}

func (b *builder) ways(src *design.Block, p *circuit.Part) {
	refs := map[string]string{}
	for _, t := range p.Terminals {
		if !p.Fitted || slices.ContainsFunc(t.Wires, func(w *circuit.Wire) bool { return !w.Spec.Fitted }) {
			refs[t.Name] = t.FuseRef
		}
	}
	for _, w := range src.Ways {
		if ref := refs[w.Number]; w.Fuse != nil && w.FuseType != nil && (ref != "" || !p.Fitted) {
			b.fuse(w.FuseType, w.Fuse, ref)
		}
	}
}

// switchItem is a switch by its type or rating, with its positions and poles.
func switchItem(s *design.Switch, d *design.Design) string {
	item := contactItem(s)
	if s.Momentary && s.Type != nil && !s.Type.Held {
		item += ", momentary"
	}
	if len(s.Positions) > 0 {
		var names []string
		for _, p := range s.Positions {
			names = append(names, p.Name)
		}
		item += ", positions " + strings.Join(names, " / ")
	}
	poles, outputs := 1, len(s.Outputs())
	for _, x := range d.Switches {
		if x.Pole == s {
			poles, outputs = poles+1, outputs+len(x.Outputs())
		}
	}
	if poles > 1 {
		item += fmt.Sprintf(", %d poles", poles)
	}
	if outputs > 0 {
		item += fmt.Sprintf(", %d outputs", outputs)
	}
	return item
}

func contactItem(s *design.Switch) string {
	kind := "switch"
	if s.Momentary {
		kind = "push-button"
		if s.Positions != nil {
			kind = "momentary switch"
		}
	}
	if s.Type != nil {
		return s.Type.Name
	}
	if s.RatingA.Given() {
		return kind + ", " + quantity.Plain(s.RatingA.Value, quantity.Current)
	}
	return kind + ", rating not given"
}

// ends adds the crimp parts, in packs where the library sells them so; a joint
// of several wires is one.
func (b *builder) ends(c *circuit.Circuit) {
	jointed := map[*circuit.Terminal]bool{}
	for _, w := range c.ToCut() {
		for _, at := range []*circuit.Terminal{w.From, w.To} {
			if !jointed[at] {
				b.end(w, at, w.Crimp(at == w.From))
			}
			jointed[at] = at.Jointed
		}
	}
}

func (b *builder) end(w *circuit.Wire, at *circuit.Terminal, crimp *library.Terminal) {
	if crimp == nil {
		kind := at.Kind
		switch {
		case at.Jointed:
			kind = circuit.JointEnd
		case kind == "":
			kind = "kind not known"
		}
		b.missing = append(b.missing,
			fmt.Sprintf("%s: no terminal chosen at %s:%s (%s)", w.Number, at.Part.Ref, at.Name, kind))
		return
	}
	what := w.Number
	if at.Jointed {
		what = at.Part.Ref
	}
	group, item := Terminals, crimp.Name
	if at.Mate() {
		group, item = Plugs, "mate of "+crimp.Name
	}
	l := b.add(group, item, "pcs", 1, what)
	if crimp.SoldPer > 1 {
		l.SoldAs = "pack of " + strconv.Itoa(crimp.SoldPer)
	}
}

// coverStepMm are the bundles up to which sleeves and conduit are sold, in mm. Common
// practice, no source.
var coverStepMm = []float64{6, 10, 15, 20, 25, 32, 40, 50}

// SizeMm is the size of a sleeve or conduit, in mm: the step that its largest bundle asks
// for, that bundle itself above all steps; 0 = none or not known.
func (l *Line) SizeMm() float64 {
	if i, _ := slices.BinarySearch(coverStepMm, l.LargestMm); l.LargestMm > 0 && i < len(coverStepMm) {
		return coverStepMm[i]
	}
	return l.LargestMm
}

// coverStep is the place of a bundle among the sizes.
func coverStep(outerMm float64) string {
	i, _ := slices.BinarySearch(coverStepMm, outerMm)
	return strconv.Itoa(i)
}

// covers adds sleeves and conduit by the length of the runs they lie on and the sizes
// that the bundles ask for: of what stretches one does for several.
func (b *builder) covers(c *circuit.Circuit) {
	var list []*circuit.Bundle
	for _, bundle := range c.Bundles {
		if bundle.Run.Cover != nil && len(bundle.ToMake()) > 0 {
			list = append(list, bundle)
		}
	}
	for _, bundle := range list {
		cover := bundle.Run.Cover
		l := b.addOf(Covers, cover.Name, coverStep(articleMm(list, bundle)), "m", bundle.Run.LengthM.Value, bundle.Run.Name)
		l.LargestMm = math.Max(l.LargestMm, bundle.OuterMm)
	}
}

// articleMm is the thickest bundle that the article takes which a bundle's cover is cut from.
func articleMm(list []*circuit.Bundle, bundle *circuit.Bundle) float64 {
	cover, sizes := bundle.Run.Cover, []float64(nil)
	for _, x := range list {
		if x.Run.Cover == cover {
			sizes = append(sizes, x.OuterMm)
		}
	}
	slices.Sort(sizes)
	slices.Reverse(sizes)
	article := sizes[0]
	for _, mm := range sizes {
		if mm*cover.Spans < article && mm < article {
			article = mm
		}
		if mm == bundle.OuterMm {
			break
		}
	}
	return article
}

// consumables adds ties, heat-shrink and markers.
func (b *builder) consumables(c *circuit.Circuit) {
	ties, shrinkM := 0.0, 0.0
	for _, bundle := range c.Bundles {
		if len(bundle.ToMake()) > 0 {
			ties += math.Ceil(bundle.Run.LengthM.Value/TieSpacingM) + 1
		}
	}
	shrunk := map[*circuit.Terminal]bool{}
	for _, w := range c.ToCut() {
		for _, at := range []*circuit.Terminal{w.From, w.To} {
			if crimp := w.Crimp(at == w.From); crimp != nil && !crimp.Sealed && !shrunk[at] {
				shrinkM += ShrinkPerEndM
			}
			shrunk[at] = at.Jointed
		}
	}
	if ties > 0 {
		b.add(Consumables, "cable ties", "pcs", ties, "").SoldAs = "pack of " + strconv.Itoa(TiePack)
	}
	if shrinkM > 0 {
		b.add(Consumables, "heat-shrink tube, adhesive lined", "m", shrinkM, "")
	}
	if n := len(c.ToCut()); n > 0 {
		b.add(Consumables, "wire markers", "pcs", float64(n*MarkersPerWire), "")
	}
}

// batteryItem is a battery as it is bought, of those in series one.
func batteryItem(b *design.Battery, systemV float64) string {
	return b.Chemistry.Name + " battery " + quantity.Plain(b.EachV(systemV), quantity.Voltage) + ", " + quantity.Plain(b.CapacityAh.Value, quantity.Charge)
}
