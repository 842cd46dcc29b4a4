package live

import (
	"bytes"
	"context"
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"os"
	"strings"
	"testing"
	"time"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/library"
)

const hostileDesign = "../../../testdata/hostile/hostile.yaml"

// shown serves a design file to this machine and gives its address and the server.
func shown(t testing.TB, file string, change func(*Server)) (string, *Server) {
	t.Helper()
	s := New(Options{File: file, Watched: []string{file}, Read: func() ([]byte, error) { return os.ReadFile(file) },
		Saved: func() string { return "12:00:00" }, Assess: assess})
	if change != nil {
		change(s)
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- s.Serve(ctx, l) }()
	t.Cleanup(func() {
		stop()
		if err := <-ended; err != nil {
			t.Error(err)
		}
	})
	return l.Addr().String(), s
}

func assess(text []byte) (*harness.Review, error) {
	d, err := design.Read("design.yaml", text, library.Default())
	if err != nil {
		return nil, err
	}
	return harness.Assess(d)
}

// asked sends one request and gives the status and the body.
func asked(t *testing.T, method, address string, header map[string]string) (int, string, http.Header) {
	t.Helper()
	r, err := http.NewRequest(method, address, nil)
	if err != nil {
		t.Fatal(err)
	}
	for k, v := range header {
		if k == "Host" {
			r.Host = v
			continue
		}
		r.Header.Set(k, v)
	}
	client := &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	answer, err := client.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	body, _ := io.ReadAll(answer.Body)
	return answer.StatusCode, string(body), answer.Header
}

// Whoever is not the page itself is refused, whatever he asks for.
func TestStrangers(t *testing.T) {
	address, _ := shown(t, hostileDesign, nil)
	_, port, _ := net.SplitHostPort(address)
	json_ := "application/json"
	for _, x := range []struct {
		name, method string
		header       map[string]string
		want         int
	}{
		{"the page itself", "GET", map[string]string{"Origin": "http://" + address, "Sec-Fetch-Site": "same-origin"}, 200},
		{"this machine by name", "GET", map[string]string{"Host": "localhost:" + port}, 200},
		{"no browser", "GET", nil, 200},
		{"foreign host", "GET", map[string]string{"Host": "evil.example"}, 403},
		{"foreign host with our port", "GET", map[string]string{"Host": "evil.example:" + port}, 403},
		{"host on another port", "GET", map[string]string{"Host": "127.0.0.1:1"}, 403},
		{"host without port", "GET", map[string]string{"Host": "127.0.0.1"}, 403},
		{"foreign origin", "GET", map[string]string{"Origin": "http://evil.example"}, 403},
		{"origin of nobody", "GET", map[string]string{"Origin": "null"}, 403},
		{"origin by another scheme", "GET", map[string]string{"Origin": "https://" + address}, 403},
		{"origin on another port", "GET", map[string]string{"Origin": "http://127.0.0.1:1"}, 403},
		{"origin that begins like ours", "GET", map[string]string{"Origin": "http://" + address + ".evil.example"}, 403},
		{"picture on a foreign page", "GET", map[string]string{"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "no-cors"}, 403},
		{"same site, other port", "GET", map[string]string{"Sec-Fetch-Site": "same-site"}, 403},
		{"form of a foreign page", "POST", map[string]string{"Origin": "http://evil.example", "Content-Type": "text/plain"}, 403},
		{"change without origin", "POST", map[string]string{"Content-Type": json_}, 403},
		{"change that is no JSON", "POST", map[string]string{"Origin": "http://" + address, "Content-Type": "text/plain"}, 403},
		{"delete", "DELETE", map[string]string{"Origin": "http://" + address, "Content-Type": json_}, 405},
		{"options", "OPTIONS", map[string]string{"Origin": "http://evil.example", "Access-Control-Request-Method": "POST"}, 403},
	} {
		for _, path := range []string{"/", "/assets/page.js", "/api/model", "/api/drawing"} {
			status, body, header := asked(t, x.method, "http://"+address+path, x.header)
			if status != x.want {
				t.Errorf("%s at %s: status %d, want %d", x.name, path, status, x.want)
			}
			if x.want == 403 && len(body) > 100 {
				t.Errorf("%s at %s learns %.100q", x.name, path, body)
			}
			for name := range header {
				if strings.HasPrefix(name, "Access-Control-") {
					t.Errorf("%s at %s: %s is sent", x.name, path, name)
				}
			}
			if p := header.Get("Content-Security-Policy"); !strings.HasPrefix(p, "default-src 'none'; script-src 'self'; style-src 'self';") || strings.Contains(p, "unsafe") {
				t.Errorf("%s at %s: policy %q", x.name, path, p)
			}
			if header.Get("X-Content-Type-Options") != "nosniff" {
				t.Errorf("%s at %s: the kind may be guessed", x.name, path)
			}
		}
	}
	// A link to the page may stand anywhere, what it loads may not.
	link := map[string]string{"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate"}
	if status, _, _ := asked(t, "GET", "http://"+address+"/", link); status != 200 {
		t.Errorf("a link to the page: status %d", status)
	}
	if status, _, _ := asked(t, "GET", "http://"+address+"/api/model", link); status != 403 {
		t.Errorf("a link to the model: status %d", status)
	}
}

// No path of a request leads to the disk.
func TestTraversal(t *testing.T) {
	address, _ := shown(t, hostileDesign, nil)
	for _, path := range []string{"/../../etc/passwd", "/assets/../page.go", "/assets/../../../../etc/passwd", "/assets/%2e%2e/%2e%2e/etc/passwd",
		"/assets/..%2f..%2fpage.go", `/assets/..\..\page.go`, "/assets/..%5cpage.go", "//etc/passwd", "/assets//etc/passwd", "/assets/", "/assets",
		"/assets/.", "/attack_test.go", "/assets/page.js/..", "/assets/page.js%00.html", "/api/", "/api/drawing/../../x", "/%00", "/hostile.yaml",
		"/api/model?file=/etc/passwd", "/api/circuit?of=../../etc/passwd&in=/etc/passwd"} {
		c, err := net.Dial("tcp", address)
		if err != nil {
			t.Fatal(err)
		}
		c.SetDeadline(time.Now().Add(10 * time.Second))
		fmt.Fprintf(c, "GET %s HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n\r\n", path, address)
		answer, _ := io.ReadAll(c)
		c.Close()
		text := string(answer)
		if strings.HasPrefix(text, "HTTP/1.1 200") && !strings.HasPrefix(path, "/api/model") {
			t.Errorf("%s is answered", path)
		}
		for _, secret := range []string{"root:", "package ", "places:"} {
			if strings.Contains(text, secret) {
				t.Errorf("%s gives %q", path, secret)
			}
		}
	}
}

// More than is taken is not read to its end.
func TestOversize(t *testing.T) {
	address, s := shown(t, hostileDesign, nil)
	if status, _, _ := asked(t, "GET", "http://"+address+"/", map[string]string{"X-Long": strings.Repeat("x", 64<<10)}); status != 431 {
		t.Errorf("a long head: status %d", status)
	}
	if status, _, _ := asked(t, "GET", "http://"+address+"/api/circuit?of="+strings.Repeat("x", 64<<10), nil); status != 431 {
		t.Errorf("a long path: status %d", status)
	}
	read := 0
	q := s.guard(s.answering(question{Method: "POST", Path: "/api/test", Answer: func(_ *Server, _ *State, _ url.Values, body []byte) (any, error) {
		read = len(body)
		return read, nil
	}}))
	for _, x := range []struct{ size, want int }{{mostBodyBytes, 200}, {mostBodyBytes + 1, 413}, {8 * mostBodyBytes, 413}} {
		w := &recorder{header: http.Header{}}
		r, _ := http.NewRequest("POST", "http://"+address+"/api/test", bytes.NewReader(make([]byte, x.size)))
		r.Header.Set("Origin", "http://"+address)
		r.Header.Set("Content-Type", "application/json")
		q.ServeHTTP(w, r)
		if w.status != x.want {
			t.Errorf("a body of %d bytes: status %d, want %d", x.size, w.status, x.want)
		}
	}
	if read != mostBodyBytes {
		t.Errorf("%d bytes were read", read)
	}
}

type recorder struct {
	header http.Header
	status int
	body   bytes.Buffer
}

func (r *recorder) Header() http.Header { return r.header }
func (r *recorder) WriteHeader(s int)   { r.status = s }
func (r *recorder) Write(b []byte) (int, error) {
	return r.body.Write(b)
}

// Nothing is written unless that was asked for.
func TestReadsOnly(t *testing.T) {
	address, s := shown(t, hostileDesign, nil)
	q := s.guard(s.answering(question{Method: "POST", Path: "/api/test", Writes: true, Answer: func(*Server, *State, url.Values, []byte) (any, error) {
		t.Error("it was written")
		return nil, nil
	}}))
	w := &recorder{header: http.Header{}}
	r, _ := http.NewRequest("POST", "http://"+address+"/api/test", strings.NewReader("{}"))
	r.Header.Set("Origin", "http://"+address)
	r.Header.Set("Content-Type", "application/json")
	if q.ServeHTTP(w, r); w.status != 403 {
		t.Errorf("status %d, %s", w.status, &w.body)
	}
}

// Who is slow is let go, and keeps nobody else waiting.
func TestSlowReaders(t *testing.T) {
	address, s := shown(t, hostileDesign, func(s *Server) {
		s.times = times{head: 300 * time.Millisecond, body: 300 * time.Millisecond, answer: time.Second, idle: 300 * time.Millisecond, beat: 20 * time.Millisecond}
	})
	var slow []net.Conn
	open := func(text string) {
		c, err := net.Dial("tcp", address)
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { c.Close() })
		fmt.Fprintf(c, text, address)
		slow = append(slow, c)
	}
	for range 8 {
		open("GET / HTTP/1.1\r\nHost: %s\r\nX-Sl") // never ends its head
		open("GET /api/events HTTP/1.1\r\nHost: %s\r\n\r\n")
		open("POST /api/outlook HTTP/1.1\r\nHost: %s\r\nContent-Type: application/json\r\nContent-Length: 9000\r\n\r\n{")
	}
	began := time.Now()
	for range 100 { // those who listen and do not read
		s.put(&State{})
	}
	if d := time.Since(began); d > 2*time.Second {
		t.Errorf("telling took %v", d)
	}
	if status, _, _ := asked(t, "GET", "http://"+address+"/", nil); status != 200 {
		t.Errorf("another one: status %d", status)
	}
	for i, c := range slow {
		if i%3 == 1 {
			continue // events stay
		}
		c.SetReadDeadline(time.Now().Add(10 * time.Second))
		if _, err := io.Copy(io.Discard, c); errors.Is(err, os.ErrDeadlineExceeded) {
			t.Errorf("connection %d is kept", i)
		}
	}
}

// Pages that only listen, however many, leave places for those who ask; one that goes makes room.
func TestManyListeners(t *testing.T) {
	address, _ := shown(t, hostileDesign, nil)
	listens := func() *http.Response {
		t.Helper()
		answer, err := http.Get("http://" + address + "/api/events")
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { answer.Body.Close() })
		return answer
	}
	var first *http.Response
	for i := range 48 {
		answer := listens()
		if answer.StatusCode != 200 {
			t.Fatalf("listener %d: status %d", i+1, answer.StatusCode)
		}
		if i == 0 {
			first = answer
		}
	}
	for range 40 {
		if answer := listens(); answer.StatusCode != 503 {
			t.Fatalf("one more: status %d", answer.StatusCode)
		}
	}
	if status, _, _ := asked(t, "GET", "http://"+address+"/", nil); status != 200 {
		t.Errorf("who asks: status %d", status)
	}
	first.Body.Close()
	for late := time.Now().Add(10 * time.Second); listens().StatusCode != 200; time.Sleep(10 * time.Millisecond) {
		if time.Now().After(late) {
			t.Fatal("there is no place after one has gone")
		}
	}
}

// Who comes from elsewhere needs the code, which opens once.
func TestCode(t *testing.T) {
	codes := make(chan string, 4)
	address, _ := shown(t, hostileDesign, func(s *Server) {
		s.opt.Guarded = true
		s.door.tell = func(code string) { codes <- code }
	})
	first := <-codes
	if len(first) < 20 {
		t.Errorf("the code %q can be guessed", first)
	}
	for _, path := range []string{"/", "/assets/page.js", "/api/model", "/api/drawing", "/api/events", "/api/model?code=" + first, "/?code=", "/?code=" + first[1:]} {
		if status, _, _ := asked(t, "GET", "http://"+address+path, map[string]string{"Cookie": guestCookie + "=x"}); status != 401 {
			t.Errorf("%s without the code: status %d", path, status)
		}
	}
	jar, _ := cookiejar.New(nil)
	guest := &http.Client{Jar: jar}
	answer, err := guest.Get("http://" + address + "/?code=" + first)
	if err != nil {
		t.Fatal(err)
	}
	answer.Body.Close()
	if answer.StatusCode != 200 || answer.Request.URL.RawQuery != "" {
		t.Errorf("with the code: status %d at %s", answer.StatusCode, answer.Request.URL)
	}
	if answer, err = guest.Get("http://" + address + "/api/model"); err != nil || answer.StatusCode != 200 {
		t.Errorf("a guest: %v, %v", answer, err)
	}
	answer.Body.Close()
	status, _, _ := asked(t, "GET", "http://"+address+"/?code="+first, nil)
	if status != 401 {
		t.Errorf("the code a second time: status %d", status)
	}
	next := <-codes
	status, _, header := asked(t, "GET", "http://"+address+"/?code="+next, nil)
	if cookie := header.Get("Set-Cookie"); status != 303 || !strings.Contains(cookie, "HttpOnly") || !strings.Contains(cookie, "SameSite=Strict") {
		t.Errorf("the next code: status %d, cookie %q", status, cookie)
	}
}

// Names of a hostile design stay text: the document has none of them, the model is JSON, and
// the drawing is well-formed without anything that runs.
func TestHostileNames(t *testing.T) {
	address, _ := shown(t, hostileDesign, nil)
	_, page, header := asked(t, "GET", "http://"+address+"/", nil)
	if strings.Contains(page, "<script>") || !strings.HasPrefix(header.Get("Content-Type"), "text/html") {
		t.Errorf("the document: %s", page)
	}
	_, model, header := asked(t, "GET", "http://"+address+"/api/model", nil)
	if !json.Valid([]byte(model)) || header.Get("Content-Type") != "application/json" || !strings.Contains(model, "script") {
		t.Errorf("the model of kind %s: %.200s", header.Get("Content-Type"), model)
	}
	_, drawing, header := asked(t, "GET", "http://"+address+"/api/drawing", nil)
	if header.Get("Content-Type") != "image/svg+xml" {
		t.Errorf("the drawing is %s", header.Get("Content-Type"))
	}
	elements := 0
	for d := xml.NewDecoder(strings.NewReader(drawing)); ; {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		start, is := token.(xml.StartElement)
		if !is {
			continue
		}
		elements++
		switch start.Name.Local {
		case "svg", "g", "path", "text":
		default:
			t.Errorf("the drawing has an element %s", start.Name.Local)
		}
		for _, a := range start.Attr {
			if strings.HasPrefix(a.Name.Local, "on") || a.Name.Local == "style" || a.Name.Local == "href" {
				t.Errorf("the drawing has an attribute %s", a.Name.Local)
			}
		}
	}
	if elements < 50 {
		t.Errorf("%d elements", elements)
	}
}
