package job

import (
	"sort"
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/link"
	"setbook/calc/words"
)

// Change is one thing that an import would change: Path is where, Was and Will are the texts before and after, "" for none.
type Change struct {
	Path      string
	Says      words.Line
	Was, Will string
	New       bool // a line of a list that was not there; anything else changes or takes away what is there
}

// Diff lists what taking over another record would change, in the order of the record: nothing is changed by asking. When a
// record was made and saved, how often, and in what order its lists stand is not told. An old record of nil is an empty one.
func Diff(old, new *Job) (changes []Change) {
	if old == nil {
		old = &Job{}
	}
	was, wasLists := cells(old)
	will, willLists := cells(new)
	for i := range will {
		changes = appendField(changes, will[i].key, "", "", &was[i], &will[i])
	}
	for n := range willLists {
		changes = appendLines(changes, &wasLists[n], &willLists[n])
	}
	return changes
}

// cells are the fields of a record itself, and its lists.
func cells(j *Job) (own []cell, lists []list) {
	own = []cell{}
	j.fields(&pass{cells: &own, lists: &lists})
	return own, lists
}

// appendLines compares two lists, whose lines are matched by their IDs.
func appendLines(changes []Change, was, will *list) []Change {
	places, stays := was.places(), make([]bool, was.count)
	for i := range will.count {
		if i, both := places[will.id(i)]; both {
			stays[i] = true
		}
	}
	for i := range was.count {
		if l := was.told(i); !stays[i] {
			text := told(l)
			changes = append(changes, Change{will.path(l), words.Say("{what} goes: {text}", words.Named("what", was.label), words.Text("text", text)), text, "", false})
		}
	}
	for i := range will.count {
		l := will.told(i)
		at, both := places[*l[0].text]
		if !both {
			text := told(l)
			changes = append(changes, Change{will.path(l), words.Say("{what} is new: {text}", words.Named("what", will.label), words.Text("text", text)), "", text, true})
			continue
		}
		before := was.told(at)
		for n := range l {
			if !before[n].same(&l[n]) {
				changes = appendField(changes, will.path(l)+"."+l[n].key, will.label, calc.Cut(told(l)), &before[n], &l[n])
			}
		}
	}
	return changes
}

// path is where a line stands: its list and its ID.
func (l *list) path(line []cell) string { return l.key + "[" + *line[0].text + "]" }

// told is a line as a person is told of it. A countdown is kept as one text, and told by what is in it.
func (l *list) told(i int) []cell {
	line := l.line(i)
	if l.key != "countdowns" {
		return line
	}
	c, ok := countdown.Read(*line[0].text, *line[1].text)
	if !ok {
		c = &countdown.Countdown{Name: *line[1].text}
	}
	return []cell{line[0], {key: "name", label: "Name", text: &c.Name}, {key: "until", label: "Ends", at: &c.Until, must: true},
		{key: "from", label: "Begun", at: &c.From, must: true}, {key: "of", label: "Calculator", text: &c.Of}, {key: "entry", label: "Entry", text: &c.Entry}}
}

// told is what a line holds, in short.
func told(line []cell) string {
	var parts []string
	for i := range line {
		c := &line[i]
		text := c.shown()
		switch {
		case text == "" || c.quiet() || c.key == "from" || c.key == "of" || c.key == "entry": // by name and end a countdown is told from others
			continue
		case c.key == "link":
			text = pairs("", text)
		}
		parts = append(parts, calc.Cut(visible(text)))
	}
	return strings.Join(parts, " · ")
}

// quiet reports what is the program's own, which is no news.
func (c *cell) quiet() bool { return c.key == "id" || c.key == "created" || c.key == "changed" }

// appendField compares two cells of one field; what is the label of the line in which it stands, if it stands in one, and text what tells that
// line from others.
func appendField(changes []Change, path string, what words.Msg, text string, was, will *cell) []Change {
	if will.quiet() || was.same(will) {
		return changes
	}
	field := words.Named("field", will.label)
	from, to := apart(was, will)
	var l words.Line
	switch differ := ""; {
	case was.raw() == "":
		l = words.Say("{field}: “{will}” is new.", field, words.Text("will", to))
	case will.raw() == "":
		l = words.Say("{field}: “{was}” goes.", field, words.Text("was", from))
	default:
		if will.key == "link" || will.key == "entry" {
			differ = pairs(was.raw(), will.raw())
		}
		if differ != "" {
			l = words.Say("{field}: {changes}", field, words.Text("changes", differ))
		} else {
			l = words.Say("{field}: “{was}” becomes “{will}”.", field, words.Text("was", from), words.Text("will", to))
		}
	}
	if what != "" {
		l = words.Say("{what}, {text}: {change}", words.Named("what", what), words.Text("text", text), words.Also("change", l))
	}
	return append(changes, Change{path, l, was.raw(), will.raw(), false})
}

// apart is what is shown of the two texts of a field, so that they never read alike: where what a person is told of both is the same, more is told.
func apart(was, will *cell) (from, to string) {
	from, to = was.shown(), will.shown()
	if from == to && will.picture {
		from, to = from+weight(was), to+weight(will)
	}
	if from == to {
		from, to = was.raw(), will.raw()
	}
	return clip(from, to)
}

// weight is how large a picture is.
func weight(c *cell) string {
	_, in, _ := pictureOf(*c.text)
	return ", " + strconv.Itoa(in.size) + " B"
}

// pairs tells the pairs of two links that differ, each as in "waste 10 % → 90 %", or those of the second alone where the first is "".
// It is "" where none differs: then the links differ in their writing.
func pairs(was, will string) string {
	before, _ := link.Parse(was)
	after, _ := link.Parse(will)
	all := map[string]string{}
	for _, texts := range [...]calc.Texts{before, after} {
		for key := range texts {
			all[key] = ""
		}
	}
	var parts []string
	for _, key := range sorted(all) {
		a, had := before[key]
		b, has := after[key]
		if had == has && a == b {
			continue
		}
		from, to := clip(a, b)
		if part := calc.Cut(visible(key)) + " "; was == "" {
			parts = append(parts, part+to)
		} else {
			parts = append(parts, part+or(had, from)+" → "+or(has, to))
		}
	}
	return strings.Join(parts, ", ")
}

func or(is bool, text string) string {
	if is {
		return text
	}
	return "–"
}

// How texts that differ are shown: whole while they are short; else from a little before the first place where they differ to a little after the
// last. What lies between is shown whole, since a change could be hidden in what is left out, up to what the longest text of a record may have: only
// a link's grid is longer.
const (
	shortText = 80 // characters
	around    = 24
	between   = MaxText
)

// clip is what is shown of two texts, either of which may be "".
func clip(was, will string) (from, to string) {
	a, b := []rune(visible(was)), []rune(visible(will))
	first, last := 0, 0 // alike from the beginning, and from the end
	for first < min(len(a), len(b)) && a[first] == b[first] {
		first++
	}
	for last < min(len(a), len(b))-first && a[len(a)-1-last] == b[len(b)-1-last] {
		last++
	}
	return excerpt(a, first, last), excerpt(b, first, last)
}

func excerpt(text []rune, first, last int) string {
	if len(text) <= shortText {
		return string(text)
	}
	begin, end := max(0, first-around), min(len(text), len(text)-last+around)
	shown := string(text[begin:end])
	if end-begin > between+2*around {
		shown = string(text[begin:begin+between/2]) + " … " + string(text[end-between/2:end])
	}
	if begin > 0 {
		shown = "…" + shown
	}
	if end < len(text) {
		shown += "…"
	}
	return shown
}

// visible makes every character of a text one that is seen: what has no mark of its own, or turns the direction of writing, is written by its
// number, as in "[U+200B]"; a line's end is a pilcrow, and of spaces in a row a page shows each.
func visible(text string) string {
	var b strings.Builder
	var last rune
	for _, r := range text {
		switch {
		case r == '\n':
			b.WriteString(" ¶ ")
		case r == ' ' && last == ' ':
			b.WriteRune('\u00a0')
		case strconv.IsPrint(r) && !blank(r):
			b.WriteRune(r)
		default:
			number := strings.ToUpper(strconv.FormatInt(int64(r), 16))
			b.WriteString("[U+" + "0000"[min(4, len(number)):] + number + "]")
		}
		last = r
	}
	return b.String()
}

// blank reports characters that count as letters or marks and are not seen: joiners, fillers, selectors of variants, the Braille cell without a dot
// (Unicode 15, DerivedCoreProperties, Default_Ignorable_Code_Point).
func blank(r rune) bool {
	return r == 0x34f || r == 0x115f || r == 0x1160 || r == 0x17b4 || r == 0x17b5 || 0x180b <= r && r <= 0x180f || r == 0x2800 ||
		r == 0x3164 || 0xfe00 <= r && r <= 0xfe0f || r == 0xffa0 || 0xe0000 <= r && r <= 0xe0fff
}

// Merge is the record that comes of two of one job, for one who imports it into a job that is here. Nothing that one alone holds is lost: a
// field that is empty in one is the other's, and a line of a list that stands in one is kept, so that one that was deleted on one phone comes
// back from the other. Where both hold something and it differs, the record that was changed last decides, of an entry the one whose own time is later;
// of the weather, all of it is taken from where it was measured last. Of two that were changed at the same time the greater text decides, so
// that both phones come to the same. Diff(old, merged) tells beforehand what changes here. It is refused where it would not be a record that
// Read takes.
func Merge(old, new *Job, now countdown.Instant) (*Job, []Problem) {
	last, first := new, old
	if ahead(old, new) {
		last, first = old, new
	}
	m := join(&Job{}, first, last)
	m.Weather = last.Weather
	if none, other := last.Weather.none(), first.Weather.none(); none && !other || none == other && first.Weather.When > last.Weather.When {
		m.Weather = first.Weather
	}
	// Later than both, so that each of them, taken in once more, changes nothing.
	m.ID, m.Created, m.Changed, m.Revision = old.ID, min(old.Created, new.Created), max(now, min(last.Changed+1, latest)), max(old.Revision, new.Revision)+1
	return checked(m, old, new)
}

// Join puts together what two pages made of one record: base is what both began with (nil: nothing), theirs what is kept by now, mine what
// stands here. What mine changed is taken from mine, and all else from theirs: of each field, and of each field of a line. A line that one of them added
// stays; one that one of them took out goes, unless the other changed it. Where both changed a field of an entry or of the weather, the later time decides; elsewhere
// mine does. The revision is that of theirs, in whose place it is to be kept. It is refused where it would not be a record that Read takes.
func Join(base, theirs, mine *Job, now countdown.Instant) (*Job, []Problem) {
	if base == nil {
		base = &Job{}
	}
	m := join(base, theirs, mine)
	m.ID, m.Created, m.Changed, m.Revision = mine.ID, min(theirs.Created, mine.Created), max(now, theirs.Changed, mine.Changed), theirs.Revision
	return checked(m, theirs, mine)
}

// checked refuses what Read would not take, and what a newer program wrote, of which not all is understood.
func checked(m, a, b *Job) (*Job, []Problem) {
	if a.Newer > 0 || b.Newer > 0 {
		return nil, whole(words.Say("This job was written by a newer Setbook. What of it is not understood here would be lost, so nothing is taken over."))
	}
	return Read(Write(m))
}

// ahead reports whether the first of two records decides where they differ.
func ahead(a, b *Job) bool {
	if a.Changed != b.Changed {
		return a.Changed > b.Changed
	}
	return content(a) > content(b)
}

// content is what a record says, without how often and where it was saved.
func content(j *Job) string {
	c := *j
	c.ID, c.Created, c.Revision = "", 0, 0
	return Write(&c)
}

// none reports whether nothing was measured.
func (w *Weather) none() bool {
	return w.Air == "" && w.Humidity == "" && w.Surface == "" && w.Wind == ""
}

// join is what two records of one job come to, field by field and line by line.
func join(base, theirs, mine *Job) *Job {
	m := &Job{}
	to, toLists := cells(m)
	was, wasLists := cells(base)
	other, otherLists := cells(theirs)
	own, ownLists := cells(mine)
	choose(to, was, other, own, false)
	for n := range toLists {
		toLists[n].join(&wasLists[n], &otherLists[n], &ownLists[n])
	}
	if w, a, b := &base.Weather, &theirs.Weather, &mine.Weather; *a != *w && *b != *w {
		choose(m.Weather.cells(), w.cells(), a.cells(), b.cells(), a.When > b.When)
		// Its time is that of its oldest reading, which is no older than the older of the two.
		if m.Weather.When = min(a.When, b.When); m.Weather.When == 0 {
			m.Weather.When = max(a.When, b.When)
		}
	}
	return m
}

func (w *Weather) cells() (all []cell) {
	w.fields(&pass{cells: &all})
	return all
}

// choose fills cells from those of theirs and mine. Later tells whether theirs decides where both were changed.
func choose(to, base, theirs, mine []cell, later bool) {
	for i := range to {
		from := &mine[i]
		if from.same(&base[i]) || later && !theirs[i].same(&base[i]) {
			from = &theirs[i]
		}
		to[i].set(from)
	}
}

// found is a line of the record that lists are joined into: where it stands in theirs, in mine and in what both began with; -1: nowhere.
type found struct {
	base, theirs, mine int
	when               countdown.Instant
}

// join fills an empty list.
func (l *list) join(base, theirs, mine *list) {
	atBase, atTheirs, atMine := base.places(), theirs.places(), mine.places()
	at := func(places map[string]int, id string) int {
		if i, is := places[id]; is {
			return i
		}
		return -1
	}
	// The order is mine where mine changed which lines there are, else theirs.
	first, second, atFirst := mine, theirs, atMine
	if mine.count == base.count {
		i := 0
		for i < mine.count && mine.id(i) == base.id(i) {
			i++
		}
		if i == mine.count {
			first, second, atFirst = theirs, mine, atTheirs
		}
	}
	var all []found
	added := false
	for _, of := range [...]*list{first, second} {
		for i := range of.count {
			line := of.line(i)
			id := *line[0].text
			f := found{at(atBase, id), at(atTheirs, id), at(atMine, id), instant(line, "when")}
			if _, twice := atFirst[id]; of == second && twice {
				continue
			}
			// What only one has and had unchanged from the beginning, the other took out.
			if f.base >= 0 && (f.theirs < 0 || f.mine < 0) && unchanged(base.line(f.base), line) {
				continue
			}
			all = append(all, f)
			added = added || of == second
		}
	}
	if added { // a log stands in the order of its times, which are 0 in other lists
		sort.SliceStable(all, func(i, j int) bool { return all[i].when < all[j].when })
	}
	for i, f := range all {
		l.grow()
		to := l.line(i)
		switch {
		case f.mine < 0:
			choose(to, to, theirs.line(f.theirs), to, false)
		case f.theirs < 0:
			choose(to, to, mine.line(f.mine), to, false)
		default:
			b, t, m := to, theirs.line(f.theirs), mine.line(f.mine) // what both added began as nothing
			if f.base >= 0 {
				b = base.line(f.base)
			}
			choose(to, b, t, m, instant(t, "changed") > instant(m, "changed"))
		}
	}
}

// unchanged reports whether two lines hold the same.
func unchanged(a, b []cell) bool {
	for i := range a {
		if !a[i].same(&b[i]) {
			return false
		}
	}
	return true
}

// instant is the time under a key of a line; 0: it has none.
func instant(line []cell, key string) countdown.Instant {
	for i := range line {
		if line[i].key == key {
			return *line[i].at
		}
	}
	return 0
}

// Latest is the latest of the times in a record that decide between it and another: of its changes, of its weather and of its logs.
func (j *Job) Latest() countdown.Instant {
	last := max(j.Changed, j.Weather.When)
	_, lists := cells(j)
	for n := range lists {
		for i := range lists[n].count {
			line := lists[n].line(i)
			last = max(last, instant(line, "changed"), instant(line, "when"))
		}
	}
	return last
}
