package live

import (
	"crypto/rand"
	"crypto/subtle"
	"net/http"
	"net/url"
	"sync"
)

// door lets in who brings the code of the address. A code opens once and is then replaced:
// it may stay in a history or be seen on a screen. Who came in is known by a cookie.
type door struct {
	mu   sync.Mutex
	code string
	in   []string // tokens of those who came in
	tell func(code string)
}

// mostGuests is how many are known at a time; the first ones have to come again.
const mostGuests = 32

const guestCookie = "fusewright_guest"

// renew makes another code and tells it.
func (d *door) renew() {
	d.mu.Lock()
	d.code = rand.Text() // 128 bits
	code := d.code
	d.mu.Unlock()
	if d.tell != nil {
		d.tell(code)
	}
}

// open spends a code and gives the token of a guest; "" = it is not the code.
func (d *door) open(code string) string {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.code == "" || subtle.ConstantTimeCompare([]byte(code), []byte(d.code)) != 1 {
		return ""
	}
	d.code = ""
	token := rand.Text()
	d.in = append(d.in, token)
	d.in = d.in[max(0, len(d.in)-mostGuests):]
	return token
}

// knows tells whether a token is that of someone who came in.
func (d *door) knows(token string) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	known := 0
	for _, t := range d.in {
		known |= subtle.ConstantTimeCompare([]byte(token), []byte(t))
	}
	return known == 1
}

// admitted lets a request through that bears a guest's token, and answers any other.
func (s *Server) admitted(w http.ResponseWriter, r *http.Request) bool {
	code := r.URL.Query().Get("code")
	if c, err := r.Cookie(guestCookie); err == nil && s.door.knows(c.Value) && code == "" {
		return true
	}
	if r.URL.Path == "/" && r.Method == http.MethodGet && code != "" {
		if token := s.door.open(code); token != "" {
			http.SetCookie(w, &http.Cookie{Name: guestCookie, Value: token, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
			left := r.URL.Query()
			left.Del("code")
			http.Redirect(w, r, (&url.URL{Path: "/", RawQuery: left.Encode()}).String(), http.StatusSeeOther)
			s.door.renew()
			return false
		}
	}
	http.Error(w, "The code is missing, wrong or used up. The terminal shows the address for the next one.", http.StatusUnauthorized)
	return false
}
