package handbook

import (
	"fmt"
	"math"

	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

// HeatInput asks what a wire may carry, or how hot a current makes it.
type HeatInput struct {
	Type      *library.WireType
	Size      *library.WireSize
	AmbientC  float64
	Loaded    int     // wires loaded together, this one included; 0 or 1 = alone
	Loading   float64 // share of the bundle's capacity in use; 0 = all
	AltitudeM float64
	MarginC   float64 // kept below the class
	CurrentA  float64 // 0 = only what is allowed
	Library   *library.Library
	Practice  *library.Practice // whose table holds; nil = the heat balance alone
}

// Heat answers by the heat balance in still air and by each table of the
// library.
func Heat(in HeatInput) (*Answer, error) {
	var k check
	if in.Type == nil || in.Size == nil || in.Library == nil {
		k.say("the wire type or size is not in the library")
	}
	k.between("the ambient", in.AmbientC, coldestC, hottestC, "°C")
	k.between("the altitude", in.AltitudeM, 0, 20000, "m")
	k.between("the margin", in.MarginC, 0, 100, "K")
	k.between("the number of loaded wires", float64(in.Loaded), 0, 1000, "")
	k.between("the loading", 100*in.Loading, 0, 100, "%")
	k.between("the current", in.CurrentA, 0, mostA, "A")
	if err := k.err(); err != nil {
		return nil, err
	}
	a := newAnswer("heat", "Heat in a wire")
	a.inText("wire", Conductor{Type: in.Type, Size: in.Size}.name())
	a.inText("insulation", say("%s, class %g °C", in.Type.Material, in.Type.ClassC))
	a.in("ambient", in.AmbientC, quantity.Temperature)
	if in.Loaded > 1 {
		a.inText("loaded together", fmt.Sprintf("%d wires", in.Loaded))
	}
	if in.AltitudeM > 0 {
		a.in("altitude", in.AltitudeM, quantity.Length)
	}
	if in.MarginC > 0 {
		a.inText("margin", say("%g K below the class", in.MarginC))
	}
	a.governing(in)
	a.heatBalance(in)
	a.byTables(in)
	a.source("heat balance: Churchill and Chu 1975 for natural convection, radiation, " +
		"conduction through the insulation (scheme of IEC 60287)")
	a.warn("still air, no sun, nothing hot nearby; bundles by published factors")
	return a, nil
}

// governing leads with the figure that holds, the smaller of heat balance and the
// practice's table; what follows is how it comes about, and other tables.
func (a *Answer) governing(in HeatInput) {
	at := in.allowed()
	if in.Practice != nil {
		at.Table = in.Library.CurrentTable(in.Practice.Ampacity)
	}
	got := conductor.AllowedCurrent(at)
	a.out("may carry", got.AllowedA, quantity.Current)
	switch {
	case at.Table == nil || math.IsNaN(got.TableA):
		a.outText("which is by", "the heat balance")
	case got.Governs == conductor.GovernsTable:
		a.outText("which is by", at.Table.Name+", the practice's table: the heat balance allows more")
	default:
		a.outText("which is by", "the heat balance: "+at.Table.Name+", the practice's table, allows no less")
	}
}

// allowed asks without a table.
func (in HeatInput) allowed() conductor.AllowedInput {
	return conductor.AllowedInput{Type: in.Type, Size: in.Size, Material: in.Library.Insulation(in.Type.Material),
		AmbientC: in.AmbientC, Loaded: in.Loaded, Loading: in.Loading, AltitudeM: in.AltitudeM, MarginC: in.MarginC,
		Bundling: in.Library.CurrentTable(bundling)}
}

func (a *Answer) heatBalance(in HeatInput) {
	limit := in.Type.ClassC - in.MarginC
	w := conductor.InsulatedWire(in.Size, in.Library.Insulation(in.Type.Material))
	b := conductor.NewBalance(w, conductor.StillAir{AmbientC: in.AmbientC})
	free := b.CurrentA(limit)
	r := conductor.AtTemperature(in.Size.MaxOhmPerM, limit)
	a.step("I² · R'(T) = heat given off per metre at T",
		"I = √(%.4g W/m / %.4g mΩ/m) = %.4g A with the conductor at %g °C",
		b.LossWPerM(limit), 1000*r, free, limit)
	a.out("allowed alone in still air", free, quantity.Current)
	if in.CurrentA > 0 {
		a.in("current", in.CurrentA, quantity.Current)
		a.temperature(in, b, limit, "alone in still air", in.CurrentA)
	}
	if in.CurrentA > 0 && (in.Loaded > 1 || in.AltitudeM > 0) {
		got := conductor.AllowedCurrent(in.allowed())
		share := got.BundleShare * got.AltShare
		a.step("current that heats one wire alone as much: I / (bundle · altitude)",
			"%g A / (%.3g · %.3g) = %.4g A", in.CurrentA, got.BundleShare, got.AltShare, in.CurrentA/share)
		a.temperature(in, b, limit, "among the loaded wires", in.CurrentA/share)
	}
}

// bundling is the table whose bundle and altitude curves the heat balance uses.
const bundling = "AC 43.13-1B"

// temperature adds how hot a current makes the conductor.
func (a *Answer) temperature(in HeatInput, b *conductor.Balance, limit float64, where string, amps float64) {
	c := b.ConductorC(amps)
	if math.IsInf(c, 1) {
		a.outText("conductor at that current, "+where, "no steady state: it melts")
	} else {
		a.out("conductor at that current, "+where, c, quantity.Temperature)
		a.step("I² · R'(T) = heat given off per metre at T", "(%.4g A)² · %.4g mΩ/m = %.4g W/m at %.1f °C",
			amps, 1000*conductor.AtTemperature(in.Size.MaxOhmPerM, c), b.LossWPerM(c), c)
	}
	if c > limit {
		a.warn("%s that is above %g °C, the class less the margin", where, limit)
	}
}

func (a *Answer) byTables(in HeatInput) {
	said := map[string]bool{}
	for _, t := range in.Library.CurrentTables {
		at := in.allowed()
		at.Table = t
		got := conductor.AllowedCurrent(at)
		if math.IsNaN(got.TableA) {
			a.outText("by "+t.Name, "not given")
		} else {
			a.out("by "+t.Name, got.TableA, quantity.Current)
			a.step("I = table · ambient · bundle · altitude", "%s: I = %.4g A · %.3g · %.3g · %.3g = %.4g A",
				got.TableHow, got.TableBaseA, got.AmbientShare, got.BundleShare, got.AltShare, got.TableA)
			a.source(t.Name + ": " + t.Source.String())
		}
		if in.Loaded > 1 || in.AltitudeM > 0 {
			a.out("heat balance with factors of "+t.Name, got.HeatA, quantity.Current)
		}
		for _, m := range got.Missing {
			if !said[m] {
				a.warn("%s", m)
			}
			said[m] = true
		}
	}
}
