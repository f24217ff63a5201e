package jobpage

import (
	"sort"
	"strings"
	"unicode/utf8"

	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/page"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// field is one field of the page: a text of the record that is kept as it is typed, or one of a line of the log that is being
// written and is put into the record as a whole.
type field struct {
	key   string
	label words.Msg
	help  words.Msg
	in    *calc.Input // a quantity; nil: text
	most  int         // characters of a text
	lines bool        // a text of many lines
	at    func(*job.Job) *string
}

var fields = []field{
	{key: "name", label: "Name of the job", most: job.MaxName, at: func(j *job.Job) *string { return &j.Name }},
	{key: "place", label: "Place", most: job.MaxLine, at: func(j *job.Job) *string { return &j.Place }},
	{key: "address", label: "Address", most: job.MaxLine, at: func(j *job.Job) *string { return &j.Address }},
	{key: "air", label: "Air temperature", in: job.Air.Input, at: func(j *job.Job) *string { return &j.Weather.Air }},
	{key: "surface", label: "Surface temperature", in: job.Surface.Input, at: func(j *job.Job) *string { return &j.Weather.Surface }},
	{key: "humidity", label: "Relative humidity", in: job.Humidity.Input, at: func(j *job.Job) *string { return &j.Weather.Humidity }},
	{key: "wind", label: "Wind", in: job.Wind.Input, at: func(j *job.Job) *string { return &j.Weather.Wind }},
	{key: "client", label: "Client", most: job.MaxLine, at: func(j *job.Job) *string { return &j.HandOver.Client }},
	{key: "crew", label: "Crew", most: job.MaxLine, at: func(j *job.Job) *string { return &j.HandOver.Crew }},
	{key: "care", label: "Care of the surface", help: "A line for each rule.", most: job.MaxText, lines: true, at: func(j *job.Job) *string { return &j.HandOver.Care }},
	{key: "remarks", label: "Remarks", most: job.MaxText, lines: true, at: func(j *job.Job) *string { return &j.HandOver.Remarks }},
	{key: "mix-amount", label: "Powder mixed", in: job.Powder.Input},
	{key: "mix-product", label: "Product", most: job.MaxLine},
	{key: "mix-lot", label: "Lot on the bag", most: job.MaxLine},
	{key: "mix-air", label: "Air temperature", in: job.Air.Input},
	{key: "mix-surface", label: "Surface temperature", in: job.Surface.Input},
	{key: "check-where", label: "Where the paver was lifted", most: job.MaxLine},
	{key: "check-contact", label: "Contact found", in: job.Contact.Input},
	{key: "check-corners", label: "Bare edges or corners", help: "Leave it empty where none was bare.", most: job.MaxLine},
	{key: "check-note", label: "What was done about it", most: job.MaxLine},
	{key: "note-text", label: "Note", most: job.MaxText, lines: true},
	{key: "material-name", label: "Material", most: job.MaxLine},
	{key: "material-product", label: "Product", most: job.MaxLine},
	{key: "material-lots", label: "Lots on the bags", most: job.MaxLine},
}

func fieldOf(key string) *field {
	for i := range fields {
		if fields[i].key == key {
			return &fields[i]
		}
	}
	return nil
}

// weather fields are those whose time is that of the weather.
func (f *field) weather() bool { return f.at != nil && f.in != nil }

// named is what stands before the ID of an entry in the key of the field that names it.
const named = "entry-"

// Type takes what a field now holds, and reports whether the record was changed by it.
func (v *View) Type(key, text string, now countdown.Instant) bool {
	if v.readOnly() {
		return false
	}
	if id, ok := strings.CutPrefix(key, named); ok {
		return v.name(id, text)
	}
	f := fieldOf(key)
	if f == nil {
		return false
	}
	v.typed[key] = text
	delete(v.wrong, key)
	if f.in == nil && v.long(key, f.clean(text), f.most) || f.at == nil {
		return false // a line of the log is read when it is put into it
	}
	kept := f.clean(text)
	switch {
	case f.in != nil:
		var problem *calc.Problem
		if kept, problem = job.Taken(f.in, text, v.habit()); problem != nil {
			v.wrong[key] = problem.Says
			return false
		}
	case key == "name" && kept == "":
		v.wrong[key] = words.Say("A job needs a name.")
		return false
	}
	changed := change(f.at(v.Job), kept)
	if f.weather() && (changed || now-v.since(f) >= minute) {
		v.confirm(f, now)
		return v.date() || changed
	}
	return changed
}

// name takes what an entry is for.
func (v *View) name(id, text string) bool {
	for i := range v.Job.Entries {
		e, key := &v.Job.Entries[i], named+id
		if e.ID != id {
			continue
		}
		v.spent(key)
		text := job.Clean(text, len(text))
		if v.long(key, text, job.MaxLine) {
			v.typed[key] = text
			return false
		}
		return change(&e.Name, text)
	}
	return false
}

// entryText is what stands in the field that names an entry.
func (v *View) entryText(e job.Entry) string {
	if text, ok := v.typed[named+e.ID]; ok {
		return text
	}
	return e.Name
}

// Names is what is said under the field that names each entry.
func (v *View) Names() (parts []page.Part) {
	for _, e := range v.Job.Entries {
		parts = append(parts, page.Part{Name: "note-" + named + e.ID, HTML: v.bad(named + e.ID)})
	}
	return parts
}

// tooLong says that a text is longer than the record takes; no words: it is not.
func tooLong(text string, most int) words.Line {
	if count := utf8.RuneCountInString(text); count > most {
		return words.Say("This has {count} characters. The most is {most}. Shorten it, or part it.", words.Is("count", unit.Count(count), unit.Whole1), words.Is("most", unit.Count(most), unit.Whole1))
	}
	return words.Line{}
}

// long refuses a text that is too long: nothing of what was typed is cut away unseen.
func (v *View) long(key, text string, most int) bool {
	l := tooLong(text, most)
	if l.Msg != "" {
		v.wrong[key] = l
	}
	return l.Msg != ""
}

// The record has one time for all four readings of the weather. It is that of the oldest: so no reading is ever made newer than
// it is, and the sheet says no time at which something was not yet measured. What was entered again on this page, the same figure or another, is
// newer; once all were, so is the record. Readings much older than the newest are pointed out, and one press says that they still hold.

// tooOld is how much older than the newest a reading may be before that is said, in milliseconds: common practice.
const tooOld = 3 * 60 * minute

// confirm notes that a reading was entered now.
func (v *View) confirm(f *field, now countdown.Instant) {
	v.entered[f.key] = now
}

// since is when a reading was entered last, as far as is known.
func (v *View) since(f *field) countdown.Instant {
	return max(v.entered[f.key], v.Job.Weather.When) // no reading is older than the oldest
}

// readings are the fields of the weather in which something stands, the one that was entered first at the head.
func (v *View) readings() (list []*field) {
	for i := range fields {
		if f := &fields[i]; f.weather() && *f.at(v.Job) != "" {
			list = append(list, f)
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return v.since(list[i]) < v.since(list[j]) })
	return list
}

// date gives the weather the time of its oldest reading, none where there is none, and reports whether that is another.
func (v *View) date() bool {
	was, oldest := v.Job.Weather.When, countdown.Instant(0)
	if list := v.readings(); len(list) > 0 {
		oldest = v.since(list[0])
	}
	v.Job.Weather.When = oldest
	return oldest != was
}

// old reports whether a reading is much older than the newest, and whether it is the oldest of all.
func (v *View) old(f *field) (old, oldest bool) {
	if !f.weather() || *f.at(v.Job) == "" {
		return false, false
	}
	list := v.readings()
	return v.since(list[len(list)-1])-v.since(f) > tooOld, f == list[0]
}

// Act is Press with what goes before and after it: a line with a text that is too long for the record is not put into it. Where
// nothing was, wants is the key of the field of that line that is to be put right, or "".
func (v *View) Act(do, what string, now countdown.Instant, id string) (changed bool, wants string) {
	if do == "still" && !v.readOnly() {
		for _, f := range v.readings() {
			v.confirm(f, now)
		}
		return v.date(), ""
	}
	for i := range fields {
		if f := &fields[i]; f.of(do) && f.in == nil && v.long(f.key, f.clean(v.typed[f.key]), f.most) {
			return false, f.key
		}
	}
	if v.Press(do, what, now, id) {
		return true, ""
	}
	for i := range fields {
		if f := &fields[i]; f.of(do) && v.Invalid(f.key) {
			return false, f.key
		}
	}
	return false, ""
}

// of reports whether a field is one of the line that a button puts into the record.
func (f *field) of(do string) bool { return f.at == nil && strings.HasPrefix(f.key, do+"-") }

// clean makes a text fit for the record, but for its length.
func (f *field) clean(text string) string {
	if f.lines {
		return job.CleanLines(text, len(text))
	}
	return job.Clean(text, len(text))
}

func change(at *string, text string) bool {
	if *at == text {
		return false
	}
	*at = text
	return true
}

// value is what stands in a field.
func (v *View) value(f *field) string {
	if text, ok := v.typed[f.key]; ok {
		return text
	}
	switch {
	case f.at == nil:
		return ""
	case f.in != nil:
		return v.shown(f.in, *f.at(v.Job))
	}
	return *f.at(v.Job)
}

// taken reads a quantity of a line of the log.
func (v *View) taken(key string) (string, bool) {
	f := fieldOf(key)
	var kept string
	var problem *calc.Problem
	if f.in == job.Powder.Input {
		kept, problem = job.TakenAmount(v.typed[key], v.habit(), v.bagWords())
	} else {
		kept, problem = job.Taken(f.in, v.typed[key], v.habit())
	}
	if problem != nil {
		v.wrong[key] = problem.Says
	}
	return kept, problem == nil
}

// said reads a text of a line of the log.
func (v *View) said(key string) string { return fieldOf(key).clean(v.typed[key]) }

// spent empties the fields of a line that is now in the record.
func (v *View) spent(keys ...string) {
	for _, key := range keys {
		delete(v.typed, key)
		delete(v.entered, key)
		delete(v.wrong, key)
	}
}

// Address writes the page for another reader: what was typed is kept as what it meant.
func (v *View) Address(change func(*Book)) {
	before := v.habit()
	change(v.Book)
	for i := range fields {
		f := &fields[i]
		text, ok := v.typed[f.key]
		if f.in == nil || !ok {
			continue
		}
		if kept, problem := job.Taken(f.in, text, before); problem == nil && kept != "" {
			v.typed[f.key] = v.shown(f.in, kept)
		}
	}
}

// ask writes a field.
func (v *View) ask(w *writer, key string) {
	f := fieldOf(key)
	id := "job-" + key
	w.Put(`<div class="field"><label for="%">%</label>`, id, w.r.Word(f.label))
	if f.lines {
		w.Put(`<textarea id="%" data-job-field="%" rows="3" aria-describedby="%-note">%</textarea>`, id, key, id, v.value(f))
	} else {
		mode := "text"
		if f.in != nil {
			mode = "decimal"
		}
		w.Put(`<input id="%" data-job-field="%" type="text" inputmode="%" value="%" autocomplete="off" enterkeyhint="next" aria-describedby="%-note">`, id, key, mode, v.value(f), id)
	}
	w.Put(`<p class="note" id="%-note" data-part="note-%">`, id, key)
	w.Markup(v.note(f))
	w.Put(`</p></div>`)
}

// note says under a field what is wrong with it, or what helps.
func (v *View) note(f *field) string {
	w := v.writer()
	old, oldest := v.old(f)
	switch {
	case v.Invalid(f.key):
		return v.bad(f.key)
	case old:
		w.Put(`<span>%</span> `, w.r.Line(words.Say("Last entered {when}. Still right?", words.Also("when", v.stamp(v.since(f))))))
		if oldest && !v.readOnly() {
			w.Put(`<br>`)
			w.do("still", "", "All still right", "")
		}
	case f.in == job.Powder.Input:
		w.Put(`<span class="help">%</span>`, w.r.Line(words.Say("Weighed, or in bags: “{bags}”.", words.Text("bags", v.bags(2)))))
	case f.help != "":
		w.put(`<span class="help">%</span>`, f.help)
	}
	return w.String()
}

// bad says what is wrong with a field, if anything is.
func (v *View) bad(key string) string { return v.wrongly(v.wrong[key]) }

// wrongly writes what is wrong with a field; no words: nothing is.
func (b *Book) wrongly(l words.Line) string {
	w := b.writer()
	if l.Msg != "" {
		w.Put(`<span class="note-bad">%</span>`, w.r.Line(l))
	}
	return w.String()
}

// Field is what a field is to hold.
func (v *View) Field(key string) (string, bool) {
	f := fieldOf(key)
	if f == nil {
		return "", false
	}
	return v.value(f), true
}

// Invalid reports whether what stands in a field cannot be taken.
func (v *View) Invalid(key string) bool {
	_, bad := v.wrong[key]
	return bad
}
