package browser

import (
	"fmt"
	"net"
	"net/http"
	"sync"

	"setbook/scripts/internal/headers"
	"setbook/scripts/internal/serve"
)

// Site serves a built folder at an address that stays the same while the server is
// stopped and started: a browser knows a site by it.
type Site struct {
	URL   string // ends with a slash
	addr  string
	rules headers.Rules
	mu    sync.Mutex
	dir   string
	extra map[string]string
	http  *http.Server
}

// Serve starts to serve a folder with the headers of a netlify.toml.
func Serve(dir, netlify string) (*Site, error) {
	rules, err := headers.Load(netlify)
	if err != nil {
		return nil, err
	}
	s := &Site{addr: "127.0.0.1:0", rules: rules, dir: dir, extra: map[string]string{}}
	return s, s.Start()
}

// Start serves again after a stop.
func (s *Site) Start() error {
	listener, err := net.Listen("tcp", s.addr)
	if err != nil {
		return err
	}
	s.addr = listener.Addr().String()
	s.URL = "http://" + s.addr + "/"
	s.http = &http.Server{Handler: http.HandlerFunc(s.answer)}
	go s.http.Serve(listener)
	return nil
}

// Stop ends the server and every connection to it.
func (s *Site) Stop() error { return s.http.Close() }

// Swap serves another folder from now on.
func (s *Site) Swap(dir string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.dir = dir
}

// Add serves one more page, "two/", that no build has made.
func (s *Site) Add(path, html string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.extra["/"+path] = html
}

func (s *Site) answer(w http.ResponseWriter, r *http.Request) {
	s.mu.Lock()
	dir := s.dir
	html, ok := s.extra[r.URL.Path]
	s.mu.Unlock()
	if !ok {
		serve.Handler(dir, s.rules).ServeHTTP(w, r)
		return
	}
	for name, values := range s.rules.For(r.URL.Path) {
		w.Header()[name] = values
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	fmt.Fprint(w, html)
}
