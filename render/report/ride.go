package report

import (
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
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
	Name          string     `json:"name"`
	StartCharge   *float64   `json:"start_charge"`
	EndCharge     *float64   `json:"end_charge"`
	LowestCharge  *float64   `json:"lowest_charge"`
	LowestChargeS *float64   `json:"lowest_charge_s"`
	ReserveS      *float64   `json:"below_start_reserve_s"`
	EmptyS        *float64   `json:"empty_s"`
	Legs          []RideLeg  `json:"legs"`
	Course        RideCourse `json:"course"`
	Caveats       []string   `json:"caveats,omitempty"`
}

// RideLeg is one leg.
type RideLeg struct {
	FromS        *float64 `json:"from_s"`
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
	Trouble      string   `json:"trouble,omitempty"`
}

// RideCourse is the ride over time, ready to plot: lists of one length.
type RideCourse struct {
	TimeS     []float64 `json:"time_s"`
	Charge    []float64 `json:"charge"`
	PostsV    []float64 `json:"posts_v"`
	BatteryA  []float64 `json:"battery_a"`
	ChargingA []float64 `json:"charging_a"`
	LoadA     []float64 `json:"load_a"`
}

// NewRides makes the report of rides.
func NewRides(rep *Report, d *design.Design, list []*ride.Result) *RideReport {
	out := &RideReport{Fusewright: Version, Design: rep.Design, Battery: batteryOf(d), Rides: []Ride{}, Caution: Caution}
	for _, r := range list {
		out.Rides = append(out.Rides, rideRow(r))
	}
	return out
}

func batteryOf(d *design.Design) string {
	text := fmt.Sprintf("%s Ah", threeDigits(d.Battery.CapacityAh.Value))
	if d.Battery.Chemistry != nil {
		text = d.Battery.Chemistry.Name + " " + text
	}
	return text
}

func rideRow(r *ride.Result) Ride {
	row := Ride{Name: r.Ride.Name, StartCharge: finite(r.Ride.StartCharge.Value), EndCharge: finite(r.EndCharge),
		LowestCharge: finite(r.LowestCharge), LowestChargeS: finite(r.LowestChargeS),
		ReserveS: finite(r.ReserveS), EmptyS: finite(r.EmptyS), Caveats: r.Caveats}
	for _, l := range r.Legs {
		row.Legs = append(row.Legs, rideLeg(l))
	}
	c := &row.Course
	for _, p := range r.Points {
		c.TimeS, c.Charge = append(c.TimeS, *finite(p.TimeS)), append(c.Charge, *finite(p.Charge))
		c.PostsV, c.LoadA = append(c.PostsV, *finite(p.BusV)), append(c.LoadA, *finite(p.LoadA))
		c.BatteryA = append(c.BatteryA, *finite(p.BatteryA))
		c.ChargingA = append(c.ChargingA, *finite(p.ChargingA))
	}
	return row
}

func rideLeg(l *ride.Leg) RideLeg {
	hours := (l.ToS - l.FromS) / 3600
	row := RideLeg{FromS: finite(l.FromS), ToS: finite(l.ToS), EngineRPM: l.Leg.EngineRPM, Key: string(l.Leg.Key),
		On: []string{}, AmbientC: l.AmbientC, OutputA: finite(l.OutputA), LoadA: finite(l.UsedAh / hours),
		BatteryA: finite((l.TakenAh - l.GivenAh) / hours), LowestV: finite(l.LowestV), HighestV: finite(l.HighestV),
		EndCharge: finite(l.ToCharge), StartReserve: finite(l.StartReserve),
		TakenAh: finite(l.TakenAh), GivenAh: finite(l.GivenAh), Trouble: l.Trouble}
	for _, load := range l.Leg.On {
		row.On = append(row.On, load.Name)
	}
	return row
}

// WriteRides prints rides as tables of their legs with the outcome of each.
func WriteRides(w io.Writer, rep *RideReport) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s · battery %s\n", nameOf(rep.Design), rep.Battery)
	for _, r := range rep.Rides {
		writeRide(&b, r)
	}
	b.WriteString("\n" + wrap("", rep.Caution))
	_, err := io.WriteString(w, b.String())
	return err
}

func writeRide(b *strings.Builder, r Ride) {
	fmt.Fprintf(b, "\nride %s\n", r.Name)
	t := tabwriter.NewWriter(b, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "from\tto\tengine\tair\toutput\tloads\tbattery\tposts\tcharge\treserve\t")
	for _, l := range r.Legs {
		fmt.Fprintf(t, "%s\t%s\t%s\t%s °C\t%s\t%s\t%s\t%s\t%s\t%s\t\n", clock(l.FromS), clock(l.ToS), legEngine(l),
			quantity.Fixed(l.AmbientC, 0), amperes(l.OutputA), amperes(l.LoadA), signed(l.BatteryA), posts(l),
			chargeText(l.EndCharge), chargeText(l.StartReserve))
	}
	t.Flush()
	fmt.Fprintf(b, "charge %s at the start, %s at the end, lowest %s at %s\n", chargeText(r.StartCharge),
		chargeText(r.EndCharge), chargeText(r.LowestCharge), clock(r.LowestChargeS))
	b.WriteString(wrap("", Outcome(r)))
	for i, l := range r.Legs {
		if l.Trouble != "" {
			b.WriteString(wrap("", fmt.Sprintf("leg %d: %s", i+1, l.Trouble)))
		}
	}
	for _, c := range r.Caveats {
		b.WriteString(wrap("not known: ", c))
	}
}

// Outcome says in a sentence whether the engine still starts.
func Outcome(r Ride) string {
	text := "the start reserve is kept throughout: the engine can be stopped anywhere on this ride and starts again"
	if r.ReserveS != nil {
		text = fmt.Sprintf("from %s on starting is not sure: the charge is below the start reserve", clock(r.ReserveS))
		if last := len(r.Legs) - 1; last >= 0 && *r.EndCharge >= *r.Legs[last].StartReserve {
			text += "; at the end of the ride it is above it again"
		}
	}
	if r.EmptyS != nil {
		text += fmt.Sprintf("; at %s the battery is empty and the ride ends", clock(r.EmptyS))
	}
	return text
}

// clock prints seconds as hours and minutes.
func clock(seconds *float64) string {
	if seconds == nil {
		return "–"
	}
	minutes := int(math.Round(*seconds / 60))
	return fmt.Sprintf("%d:%02d h", minutes/60, minutes%60)
}

func legEngine(l RideLeg) string {
	if l.Key == string(design.KeyOff) {
		return "key off"
	}
	return rpm(&l.EngineRPM)
}

// signed prints the battery's current as gain or loss.
func signed(a *float64) string {
	switch {
	case a == nil:
		return "–"
	case math.Abs(*a) < 0.005:
		return "0 A"
	case *a < 0:
		return "takes " + quantity.Format(-*a, quantity.Current)
	}
	return "gives " + quantity.Format(*a, quantity.Current)
}

func posts(l RideLeg) string {
	if l.LowestV == nil || l.HighestV == nil {
		return "–"
	}
	low, high := fmt.Sprintf("%.2f", *l.LowestV), fmt.Sprintf("%.2f", *l.HighestV)
	if low == high {
		return low + " V"
	}
	return low + "–" + high + " V"
}

func chargeText(v *float64) string {
	if v == nil {
		return "–"
	}
	return fmt.Sprintf("%.1f %%", 100**v)
}
