package compare

import (
	"strconv"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
)

// surroundings are what the parts stand in: the practice with its limits, the
// battery, the charging system, the machine's own loads, places and runs.
func surroundings(c *circuit.Circuit) []thing {
	d := c.Design
	list := []thing{
		{key("design"), "design", d.Practice.Name, "", designFields(d)},
		{key("battery"), "battery", "of the design", refOf(c, circuit.Battery), firstFields(&d.Battery)},
	}
	if d.Charging.Present() {
		list = append(list, thing{key("charging"), "charging", "of the design", refOf(c, circuit.Generator),
			chargingFields(&d.Charging)})
	}
	for _, v := range d.VehicleLoads {
		var f fields
		given(&f, "power", v.PowerW, quantity.Power, +1)
		given(&f, "current", v.CurrentA, quantity.Current, +1)
		given(&f, "duty", v.Duty, quantity.Share, +1)
		when := []string{string(v.When)}
		for _, s := range v.In {
			when = append(when, s.Name)
		}
		f.text("when", strings.TrimPrefix(strings.Join(when, ", "), ", "))
		list = append(list, thing{key("vehicle load", v.Name), "vehicle load", v.Name, refOf(c, circuit.VehicleLoads), f})
	}
	for _, p := range d.Places {
		var f fields
		given(&f, "ambient", p.AmbientC, quantity.Temperature, +1)
		f.yes("wet", p.Wet)
		f.yes("moves", p.Moves)
		list = append(list, thing{key("place", p.Name), "place", p.Name, "", f})
	}
	for _, r := range d.Runs {
		list = append(list, thing{key("run", r.Name), "run", r.Name, "", runFields(r)})
	}
	return list
}

// refOf is the designation of the one part of a kind; "" when there is none.
func refOf(c *circuit.Circuit, kind circuit.Kind) string {
	for _, p := range c.Parts {
		if p.Kind == kind {
			return p.Ref
		}
	}
	return ""
}

func designFields(d *design.Design) fields {
	var f fields
	f.text("practice", d.Practice.Name)
	given(&f, "system", d.SystemV, quantity.Voltage, 0)
	given(&f, "drop critical", d.Limits.DropCritical, quantity.Share, +1)
	given(&f, "drop other", d.Limits.DropOther, quantity.Share, +1)
	given(&f, "fuse distance", d.Limits.FuseDistanceM, quantity.Length, +1)
	given(&f, "standby", d.Limits.StandbyA, quantity.Current, +1)
	given(&f, "spare", d.Limits.SpareA, quantity.Current, -1)
	if p := d.Practice; p != nil {
		f.figure("drop aim", quantity.Plain(p.DropAim, quantity.Share), p.DropAim, +1)
		f.figure("fuse load", quantity.Plain(p.FuseLoadShare, quantity.Share), p.FuseLoadShare, +1)
		f.figure("fuse over wire", quantity.Plain(p.FuseWireShare, quantity.Share), p.FuseWireShare, +1)
		f.figure("smallest wire", quantity.Plain(p.MinMm2, quantity.Area), p.MinMm2, -1)
		f.figure("smallest flexing wire", quantity.Plain(p.MinFlexMm2, quantity.Area), p.MinFlexMm2, -1)
	}
	if q := d.Limits.StandbyDays; q.Given() {
		f.figure("days to no start", q.Text, q.Value, -1)
	}
	return f
}

func batteryFields(b *design.Battery) fields {
	var f fields
	if b.Chemistry != nil {
		f.text("chemistry", b.Chemistry.Name)
	}
	given(&f, "capacity", b.CapacityAh, quantity.Charge, -1)
	given(&f, "resistance", b.ResistanceOhm, quantity.Resistance, 0)
	if b.InSeries > 0 {
		f.text("in series", strconv.Itoa(b.InSeries))
	}
	given(&f, "board", b.Board, quantity.Current, 0)
	if b.At != nil {
		f.text("at", b.At.Name)
	}
	return f
}

func firstFields(b *design.Battery) fields {
	f := batteryFields(b)
	if len(b.FedBy) > 0 {
		f.text("fed by", feeds(b.FedBy))
	}
	return f
}

func chargingFields(c *design.Charging) fields {
	var f fields
	given(&f, "regulated", c.RegulatedV, quantity.Voltage, 0)
	if c.Kind != nil {
		f.text("kind", c.Kind.Name)
	}
	f.text("senses", c.Senses)
	f.text("output", curveText(c.Output))
	f.text("curve", c.Curve)
	given(&f, "idle", c.IdleRPM, quantity.Speed, 0)
	given(&f, "cruise", c.CruiseRPM, quantity.Speed, 0)
	given(&f, "hot derating", c.HotDerating, quantity.Share, +1)
	return f
}

func curveText(output []design.OutputPoint) string {
	var points []string
	for _, p := range output {
		points = append(points, quantity.Plain(p.RPM.Value, quantity.Speed)+": "+amps(p.CurrentA.Value))
	}
	return strings.Join(points, ", ")
}

func runFields(r *design.Run) fields {
	var f fields
	if r.From != nil && r.To != nil {
		f.text("from", r.From.Name)
		f.text("to", r.To.Name)
	}
	given(&f, "length", r.LengthM, quantity.Length, +1)
	f.text("near", r.Near.Value)
	given(&f, "ambient", r.AmbientC, quantity.Temperature, +1)
	f.yes("flexes", r.Flexes)
	f.yes("chafes", r.Chafes)
	f.yes("pinches", r.Pinches)
	if r.Cover != nil {
		f.text("cover", r.Cover.Name)
	}
	return f
}
