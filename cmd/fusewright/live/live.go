// Package live shows a design in a browser and follows its file: a server for the person
// at this machine, or for a phone in the workshop. It answers from memory alone. No path of
// a request reaches the disk, nothing is written unless that was asked for, and whoever is
// not on this machine needs the code of the address.
package live

import (
	"context"
	"errors"
	"net"
	"net/http"
	"sync"
	"sync/atomic"
	"time"

	"fusewright/harness"
)

// Options are what a server shows, and to whom.
type Options struct {
	// File is the design's, as the page names it; Watched are those that it is made from.
	File    string
	Watched []string
	// Read gives the text of the design as it is on the disk.
	Read func() ([]byte, error)
	// Saved says when the file was written last, as the page prints it.
	Saved func() string
	// Assess takes a text of the design through all stages.
	Assess func(text []byte) (*harness.Review, error)
	// Write puts a new text in place of the old one; nil = the design is only read.
	Write func(text []byte) error
	// Kept gives the text of the file of readings beside the design, nil when there is none; Keep
	// puts another in its place. Without them readings stay in the browser.
	Kept func() ([]byte, error)
	Keep func(text []byte) error
	// Guarded asks whoever comes for the code of the address.
	Guarded bool
	// NewCode is told the code for the next one who comes; nil = nobody listens.
	NewCode func(code string)
}

// Server answers for one design.
type Server struct {
	opt   Options
	hosts map[string]bool // as they may stand in a request
	door  door
	desk  desk
	hub   hub
	kept  atomic.Int64 // how often the file of readings was written
	// One question at a time of either sort, so that many take no more memory than one.
	asked, askedQuick sync.Mutex
	times             times
}

// times are the bounds of a connection. What is sent is small, and the page asks again.
type times struct{ head, body, answer, idle, beat time.Duration }

var usualTimes = times{head: 5 * time.Second, body: 10 * time.Second, answer: 20 * time.Second, idle: time.Minute, beat: 15 * time.Second}

// New makes a server; Serve starts it.
func New(opt Options) *Server {
	s := &Server{opt: opt, times: usualTimes}
	s.door.tell = opt.NewCode
	return s
}

const (
	mostHeadBytes   = 16 << 10
	mostBodyBytes   = 1 << 20
	mostConnections = 64
	closingTime     = 2 * time.Second
)

// Serve answers at a listener until the context ends.
func (s *Server) Serve(ctx context.Context, l net.Listener) error {
	s.hosts = hostsOf(l.Addr())
	if s.opt.Guarded {
		s.door.renew()
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	changes, err := Watch(ctx, s.opt.Watched)
	if err != nil {
		return err
	}
	server := &http.Server{Handler: s.Handler(), ReadHeaderTimeout: s.times.head, ReadTimeout: s.times.body, WriteTimeout: s.times.answer,
		IdleTimeout: s.times.idle, MaxHeaderBytes: mostHeadBytes, BaseContext: func(net.Listener) context.Context { return ctx }}
	go s.follow(ctx, changes)
	go func() {
		<-ctx.Done()
		late, end := context.WithTimeout(context.Background(), closingTime)
		defer end()
		if server.Shutdown(late) != nil {
			server.Close()
		}
	}()
	if err := server.Serve(&bounded{Listener: l, free: make(chan struct{}, mostConnections)}); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// follow reads the design now and after every change.
func (s *Server) follow(ctx context.Context, changes <-chan struct{}) {
	for {
		s.reread(ctx)
		select {
		case <-ctx.Done():
			return
		case <-changes:
		}
	}
}

// Handler is what answers, for tests without a listener too.
func (s *Server) Handler() http.Handler {
	mux := http.NewServeMux()
	s.pages(mux)
	mux.HandleFunc("GET /api/model", s.model)
	mux.HandleFunc("GET /api/drawing", s.drawing)
	mux.HandleFunc("GET /api/events", s.events)
	for _, q := range questions() {
		mux.HandleFunc(q.Method+" "+q.Path, s.answering(q))
	}
	return s.guard(mux)
}
