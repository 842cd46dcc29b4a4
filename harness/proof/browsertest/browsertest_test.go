package browsertest

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The rig itself: it clicks, types and reads, hears what the page asks for and complains of, and sees
// when a page is too wide.
func TestPage(t *testing.T) {
	site := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		_, _ = w.Write([]byte(`<!doctype html><html lang="en"><meta name="viewport" content="width=device-width"><title>Rig</title><h1>Rig</h1>
			<label>Volts <input id="volts"></label><button id="b">Read</button><p id="out">none</p>
			<script>document.getElementById("b").onclick = () => {
				document.getElementById("out").textContent = document.getElementById("volts").value; fetch("/asked") }</script></html>`))
	}))
	defer site.Close()
	p := Open(t)
	p.Go(site.URL)
	p.Type("#volts", "12,6")
	p.Click("#b")
	p.Wait(`document.getElementById("out").textContent != "none"`)
	if got := p.Text("#out"); got != "12,6" {
		t.Errorf("read %q", got)
	}
	p.Accessible()
	p.Size(360, 740)
	p.Fits()
	p.Quiet()
	asked := strings.Join(p.Requests(), " ")
	if !strings.Contains(asked, "/asked") {
		t.Errorf("asked for %s", asked)
	}
	p.Run(`console.error("from the page")`)
	p.Wait(`(document.body.style.minWidth = "2000px", document.documentElement.scrollWidth >= 2000)`)
	told := &teller{TB: t}
	q := &Page{t: told, ctx: p.ctx, axe: p.axe}
	q.trouble = p.trouble
	q.Fits()
	q.Quiet()
	p.Run(`document.getElementById("volts").parentNode.outerHTML = "<input>"`)
	q.Accessible()
	for _, want := range []string{" wide in a window of 360", "from the page", "label"} {
		if !strings.Contains(told.said, want) {
			t.Errorf("the rig does not notice %q: %s", want, told.said)
		}
	}
	*look = t.TempDir()
	defer func() { *look = "" }()
	p.Picture("rig")
	if _, err := os.Stat(filepath.Join(*look, "rig.png")); err != nil {
		t.Error(err)
	}
}

// teller keeps what a test would be failed for.
type teller struct {
	testing.TB
	said string
}

func (t *teller) Errorf(format string, args ...any) { t.said += fmt.Sprintf(format, args...) }
