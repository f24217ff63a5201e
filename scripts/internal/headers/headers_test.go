package headers

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestMatches(t *testing.T) {
	for _, c := range []struct {
		pattern, path string
		want          bool
	}{
		{"/*", "/", true}, {"/*", "/a/b.css", true},
		{"/assets/*", "/assets/a.css", true}, {"/assets/*", "/bed/", false}, {"/assets/*", "/assetsx", false},
		{"/", "/", true}, {"/", "/bed/", false},
		{"/:page", "/bed/", true}, {"/:page", "/sw.js", true}, {"/:page", "/", false}, {"/:page", "/bed/index.html", false},
		{"/:page/index.html", "/bed/index.html", true}, {"/:page/index.html", "/assets/a.css", false},
	} {
		assert.Equal(t, c.want, Rule{For: c.pattern}.Matches(c.path), "%s on %s", c.pattern, c.path)
	}
}

// TestRulesOfTheSite holds netlify.toml to what the pages need: every kind of path says once how long it may be kept,
// and the policy lets in nothing but the site itself.
func TestRulesOfTheSite(t *testing.T) {
	rules, err := Load("../../../netlify.toml")
	require.NoError(t, err)
	for path, keep := range map[string]string{
		"/": "no-cache", "/index.html": "no-cache", "/bed/": "no-cache", "/bed/index.html": "no-cache",
		"/sw.js": "no-cache", "/manifest.webmanifest": "no-cache", "/404.html": "no-cache",
		"/assets/x.css": "public, max-age=31536000, immutable", "/in/es/bed/": "no-cache", "/sheets/a.csv": "no-cache",
		"/embed/frame/en/": "no-cache", "/embed/frame/en/index.html": "no-cache",
		"/embed/embed.js": "public, max-age=3600, stale-while-revalidate=31536000",
	} {
		h := rules.For(path)
		assert.Equal(t, []string{keep}, h.Values("Cache-Control"), path)
		for name, values := range h {
			assert.Len(t, values, 1, "%s: two rules set %s", path, name)
		}
		policy := h.Get("Content-Security-Policy")
		assert.Contains(t, policy, "default-src 'none'")
		assert.Contains(t, policy, "script-src 'self' 'wasm-unsafe-eval';")
		assert.Contains(t, policy, "style-src 'self';")
		assert.NotContains(t, policy, "unsafe-inline")
		assert.NotContains(t, policy, "http")
		assert.NotContains(t, policy, "*")
		assert.NotContains(t, policy, "data:")
		embedded := strings.HasPrefix(path, "/embed/")
		page := !embedded && !strings.HasPrefix(path, "/assets/") && !strings.HasPrefix(path, "/sheets/")
		assert.Equal(t, page, h.Get("X-Frame-Options") == "DENY", "%s: what may stand in a frame", path)
		assert.Equal(t, embedded, h.Get("Cross-Origin-Resource-Policy") == "cross-origin", path)
		assert.NotEmpty(t, h.Get("Cross-Origin-Resource-Policy"), path)
	}
}
