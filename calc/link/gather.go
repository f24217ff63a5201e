package link

import "strings"

// Named is the link of one calculator among several that share an address.
type Named struct{ Name, Text string }

// Gather puts the links of all the calculators mounted on a page into one
// fragment: bare for a single one, else with each key under its name,
// "bed.width=1/2+in&batch.powder=25+kg".
func Gather(all []Named) string {
	if len(all) == 1 {
		return all[0].Text
	}
	var pairs []string
	for _, n := range all {
		for _, pair := range strings.Split(n.Text, "&") {
			pairs = append(pairs, n.Name+"."+pair)
		}
	}
	return strings.Join(pairs, "&")
}

// Pick takes one calculator's link out of a fragment. Where it is alone on its
// page, pairs with no name are its own too.
func Pick(fragment, name string, alone bool) string {
	var pairs []string
	for _, pair := range strings.Split(strings.TrimPrefix(fragment, "#"), "&") {
		key, _, _ := strings.Cut(pair, "=")
		switch {
		case strings.HasPrefix(pair, name+"."):
			pairs = append(pairs, pair[len(name)+1:])
		case alone && pair != "" && !strings.Contains(key, "."):
			pairs = append(pairs, pair)
		}
	}
	return strings.Join(pairs, "&")
}
