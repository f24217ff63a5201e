package jobpage

import (
	"slices"
	"strings"

	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/words"
)

// Press does what a button of the page asks for, now; id is one that nothing has yet. It reports whether the record was changed.
func (v *View) Press(do, what string, now countdown.Instant, id string) bool {
	switch do {
	case "more":
		v.whole = true
		return false
	}
	if v.readOnly() {
		return false
	}
	switch do {
	case "mix":
		return v.addMix(now, id)
	case "check":
		return v.addCheck(now, id)
	case "note":
		return v.addNote(now, id)
	case "material":
		return v.addMaterial(id)
	case "countdowns":
		return v.takeCountdowns()
	case "drop-picture":
		return v.dropPicture(what)
	case "handed":
		v.Job.HandOver.When = now
		return true
	case "unhanded":
		v.Job.HandOver.When = 0
		return true
	case "remove":
		return v.remove(what)
	case "undo":
		return v.bringBack()
	}
	return false
}

// needs says that a field of a line must be filled.
func (v *View) needs(key, text string) bool {
	if _, bad := v.wrong[key]; !bad && text == "" {
		v.wrong[key] = words.Say("Fill this in first.")
	}
	return text != ""
}

func (v *View) addMix(now countdown.Instant, id string) bool {
	amount, ok := v.taken("mix-amount")
	air, okAir := v.taken("mix-air")
	surface, okSurface := v.taken("mix-surface")
	if !v.needs("mix-amount", amount) || !ok || !okAir || !okSurface || v.full(len(v.Job.Mixes), job.MaxLog, "mix-amount") {
		return false
	}
	v.Job.Mixes = append(v.Job.Mixes, job.Mix{ID: id, When: now, Amount: amount, Product: v.said("mix-product"), Lot: v.said("mix-lot"), Air: air, Surface: surface})
	// The next mix is of the same product and lot more often than not; what is measured anew is not carried over.
	v.spent("mix-amount", "mix-air", "mix-surface")
	return true
}

func (v *View) addCheck(now countdown.Instant, id string) bool {
	where := v.said("check-where")
	contact, ok := v.taken("check-contact")
	hasWhere, hasContact := v.needs("check-where", where), v.needs("check-contact", contact)
	if !ok || !hasWhere || !hasContact || v.full(len(v.Job.Checks), job.MaxLog, "check-where") {
		return false
	}
	v.Job.Checks = append(v.Job.Checks, job.Check{ID: id, When: now, Where: where, Contact: contact, Corners: v.said("check-corners"), Picture: v.shot, Note: v.said("check-note")})
	v.shot = ""
	v.shootFor(id)
	v.spent("check-where", "check-contact", "check-corners", "check-note")
	return true
}

func (v *View) addNote(now countdown.Instant, id string) bool {
	text := v.said("note-text")
	if !v.needs("note-text", text) || v.full(len(v.Job.Notes), job.MaxLog, "note-text") {
		return false
	}
	v.Job.Notes = append(v.Job.Notes, job.Note{ID: id, When: now, Text: text})
	v.spent("note-text")
	return true
}

func (v *View) addMaterial(id string) bool {
	name := v.said("material-name")
	if !v.needs("material-name", name) || v.full(len(v.Job.HandOver.Materials), job.MaxMaterials, "material-name") {
		return false
	}
	v.Job.HandOver.Materials = append(v.Job.HandOver.Materials, job.Material{ID: id, Name: name, Product: v.said("material-product"), Lots: v.said("material-lots")})
	v.spent("material-name", "material-product", "material-lots")
	return true
}

// takeCountdowns takes the countdowns of the phone into the job.
func (v *View) takeCountdowns() (took bool) {
	for _, c := range v.others() {
		if len(v.Job.Countdowns) < job.MaxCountdowns {
			v.Job.Countdowns = append(v.Job.Countdowns, job.Countdown{ID: c.ID, Text: c.Text()})
			took = true
		}
	}
	return took
}

// full says that a list takes no more.
func (v *View) full(count, most int, key string) bool {
	if count >= most {
		v.wrong[key] = words.Say("This list is full: a job takes no more lines in it.")
	}
	return count >= most
}

// remove takes one thing out of a list: "mixes/ID". It can be put back where it stood, the last one first.
func (v *View) remove(what string) bool {
	list, id, _ := strings.Cut(what, "/")
	switch list {
	case "entries":
		return removed(v, what, func(j *job.Job) *[]job.Entry { return &j.Entries }, job.MaxEntries, func(e job.Entry) bool { return e.ID == id }, func(e job.Entry) string { return v.entryName(e) })
	case "countdowns":
		return removed(v, what, func(j *job.Job) *[]job.Countdown { return &j.Countdowns }, job.MaxCountdowns, func(c job.Countdown) bool { return c.ID == id }, func(c job.Countdown) string {
			if read, ok := countdown.Read(c.ID, c.Text); ok {
				return read.Name
			}
			return ""
		})
	case "mixes":
		return removed(v, what, func(j *job.Job) *[]job.Mix { return &j.Mixes }, job.MaxLog, func(m job.Mix) bool { return m.ID == id }, func(m job.Mix) string { return join(m.Amount, m.Product, m.Lot) })
	case "checks":
		return removed(v, what, func(j *job.Job) *[]job.Check { return &j.Checks }, job.MaxLog, func(c job.Check) bool { return c.ID == id }, func(c job.Check) string { return join(c.Where, c.Contact) })
	case "notes":
		return removed(v, what, func(j *job.Job) *[]job.Note { return &j.Notes }, job.MaxLog, func(n job.Note) bool { return n.ID == id }, func(n job.Note) string { return job.Clean(n.Text, 60) })
	case "materials":
		return removed(v, what, func(j *job.Job) *[]job.Material { return &j.HandOver.Materials }, job.MaxMaterials, func(m job.Material) bool { return m.ID == id }, func(m job.Material) string { return join(m.Name, m.Product) })
	}
	return false
}

func removed[T any](v *View, what string, at func(*job.Job) *[]T, most int, is func(T) bool, name func(T) string) bool {
	list := at(v.Job)
	i := slices.IndexFunc(*list, is)
	if i < 0 {
		return false
	}
	gone := (*list)[i]
	*list = slices.Delete(slices.Clone(*list), i, i+1)
	v.lose(what, name(gone), func() bool {
		list := at(v.Job) // which may be another state of the job by now
		if slices.ContainsFunc(*list, is) {
			return true // it was put there anew meanwhile
		}
		if len(*list) >= most {
			return false
		}
		*list = slices.Insert(slices.Clone(*list), min(i, len(*list)), gone)
		return true
	})
	return true
}

// lost is something that was removed: where it stood, what it was, and what puts it back where there is room.
type lost struct {
	what, name string
	back       func() bool
}

func (v *View) lose(what, name string, back func() bool) {
	v.lost, v.tight = append(v.lost, lost{what, name, back}), false
}

// bringBack puts back what was removed last. Back then says where it stands: "mixes/ID".
func (v *View) bringBack() bool {
	last := len(v.lost) - 1
	if last < 0 {
		return false
	}
	l := v.lost[last]
	v.lost = v.lost[:last]
	if v.tight = !l.back(); v.tight {
		v.lost = append(v.lost, l)
		return false
	}
	v.Back = l.what
	return true
}
