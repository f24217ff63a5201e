package jobpage

import (
	"slices"
	"strconv"
	"strings"

	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Shoot is one picture that is being read. It goes to the check that it was taken for, also where that was put into the log meanwhile.
type Shoot struct{ of string }

// BeginPicture begins to read a picture of a check of the log, or of the one that is being written (""). One that is still being read for
// the same check is no longer wanted.
func (v *View) BeginPicture(of string) *Shoot {
	s := &Shoot{of}
	v.shoots[of] = s
	delete(v.wrong, pictureKey(of))
	return s
}

// shootFor has what is being read for the check that was being written go to the one in the log that it has become.
func (v *View) shootFor(id string) {
	if s, ok := v.shoots[""]; ok {
		delete(v.shoots, "")
		s.of = id
		v.shoots[id] = s
	}
}

// TakePicture puts what was read to its check, made small as job.Shots says, and reports whether the record was changed. A text that is no
// picture is said to be none.
func (v *View) TakePicture(s *Shoot, text string) bool {
	of := s.of
	if v.shoots[of] != s || v.readOnly() {
		return false // another was chosen since
	}
	delete(v.shoots, of)
	_, _, ok := job.PictureSize(text)
	at := v.pictureAt(of)
	switch {
	case !ok || !job.Small(text):
		v.wrong[pictureKey(of)] = words.Say("The browser could not read that as a picture. Take it anew, or choose a JPEG or PNG.")
	case at == nil: // the check was removed meanwhile
	case v.Job.Pictures()+len(v.shot)-len(*at)+len(text) > job.MaxPictures:
		v.wrong[pictureKey(of)] = words.Say("This job holds {count} pictures, and there is no room for more in it. Remove one first.", words.Is("count", unit.Count(v.pictured()), unit.Whole1))
	case at == &v.shot:
		v.shot = text
	default:
		return change(at, text)
	}
	return false
}

func pictureKey(of string) string { return "picture-" + of }

// pictureAt is where the picture of a check stands.
func (v *View) pictureAt(of string) *string {
	if of == "" {
		return &v.shot
	}
	if i := v.check(of); i >= 0 {
		return &v.Job.Checks[i].Picture
	}
	return nil
}

func (v *View) check(id string) int {
	return slices.IndexFunc(v.Job.Checks, func(c job.Check) bool { return c.ID == id })
}

// pictured is how many pictures the job has.
func (v *View) pictured() (count int) {
	for i := range v.Job.Checks {
		if v.Job.Checks[i].Picture != "" {
			count++
		}
	}
	return count
}

// Picture is the picture of a check as it stands in the record, "" for none.
func (v *View) Picture(of string) string {
	if at := v.pictureAt(of); at != nil {
		return *at
	}
	return ""
}

// PictureName is a name for the file of a picture.
func (v *View) PictureName(of string) string {
	name := "setbook-" + v.Job.ID
	if i := v.check(of); i >= 0 {
		name += "-" + strconv.Itoa(i+1)
	}
	kind, _, _ := strings.Cut(strings.TrimPrefix(v.Picture(of), "data:image/"), ";")
	return name + "." + kind
}

// dropPicture takes a picture away: of the log so that it can be brought back, and reports whether the record was changed.
func (v *View) dropPicture(of string) bool {
	delete(v.wrong, pictureKey(of))
	i := v.check(of)
	if i < 0 || v.Job.Checks[i].Picture == "" {
		v.shot = ""
		return false
	}
	c := &v.Job.Checks[i]
	gone := c.Picture
	c.Picture = ""
	v.losePicture(of, gone)
	return true
}

func (v *View) losePicture(of, gone string) {
	where := ""
	if i := v.check(of); i >= 0 {
		where = v.Job.Checks[i].Where
	}
	v.lose(of, join(v.Reader.Word("Picture"), where), func() bool {
		if i := v.check(of); i >= 0 {
			at := &v.Job.Checks[i].Picture
			if *at != "" && *at != gone { // another was taken since: it can be brought back in its turn
				v.losePicture(of, *at)
			}
			*at = gone
		}
		return true
	})
}

// shoot writes the buttons that take a picture of a check.
func (v *View) shoot(w *writer, of, name string) {
	w.do("take-picture", of, "Take a picture", name)
	w.do("choose-picture", of, "Choose a picture", name)
}

// pictureField is the picture of the check that is being written, and what the buttons of every check open: a camera, or the pictures of the phone.
func (v *View) pictureField(w *writer) {
	w.Put(`<fieldset class="field job-picture"><legend>%</legend><div class="count-acts">`, w.r.Word("Picture of the paver’s back"))
	v.shoot(w, "", "")
	w.Put(`</div><input type="file" accept="image/*" capture="environment" data-job-picture="take-picture" hidden><input type="file" accept="image/*" data-job-picture="choose-picture" hidden><div role="status">`)
	w.part("picture", v.pending(0))
	w.Put(`</div></fieldset>`)
}

const reading words.Msg = "The picture is being read."

// pending shows the picture of the check that is being written.
func (v *View) pending(countdown.Instant) string {
	w := v.writer()
	v.pictureNote(w, "")
	if _, ok := v.shoots[""]; ok {
		w.put(`<p class="help">%</p>`, reading)
		return w.String()
	}
	if v.shot == "" {
		w.put(`<p class="help">%</p>`, "It is made small and stays with the job. Where it was taken is left out.")
		return w.String()
	}
	v.canvas(w, "", v.shot, w.r.Word("The picture that goes into the log with this check"))
	w.put(`<p class="help">%</p><div class="count-acts">`, "It goes into the log with this check.")
	w.do("drop-picture", "", "Leave the picture out", "")
	w.Put(`</div>`)
	return w.String()
}

// pictureNote says what is wrong with a picture.
func (v *View) pictureNote(w *writer, of string) {
	if l, bad := v.wrong[pictureKey(of)]; bad {
		w.Put(`<p class="note" role="alert"><span class="note-bad">%</span></p>`, w.r.Line(l))
	}
}

// pictureOf writes what a check of the log has of a picture.
func (v *View) pictureOf(w *writer, c *job.Check) {
	v.pictureNote(w, c.ID)
	if _, ok := v.shoots[c.ID]; ok {
		w.put(`<p class="help">%</p>`, reading)
	}
	v.canvas(w, c.ID, c.Picture, v.pictureSays(c))
	w.Put(`<div class="count-acts">`)
	switch {
	case c.Picture != "":
		w.do("save-picture", c.ID, "Save the picture", c.Where)
		if !v.readOnly() {
			w.do("drop-picture", c.ID, "Remove the picture", c.Where)
		}
	case !v.readOnly():
		v.shoot(w, c.ID, c.Where)
	}
	w.Put(`</div><p class="said" data-said="picture-%" role="status"></p>`, c.ID)
}

func (v *View) pictureSays(c *job.Check) string {
	return v.Reader.Line(words.Say("Picture of the check: {where}", words.Text("where", c.Where)))
}

// canvas writes the place of a picture, which is drawn into it by whoever holds the page: the record's text is never handed to the browser as
// an address.
func (v *View) canvas(w *writer, of, text, says string) {
	if width, height, ok := job.PictureSize(text); ok {
		w.Put(`<canvas class="job-shot" width="%" height="%" role="img" aria-label="%" data-picture-of="%"></canvas>`, strconv.Itoa(width), strconv.Itoa(height), says, of)
	}
}

// shots are the pictures of the checks, for paper.
func (v *View) shots(w *writer) {
	if v.pictured() == 0 {
		return
	}
	w.put(`<section class="paper-part"><h2>%</h2><div class="paper-shots">`, "Pictures of the contact checks")
	for i := range v.Job.Checks {
		c := &v.Job.Checks[i]
		if c.Picture == "" {
			continue
		}
		w.Put(`<figure>`)
		v.canvas(w, c.ID, c.Picture, v.pictureSays(c))
		w.Put(`<figcaption dir="auto">%</figcaption></figure>`, join(c.Where, v.shown(job.Contact.Input, c.Contact), w.r.Line(v.stamp(c.When))))
	}
	w.Put(`</div></section>`)
}
