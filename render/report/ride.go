package report

import (
	"fmt"
	"io"
	"math"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/cranking"
	"fusewright/harness/study/ride"
)

// RideReport is one or more rides of a design, in print order.
type RideReport struct {
	Fusewright int     `json:"fusewright_report"`
	Design     Heading `json:"design"`
	Battery    string  `json:"battery"`
	Rides      []Ride  `json:"rides"`
	Caution    string  `json:"caution"`
}

// Ride is one ride. Times are in seconds from its start; null = never.
type Ride struct {
	Name          string      `json:"name"`
	StartCharge   *float64    `json:"start_charge"`
	EndCharge     *float64    `json:"end_charge"`
	LowestCharge  *float64    `json:"lowest_charge"`
	LowestChargeS *float64    `json:"lowest_charge_s"`
	ReserveS      *float64    `json:"below_start_reserve_s"`
	EmptyS        *float64    `json:"empty_s"`
	Why           string      `json:"why,omitempty"`           // the first battery gives no more, as words behind its name
	LeftS         *float64    `json:"followed_to_s,omitempty"` // it was not followed to its end
	Planned       int         `json:"planned_legs"`
	EndReserve    *float64    `json:"end_start_reserve"`
	ColdestC      *float64    `json:"coldest_battery_c"`
	Starts        int         `json:"starts"`             // of the engine
	StartAh       float64     `json:"start_ah"`           // what each takes; 0 = not known
	NoStart       *NoStart    `json:"no_start,omitempty"` // why one fails whatever the reserve, as far as is known
	Further       []RideBank  `json:"further_batteries,omitempty"`
	Legs          []RideLeg   `json:"legs"`
	Course        RideCourse  `json:"course"`
	Frosts        []RideFrost `json:"no_charge_in_frost,omitempty"`
	Caveats       []string    `json:"caveats,omitempty"`
	Beside        string      `json:"further_alternators,omitempty"`
}

// RideFrost is a leg in which a battery takes no charge because its air is too cold.
type RideFrost struct {
	Leg          int      `json:"leg"` // from 1
	Battery      string   `json:"battery"`
	AmbientC     *float64 `json:"ambient_c"`
	ChargedFromC *float64 `json:"charged_from_c"`
}

// NoStart is why a start fails: the battery's protection lets less through than the starter takes, or the starter does not turn
// in a case of the start study that the ride is no better than.
type NoStart struct {
	Starter  string   `json:"starter"`
	StarterA *float64 `json:"starter_a"`
	BoardA   *float64 `json:"protection_a,omitempty"`
	PostsV   *float64 `json:"posts_v,omitempty"`
	StarterV *float64 `json:"starter_v,omitempty"`
	NeedsV   *float64 `json:"starter_needs_v,omitempty"`
	AmbientC *float64 `json:"ambient_c,omitempty"`
	Charge   *float64 `json:"charge,omitempty"`
}

// RideBank is a further battery on a ride; its lists are those of the ride's legs and course.
type RideBank struct {
	Name          string        `json:"name"`
	StartCharge   *float64      `json:"start_charge"`
	EndCharge     *float64      `json:"end_charge"`
	LowestCharge  *float64      `json:"lowest_charge"`
	LowestChargeS *float64      `json:"lowest_charge_s"`
	EmptyS        *float64      `json:"empty_s"`
	UsualReserve  float64       `json:"usual_reserve"` // charge below which a discharge shortens its life; 0 = none known
	Why           string        `json:"why,omitempty"` // it gives no more, as words behind its name
	Legs          []RideBankLeg `json:"legs"`
	Charge        []*float64    `json:"charge"`
	PostsV        []*float64    `json:"posts_v"`
	BatteryA      []*float64    `json:"battery_a"`
}

// RideBankLeg is a leg of a further battery.
type RideBankLeg struct {
	BatteryA  *float64 `json:"battery_a"`
	LowestV   *float64 `json:"lowest_v"`
	HighestV  *float64 `json:"highest_v"`
	EndCharge *float64 `json:"end_charge"`
	TakenAh   *float64 `json:"taken_ah"`
	GivenAh   *float64 `json:"given_ah"`
	ColdS     float64  `json:"too_cold_to_charge_s,omitempty"` // it would have been charged
}

// RideLeg is one leg.
type RideLeg struct {
	FromS        *float64 `json:"from_s"`
	FromReserve  *float64 `json:"first_start_reserve"` // as it begins; StartReserve is the highest of its moments
	StartAh      float64  `json:"start_ah,omitempty"`  // taken by the start of the engine as it begins
	ToS          *float64 `json:"to_s"`
	EngineRPM    float64  `json:"engine_rpm"`
	Key          string   `json:"key"`
	On           []string `json:"on"`
	AmbientC     float64  `json:"ambient_c"`
	OutputA      *float64 `json:"output_a"`
	LoadA        *float64 `json:"load_a"`
	BatteryA     *float64 `json:"battery_a"`
	LowestV      *float64 `json:"lowest_v"`
	HighestV     *float64 `json:"highest_v"`
	EndCharge    *float64 `json:"end_charge"`
	StartReserve *float64 `json:"start_reserve"`
	TakenAh      *float64 `json:"taken_ah"`
	GivenAh      *float64 `json:"given_ah"`
	ColdS        float64  `json:"too_cold_to_charge_s,omitempty"` // it would have been charged
	Sun          []Sunlit `json:"sun,omitempty"`                  // where it does not shine all the time
	Trouble      string   `json:"trouble,omitempty"`
}

// Sunlit is when the sun shines on the panels.
type Sunlit struct {
	FromS float64 `json:"from_s"`
	ToS   float64 `json:"to_s"`
}

// RideCourse is the ride over time, ready to plot: lists of one length.
type RideCourse struct {
	TimeS     []float64 `json:"time_s"`
	Charge    []float64 `json:"charge"`
	PostsV    []float64 `json:"posts_v"`
	BatteryA  []float64 `json:"battery_a"`
	ChargingA []float64 `json:"charging_a"`
	LoadA     []float64 `json:"load_a"`
	Reserve   []float64 `json:"start_reserve"`
}

// NewRides makes the report of rides.
func NewRides(rep *Report, d *design.Design, list []*ride.Result, starts *cranking.Study) *RideReport {
	out := &RideReport{Fusewright: Version, Design: rep.Design, Battery: batteryOf(d), Rides: []Ride{}, Caution: CautionOf(d)}
	for _, r := range list {
		out.Rides = append(out.Rides, RideOf(r, starts))
	}
	return out
}

func batteryOf(d *design.Design) string {
	text := quantity.Plain(d.Battery.CapacityAh.Value, quantity.Charge)
	if d.Battery.Chemistry != nil {
		text = d.Battery.Chemistry.Name + " " + text
	}
	return d.Battery.Times() + text
}

// RideOf is the row of a ride; starts are those of the engine, nil = not known.
func RideOf(r *ride.Result, starts *cranking.Study) Ride {
	row := Ride{Name: r.Ride.Name, StartCharge: finite(r.Ride.StartCharge.Value), EndCharge: finite(r.EndCharge),
		LowestCharge: finite(r.LowestCharge), LowestChargeS: finite(r.LowestChargeS),
		ReserveS: finite(r.ReserveS), EmptyS: finite(r.EmptyS), Why: r.Why, Further: rideBanks(r), Caveats: r.Caveats, Beside: r.Beside,
		Planned: len(r.Ride.Legs), Starts: r.Starts(), StartAh: *finite(r.StartAh), EndReserve: finite(r.EndReserve()), ColdestC: finite(r.ColdestC), NoStart: noStart(r, starts)}
	for _, f := range r.Frosts {
		row.Frosts = append(row.Frosts, RideFrost{f.Leg + 1, f.Battery, finite(f.AirC), finite(f.LeastC)})
	}
	for _, l := range r.Legs {
		row.Legs = append(row.Legs, rideLeg(l))
	}
	if r.GivenUp {
		row.LeftS = finite(r.Legs[len(r.Legs)-1].ToS)
	}
	c := &row.Course
	for _, p := range r.Points {
		c.TimeS, c.Charge = append(c.TimeS, *finite(p.TimeS)), append(c.Charge, *finite(p.Charge))
		c.PostsV, c.LoadA = append(c.PostsV, *finite(p.BusV)), append(c.LoadA, *finite(p.LoadA))
		c.BatteryA = append(c.BatteryA, *finite(p.BatteryA))
		c.ChargingA = append(c.ChargingA, *finite(p.ChargingA))
		c.Reserve = append(c.Reserve, *finite(p.Reserve))
	}
	return row
}

// noStart is what the study of starts says against one on a ride; nil = nothing.
func noStart(r *ride.Result, s *cranking.Study) *NoStart {
	if s == nil {
		return nil
	}
	no := &NoStart{Starter: s.Start.Starter, StarterA: finite(s.Start.CurrentA)}
	if s.Barred() {
		no.BoardA = finite(s.BoardA)
		return no
	}
	k := s.Fails(r.ColdestC, r.LowestCharge)
	if k == nil {
		return nil
	}
	no.StarterA, no.PostsV, no.AmbientC, no.Charge = finite(k.CurrentA), finite(k.PostsV), finite(k.CelsiusC), finite(k.Charge)
	no.StarterV, no.NeedsV = finite(k.StarterV), finite(k.NeedsV)
	return no
}

// text is a sentence behind others, said tells that one of them says that a start is not certain; "" of none.
func (no *NoStart) text(said bool) string {
	not := "A start is not certain all the same"
	if said {
		not = "Nor is it before"
	}
	switch {
	case no == nil:
		return ""
	case no.BoardA != nil:
		return fmt.Sprintf(". %s: %s takes %s, and the battery's protection lets %s through", not, no.Starter,
			quantity.Format(*no.StarterA, quantity.Current), quantity.Plain(*no.BoardA, quantity.Current))
	}
	gets, needs := quantity.Against(*no.StarterV, *no.NeedsV, quantity.Voltage)
	return fmt.Sprintf(". The battery does not turn the engine all the same: %s draws %s and gets %s of the %s that it needs, at %s and %s of charge", no.Starter,
		quantity.Format(*no.StarterA, quantity.Current), gets, needs, celsius(no.AmbientC), quantity.Plain(*no.Charge, quantity.Share))
}

func rideBanks(r *ride.Result) (list []RideBank) {
	for i, b := range r.Banks {
		row := RideBank{Name: b.Bank.Name, StartCharge: finite(b.StartCharge), EndCharge: finite(b.EndCharge), LowestCharge: finite(b.LowestCharge),
			LowestChargeS: finite(b.LowestChargeS), EmptyS: finite(b.EmptyS), UsualReserve: budget.Reserve(b.Bank), Why: b.Why}
		for _, l := range r.Legs {
			leg, hours := l.Banks[i], (l.ToS-l.FromS)/3600
			row.Legs = append(row.Legs, RideBankLeg{BatteryA: finite((leg.TakenAh - leg.GivenAh) / hours), LowestV: finite(leg.LowestV),
				HighestV: finite(leg.HighestV), EndCharge: finite(leg.ToCharge), TakenAh: finite(leg.TakenAh), GivenAh: finite(leg.GivenAh), ColdS: leg.ColdS})
		}
		for _, p := range r.Points {
			row.Charge, row.PostsV = append(row.Charge, finite(p.Banks[i].Charge)), append(row.PostsV, finite(p.Banks[i].V))
			row.BatteryA = append(row.BatteryA, finite(p.Banks[i].A))
		}
		list = append(list, row)
	}
	return list
}

func rideLeg(l *ride.Leg) RideLeg {
	hours := (l.ToS - l.FromS) / 3600
	row := RideLeg{FromS: finite(l.FromS), ToS: finite(l.ToS), EngineRPM: l.Leg.EngineRPM, Key: string(l.Leg.Key),
		On: []string{}, AmbientC: l.AmbientC, OutputA: finite(l.OutputA), LoadA: finite(l.UsedAh / hours),
		BatteryA: finite((l.TakenAh - l.GivenAh) / hours), LowestV: finite(l.LowestV), HighestV: finite(l.HighestV),
		EndCharge: finite(l.ToCharge), StartReserve: finite(l.StartReserve), FromReserve: finite(l.FromReserve), StartAh: *finite(l.StartAh),
		TakenAh: finite(l.TakenAh), GivenAh: finite(l.GivenAh), ColdS: l.ColdS, Trouble: l.Trouble}
	for _, load := range l.Leg.On {
		row.On = append(row.On, load.Name)
	}
	for _, x := range l.Sun {
		row.Sun = append(row.Sun, Sunlit(x))
	}
	return row
}

// WriteRides prints rides as tables of their legs with the outcome of each.
func WriteRides(w io.Writer, rep *RideReport) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s · battery %s\n", nameOf(rep.Design), rep.Battery)
	for _, r := range rep.Rides {
		fmt.Fprintf(&b, "\nride %s\n", r.Name)
		r.Table().write(&b)
		fmt.Fprintf(&b, "charge %s at the start, %s at %s, lowest %s at %s\n", charge(r.StartCharge),
			charge(r.EndCharge), r.end(), charge(r.LowestCharge), clock(r.LowestChargeS))
		for _, x := range r.Further {
			fmt.Fprintf(&b, "%s: charge %s at the start, %s at %s, lowest %s at %s\n", x.Name, charge(x.StartCharge),
				charge(x.EndCharge), r.end(), charge(x.LowestCharge), clock(x.LowestChargeS))
		}
		b.WriteString(wrap("", r.Outcome()))
		for _, text := range r.Remarks() {
			b.WriteString(wrap("", text))
		}
	}
	b.WriteString("\n" + wrap("", rep.Caution))
	_, err := io.WriteString(w, b.String())
	return err
}

// Table is the legs of the ride; where there are several batteries each has a row of a leg.
func (r *Ride) Table() *Table {
	t := newTable(">leg", ">from", ">to", ">engine", ">air", ">output", ">loads", ">battery", ">posts", ">charge after", ">start reserve")
	if len(r.Further) > 0 {
		t = newTable(">leg", ">from", ">to", ">engine", ">air", ">output", ">loads", "battery", ">current", ">posts", ">charge after", ">start reserve")
	}
	for i, l := range r.Legs {
		engine := Engine(l.EngineRPM)
		if l.Key == string(design.KeyOff) {
			engine = "key off"
		}
		row := []string{fmt.Sprint(i + 1), clock(l.FromS), clock(l.ToS), engine, celsius(&l.AmbientC), amps(l.OutputA), amps(l.LoadA)}
		if len(r.Further) > 0 {
			row = append(row, "first")
		}
		t.add(append(row, atRest(l.BatteryA, l.ColdS), posts(l.LowestV, l.HighestV), charge(l.EndCharge), charge(l.StartReserve))...)
		for _, x := range r.Further {
			leg := x.Legs[i]
			t.add("", "", "", "", "", "", "", x.Name, atRest(leg.BatteryA, leg.ColdS), posts(leg.LowestV, leg.HighestV), charge(leg.EndCharge), "")
		}
	}
	return t
}

// Outcome says in a sentence whether the engine still starts.
func (r *Ride) Outcome() string {
	text := "The charge stays above the start reserve: the engine can be stopped anywhere on this ride and starts again"
	switch {
	case r.ReserveS == nil && r.LeftS == nil && r.NoStart != nil:
		text = "The charge stays above the start reserve"
	case r.LeftS != nil && r.ReserveS == nil:
		text = "Until then the charge stays above the start reserve"
	case r.ReserveS != nil:
		text = fmt.Sprintf("From %s on a start is not certain: the charge is below the start reserve, the state of charge "+
			"that the battery needs at this temperature to start the engine", clock(r.ReserveS))
		if r.LeftS == nil && *r.EndCharge >= *r.EndReserve {
			text += "; at the end of the ride it is above it again"
		}
	}
	if r.EmptyS != nil {
		text += fmt.Sprintf("; at %s the battery %s, and the ride ends", clock(r.EmptyS), r.Why)
	}
	text += r.NoStart.text(r.ReserveS != nil)
	for _, x := range r.Further {
		if x.EmptyS != nil {
			text += fmt.Sprintf(". At %s %s %s, and what it feeds goes out", clock(x.EmptyS), x.Name, x.Why)
		}
		text += x.reserve()
	}
	if r.LeftS != nil {
		text = fmt.Sprintf("Followed to %s only, in leg %d of %d; what comes after is not known. ", clock(r.LeftS), len(r.Legs), r.Planned) + text
	}
	return text + "." + r.startsText()
}

// end is when the charge at the end is that, in words.
func (r *Ride) end() string {
	if r.LeftS != nil {
		return clock(r.LeftS) + ", where it was left,"
	}
	return "the end"
}

// startsText says what the starts of the engine took; "" = it is not started, or that is not known.
func (r *Ride) startsText() string {
	if r.Starts == 0 || !(r.StartAh > 0) {
		return ""
	}
	times := "once"
	if r.Starts > 1 {
		times = fmt.Sprintf("%d times", r.Starts)
	}
	return fmt.Sprintf(" Of the charge %s is for starting the engine, %s.",
		quantity.Format(r.StartAh*float64(r.Starts), quantity.Charge), times)
}

// reserve says whether a further battery keeps what one of its kind should be left.
func (x *RideBank) reserve() string {
	switch {
	case x.LowestCharge == nil:
		return ""
	case x.UsualReserve == 0:
		return fmt.Sprintf(". At the lowest %s holds %s; no usual reserve is known for its chemistry", x.Name, charge(x.LowestCharge))
	case *x.LowestCharge < x.UsualReserve:
		value, least := quantity.Against(*x.LowestCharge, x.UsualReserve, quantity.Share)
		return fmt.Sprintf(". At %s %s holds %s: its usual reserve is %s, and a discharge below it shortens its life", clock(x.LowestChargeS), x.Name,
			value, least)
	}
	return fmt.Sprintf(". With %s at the lowest %s stays above its usual reserve of %s", charge(x.LowestCharge), x.Name,
		quantity.Plain(x.UsualReserve, quantity.Share))
}

// Remarks say which legs could not be followed, and what is not known.
func (r *Ride) Remarks() []string {
	var list []string
	for i, l := range r.Legs {
		if l.Trouble != "" {
			list = append(list, fmt.Sprintf("Leg %d: %s.", i+1, l.Trouble))
		}
		if len(l.Sun) > 0 {
			list = append(list, fmt.Sprintf("Leg %d: %s.", i+1, l.sunText()))
		}
	}
	if r.Beside != "" {
		list = append(list, r.Beside)
	}
	for i, cold := range r.Frosts {
		if i > 0 && r.Frosts[i-1].Battery == cold.Battery {
			continue
		}
		var legs []string
		for _, o := range r.Frosts {
			if o.Battery == cold.Battery {
				legs = append(legs, fmt.Sprint(o.Leg))
			}
		}
		word := "leg "
		if len(legs) > 1 {
			word = "legs "
		}
		list = append(list, "In "+word+wording.And(legs)+" "+cold.Battery+" takes no charge: the air is below "+celsius(cold.ChargedFromC)+".")
	}
	for _, c := range r.Caveats {
		list = append(list, "Not known: "+c+".")
	}
	return list
}

// sunText is when the sun shines in a leg, on the clock of the ride.
func (l *RideLeg) sunText() string {
	at := func(s float64) string { return clock(&s) }
	day := l.Sun[0]
	text := fmt.Sprintf("the sun is taken to shine from %s to %s", at(day.FromS), at(day.ToS))
	switch short := *l.ToS-*l.FromS < 24*3600; {
	case len(l.Sun) > 1:
		text += fmt.Sprintf(", and so on, %d times, in the middle of each 24 h", len(l.Sun))
	case short:
		text += ", in the middle of the leg and in proportion to a whole day"
	default:
		text += ", in the middle of its 24 h"
	}
	return text
}

// clock prints seconds as hours and minutes.
func clock(seconds *float64) string {
	if seconds == nil {
		return none
	}
	minutes := int(math.Round(*seconds / 60))
	return fmt.Sprintf("%d:%02d h", minutes/60, minutes%60)
}

// atRest is signed, with the cold where that is why a battery is at rest.
func atRest(a *float64, coldS float64) string {
	text := signed(a)
	if coldS > 0 && text == signed(new(float64)) {
		text += ", too cold"
	}
	return text
}

// signed prints the battery's current as gain or loss.
func signed(a *float64) string {
	switch {
	case a == nil:
		return none
	case math.Abs(*a) < 0.005:
		return "at rest"
	}
	return quantity.BatteryFlow(*a)
}

func posts(lowest, highest *float64) string {
	if lowest == nil || highest == nil {
		return none
	}
	if volts(lowest) == volts(highest) {
		return volts(lowest)
	}
	return quantity.Range(*lowest, *highest, quantity.Voltage)
}
