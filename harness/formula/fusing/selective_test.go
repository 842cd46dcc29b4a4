package fusing

import (
	"testing"

	"fusewright/library"
)

// Worked from the data sheets' band points: two blade fuses in series at one
// fault current, as tabulated in a table of series pairs computed from those
// points.
func TestSelectiveAtPublishedPoints(t *testing.T) {
	for _, c := range []struct {
		name     string
		down, up Device
		faultA   float64
		want     bool
	}{
		{"F 10 A under F 30 A at 60 A", fuse(t, "blade F", 10), fuse(t, "blade F", 30), 60, true},
		{"F 10 A under E 30 A at 60 A", fuse(t, "blade F", 10), fuse(t, "blade E", 30), 60, true},
		{"F 15 A under F 30 A at 52.5 A", fuse(t, "blade F", 15), fuse(t, "blade F", 30), 52.5, false},
		{"the same rating twice", fuse(t, "blade F", 15), fuse(t, "blade F", 15), 60, false},
		{"the larger nearer the fault", fuse(t, "blade F", 30), fuse(t, "blade F", 10), 60, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			down, _ := c.down.curve().slow(c.faultA)
			up, _ := c.up.curve().fast(c.faultA)
			if (down < up) != c.want {
				t.Errorf("latest %g s against soonest %g s at %g A", down, up, c.faultA)
			}
			if !c.want && Selective(c.down, c.up, c.faultA).Selective {
				t.Error("selective up to the fault, although not at it")
			}
		})
	}
}

func TestSelectiveSaysUpToWhere(t *testing.T) {
	s := Selective(fuse(t, "blade F", 5), fuse(t, "blade E", 60), 2000)
	if s.UpToA < 60 {
		t.Errorf("%+v", s)
	}
	none := Selective(Device{}, fuse(t, "blade E", 60), 100)
	if none.Selective || none.Known || none.Note == "" {
		t.Errorf("%+v", none)
	}
}

// Selective up to a current means at every lower one, too; a higher fault never
// makes a pair selective that was not.
func TestHigherFaultNeverGainsSelectivity(t *testing.T) {
	lib := library.Default()
	for _, up := range lib.FuseTypes {
		for _, down := range lib.FuseTypes {
			d := Device{Type: down, Rating: down.Ratings[len(down.Ratings)/3], AmbientC: 40}
			u := Device{Type: up, Rating: up.Ratings[len(up.Ratings)-1], AmbientC: 40}
			lost := false
			for _, fault := range []float64{5, 20, 80, 300, 1000, 4000} {
				s := Selective(d, u, fault)
				if lost && s.Selective {
					t.Errorf("%s under %s: selective again at %g A", down.Name, up.Name, fault)
				}
				lost = lost || !s.Selective
			}
		}
	}
}
