package words

import (
	"slices"
	"strings"
)

// Text is a language's messages as a file that the phone fetches: a line each, the English and its own parted by a tab.
func (l *Language) Text() string {
	lines := make([]string, 0, len(l.Say))
	for m, own := range l.Say {
		lines = append(lines, string(m)+"\t"+string(own)+"\n")
	}
	slices.Sort(lines)
	return strings.Join(lines, "")
}

// Read makes a language of what Text wrote. A line without a tab is passed over.
func Read(tag, text string) *Language {
	l := &Language{Tag: tag, Say: make(map[Msg]Msg, strings.Count(text, "\n"))}
	for line := range strings.Lines(text) {
		if m, own, ok := strings.Cut(strings.TrimSuffix(line, "\n"), "\t"); ok {
			l.Say[Msg(m)] = Msg(own)
		}
	}
	return l
}
