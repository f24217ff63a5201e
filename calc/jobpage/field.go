package jobpage

import (
	"strings"

	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/job"
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
	{key: "mix-amount", label: "Powder mixed", help: "Weighed, or in bags: “2 bags”.", in: job.Powder.Input},
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

// weatherFields are those whose time is that of the weather.
func (f *field) weather() bool { return f.at != nil && f.in != nil }

// Type takes what a field now holds, and reports whether the record was changed by it.
func (v *View) Type(key, text string, now countdown.Instant) bool {
	if v.readOnly() {
		return false
	}
	if id, ok := strings.CutPrefix(key, "entry-"); ok {
		for i := range v.Job.Entries {
			if e := &v.Job.Entries[i]; e.ID == id {
				return change(&e.Name, job.Clean(text, job.MaxLine))
			}
		}
		return false
	}
	f := fieldOf(key)
	if f == nil {
		return false
	}
	v.typed[key] = text
	delete(v.wrong, key)
	if f.at == nil {
		return false // it is read when the line is put into the log
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
	if !change(f.at(v.Job), kept) {
		return false
	}
	if f.weather() {
		v.Job.Weather.When = now
	}
	return true
}

func (f *field) clean(text string) string {
	if f.lines {
		return job.CleanLines(text, f.most)
	}
	return job.Clean(text, f.most)
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
		kept, problem = job.TakenAmount(v.typed[key], v.habit())
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
	if l, ok := v.wrong[f.key]; ok {
		w.Put(`<span class="note-bad">%</span>`, w.r.Line(l))
	} else if f.help != "" {
		w.put(`<span class="help">%</span>`, f.help)
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
