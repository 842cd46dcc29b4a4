package outlook_test
import ("testing";"fmt";"os")
func TestDump(t *testing.T) {
	if os.Getenv("DUMP")=="" {t.Skip()}
	r := reviewOf(t, os.Getenv("DUMP"))
	p := r.Outlook()
	for _, c := range p.Controls { ls := ""; for _, l := range c.Loads { ls += l.Name+", " }; fmt.Println(c.ID, c.Kind, c.Words, ls) }
	for _, st := range p.Starts[:5] {
		f := p.Compute(st.State)
		fmt.Println("==", st.Title, f.Words, f.Trouble)
		if f.Trouble != "" { continue }
		fmt.Printf("out %.3f veh %.3f acc %.3f spare %.3f batt %.3f hours %.2f run %.3f even %.0f else %v parked %v\n", f.OutputA, f.VehicleA, f.AccessoryA, f.SpareA, f.BatteryA, f.Hours, f.RunningA, f.BreakEvenRPM, f.Elsewhere, f.Parked)
		for _, d := range f.Drawn { fmt.Printf("  %s %.3f %v\n", d.Name, d.A, d.On) }
		for _, d := range f.Shed { fmt.Printf("  shed %+v\n", d) }
		fmt.Println("kept", f.Kept, f.Sets.CapacityA)
		for _, r := range f.Sets.Rows { fmt.Printf("  set %+v\n", r) }
		for _, d := range f.Fuses[:min(3,len(f.Fuses))] { fmt.Printf("  fuse %s %s %v may %.2f share %.3f\n", d.Ref, d.Name, d.A, d.MayA, d.Share) }
		for _, d := range f.Loads { fmt.Printf("  load %s %v %v %v lim %.3f\n", d.Load.Name, d.On, d.V, d.DropV, d.LimitV) }
	}
}
