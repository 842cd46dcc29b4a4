package live

import (
	"bytes"
	"io/fs"
	"net/http"
	"time"

	"fusewright/render/page"
)

// pages answers with the document and what it loads: a list made from the embedded files,
// in which a request is looked up by its whole path.
func (s *Server) pages(mux *http.ServeMux) {
	send := func(name string) http.HandlerFunc {
		data, err := fs.ReadFile(page.Assets, name)
		return func(w http.ResponseWriter, r *http.Request) {
			if err != nil {
				http.NotFound(w, r)
				return
			}
			http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(data))
		}
	}
	mux.HandleFunc("GET /{$}", send("index.html"))
	names, _ := fs.Glob(page.Assets, "*")
	for _, name := range names {
		mux.HandleFunc("GET /assets/"+name, send(name))
	}
}

// model answers with what the page shows.
func (s *Server) model(w http.ResponseWriter, r *http.Request) {
	now, err := s.State(r.Context())
	if err != nil {
		return // nobody waits any more
	}
	w.Header().Set("Content-Type", "application/json")
	w.Write(now.model)
}

// drawing answers with the schematic.
func (s *Server) drawing(w http.ResponseWriter, r *http.Request) {
	now, err := s.State(r.Context())
	if err != nil {
		return
	}
	if now.drawn == nil {
		http.Error(w, "no design to draw", http.StatusNotFound)
		return
	}
	svg, err := now.drawn()
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "image/svg+xml")
	w.Write(svg)
}
