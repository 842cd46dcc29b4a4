package live

import (
	"mime"
	"net"
	"net/http"
	"net/url"
	"strings"
)

// policy lets the page load what this server sends and nothing else: no script or style
// in the text, no frame around it, no other address.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; " +
	"base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// guard refuses what does not come from the page itself, or from whoever opens it.
func (s *Server) guard(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		if why := s.refused(r); why != "" {
			http.Error(w, why, http.StatusForbidden)
			return
		}
		if s.opt.Guarded && !s.admitted(w, r) {
			return
		}
		r.Body = http.MaxBytesReader(w, r.Body, mostBodyBytes)
		next.ServeHTTP(w, r)
	})
}

// refused says why a request is not answered; "" = it is. The Host is checked so that a
// name that is led here by another's name server reaches nothing.
func (s *Server) refused(r *http.Request) string {
	reads := r.Method == http.MethodGet || r.Method == http.MethodHead
	origin := r.Header.Get("Origin")
	site := r.Header.Get("Sec-Fetch-Site")
	switch {
	case s.hosts != nil && !s.hosts[strings.ToLower(r.Host)]:
		return "this address is not served here"
	case len(r.Header.Values("Origin")) > 1 || origin != "" && !s.ours(origin):
		return "asked by another page"
	case site != "" && site != "same-origin" && site != "none" && !opens(r):
		return "asked by another page"
	case !reads && origin == "" && site != "same-origin":
		return "only the page itself may change anything"
	case !reads && !isJSON(r):
		return "only JSON is taken"
	}
	return ""
}

// opens tells of a link that leads here: the document may be opened from anywhere.
func opens(r *http.Request) bool {
	return r.Method == http.MethodGet && r.URL.Path == "/" && r.Header.Get("Sec-Fetch-Mode") == "navigate"
}

// ours tells whether an origin is this server.
func (s *Server) ours(origin string) bool {
	u, err := url.Parse(origin)
	return err == nil && u.Scheme == "http" && u.User == nil && u.Path == "" && (s.hosts == nil || s.hosts[strings.ToLower(u.Host)])
}

func isJSON(r *http.Request) bool {
	kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	return err == nil && kind == "application/json"
}

// hostsOf are the names that a listener goes by: its own address, and this machine's where
// it listens on that or on all.
func hostsOf(a net.Addr) map[string]bool {
	host, port, err := net.SplitHostPort(a.String())
	if err != nil {
		return map[string]bool{}
	}
	ip := net.ParseIP(host)
	names := []string{host}
	if ip == nil || ip.IsLoopback() || ip.IsUnspecified() {
		names = append(names, "localhost", "127.0.0.1", "::1")
	}
	if ip != nil && ip.IsUnspecified() {
		addresses, _ := net.InterfaceAddrs()
		for _, a := range addresses {
			if n, is := a.(*net.IPNet); is {
				names = append(names, n.IP.String())
			}
		}
	}
	hosts := map[string]bool{}
	for _, n := range names {
		hosts[net.JoinHostPort(n, port)] = true
		if port == "80" {
			hosts[n] = true
		}
	}
	return hosts
}
