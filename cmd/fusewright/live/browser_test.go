package live

import (
	"bytes"
	"context"
	"net"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness/proof/browsertest"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/render/page"
)

// demo serves a copy of a demo design from a folder of its own, and gives the file and the address.
func demo(t *testing.T) (file, address string) {
	t.Helper()
	text, err := os.ReadFile("../../../designs/fen-runner.yaml")
	if err != nil {
		t.Fatal(err)
	}
	file = filepath.Join(t.TempDir(), "fen-runner.yaml")
	if err := os.WriteFile(file, text, 0o666); err != nil {
		t.Fatal(err)
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	s := New(Options{File: file, Watched: []string{file}, Read: func() ([]byte, error) { return os.ReadFile(file) },
		Assess: assess,
		Kept: func() ([]byte, error) {
			text, err := os.ReadFile(readings.Beside(file))
			if os.IsNotExist(err) {
				return nil, nil
			}
			return text, err
		},
		Keep: func(text []byte) error { return os.WriteFile(readings.Beside(file), text, 0o666) }})
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error)
	go func() { ended <- s.Serve(ctx, l) }()
	t.Cleanup(func() {
		stop()
		if err := <-ended; err != nil {
			t.Error(err)
		}
	})
	return file, "http://" + l.Addr().String() + "/"
}

// As at the bench: readings pass or fail at once, against the battery that was read before, and
// survive a reload; another browser's stay.
func TestBenchInBrowser(t *testing.T) {
	p := browsertest.Open(t)
	file, address := demo(t)
	p.Size(360, 740)
	p.Go(address + "#view=bench&section=10")
	bounds := func(number, want string) {
		t.Helper()
		if got := p.Text(".row:has(#r" + number + ") .bounds"); got != want {
			t.Errorf("%s: %q, want %q", number, got, want)
		}
	}
	bounds("10-7", "82.3 to 401 mV below 10.1: read that first")
	p.Type("#r10-1", "14,21")
	bounds("10-1", "13.5 to 14.7 V")
	bounds("10-7", "13.81 to 14.12 V")
	p.Type("#r10-7", "13.21")
	if got := p.Text(".row:has(#r10-7) .message"); got != "1.00 V below the battery, 401 mV at most. Find the cause" {
		t.Errorf("%q", got)
	}
	p.Type("#r10-2", "7.4 A")
	p.Type("#r10-8", "14,00")
	p.Type("#r10-3", "fourteen")
	if got := p.Text(".row:has(#r10-3) .message"); got != "No reading: a number was expected, in V. Nothing is kept of it." {
		t.Errorf("%q", got)
	}
	p.Fits()
	p.Accessible()
	p.Look("bench")
	p.Size(360, 740)
	p.Click(".row:has(#r10-7) .message button")
	if lead := p.Text(".told .lead"); !strings.Contains(lead, "joint at one end of W") {
		t.Errorf("the cause is %q", lead)
	}
	p.Fits()
	p.Accessible()
	p.Look("cause")
	p.Size(360, 740)
	p.Type(".next input", "826")
	p.Wait(`document.querySelector(".told .shares b").textContent == "over 99 %"`)
	p.Click("[data-pane=cut]")
	p.Click(".wire:nth-of-type(4) input")
	p.Accessible()
	p.Look("cut")
	p.Size(360, 740)
	p.Click("[data-pane=layout]")
	p.Fits()
	p.Accessible()
	p.Look("layout")

	// Another browser, which has seen nothing of this, reads something else; then this one is loaded anew.
	other := p.Another()
	other.Go(address + "#view=bench&section=10")
	other.Wait(`document.querySelectorAll(".row.pass, .row.fail").length == 4`)
	other.Type("#r10-9", "13.9")
	other.Wait(`document.querySelectorAll(".row.pass").length == 4`)
	other.Quiet()
	p.Wait(`document.querySelectorAll(".row.pass").length == 4`) // it has been told
	p.Go("about:blank")
	p.Go(address + "#view=bench&section=10")
	p.Wait(`document.querySelectorAll(".row.pass").length == 4 && document.querySelectorAll(".wire input:checked").length == 1`)
	kept, err := os.ReadFile(readings.Beside(file))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"reads: 14.21 V", "reads: 13.21 V", "reads: 7.4 A", "reads: 13.9 V", "reads: 826 mV", "wire: W4"} {
		if !strings.Contains(string(kept), want) {
			t.Errorf("the file beside the design does not hold %q:\n%s", want, kept)
		}
	}
	p.Size(1440, 900)
	p.Accessible()
	p.Quiet()
}

// A figure is taken apart; another is asked for.
func TestWhyInBrowser(t *testing.T) {
	p := browsertest.Open(t)
	_, address := demo(t)
	p.Go(address + "#view=why&of=drop+of+left+lamp")
	p.Wait(`document.querySelectorAll(".tree details[open]").length > 2`)
	p.Accessible()
	p.Look("why")
	p.Size(360, 740)
	p.Fits()
	p.Accessible()
	p.Quiet()
}

// The page as one file, opened from the disk: nothing is asked of any server, and what is ticked
// and read stays in the browser.
func TestOneFileInBrowser(t *testing.T) {
	p := browsertest.Open(t)
	file, _ := demo(t)
	var text bytes.Buffer
	design, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	r, err := assess(design)
	if err != nil {
		t.Fatal(err)
	}
	if err := page.WriteOneFile(&text, r); err != nil {
		t.Fatal(err)
	}
	at := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(at, text.Bytes(), 0o666); err != nil {
		t.Fatal(err)
	}
	address := "file://" + at
	p.Go(address + "#view=bench&section=10")
	p.Type("#r10-1", "14,21")
	p.Type("#r10-7", "13.9")
	p.Click(".wire input")
	p.Go("about:blank")
	p.Go(address + "#view=bench&section=10")
	p.Wait(`document.querySelectorAll(".row.pass").length == 2 && document.querySelector(".wire input").checked`)
	p.Accessible()
	p.Size(360, 740)
	p.Fits()
	p.Go(address)
	p.Look("onefile")
	p.Quiet()
	for _, asked := range p.Requests() {
		if !strings.HasPrefix(asked, address) && asked != "about:blank" && !strings.HasPrefix(asked, "data:") {
			t.Errorf("asked for %s", asked)
		}
	}
}
