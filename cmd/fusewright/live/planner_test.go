package live

import (
	"bytes"
	"encoding/json"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"fusewright/harness"
	"fusewright/render/page"
)

const demo = "../../../designs/fen-runner.yaml"

// post sends a question as the page does, and gives the status and what was answered.
func post(t *testing.T, address, path string, question any, answer any) (int, string) {
	t.Helper()
	body, err := json.Marshal(question)
	if err != nil {
		t.Fatal(err)
	}
	r, err := http.NewRequest(http.MethodPost, "http://"+address+path, bytes.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Origin", "http://"+address)
	r.Header.Set("Content-Type", "application/json")
	w, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer w.Body.Close()
	text, err := io.ReadAll(w.Body)
	if err != nil {
		t.Fatal(err)
	}
	if w.StatusCode == http.StatusOK && answer != nil {
		if err := json.Unmarshal(text, answer); err != nil {
			t.Fatal(err)
		}
	}
	return w.StatusCode, string(text)
}

// The planner answers what is on, and refuses what cannot be, in words.
func TestOutlookAsked(t *testing.T) {
	address, _ := shown(t, demo, nil)
	state := page.Asked{Start: "situation town, waiting", Key: "on", RPM: 1300, AirC: 25, Charge: 1, Set: map[string]string{"grip switch": "on"}}
	var o page.Outlook
	if code, text := post(t, address, "/api/outlook", state, &o); code != http.StatusOK {
		t.Fatal(code, text)
	}
	// By hand: 15.5 A less 10.6 A, 4.3 A and the grips' 3.0 A.
	if o.SpareA == nil || *o.SpareA > -2.3 || *o.SpareA < -2.5 || o.Big[0].Label != "Short" || o.Words["grip switch"] != "on" {
		t.Errorf("%+v", o.Big)
	}
	for name, c := range map[string]struct {
		question any
		says     string
	}{
		"no start":       {page.Asked{Start: "elsewhere", Key: "on", Charge: 1}, "elsewhere"},
		"another field":  {map[string]any{"start": state.Start, "path": "/etc/passwd"}, "no question"},
		"another word":   {page.Asked{Start: state.Start, Key: "on", Charge: 1, Set: map[string]string{"grip switch": "half"}}, "expected off, on"},
		"beyond bounds":  {page.Asked{Start: state.Start, Key: "on", Charge: 1, RPM: 1e9}, "engine speed"},
		"no state":       {[]int{1}, "no question"},
		"a name to mark": {page.Asked{Start: "<script>alert(1)</script>"}, "no situation"},
	} {
		if code, text := post(t, address, "/api/outlook", c.question, nil); code != http.StatusBadRequest || !strings.Contains(text, c.says) {
			t.Errorf("%s: %d %s", name, code, text)
		}
	}
}

// copyOf is a design in a folder of its own.
func copyOf(t *testing.T, file string) (string, []byte) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	to := filepath.Join(t.TempDir(), "design.yaml")
	if err := os.WriteFile(to, text, 0o666); err != nil {
		t.Fatal(err)
	}
	return to, text
}

func offersAt(t *testing.T, address string) (of string, writes bool) {
	t.Helper()
	w, err := http.Get("http://" + address + "/api/offers")
	if err != nil {
		t.Fatal(err)
	}
	defer w.Body.Close()
	var answer struct {
		Of     string
		Writes bool
		Offers []page.Offer
	}
	if err := json.NewDecoder(w.Body).Decode(&answer); err != nil {
		t.Fatal(err)
	}
	if len(answer.Offers) < 20 {
		t.Errorf("%d values are offered", len(answer.Offers))
	}
	return answer.Of, answer.Writes
}

// grips is a change of one line.
func grips(of, value string) map[string]any {
	return map[string]any{"of": of, "changes": []map[string]string{{"at": "loads › heated grips › power", "value": value}}}
}

// What is tried leaves the file alone; it is written only where the server may, and only into the
// file that it was tried on.
func TestWhatIfWrites(t *testing.T) {
	file, was := copyOf(t, demo)
	same := func(what string, want []byte) {
		t.Helper()
		if is, err := os.ReadFile(file); err != nil || !bytes.Equal(is, want) {
			t.Errorf("%s: the file is another one (%v)", what, err)
		}
	}
	address, _ := shown(t, file, nil)
	of, writes := offersAt(t, address)
	if writes {
		t.Error("a server that only reads says that it writes")
	}
	var tried page.Tried
	if code, text := post(t, address, "/api/whatif", grips(of, "30 W"), &tried); code != http.StatusOK || len(tried.Lines) != 2 {
		t.Fatal(code, text)
	}
	if code, text := post(t, address, "/api/write", grips(of, "30 W"), nil); code != http.StatusForbidden {
		t.Errorf("%d %s", code, text)
	}
	same("read only", was)

	address, _ = shown(t, file, func(s *Server) {
		s.opt.Write = func(text []byte) error { return os.WriteFile(file, text, 0o666) }
	})
	of, writes = offersAt(t, address)
	if !writes {
		t.Error("a server that writes does not say so")
	}
	for name, c := range map[string]struct {
		question map[string]any
		says     string
	}{"of another text": {grips("0123", "30 W"), "changed meanwhile"}, "no value": {grips(of, "warm"), "power"}, "nothing such": {map[string]any{"of": of,
		"changes": []map[string]string{{"at": "../../etc/passwd", "value": "x"}}}, "nothing that can be changed"}} {
		if code, text := post(t, address, "/api/write", c.question, nil); code != http.StatusBadRequest || !strings.Contains(text, c.says) {
			t.Errorf("%s: %d %s", name, code, text)
		}
		same(name, was)
	}
	if code, text := post(t, address, "/api/write", grips(of, "30 W"), nil); code != http.StatusOK {
		t.Fatal(code, text)
	}
	want := bytes.Replace(was, []byte("power: 36 W"), []byte("power: 30 W"), 1)
	same("written", want)
}

// The planner answers while another question is worked at, and the same beside all others as by itself.
func TestPlannerBesideOthers(t *testing.T) {
	begun, end := make(chan bool), make(chan bool)
	address, _ := shown(t, demo, func(s *Server) {
		s.opt.Assess = func(text []byte) (*harness.Review, error) {
			if bytes.Contains(text, []byte("power: 30 W")) {
				begun <- true
				<-end
			}
			return assess(text)
		}
	})
	of, _ := offersAt(t, address)
	var others sync.WaitGroup
	others.Go(func() { post(t, address, "/api/whatif", grips(of, "30 W"), nil) })
	<-begun
	outlook := func() string {
		_, text := post(t, address, "/api/outlook", page.Asked{Start: "situation town, waiting", Key: "on", RPM: 1300, AirC: 25, Charge: 1}, nil)
		return text
	}
	answered := make(chan string, 1)
	go func() { answered <- outlook() }()
	alone := ""
	select {
	case alone = <-answered:
	case <-time.After(10 * time.Second):
		t.Error("the planner waits")
	}
	close(end)
	others.Go(func() { post(t, address, "/api/whatif", grips(of, "90 W"), nil) })
	others.Go(func() { post(t, address, "/api/diagnose", nil, nil) })
	for _, path := range []string{"why?of=rating+of+F1", "why?of=finding+1", "names", "offers", "bench", "layout", "circuit?of=E1", "planner"} {
		others.Go(func() { asked(t, "GET", "http://"+address+"/api/"+path, nil) })
	}
	for range 10 {
		if outlook() != alone {
			t.Error("beside others the planner answers otherwise")
		}
	}
	others.Wait()
}

// A file that was changed between the look at it and the press of the button is left as it is, also
// before the server has noticed.
func TestWhatIfLeavesANewerFile(t *testing.T) {
	file, was := copyOf(t, demo)
	newer := append(bytes.Clone(was), "# a note\n"...)
	address, _ := shown(t, file, func(s *Server) {
		s.opt.Watched = nil // it never notices
		s.opt.Write = func(text []byte) error { return os.WriteFile(file, text, 0o666) }
	})
	of, _ := offersAt(t, address)
	if err := os.WriteFile(file, newer, 0o666); err != nil {
		t.Fatal(err)
	}
	if code, text := post(t, address, "/api/write", grips(of, "30 W"), nil); code != http.StatusBadRequest || !strings.Contains(text, "changed meanwhile") {
		t.Errorf("%d %s", code, text)
	}
	if is, err := os.ReadFile(file); err != nil || !bytes.Equal(is, newer) {
		t.Error("the newer file is gone", err)
	}
}
