package main

import (
	"bufio"
	"bytes"
	"io"
	"net"
	"net/http"
	"net/http/cookiejar"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"rsc.io/qr"
)

// started runs the program and gives what it prints, line by line; it is interrupted and
// must end well at the end of the test.
func started(t *testing.T, dir string, args ...string) <-chan string {
	t.Helper()
	c := asCommand(t, "fusewright", args...)
	c.Dir = dir
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	var problems bytes.Buffer
	c.Stderr = &problems
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	lines := make(chan string, 10000)
	go func() {
		for s := bufio.NewScanner(out); s.Scan(); {
			lines <- s.Text()
		}
		close(lines)
	}()
	t.Cleanup(func() {
		if err := c.Process.Signal(os.Interrupt); err != nil {
			t.Error(err)
		}
		for range lines { // to the end
		}
		if err := c.Wait(); err != nil {
			t.Errorf("%q interrupted: %v, %s", args, err, &problems)
		}
	})
	return lines
}

// waitFor reads lines up to one that begins so.
func waitFor(t *testing.T, lines <-chan string, begins string) string {
	t.Helper()
	late := time.After(30 * time.Second)
	for {
		select {
		case line, more := <-lines:
			if !more {
				t.Fatalf("the program ended before it said %q", begins)
			}
			if strings.HasPrefix(line, begins) {
				return line
			}
		case <-late:
			t.Fatalf("the program did not say %q", begins)
		}
	}
}

func copied(t *testing.T, from, to string) []byte {
	t.Helper()
	text, err := os.ReadFile(from)
	if err == nil {
		err = os.WriteFile(to, text, 0o666)
	}
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// The server says where it is, answers there, and ends cleanly when it is interrupted.
func TestServe(t *testing.T) {
	dir := t.TempDir()
	copied(t, "../../designs/fen-runner.yaml", filepath.Join(dir, "fen.yaml"))
	lines := started(t, dir, "serve", "fen.yaml")
	address := waitFor(t, lines, "http://127.0.0.1:")
	answer, err := http.Get(address + "api/model")
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	body, _ := io.ReadAll(answer.Body)
	if answer.StatusCode != http.StatusOK || !bytes.Contains(body, []byte(`"Nothing found"`)) {
		t.Errorf("status %d, %.200s", answer.StatusCode, body)
	}
}

// At an address that is named the code is needed.
func TestServeElsewhere(t *testing.T) {
	dir := t.TempDir()
	copied(t, "../../designs/fen-runner.yaml", filepath.Join(dir, "fen.yaml"))
	lines := started(t, dir, "serve", "fen.yaml", "--at", "127.0.0.1")
	address := waitFor(t, lines, "http://127.0.0.1:")
	bare, _, is := strings.Cut(address, "?code=")
	if !is {
		t.Fatalf("no code in %s", address)
	}
	for at, want := range map[string]int{bare: http.StatusUnauthorized, bare + "api/model": http.StatusUnauthorized} {
		answer, err := http.Get(at)
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
		if answer.StatusCode != want {
			t.Errorf("%s: status %d, want %d", at, answer.StatusCode, want)
		}
	}
}

// What is printed can be reached: of 0.0.0.0 this machine's own addresses of that kind.
func TestServeAtAll(t *testing.T) {
	dir := t.TempDir()
	copied(t, "../../designs/fen-runner.yaml", filepath.Join(dir, "fen.yaml"))
	address := waitFor(t, started(t, dir, "serve", "fen.yaml", "--at", "0.0.0.0"), "http://")
	if strings.Contains(address, "[") || strings.Contains(address, "//0.") {
		t.Errorf("the address is %s", address)
	}
	jar, _ := cookiejar.New(nil)
	answer, err := (&http.Client{Jar: jar}).Get(address)
	if err != nil {
		t.Fatal(err)
	}
	answer.Body.Close()
	if answer.StatusCode != http.StatusOK {
		t.Errorf("status %d at %s", answer.StatusCode, address)
	}
}

func TestReachedAt(t *testing.T) {
	var own []net.Addr
	for _, a := range []string{"127.0.0.1/8", "::1/128", "192.168.1.20/24", "fe80::1/64", "10.0.0.3/8", "2001:db8::5/64"} {
		ip, n, err := net.ParseCIDR(a)
		if err != nil {
			t.Fatal(err)
		}
		own = append(own, &net.IPNet{IP: ip, Mask: n.Mask})
	}
	for _, x := range []struct {
		at   string
		own  []net.Addr
		want string
	}{
		{"127.0.0.1", own, "http://127.0.0.1:80/"},
		{"192.168.1.20", own, "http://192.168.1.20:80/"},
		{"0.0.0.0", own, "http://192.168.1.20:80/ http://10.0.0.3:80/"},
		{"::", own, "http://192.168.1.20:80/ http://10.0.0.3:80/ http://[2001:db8::5]:80/"},
		{"0.0.0.0", own[:2], "http://127.0.0.1:80/"},
		{"::", own[:2], "http://[::1]:80/"},
	} {
		if got := strings.Join(reachedAt(&net.TCPAddr{IP: net.ParseIP(x.at), Port: 80}, x.own), " "); got != x.want {
			t.Errorf("%s: %s, want %s", x.at, got, x.want)
		}
	}
}

// The check is made again on each save, with what it broke and mended, and goes on while the
// text is no design.
func TestCheckWatch(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "fen.yaml")
	good := copied(t, "../../designs/fen-runner.yaml", file)
	save := func(text string) {
		t.Helper()
		if err := os.WriteFile(file, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	lines := started(t, dir, "check", "fen.yaml", "--watch")
	waitFor(t, lines, "Nothing found: 0 danger")
	waitFor(t, lines, "saved ")
	save(strings.Replace(string(good), "right lamp: {type: LED auxiliary lamp, plug: sealed 1.5, at: fork, fed by: lamp pair", "right lamp: {type: LED auxiliary lamp, plug: sealed 1.5, at: fork, fed by: main", 1))
	if line := waitFor(t, lines, "broken  1 "); !strings.HasSuffix(line, "]") {
		t.Errorf("the line says %q", line)
	}
	waitFor(t, lines, "saved ")
	save("title: [\n")
	if line := waitFor(t, lines, "fen.yaml:1:"); !strings.Contains(line, "never closed") {
		t.Errorf("the problem is %q", line)
	}
	waitFor(t, lines, "saved ")
	save(string(good))
	waitFor(t, lines, "mended  ")
	waitFor(t, lines, "saved ")
	if err := os.Remove(file); err != nil {
		t.Fatal(err)
	}
	waitFor(t, lines, "nothing is checked until it can be read again")
	save(string(good))
	waitFor(t, lines, "no finding came or went")
}

// The check is made again when a library file is saved and the design is not: what was within
// the maker's limit is over it.
func TestCheckWatchALibrary(t *testing.T) {
	dir := t.TempDir()
	design := copied(t, "../../designs/fen-runner.yaml", filepath.Join(dir, "fen.yaml"))
	text := strings.Replace(string(design), "right lamp: {type: LED auxiliary lamp,", "right lamp: {type: barn lamp,", 1)
	save := func(name, text string) {
		t.Helper()
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	lamp := func(watts string) string {
		return "fusewright library: 1\nsource: measured on our bench\ncertainty: user data\nloads:\n" +
			"  - {name: barn lamp, behaves: filament lamp, sign: lamp, power W: " + watts + ", rated V: 12, end: pin 1.5}\n"
	}
	save("fen.yaml", text)
	save("own.yaml", lamp("21"))
	lines := started(t, dir, "--library", "own.yaml", "check", "fen.yaml", "--watch")
	waitFor(t, lines, "saved ")
	save("own.yaml", lamp("400"))
	waitFor(t, lines, "broken  ")
	waitFor(t, lines, "saved ")
	save("own.yaml", lamp("21"))
	waitFor(t, lines, "mended  ")
}

// A QR code drawn with half blocks reads as the code: every module is where it was.
func TestHalfBlocks(t *testing.T) {
	code, err := qr.Encode("http://192.168.1.20:40000/?code=ABCDEFGHIJKLMNOPQRSTUVWXYZ", qr.L)
	if err != nil {
		t.Fatal(err)
	}
	rows := strings.Split(strings.TrimRight(halfBlocks(code.Size, code.Black), "\n"), "\n")
	if want := (code.Size + 2*quiet + 1) / 2; len(rows) != want {
		t.Fatalf("%d lines, want %d", len(rows), want)
	}
	for y := range code.Size {
		row := []rune(rows[(y+quiet)/2])
		for x := range code.Size {
			light := map[rune][2]bool{'█': {true, true}, '▀': {true, false}, '▄': {false, true}, ' ': {false, false}}[row[x+quiet]]
			if light[(y+quiet)%2] == code.Black(x, y) {
				t.Fatalf("module %d, %d is wrong", x, y)
			}
		}
	}
}
