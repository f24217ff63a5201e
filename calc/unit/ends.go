package unit

import "strings"

// Ends is the unit of kind k that a text ends with, or nil.
func Ends(k Kind, text string) *Unit {
	text = strings.ToLower(strings.TrimSpace(text))
	var found *Unit
	longest := 0
	for _, u := range All {
		if u.Kind != k {
			continue
		}
		for _, name := range append([]string{strings.ToLower(u.Symbol)}, u.Also...) {
			if name != "" && len(name) > longest && strings.HasSuffix(text, name) {
				found, longest = u, len(name)
			}
		}
	}
	return found
}
