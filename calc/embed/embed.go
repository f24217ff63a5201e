// Package embed is what a calculator in somebody else's page has to know: how it is set up, which colours it may take
// on, and what it tells the page around it. The shape of every message has a version; a test holds it.
package embed

import (
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/link"
	"setbook/calc/words"
)

// Version is that of the messages: it changes when a reader of the old ones would go wrong.
const Version = 1

// Setup is how the page around it wants a calculator: the query of the frame's address.
type Setup struct {
	Calculator *calc.Calculator
	Fixed      calc.Texts // shown, not asked for
	Start      calc.Texts // in the fields at first
	Hidden     []string   // neither asked for nor shown among the fields
	Units      string     // "us", "metric", or "" for what the visitor chose
	Theme      string     // "light", "dark", or "" for what the device asks for
	Sheet      string     // a data sheet that stands in this site, "mortars.csv"
	Clear      int        // seconds until what was typed is cleared; 0: never
	Colours    map[string]string
}

// colourNames are the colours that can be set, as they are named in a query and, behind "--setbook-", in a style sheet.
var colourNames = [...]string{"paper", "ink", "line"}

// Bounds of the time until an idle tablet is cleared, in seconds.
const (
	LeastClear = 30
	MostClear  = 3600
)

// Read reads a query, "?calculator=bed&fixed=notch%3Dsquare". Find looks a calculator up. Whatever cannot be followed is
// told, and the rest is.
func Read(query string, find func(id string) (*calc.Calculator, bool)) (Setup, []words.Line) {
	s := Setup{Colours: map[string]string{}}
	var faults []words.Line
	fail := func(m words.Msg, with ...*words.Arg) { faults = append(faults, words.Say(m, with...)) }
	texts, problems := link.Parse(strings.TrimPrefix(query, "?"))
	for _, p := range problems {
		faults = append(faults, p.Says)
	}
	s.Calculator, _ = find(texts["calculator"])
	if s.Calculator == nil {
		fail("No calculator has the name “{read}”. The address of a page of this book holds its name.", words.Text("read", calc.Cut(texts["calculator"])))
		return s, faults
	}
	for _, name := range keys(texts) {
		text := texts[name]
		known := true
		switch name {
		case "calculator":
		case "fixed":
			s.Fixed, known = entry(s.Calculator, text, &faults), true
		case "start":
			s.Start, known = entry(s.Calculator, text, &faults), true
		case "hide":
			s.Hidden = hidden(s.Calculator, text, &faults)
		case "units":
			s.Units, known = text, text == "us" || text == "metric"
		case "theme":
			s.Theme, known = text, text == "light" || text == "dark"
		case "site-sheet":
			s.Sheet, known = text, PlainName(text)
		case "clear":
			n, err := strconv.Atoi(text)
			s.Clear, known = n, err == nil && LeastClear <= n && n <= MostClear
		case "paper", "ink", "line":
			s.Colours[name] = text
		default:
			fail("There is no setting named “{read}”.", words.Text("read", calc.Cut(name)))
		}
		if !known {
			fail("The setting “{name}” cannot be “{read}”.", words.Text("name", name), words.Text("read", calc.Cut(text)))
		}
	}
	if s.Units != "us" && s.Units != "metric" {
		s.Units = ""
	}
	if s.Theme != "light" && s.Theme != "dark" {
		s.Theme = ""
	}
	if !PlainName(s.Sheet) {
		s.Sheet = ""
	}
	if s.Clear < LeastClear || s.Clear > MostClear {
		s.Clear = 0
	}
	return s, faults
}

// keys are the keys of texts in the alphabet, so that faults are told in one order.
func keys(texts calc.Texts) (list []string) {
	for key := range texts {
		at := len(list)
		for at > 0 && list[at-1] > key {
			at--
		}
		list = append(list, "")
		copy(list[at+1:], list[at:])
		list[at] = key
	}
	return list
}

// entry reads part of an entry, written as in a link: what stands behind "#" once a link is copied.
func entry(c *calc.Calculator, text string, faults *[]words.Line) calc.Texts {
	texts, problems := link.Parse(text)
	if len(problems) == 0 {
		_, problems = c.Read(texts, calc.Habit{})
	}
	for _, p := range problems {
		*faults = append(*faults, p.Says)
		delete(texts, p.Key)
	}
	return texts
}

// hidden reads the names of inputs, parted by commas.
func hidden(c *calc.Calculator, text string, faults *[]words.Line) (list []string) {
	for _, key := range strings.Split(text, ",") {
		key = strings.TrimSpace(key)
		switch {
		case c.Input(key) != nil:
			list = append(list, key)
		case key != "":
			*faults = append(*faults, words.Say("There is no input named “{read}” to hide.", words.Text("read", calc.Cut(key))))
		}
	}
	return list
}

// PlainName reports whether a text names a file of one folder and nothing outside it.
func PlainName(text string) bool {
	for _, c := range []byte(text) {
		switch {
		case 'a' <= c && c <= 'z', 'A' <= c && c <= 'Z', '0' <= c && c <= '9', c == '-', c == '_', c == '.':
		default:
			return false
		}
	}
	return !strings.HasPrefix(text, ".")
}

// Origins reads the list of named origins: those pages, and no other, are told anything and may say anything. An
// origin that is not written as the browser writes it names nobody.
func Origins(list string) (origins []string) {
	for _, o := range strings.Fields(list) {
		if IsOrigin(o) {
			origins = append(origins, o)
		}
	}
	return origins
}

// IsOrigin reports whether a text is an origin as a browser writes it (RFC 6454, section 6.2): a scheme of the web, a host in
// small letters, and a port where it is not the scheme's own. No path, no slash at the end, no "*".
func IsOrigin(text string) bool {
	host, secure := strings.CutPrefix(text, "https://")
	if !secure {
		var plain bool
		if host, plain = strings.CutPrefix(text, "http://"); !plain {
			return false
		}
	}
	host, port, ported := strings.Cut(host, ":")
	if ported {
		n, err := strconv.Atoi(port)
		if err != nil || strconv.Itoa(n) != port || n < 1 || n > 65535 || secure && n == 443 || !secure && n == 80 {
			return false
		}
	}
	for _, c := range []byte(host) {
		if !('a' <= c && c <= 'z' || '0' <= c && c <= '9' || c == '-' || c == '.') {
			return false
		}
	}
	return host != "" && host[0] != '.' && host[len(host)-1] != '.'
}
