package jobpage

import (
	"strings"

	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/link"
)

// A phone that opens its camera, or shows another page, may throw this one away and load it anew. What was typed and is in no
// record yet outlives that as a draft.

// pictureDraft is the key of the picture of the check that is being written.
const pictureDraft = "picture"

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
	add(pictureDraft, v.shot)
	return strings.Join(pairs, "&")
}

// Redraft puts a draft back into the fields.
func (v *View) Redraft(draft string, now countdown.Instant) {
	pairs, _ := link.Parse(draft)
	for i := range fields {
		f := &fields[i]
		text, ok := pairs[f.key]
		switch {
		case !ok:
		case f.at == nil:
			v.typed[f.key] = text
		default: // it could not be taken, and is told so again
			v.Type(f.key, text, now)
		}
	}
	if _, _, ok := job.PictureSize(pairs[pictureDraft]); ok && job.Small(pairs[pictureDraft]) {
		v.shot = pairs[pictureDraft]
	}
}
