package main

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
)

// job is one accessory with the conductors and fuses that are accepted for it.
type job struct {
	ID, What   string
	Practice   string
	SystemV    float64
	Draw       string // power or current with its unit
	Type       string // of the library, where the kind has one
	Behaves    string
	Critical   bool
	OnFor      string // longest time on; empty = continuous
	Every      string
	Published  bool    // printed in a document
	Highest    bool    // the draw is the most it takes, as makers print it
	LengthM    float64 // one way
	AmbientC   float64
	WireMm2    band
	FuseA      band // empty = not judged
	Chassis    bool // returns through the frame: the document counts one conductor
	Source     string
	Conditions string
}

// band is a range that is accepted, both ends with it.
type band struct{ Least, Most float64 }

func (b band) given() bool { return b.Most > 0 }

// holds tells whether a value lies in the band, with shares below and above for
// sizes that are rounded otherwise.
func (b band) holds(v, below, above float64) bool {
	return v >= b.Least*(1-below) && v <= b.Most*(1+above)
}

func (b band) String() string {
	switch {
	case !b.given():
		return "not judged"
	case b.Least == b.Most:
		return fmt.Sprintf("%.4g", b.Least)
	}
	return fmt.Sprintf("%.4g to %.4g", b.Least, b.Most)
}

// table reads a CSV file with a head of column names after lines of remarks.
func table(file string) ([]map[string]string, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, name := range lines[0] {
			row[name] = line[i]
		}
		rows = append(rows, row)
	}
	return rows, nil
}

// number reads a column; 0 where it is empty.
func number(row map[string]string, column string) float64 {
	v, err := strconv.ParseFloat(row[column], 64)
	if err != nil {
		return 0
	}
	return v
}

// usual are the jobs of answers.csv: common practice, no source.
func usual(file string) ([]job, error) {
	rows, err := table(file)
	var jobs []job
	for _, r := range rows {
		jobs = append(jobs, job{ID: r["id"], What: r["job"], Practice: r["practice"], SystemV: number(r, "volts"),
			Draw: r["draw"], Behaves: r["behaves"], Critical: r["critical"] == "yes", OnFor: r["on_for"],
			Every: r["every"], LengthM: number(r, "length_m"), AmbientC: number(r, "ambient_C"),
			WireMm2: band{number(r, "wire_min_mm2"), number(r, "wire_max_mm2")},
			FuseA:   band{number(r, "fuse_min_A"), number(r, "fuse_max_A")}, Source: "common practice, no source"})
	}
	return jobs, err
}

// published are the rows of published.csv that can be judged: wire and protector
// within one standard size and rating of what is printed.
func published(folder string) ([]job, error) {
	kinds, err := table(folder + "/kinds.csv")
	if err != nil {
		return nil, err
	}
	rows, err := table(folder + "/published.csv")
	var jobs []job
	for _, r := range rows {
		if r["judge"] == "no" {
			continue
		}
		j := job{ID: r["id"], What: r["kind"], Practice: r["practice"], SystemV: number(r, "volts"),
			Draw: r["amps"] + " A", Behaves: r["behaves"], Critical: r["critical"] == "yes", OnFor: r["on_for"],
			Every: r["every"], LengthM: number(r, "length_m"), AmbientC: 30,
			WireMm2:   band{step(sizesMm2, number(r, "conductor_mm2"), -1), step(sizesMm2, number(r, "conductor_max_mm2"), 1)},
			Published: true, Highest: true, Chassis: r["return_by"] == "chassis", Source: r["source"], Conditions: r["condition"]}
		for _, k := range kinds {
			if strings.HasPrefix(j.What, k["kind"]) {
				j.Type = k["type"]
			}
		}
		if fuse := number(r, "fuse_A"); fuse > 0 && r["judge"] != "wire" {
			j.FuseA = band{step(ratingsA, fuse, -1), step(ratingsA, fuse, 1)}
		}
		jobs = append(jobs, j)
	}
	return jobs, err
}

// Standard sizes and ratings, from which one step is within reach.
var (
	sizesMm2 = []float64{0.35, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150}
	ratingsA = []float64{1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 225, 250, 300, 350, 400}
)

// step is the value of a series so many steps from the one nearest to a value, by
// ratio.
func step(series []float64, v float64, steps int) float64 {
	at := 0
	for i, x := range series {
		if math.Abs(math.Log(x/v)) < math.Abs(math.Log(series[at]/v)) {
			at = i
		}
	}
	return series[max(0, min(len(series)-1, at+steps))]
}

// yaml is the job as a design: one battery, 120 mm to a fuse, the run, the load,
// the return to the battery, or by the frame where the document counts one
// conductor; everything else open.
func (j job) yaml() string {
	var b strings.Builder
	scale := j.SystemV / 12
	fmt.Fprintf(&b, `fusewright: 1
title: %q
system: %g V
practice: %s
battery: {chemistry: AGM, capacity: 60 Ah, rate: 20 h, resistance: %g mΩ, at: battery}
charging: {regulated: %g V, output: {900 rpm: 700 A, 4000 rpm: 700 A}, idle: 1000 rpm, cruise: 3000 rpm}
places:
  battery: {ambient: %g °C}
  far: {ambient: %g °C}
%sfuses:
  fuse: {at: battery, fed by: battery, stays live: "the whole job", wire: {length: 120 mm}}
loads:
  job: {%s%s: %s, behaves: %s, critical: %s, at: far, own switch: yes, stays live: "the whole job", fed by: fuse,
    wire: {length: %g m}, %s%s%s}
`, j.What, j.SystemV, j.Practice, 4*scale, 14.2*scale, j.AmbientC, j.AmbientC, j.frame(), j.typed(), j.drawKey(), j.Draw, j.Behaves,
		yes(j.Critical), j.LengthM, j.back(), j.figure(), j.timeOn())
	return b.String()
}

// back is the return; a frame stud stands beside the load.
func (j job) back() string {
	if j.Chassis {
		return "returns to: frame, return wire: {length: 300 mm}"
	}
	return fmt.Sprintf("returns to: battery negative, return wire: {length: %g m}", j.LengthM)
}

func (j job) frame() string {
	if j.Chassis {
		return "grounds:\n  frame: {kind: frame stud, at: far, limit: 500 A, frame resistance: 1 mΩ}\n"
	}
	return ""
}

// typed names the library's type; what the row says of the load goes before it.
func (j job) typed() string {
	if j.Type == "" {
		return ""
	}
	return fmt.Sprintf("type: %s, rated at: %g V, ", j.Type, j.SystemV)
}

func (j job) drawKey() string {
	if strings.HasSuffix(j.Draw, "W") {
		return "power"
	}
	return "current"
}

func (j job) figure() string {
	if j.Highest {
		return ", figure: highest"
	}
	return ""
}

func (j job) timeOn() string {
	if j.OnFor == "" || !timeOnKnown {
		return ""
	}
	return fmt.Sprintf(", on for: %s, every: %s", j.OnFor, j.Every)
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// timeOnKnown tells that a design can say how long a load is on.
const timeOnKnown = true
