package live

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"sync"

	"fusewright/harness"
	"fusewright/harness/design/problem"
	"fusewright/render/page"
)

// State is the design as it was read last. It does not change: a change makes a new one.
type State struct {
	Version int
	// Text is the design's text that Review is made from; nil when none was ever good.
	Text   []byte
	Review *harness.Review
	// Problems are what is wrong with the text on the disk: Review is the last good one.
	Problems []problem.Problem
	// contents are those of all files that it is made from.
	contents string
	model    []byte
	drawn    func() ([]byte, error)
	// aside is a review of its own for what-if, which changes it and puts it back while others read Review.
	aside func() (*harness.Review, error)
}

// desk holds the state; the first one comes with the first reading.
type desk struct {
	mu    sync.Mutex
	now   *State
	ready chan struct{}
}

// State waits for the first reading and gives the design as it is.
func (s *Server) State(ctx context.Context) (*State, error) {
	s.desk.mu.Lock()
	now, ready := s.desk.now, s.desk.await()
	s.desk.mu.Unlock()
	if now != nil {
		return now, nil
	}
	select {
	case <-ready:
		return s.State(ctx)
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

// await is closed when there is a state; the lock is held.
func (d *desk) await() chan struct{} {
	if d.ready == nil {
		d.ready = make(chan struct{})
	}
	return d.ready
}

// put makes a state the current one and tells who listens.
func (s *Server) put(next *State) {
	s.desk.mu.Lock()
	first := s.desk.now == nil
	if !first {
		next.Version = s.desk.now.Version + 1
	}
	s.desk.now = next
	if first {
		close(s.desk.await())
	}
	s.desk.mu.Unlock()
	s.hub.tell()
}

// reread reads the files; what is no design leaves the last good one in place. Findings go
// out first; the remedies, which take a hundred reviews, follow with a copy of their own.
func (s *Server) reread(ctx context.Context) {
	contents := Contents(s.opt.Watched) // before the text: what changes meanwhile is told of
	text, err := s.opt.Read()
	s.desk.mu.Lock()
	was := s.desk.now
	s.desk.mu.Unlock()
	if err == nil && was != nil && bytes.Equal(text, was.Text) && contents == was.contents && len(was.Problems) == 0 {
		return
	}
	var review *harness.Review
	if err == nil {
		review, err = s.opt.Assess(text)
	}
	if err != nil {
		s.put(broken(was, s.opt.File, err))
		return
	}
	next := s.state(text, review, was)
	next.contents = contents
	s.put(next)
	go s.remedies(ctx, next, was)
}

// remedies tries what would help the design of a state, and puts the state with them in its
// place; it stops when that is no longer the current one.
func (s *Server) remedies(ctx context.Context, of, was *State) {
	gone := func() bool {
		s.desk.mu.Lock()
		defer s.desk.mu.Unlock()
		return ctx.Err() != nil || s.desk.now != of
	}
	review, err := s.opt.Assess(of.Text)
	if err != nil {
		return
	}
	review.RemediesUnless(gone)
	next := s.state(of.Text, review, was)
	s.desk.mu.Lock()
	current := s.desk.now == of
	s.desk.mu.Unlock()
	if current { // a change meanwhile would come after this one all the same
		next.drawn, next.aside, next.contents = of.drawn, of.aside, of.contents
		s.put(next)
	}
}

// state is what a good text comes to.
func (s *Server) state(text []byte, review *harness.Review, was *State) *State {
	next := &State{Text: text, Review: review}
	var before *page.Before
	if was != nil && was.Review != nil {
		before = &page.Before{Review: was.Review, Saved: s.opt.Saved(), Lines: changedLines(was.Text, text)}
	}
	model := page.Of(review, before)
	next.model, _ = json.Marshal(model)
	next.drawn = sync.OnceValues(func() ([]byte, error) { return page.Drawing(review) })
	next.aside = sync.OnceValues(func() (*harness.Review, error) { return s.opt.Assess(text) })
	return next
}

// broken is the last good design with what is wrong with the text as it is now.
func broken(was *State, file string, err error) *State {
	next := &State{}
	if was != nil {
		*next = *was
	}
	var list problem.List
	if !errors.As(err, &list) {
		list = problem.List{{Pos: problem.Pos{File: file}, What: err.Error()}}
	}
	next.Problems = list
	next.model, _ = json.Marshal(page.Broken(next.Review, list))
	return next
}
