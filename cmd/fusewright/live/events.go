package live

import (
	"fmt"
	"net/http"
	"sync"
	"time"
)

// hub tells who listens that there is something new. Nobody is waited for: who is slow hears
// once of several changes.
type hub struct {
	mu        sync.Mutex
	listeners map[chan struct{}]bool
}

// mostStreams is how many listen at a time. Each holds a connection for good: the places
// left are for those who ask.
const mostStreams = mostConnections * 3 / 4

// join gives what is told; nil = as many listen as may.
func (h *hub) join() chan struct{} {
	c := make(chan struct{}, 1)
	h.mu.Lock()
	defer h.mu.Unlock()
	if len(h.listeners) >= mostStreams {
		return nil
	}
	if h.listeners == nil {
		h.listeners = map[chan struct{}]bool{}
	}
	h.listeners[c] = true
	return c
}

func (h *hub) leave(c chan struct{}) {
	h.mu.Lock()
	defer h.mu.Unlock()
	delete(h.listeners, c)
}

func (h *hub) tell() {
	h.mu.Lock()
	defer h.mu.Unlock()
	for c := range h.listeners {
		select {
		case c <- struct{}{}:
		default: // has yet to hear of the last one
		}
	}
}

// events sends the version of the design whenever it changes, and that readings were
// kept, as server-sent events (HTML
// Living Standard, section 9.2). The page then asks for what it shows. A beat now and then
// keeps the connection open, and finds out that nobody is there.
func (s *Server) events(w http.ResponseWriter, r *http.Request) {
	news := s.hub.join()
	if news == nil {
		w.Header().Set("Connection", "close")
		http.Error(w, "As many pages follow the design as may.", http.StatusServiceUnavailable)
		return
	}
	defer s.hub.leave(news)
	control := http.NewResponseController(w)
	w.Header().Set("Content-Type", "text/event-stream")
	beat := time.NewTicker(s.times.beat)
	defer beat.Stop()
	sent, read := -1, s.kept.Load()
	for {
		now, err := s.State(r.Context())
		if err != nil {
			return
		}
		text := ": here\n\n"
		if now.Version != sent {
			text = fmt.Sprintf("event: changed\ndata: {\"version\":%d}\n\n", now.Version)
			sent = now.Version
		}
		if kept := s.kept.Load(); kept != read {
			read = kept
			text += "event: readings\ndata: {}\n\n"
		}
		control.SetWriteDeadline(time.Now().Add(s.times.answer))
		if _, err := w.Write([]byte(text)); err != nil || control.Flush() != nil {
			return
		}
		select {
		case <-r.Context().Done():
			return
		case <-news:
		case <-beat.C:
		}
	}
}
