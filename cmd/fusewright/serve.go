package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"net"
	"os"
	"os/signal"
	"strconv"
	"strings"
	"syscall"
	"time"

	"rsc.io/qr"

	"fusewright/cmd/fusewright/live"
	"fusewright/harness"
	"fusewright/library"
)

// serveCmd shows the design in a browser and follows its file.
type serveCmd struct {
	Design string `arg:"" help:"The design file."`
	At     string `help:"Be reached from other machines at this address of yours, such as 192.168.1.20; a code is then needed." placeholder:"ADDRESS"`
	Port   int    `help:"Port to listen at; 0 = a free one." default:"0" placeholder:"N"`
	Write  bool   `help:"Let the page write into the design file."`
}

// Validate refuses what cannot be watched or listened at.
func (c *serveCmd) Validate() error {
	switch {
	case c.Design == "-":
		return errors.New("serve follows a file (expected its name, not standard input)")
	case c.Port < 0 || c.Port > 65535:
		return fmt.Errorf("--port %d is out of range (expected 0 to 65535)", c.Port)
	case c.At != "" && net.ParseIP(c.At) == nil:
		return fmt.Errorf("--at %s is no address (expected one of this machine's, such as 192.168.1.20)", c.At)
	}
	return nil
}

// Run serves until it is interrupted.
func (c *serveCmd) Run(io *streams, cli *program) error {
	follow := &followed{arg: designArg{Design: c.Design}, io: io, cli: cli}
	if _, err := follow.text(); err != nil {
		return err
	}
	host := c.At
	if host == "" {
		host = "127.0.0.1"
	}
	network := "tcp"
	if net.ParseIP(host).To4() != nil {
		network = "tcp4" // 0.0.0.0 would be taken for all addresses of either kind
	}
	l, err := net.Listen(network, net.JoinHostPort(host, strconv.Itoa(c.Port)))
	if err != nil {
		return outside{err}
	}
	own, _ := net.InterfaceAddrs()
	addresses := reachedAt(l.Addr().(*net.TCPAddr), own)
	opt := live.Options{File: c.Design, Watched: follow.files(), Read: follow.text, Saved: follow.saved, Assess: follow.assess}
	opt.Kept, opt.Keep = follow.kept, follow.keep
	if c.Write {
		opt.Write = follow.write
	}
	if c.At != "" {
		opt.Guarded = true
		opt.NewCode = func(code string) { showCode(io, addresses, code) }
	} else {
		fmt.Fprintln(io.out, addresses[0])
	}
	io.hint("ends with Ctrl-C; the page follows %s", c.Design)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := live.New(opt).Serve(ctx, l); err != nil {
		return outside{err}
	}
	return nil
}

// reachedAt are the addresses of a listener, as a browser takes them: where it listens at all
// of this machine's own, those of its kind, this machine's alone only when there is no other.
func reachedAt(at *net.TCPAddr, own []net.Addr) []string {
	ips := []net.IP{at.IP}
	if at.IP.IsUnspecified() {
		ips = nil
		for _, a := range own {
			n, is := a.(*net.IPNet)
			if is && n.IP.IsGlobalUnicast() && (n.IP.To4() != nil || at.IP.To4() == nil) {
				ips = append(ips, n.IP)
			}
		}
		if len(ips) == 0 {
			ips = []net.IP{net.IPv6loopback}
			if at.IP.To4() != nil {
				ips[0] = net.IPv4(127, 0, 0, 1)
			}
		}
	}
	var list []string
	for _, ip := range ips {
		list = append(list, "http://"+net.JoinHostPort(ip.String(), strconv.Itoa(at.Port))+"/")
	}
	return list
}

// showCode prints the addresses with the code, the first as a picture for the camera of a phone too.
func showCode(io *streams, addresses []string, secret string) {
	if code, err := qr.Encode(addresses[0]+"?code="+secret, qr.L); err == nil && isTerminal(io.out) {
		picture := halfBlocks(code.Size, code.Black)
		if io.colour() { // whatever the colours of the terminal are: light on dark
			picture = "\x1b[97;40m" + strings.ReplaceAll(picture, "\n", "\x1b[0m\n\x1b[97;40m") + "\x1b[0m"
		}
		fmt.Fprint(io.out, picture)
	}
	for _, a := range addresses {
		fmt.Fprintln(io.out, a+"?code="+secret)
	}
}

// followed reads and assesses the design as often as it changes.
type followed struct {
	arg designArg
	io  *streams
	cli *program
}

// files are those that the design is made from.
func (f *followed) files() []string { return append([]string{f.arg.Design}, f.cli.Library...) }

// text is the design's text as it is now.
func (f *followed) text() ([]byte, error) {
	_, src, err := readInput(f.io, f.arg.Design, maxDesignBytes)
	return src, err
}

// write puts another text in place of the design's.
func (f *followed) write(text []byte) error {
	return writeFile(f.io, f.arg.Design, func(b *bytes.Buffer) error { b.Write(text); return nil })
}

// saved is the time of day at which the last of the files was written.
func (f *followed) saved() string {
	var last time.Time
	for _, file := range f.files() {
		if info, err := os.Stat(file); err == nil && info.ModTime().After(last) {
			last = info.ModTime()
		}
	}
	if last.IsZero() {
		return ""
	}
	return last.Format("15:04:05")
}

// assess takes a text of the design through all stages, with the libraries as they are now.
func (f *followed) assess(text []byte) (*harness.Review, error) {
	libraries, err := library.ReadTexts(f.cli.Library...)
	if err != nil {
		return nil, err
	}
	in := &inputs{design: library.Text{File: harmless(f.arg.Design), Data: text}, libraries: libraries}
	return in.assess()
}
