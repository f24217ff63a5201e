package jobpage

import (
	"strconv"
	"strings"

	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/link"
)

// A phone that opens its camera, or shows another page, may throw this one away and load it anew. What was typed and is in no
// record yet outlives that as a draft.

// pictureDraft is the key of the picture of the check that is being written.
const pictureDraft = "picture"

// enteredDraft stands before the key of a reading of the weather, with when it was entered.
const enteredDraft = "entered-"

// Draft is what stands in the fields and is in no record yet, "" for nothing.
func (v *View) Draft() string {
	var pairs []string
	add := func(key, text string) {
		if text != "" {
			pairs = append(pairs, key+"="+link.Escape(text))
		}
	}
	for i := range fields {
		f := &fields[i]
		if _, bad := v.wrong[f.key]; bad || f.at == nil {
			add(f.key, v.typed[f.key])
		}
	}
	for _, e := range v.Job.Entries {
		add(named+e.ID, v.typed[named+e.ID])
	}
	for i := range fields {
		if at, ok := v.entered[fields[i].key]; ok {
			add(enteredDraft+fields[i].key, strconv.FormatInt(int64(at), 10))
		}
	}
	add(pictureDraft, v.shot)
	return strings.Join(pairs, "&")
}

// Redraft puts a draft back into the fields.
func (v *View) Redraft(draft string, now countdown.Instant) {
	pairs, _ := link.Parse(draft)
	for i := range fields {
		f := &fields[i]
		text, ok := pairs[f.key]
		if at, err := strconv.ParseInt(pairs[enteredDraft+f.key], 10, 64); err == nil && f.weather() && at <= int64(now) {
			v.entered[f.key] = countdown.Instant(at)
		}
		switch {
		case !ok:
		case f.at == nil:
			v.typed[f.key] = text
		default: // it could not be taken, and is told so again
			v.Type(f.key, text, now)
		}
	}
	for _, e := range v.Job.Entries {
		if text, ok := pairs[named+e.ID]; ok {
			v.name(e.ID, text)
		}
	}
	if _, _, ok := job.PictureSize(pairs[pictureDraft]); ok && job.Small(pairs[pictureDraft]) {
		v.shot = pairs[pictureDraft]
	}
}
