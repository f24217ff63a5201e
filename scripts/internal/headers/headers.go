// Package headers reads the header rules of netlify.toml, so that the local
// server sends what the host will send.
package headers

import (
	"fmt"
	"net/http"
	"strings"

	"github.com/BurntSushi/toml"
)

// Rule is one [[headers]] table: a path pattern and the headers for what matches it.
type Rule struct {
	For    string            `toml:"for"`
	Values map[string]string `toml:"values"`
}

// Rules are all the rules of a file, in its order.
type Rules []Rule

// Load reads the rules from a netlify.toml.
func Load(path string) (Rules, error) {
	var file struct {
		Headers Rules `toml:"headers"`
	}
	if _, err := toml.DecodeFile(path, &file); err != nil {
		return nil, err
	}
	if len(file.Headers) == 0 {
		return nil, fmt.Errorf("%s: no [[headers]] in it", path)
	}
	return file.Headers, nil
}

// For gathers the headers of every rule that matches a path. Where two rules set the
// same header the host joins their values, so the same is done here.
func (rules Rules) For(path string) http.Header {
	h := http.Header{}
	for _, r := range rules {
		if !r.Matches(path) {
			continue
		}
		for name, value := range r.Values {
			h.Add(name, value)
		}
	}
	return h
}

// Matches reports whether a path fits the rule's pattern: "*" at the end stands for any
// rest, a ":name" for one segment. A slash at the end of the path makes no difference.
func (r Rule) Matches(path string) bool {
	pattern, rest := strings.CutSuffix(r.For, "/*")
	want, got := segments(pattern), segments(path)
	if len(got) < len(want) || !rest && len(got) > len(want) {
		return false
	}
	for i, w := range want {
		if !strings.HasPrefix(w, ":") && w != got[i] {
			return false
		}
	}
	return true
}

func segments(path string) []string {
	path = strings.Trim(path, "/")
	if path == "" {
		return nil
	}
	return strings.Split(path, "/")
}
