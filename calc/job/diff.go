package job

import (
	"slices"
	"sort"
	"strings"

	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/words"
)

// Change is one thing that an import would change: Path is where, Was and Will are the texts before and after, "" for none.
type Change struct {
	Path      string
	Says      words.Line
	Was, Will string
}

// Diff lists what taking over another record would change, in the order of the record: nothing is changed by asking. When a
// record was made and saved, and how often, is not told. An old record of nil is an empty one.
func Diff(old, new *Job) (changes []Change) {
	if old == nil {
		old = &Job{}
	}
	was, wasLines := cells(old)
	will, willLines := cells(new)
	for i := range will {
		changes = appendField(changes, will[i].key, nil, was[i], will[i])
	}
	// Lines are matched within their list by their IDs.
	for _, l := range wasLines {
		if find(willLines, l) < 0 {
			changes = append(changes, Change{l.path(), words.Say("{what} goes: {text}", words.Named("what", l.label), words.Text("text", l.text())), l.text(), ""})
		}
	}
	for _, l := range willLines {
		i := find(wasLines, l)
		if i < 0 {
			changes = append(changes, Change{l.path(), words.Say("{what} is new: {text}", words.Named("what", l.label), words.Text("text", l.text())), "", l.text()})
			continue
		}
		for n := range l.cells {
			changes = appendField(changes, l.path()+"."+l.cells[n].key, &l, wasLines[i].cells[n], l.cells[n])
		}
	}
	return changes
}

// cells are the fields of a record that a person may see, its own and those of its lists' lines.
func cells(j *Job) (own []cell, lines []line) {
	own = []cell{}
	j.fields(&pass{cells: &own, lines: &lines})
	return own, lines
}

func find(lines []line, like line) int {
	return slices.IndexFunc(lines, func(l line) bool { return l.list == like.list && l.cells[0].text == like.cells[0].text })
}

// path is where a line stands: its list and its ID, which is its first cell.
func (l line) path() string { return l.list + "[" + l.cells[0].text + "]" }

// text is what a line holds, in short.
func (l line) text() string {
	var parts []string
	for _, c := range l.cells[1:] {
		if c.text != "" && !quiet(c.key) {
			parts = append(parts, calc.Cut(strings.ReplaceAll(c.shown(), "\n", " ")))
		}
	}
	return strings.Join(parts, " · ")
}

// quiet are keys of the program's own, which are no news.
func quiet(key string) bool { return key == "id" || key == "created" || key == "changed" }

func appendField(changes []Change, path string, of *line, was, will cell) []Change {
	if was.text == will.text || quiet(will.key) {
		return changes
	}
	field := words.Named("field", will.label)
	before, after := words.Text("was", calc.Cut(was.shown())), words.Text("will", calc.Cut(will.shown()))
	var l words.Line
	switch {
	case was.text == "":
		l = words.Say("{field}: “{will}” is new.", field, after)
	case will.text == "":
		l = words.Say("{field}: “{was}” goes.", field, before)
	default:
		l = words.Say("{field}: “{was}” becomes “{will}”.", field, before, after)
	}
	if of != nil {
		l = words.Say("{what}, {text}: {change}", words.Named("what", of.label), words.Text("text", calc.Cut(of.text())), words.Also("change", l))
	}
	return append(changes, Change{path, l, was.text, will.text})
}

// Merge is the record that comes of two of one job, for one who imports it into a job that is here: what stands in both is taken from the
// one that was changed last, and what stands in one alone is kept, so that no line of a log is lost; a line that was deleted on one phone
// comes back from the other. Diff(old, merged) tells beforehand what changes here. It is refused where it would not be a record that Read takes.
func Merge(old, new *Job, now countdown.Instant) (*Job, []Problem) {
	if old.Newer > 0 || new.Newer > 0 {
		return nil, whole(words.Say("This job was written by a newer Setbook. What of it is not understood here would be lost, so nothing is taken over."))
	}
	last, first := new, old
	if old.Changed > new.Changed {
		last, first = old, new
	}
	m := *last
	m.ID, m.Created, m.Changed, m.Revision = old.ID, min(old.Created, new.Created), max(now, last.Changed), max(old.Revision, new.Revision)+1
	if first.Weather.When > m.Weather.When {
		m.Weather = first.Weather
	}
	m.Entries = picked(last.Entries, first.Entries, func(e *Entry) key { return key{e.ID, e.Changed} }, true)
	m.Countdowns = picked(last.Countdowns, first.Countdowns, func(c *Countdown) key { return key{c.ID, 0} }, false)
	m.Mixes = picked(last.Mixes, first.Mixes, func(x *Mix) key { return key{x.ID, x.When} }, false)
	m.Checks = picked(last.Checks, first.Checks, func(c *Check) key { return key{c.ID, c.When} }, false)
	// A picture is added to a check later, and is lost from neither.
	pictures := map[string]string{}
	for _, c := range first.Checks {
		pictures[c.ID] = c.Picture
	}
	for i := range m.Checks {
		if c := &m.Checks[i]; c.Picture == "" {
			c.Picture = pictures[c.ID]
		}
	}
	m.Notes = picked(last.Notes, first.Notes, func(n *Note) key { return key{n.ID, n.When} }, false)
	m.HandOver.Materials = picked(last.HandOver.Materials, first.HandOver.Materials, func(x *Material) key { return key{x.ID, 0} }, false)
	return Read(Write(&m))
}

// key is the ID of a line of a list and its time.
type key struct {
	id string
	at countdown.Instant
}

// picked is the union of two lists.
func picked[T Entry | Countdown | Mix | Check | Note | Material](last, first []T, of func(*T) key, changes bool) (all []T) {
	keys := make([]key, 0, len(last)+len(first))
	for i := range last {
		keys = append(keys, of(&last[i]))
	}
	for i := range first {
		keys = append(keys, of(&first[i]))
	}
	for _, i := range union(keys, changes) {
		if i < len(last) {
			all = append(all, last[i])
		} else {
			all = append(all, first[i-len(last)])
		}
	}
	return all
}

// union picks every key the first time that it stands: those of the record that was changed last, then what only the other has. A log
// stands in the order of its times; where a time is one of change, the order stays and the later of two lines is picked.
func union(keys []key, changes bool) (order []int) {
	place := make(map[string]int, len(keys))
	for i, k := range keys {
		at, both := place[k.id]
		switch {
		case !both:
			place[k.id] = len(order)
			order = append(order, i)
		case changes && k.at > keys[order[at]].at:
			order[at] = i
		}
	}
	if !changes {
		sort.SliceStable(order, func(i, j int) bool { return keys[order[i]].at < keys[order[j]].at })
	}
	return order
}
