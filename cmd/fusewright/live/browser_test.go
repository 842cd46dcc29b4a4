package live

import (
	"bytes"
	"net/url"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness/proof/browsertest"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/render/page"
)

// benched serves a copy of a demo design from a folder of its own, and gives the file and the address.
func benched(t *testing.T) (file, address string) { return served(t, false) }

// served does so with texts of the design replaced, and may be let write into the file.
func served(t *testing.T, writes bool, replaced ...string) (file, address string) {
	t.Helper()
	text, err := os.ReadFile(demo)
	if err != nil {
		t.Fatal(err)
	}
	file = filepath.Join(t.TempDir(), "fen-runner.yaml")
	put := func(text []byte) error { return os.WriteFile(file, text, 0o666) }
	if err := put([]byte(strings.NewReplacer(replaced...).Replace(string(text)))); err != nil {
		t.Fatal(err)
	}
	at, _ := shown(t, file, func(s *Server) {
		if writes {
			s.opt.Write = put
		}
		s.opt.Kept = func() ([]byte, error) {
			text, err := os.ReadFile(readings.Beside(file))
			if os.IsNotExist(err) {
				return nil, nil
			}
			return text, err
		}
		s.opt.Keep = func(text []byte) error { return os.WriteFile(readings.Beside(file), text, 0o666) }
	})
	return file, "http://" + at + "/"
}

// As a builder uses it: the circuit of a part, what is on, the engine's speed; then the file is changed.
func TestPageInBrowser(t *testing.T) {
	p := browsertest.Open(t)
	file, address := benched(t)
	p.Go(address)
	p.Click(`.sheet [data-of="E1"]`)
	p.Wait(`document.querySelectorAll(".steps tbody tr").length > 8`)
	if head := p.Text(".steps h2"); !strings.HasPrefix(head, "Left lamp") {
		t.Errorf("the circuit is %q", head)
	}
	p.Accessible()
	p.Look("circuit")

	p.Size(1440, 900)
	p.Click(`[data-view="planner"]`)
	p.Wait(`document.querySelector(".planner .big .value, .planner .big b, .planner .big")?.textContent.includes("A")`)
	p.Accessible()
	before := p.Text(".planner p.says")
	p.Run(`(() => { const s = document.getElementById("planner-speed"); s.value = 5000; s.dispatchEvent(new Event("input")); })()`)
	p.Wait(`document.querySelector(".planner p.says").textContent.includes("5000 rpm")`)
	if after := p.Text(".planner p.says"); after == before {
		t.Errorf("the speed changes nothing: %s", after)
	}
	before = p.Text(".planner p.says")
	p.Click(".planner .hands li:nth-child(2) [role=switch]")
	p.Wait(`!document.querySelector(".planner p.says").textContent.includes(` + strconv.Quote(before) + `)`)
	p.Look("planner")

	p.Size(1440, 900)
	p.Click(`[data-view="whatif"]`)
	p.Wait(`document.querySelectorAll(".whatif select, .whatif input").length > 0`)
	p.Accessible()
	p.Look("whatif")
	// That nothing is found is one line, however it is asked.
	p.Go("about:blank")
	p.Go(address + "#view=whatif&change=" + url.QueryEscape("loads › heated grips › power=30 W"))
	p.Wait(`[...document.querySelectorAll(".whatif .fates li")].some((l) => l.textContent === "Nothing is found before or after." && l.clientHeight < 50)`)

	// Every view on a phone, in the dark, printed.
	p.Size(360, 740)
	for _, view := range []string{"circuit", "planner", "whatif", "why", "bench"} {
		p.Go(address + "?" + view + "#view=" + view)
		p.Wait(`document.querySelector(".view.` + view + `")?.textContent.length > 80`)
		p.Fits()
		p.Accessible()
		p.Click("#theme")
		p.Accessible()
		p.Click("#theme")
		p.Print(true)
		p.Fits()
		p.Print(false)
	}

	// Another power is saved: the page shows what that breaks.
	p.Size(1440, 900)
	p.Go(address)
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	p.Wait(`document.querySelector(".strip .verdict")?.textContent.includes("Nothing found")`)
	changed := strings.Replace(string(text), "power: 36 W", "power: 90 W", 1)
	if changed == string(text) {
		t.Fatal("the demo has no such power")
	}
	if err := os.WriteFile(file, []byte(changed), 0o666); err != nil {
		t.Fatal(err)
	}
	p.Wait(`document.querySelector(".strip .saved .did")?.textContent.includes("broken")`)
	p.Click(".finding")
	p.Wait(`document.querySelectorAll(".steps tbody tr").length > 8`)
	p.Accessible()

	// Without the file the verdict of the last one is not given out as today's.
	if err := os.Remove(file); err != nil {
		t.Fatal(err)
	}
	p.Wait(`document.querySelector(".strip .verdict")?.textContent === "Cannot be read: shown as last read"`)
	p.Wait(`!document.querySelector(".strip .verdict .shape.mended") && document.querySelectorAll(".problems li").length === 1`)
	p.Accessible()
	p.Quiet()
}

// As at the bench: readings pass or fail at once, against the battery that was read before, and
// survive a reload; another browser's stay.
func TestBenchInBrowser(t *testing.T) {
	p := browsertest.Open(t)
	file, address := benched(t)
	p.Size(360, 740)
	p.Go(address + "#view=bench&section=10")
	bounds := func(number, want string) {
		t.Helper()
		if got := p.Text(".row:has(#r" + number + ") .bounds"); got != want {
			t.Errorf("%s: %q, want %q", number, got, want)
		}
	}
	bounds("10-7", "80.1 to 401 mV below 10.1: read that first")
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
	_, address := benched(t)
	p.Go(address + "#view=why&of=drop+of+left+lamp")
	p.Wait(`document.querySelectorAll(".tree details[open]").length > 2`)
	p.Accessible()
	p.Look("why")
	// Each link leads to a figure; what the page cannot explain is no link.
	if n := p.Text(".beside .lines code"); n != "fusewright explain voltage-drop" {
		t.Errorf("the command is %q", n)
	}
	p.Click(".beside .lines button.link")
	p.Wait(`document.querySelector(".answer p")?.textContent.length > 0 && document.querySelector("#ask").value === "limit of left lamp"`)
	p.Wait(`!document.querySelector(".answer p.none") && document.querySelector(".why .where").textContent !== ""`)
	p.Size(360, 740)
	p.Fits()
	p.Accessible()
	p.Quiet()
	// A miss leaves nothing of the former figure, and offers what comes near.
	p.Go("about:blank")
	p.Go(address + "#view=why&of=drop+of+left+lamb")
	p.Wait(`document.querySelector(".answer p.none")?.textContent === 'No figure is called "drop of left lamb".'`)
	p.Wait(`document.querySelector(".why .where").textContent === ""`)
	p.Accessible()
	p.Click(".answer button.link")
	p.Wait(`document.querySelectorAll(".tree details[open]").length > 2`)
	// What the answer names besides is taken apart too: a rating's current, and what the weakest wire may carry.
	p.Go("about:blank")
	p.Go(address + "#view=why&of=rating+of+F1")
	p.Wait(`["carries for good", "current of F1", "may be carried by W2"].every((l) => [...document.querySelectorAll(".tree > details > summary .label")].some((x) => x.textContent === l))`)
	p.Size(360, 740)
	p.Fits()
	p.Accessible()
}

// The page as one file, opened from the disk: nothing is asked of any server, and what is ticked
// and read stays in the browser.
func TestOneFileInBrowser(t *testing.T) {
	p := browsertest.Open(t)
	file, _ := benched(t)
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

	// The planner has the program's own answers, legs and volts too; what it was not asked it does not make up.
	p.Size(1440, 900)
	p.Go("about:blank")
	p.Go(address + "#view=planner")
	for _, x := range []struct{ id, value, says string }{
		{"planner-speed", "3", "At 1500 rpm the charging system gives 18.4 A"}, {"planner-start", "ride town with idling 2", "At "},
		{"planner-speed", "0", "With the engine stopped"}, {"planner-parked", "8", "With the engine stopped"},
	} {
		p.Wait(`document.querySelector(".planner p.says")`)
		slide(p, x.id, x.value)
		p.Wait(`document.querySelector(".planner p.says").textContent.startsWith(` + strconv.Quote(x.says) + `) && document.querySelectorAll(".planner .loads tbody tr").length > 1`)
	}
	p.Wait(`document.querySelector(".planner .big").textContent.includes("After 10 days parked")`)
	p.Accessible()
	p.Go("about:blank")
	p.Go(address + "#view=planner&rpm=1301")
	p.Wait(`document.querySelector(".planner p.problem").textContent.includes("fusewright serve")`)
	p.Wait(`getComputedStyle(document.querySelector(".planner .loads")).visibility === "hidden"`)
	p.Quiet()
	for _, asked := range p.Requests() {
		if !strings.HasPrefix(asked, address) && asked != "about:blank" && !strings.HasPrefix(asked, "data:") {
			t.Errorf("asked for %s", asked)
		}
	}
}
