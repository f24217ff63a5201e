package job

import (
	"slices"
	"sort"
	"strings"

	"setbook/calc/countdown"
	"setbook/calc/link"
)

// Summary is what a list of jobs shows of one.
type Summary struct {
	ID, Name, Place string
	Changed         countdown.Instant
	Entries         []string // the names of its entries and the IDs of their calculators, none twice
}

// Summarise is what a list shows of a job.
func Summarise(j *Job) Summary {
	s := Summary{ID: j.ID, Name: j.Name, Place: j.Place, Changed: j.Changed}
	for _, e := range j.Entries {
		for _, text := range [...]string{e.Name, e.Calculator} {
			if text != "" && !slices.Contains(s.Entries, text) {
				s.Entries = append(s.Entries, text)
			}
		}
	}
	return s
}

// Search keeps the summaries that hold every word of a query, in capitals or not, the last changed first.
func Search(list []Summary, query string) (found []Summary) {
	asked := strings.Fields(strings.ToLower(query))
	for _, s := range list {
		all := strings.ToLower(s.Name + " " + s.Place + " " + strings.Join(s.Entries, " "))
		if !slices.ContainsFunc(asked, func(word string) bool { return !strings.Contains(all, word) }) {
			found = append(found, s)
		}
	}
	sort.SliceStable(found, func(i, j int) bool { return found[i].Changed > found[j].Changed })
	return found
}

// FromEntries makes a job out of what a browser held before there were jobs: the last entry of each calculator by its ID,
// and the countdowns by theirs. What cannot be read is left where it is and not taken over.
func FromEntries(id, name string, entries, countdowns map[string]string, now countdown.Instant) *Job {
	j := &Job{ID: id, Name: Clean(name, MaxName), Created: now, Changed: now}
	for _, calculator := range sorted(entries) {
		if idRule.takes(calculator) && linkRule.takes(entries[calculator]) && len(j.Entries) < MaxEntries {
			j.Entries = append(j.Entries, Entry{ID: calculator, Calculator: calculator, Link: entries[calculator], Changed: now})
		}
	}
	for _, key := range sorted(countdowns) {
		c := Countdown{key, countdowns[key]}
		if _, ok := c.read(); ok && len(j.Countdowns) < MaxCountdowns {
			j.Countdowns = append(j.Countdowns, c)
		}
	}
	return j
}

func sorted(texts map[string]string) (keys []string) {
	for key := range texts {
		keys = append(keys, key)
	}
	sort.Strings(keys)
	return keys
}

// Lines are the entries of a job as text: for each a line with the calculator's ID, the entry's name, escaped as in a link, "?" and its
// link, as in "bed Main+terrace?v=1&width=1/2+in". The question that orders material takes them so.
func Lines(j *Job) string {
	var lines []string
	for _, e := range j.Entries {
		name := ""
		if e.Name != "" {
			name = " " + link.Escape(e.Name)
		}
		lines = append(lines, e.Calculator+name+"?"+e.Link)
	}
	return strings.Join(lines, "\n")
}
