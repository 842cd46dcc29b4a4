package circuit_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden files anew")

// read reads a design and makes its circuit.
func read(t testing.TB, name string) *circuit.Circuit {
	t.Helper()
	src := buildtest.File(t, name)
	return build(t, name, string(src))
}

func build(t testing.TB, name, src string) *circuit.Circuit {
	t.Helper()
	c := buildtest.Circuit(t, src)
	return c
}

// TestListing compares everything Build finds of a small design with a listing
// that was checked by hand.
func TestListing(t *testing.T) {
	got := listing(read(t, "testdata/small.yaml"))
	golden := filepath.Join("testdata", "small.golden")
	if *update {
		if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want := buildtest.File(t, golden)
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("listing differs (-want +got):\n%s", diff)
	}
	if again := listing(read(t, "testdata/small.yaml")); again != got {
		t.Error("two runs give two listings")
	}
}

// listing writes a circuit as text, one line for each thing.
func listing(c *circuit.Circuit) string {
	var b strings.Builder
	b.WriteString("parts\n")
	for _, p := range c.Parts {
		fmt.Fprintf(&b, "  %-4s %s %q at %s:", p.Ref, p.Kind, p.Name, placeName(p.Place))
		for _, t := range p.Terminals {
			fmt.Fprintf(&b, " %s=%s", t.Name, t.Node.Name)
			if t.Kind != "" {
				fmt.Fprintf(&b, " (%s%s)", t.Kind, map[bool]string{true: "?"}[t.KindAssumed])
			}
			if t.FuseRef != "" {
				fmt.Fprintf(&b, " [%s]", t.FuseRef)
			}
		}
		b.WriteString("\n")
	}
	b.WriteString("branches\n")
	for _, br := range c.Branches {
		fmt.Fprintf(&b, "  %-22s %s -> %s %.2f mΩ", br.Name, br.A.Name, br.B.Name, br.Ohm*1e3)
		if l := br.Load; l != nil {
			fmt.Fprintf(&b, " %s %.4g W at %.4g V", l.Behaves, l.PowerW, l.RatedV)
		}
		if br.Fuse != nil {
			fmt.Fprintf(&b, " fuse %s %g A", br.Fuse.Ref, br.Fuse.Rating.RatingA)
		}
		if br.Assumed != "" {
			fmt.Fprintf(&b, " assumed: %s", br.Assumed)
		}
		b.WriteString("\n")
	}
	b.WriteString("wires\n")
	for _, w := range c.Wires {
		fmt.Fprintf(&b, "  %-4s %-11s %s -> %s, %s %s, %.0f mm, %.0f °C at %s", w.Number, w.Role,
			w.From.Node.Name, w.To.Node.Name, w.Spec.Size.Label, w.Spec.Colour.Code(), w.LengthM*1e3,
			w.AmbientC, w.AmbientAt)
		if !w.AmbientKnown {
			b.WriteString(" (not given)")
		}
		for _, r := range w.Route {
			fmt.Fprintf(&b, " | %s", r.Run.Name)
		}
		fmt.Fprintf(&b, "\n       %s, %s\n", crimpName(w.FromEnd), crimpName(w.ToEnd))
	}
	b.WriteString("bundles\n")
	for _, u := range c.Bundles {
		fmt.Fprintf(&b, "  %s: %d wires, %d loaded, %.2f mm\n", u.Run.Name, len(u.Wires), u.Loaded, u.OuterMm)
	}
	return b.String()
}
