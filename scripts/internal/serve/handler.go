// Package serve answers for a built site as its host will: with the headers of netlify.toml, the
// compressed form that the browser takes, and the page for a missing page.
package serve

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"net/http"
	"os"
	"path"
	"strconv"
	"strings"
	"time"

	"setbook/scripts/internal/headers"
)

// types are the media types of what a site holds; the machine's own table may differ.
var types = map[string]string{
	".html":        "text/html; charset=utf-8",
	".css":         "text/css; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".wasm":        "application/wasm",
	".svg":         "image/svg+xml",
	".png":         "image/png",
	".webmanifest": "application/manifest+json",
	".csv":         "text/csv; charset=utf-8",
	".json":        "application/json",
	".txt":         "text/plain; charset=utf-8",
}

// encodings are the compressed forms, the smallest first.
var encodings = []struct{ name, ext string }{{"br", ".br"}, {"gzip", ".gz"}}

// Handler serves a built folder. Every request reads the folder anew, so that a fresh build is served at once.
func Handler(dir string, rules headers.Rules) http.Handler {
	return &handler{os.DirFS(dir), rules}
}

type handler struct {
	files fs.FS
	rules headers.Rules
}

func (h *handler) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	for name, values := range h.rules.For(r.URL.Path) {
		w.Header()[name] = values
	}
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		w.Header().Set("Allow", "GET, HEAD")
		http.Error(w, "405 method not allowed", http.StatusMethodNotAllowed)
		return
	}
	name := strings.TrimPrefix(path.Clean("/"+r.URL.Path), "/")
	if info, err := fs.Stat(h.files, dot(name)); err == nil && info.IsDir() {
		if name != "" && !strings.HasSuffix(r.URL.Path, "/") {
			w.Header().Set("Location", "/"+name+"/")
			w.WriteHeader(http.StatusMovedPermanently)
			return
		}
		name = path.Join(name, "index.html")
	}
	if !h.send(w, r, name, http.StatusOK) && !h.send(w, r, "404.html", http.StatusNotFound) {
		http.Error(w, "404 not found", http.StatusNotFound)
	}
}

func dot(name string) string {
	if name == "" {
		return "."
	}
	return name
}

// send answers with a file, compressed where the browser takes it. It reports whether there is such a file.
func (h *handler) send(w http.ResponseWriter, r *http.Request, name string, status int) bool {
	mediaType, ok := types[path.Ext(name)]
	if !ok || !fs.ValidPath(name) {
		return false
	}
	data, err := fs.ReadFile(h.files, name)
	if err != nil {
		return false
	}
	head := w.Header()
	for _, e := range encodings {
		if !accepts(r.Header.Get("Accept-Encoding"), e.name) {
			continue
		}
		if small, err := fs.ReadFile(h.files, name+e.ext); err == nil {
			data = small
			head.Set("Content-Encoding", e.name)
			break
		}
	}
	head.Set("Content-Type", mediaType)
	head.Add("Vary", "Accept-Encoding")
	sum := sha256.Sum256(data)
	head.Set("ETag", `"`+hex.EncodeToString(sum[:8])+`"`)
	if status == http.StatusOK {
		if head.Get("Content-Encoding") != "" {
			r.Header.Del("Range") // a part of a compressed file is of no use to anybody
			head.Set("Content-Length", strconv.Itoa(len(data)))
		}
		http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(data))
		return true
	}
	head.Set("Content-Length", strconv.Itoa(len(data)))
	w.WriteHeader(status)
	if r.Method == http.MethodGet {
		w.Write(data)
	}
	return true
}

// accepts reports whether an Accept-Encoding header takes a coding (RFC 9110, section 12.5.3).
func accepts(header, coding string) bool {
	for _, item := range strings.Split(header, ",") {
		name, quality, weighed := strings.Cut(strings.TrimSpace(item), ";")
		if !strings.EqualFold(strings.TrimSpace(name), coding) {
			continue
		}
		if !weighed {
			return true
		}
		_, value, _ := strings.Cut(quality, "=")
		q, err := strconv.ParseFloat(strings.TrimSpace(value), 64)
		return err == nil && q > 0
	}
	return false
}
