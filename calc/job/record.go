package job

import (
	"strconv"
	"strings"

	"setbook/calc/unit"
	"setbook/calc/words"
)

// mark is the first key of a record: it says what the file is.
const mark, markText = "setbook", "job"

// Read reads a record. It gives a whole job or problems, never both. A record that was written by a newer program is read as far
// as it is understood, and says so in Newer.
func Read(text string) (*Job, []Problem) {
	if !Takes(text) {
		return nil, whole(words.Say("The file is larger than {most} MB, which is the most that a job takes.", words.Is("most", unit.Count(MaxSize>>20), unit.Whole1)))
	}
	root, wrong := tree(text)
	if wrong != nil {
		wrong.Says = words.Say("Line {line}, character {column}: {problem}", words.Text("line", strconv.Itoa(wrong.Line)),
			words.Text("column", strconv.Itoa(wrong.Column)), words.Also("problem", wrong.Says))
		return nil, []Problem{*wrong}
	}
	m, v := root.member(mark), root.member("version")
	if m == nil || m.text != markText || v == nil {
		return nil, whole(words.Say("This is no job of Setbook: it does not begin as one."))
	}
	r := &reader{text: text}
	version, ok := readWhole(v)
	if !ok || version < 1 {
		r.wrong(v.at, "version", words.Say("a whole number from 1 on was expected."))
		return nil, r.problems
	}
	// A later version changes the tree of each earlier one here, step by step, before its fields are read.
	j := &Job{}
	r.lenient = version > Version
	r.object(&root, "", func(p *pass) {
		p.take(mark)
		p.take("version")
		j.fields(p)
	})
	switch {
	case len(r.problems) > 0:
		return nil, r.problems
	case r.lenient && (j.ID == "" || j.Name == ""):
		return nil, whole(words.Say("This job was written by a newer Setbook (version {version}), and nothing of it can be read here.", words.Text("version", strconv.FormatInt(version, 10))))
	case r.lenient:
		j.Newer = version
	}
	return j, nil
}

// Takes reports whether a record is small enough to be read again.
func Takes(record string) bool { return len(record) <= MaxSize }

func whole(l words.Line) []Problem { return []Problem{{Says: l}} }

// Write writes a record, in one way for each job: JSON (RFC 8259), an item of a list a line, ended by a line's end. A job that was
// written by a newer program must not be written.
func Write(j *Job) string {
	var b strings.Builder
	b.WriteString(`{` + "\n  ")
	quote(&b, mark)
	b.WriteString(": ")
	quote(&b, markText)
	p := &pass{to: &b, depth: 1, wrote: true}
	version := int64(Version)
	p.whole("version", &version)
	j.fields(p)
	b.WriteString("\n}\n")
	return b.String()
}

func (j *Job) fields(p *pass) {
	p.text("id", "ID", &j.ID, idRule)
	p.text("name", "Name", &j.Name, nameRule)
	p.text("place", "Place", &j.Place, lineRule)
	p.text("address", "Address", &j.Address, lineRule)
	p.when("created", "Made", &j.Created, true)
	p.when("changed", "Changed", &j.Changed, true)
	p.whole("revision", &j.Revision)
	p.object("weather", j.Weather == Weather{}, j.Weather.fields)
	p.list("entries", "Entry", MaxEntries, len(j.Entries), func() { j.Entries = append(j.Entries, Entry{}) },
		func() { j.Entries = j.Entries[:len(j.Entries)-1] }, func(i int, p *pass) { j.Entries[i].fields(p) })
	p.list("countdowns", "Countdown", MaxCountdowns, len(j.Countdowns), func() { j.Countdowns = append(j.Countdowns, Countdown{}) },
		func() { j.Countdowns = j.Countdowns[:len(j.Countdowns)-1] }, func(i int, p *pass) { j.Countdowns[i].fields(p) })
	p.list("mixes", "Mix", MaxLog, len(j.Mixes), func() { j.Mixes = append(j.Mixes, Mix{}) },
		func() { j.Mixes = j.Mixes[:len(j.Mixes)-1] }, func(i int, p *pass) { j.Mixes[i].fields(p) })
	p.list("checks", "Check", MaxLog, len(j.Checks), func() { j.Checks = append(j.Checks, Check{}) },
		func() { j.Checks = j.Checks[:len(j.Checks)-1] }, func(i int, p *pass) { j.Checks[i].fields(p) })
	p.list("notes", "Note", MaxLog, len(j.Notes), func() { j.Notes = append(j.Notes, Note{}) },
		func() { j.Notes = j.Notes[:len(j.Notes)-1] }, func(i int, p *pass) { j.Notes[i].fields(p) })
	p.object("handover", j.HandOver.empty(), j.HandOver.fields)
	p.list("materials", "Material", MaxMaterials, len(j.HandOver.Materials), func() { j.HandOver.Materials = append(j.HandOver.Materials, Material{}) },
		func() { j.HandOver.Materials = j.HandOver.Materials[:len(j.HandOver.Materials)-1] },
		func(i int, p *pass) { j.HandOver.Materials[i].fields(p) })
}

func (w *Weather) fields(p *pass) {
	p.when("when", "Measured", &w.When, false)
	p.text("air", "Air temperature", &w.Air, airRule)
	p.text("humidity", "Relative humidity", &w.Humidity, humidityRule)
	p.text("surface", "Surface temperature", &w.Surface, surfaceRule)
	p.text("wind", "Wind", &w.Wind, windRule)
}

func (e *Entry) fields(p *pass) {
	p.text("id", "ID", &e.ID, idRule)
	p.text("calculator", "Calculator", &e.Calculator, idRule)
	p.text("name", "Name", &e.Name, lineRule)
	p.when("changed", "Changed", &e.Changed, true)
	p.text("link", "Entry", &e.Link, linkRule)
}

func (c *Countdown) fields(p *pass) {
	p.text("id", "ID", &c.ID, idRule)
	p.text("text", "Countdown", &c.Text, countRule)
	if _, ok := c.read(); p.from != nil && c.ID != "" && c.Text != "" && !ok {
		p.r.wrong(p.from.at, p.at("text"), words.Say("this is no countdown that this program wrote."))
	}
}

func (m *Mix) fields(p *pass) {
	p.text("id", "ID", &m.ID, idRule)
	p.when("when", "When", &m.When, true)
	p.text("amount", "Powder mixed", &m.Amount, amountRule)
	p.text("product", "Product", &m.Product, lineRule)
	p.text("lot", "Bag lot", &m.Lot, lineRule)
	p.text("air", "Air temperature", &m.Air, airRule)
	p.text("surface", "Surface temperature", &m.Surface, surfaceRule)
	p.text("note", "Note", &m.Note, textRule)
}

func (c *Check) fields(p *pass) {
	p.text("id", "ID", &c.ID, idRule)
	p.when("when", "When", &c.When, true)
	p.text("where", "Where", &c.Where, lineRule)
	p.text("contact", "Contact found", &c.Contact, contactRule)
	p.text("corners", "Edges and corners", &c.Corners, lineRule)
	p.picture("picture", "Picture", &c.Picture)
	p.text("note", "Note", &c.Note, textRule)
}

func (n *Note) fields(p *pass) {
	p.text("id", "ID", &n.ID, idRule)
	p.when("when", "When", &n.When, true)
	p.text("text", "Note", &n.Text, saidRule)
}

func (h *HandOver) empty() bool {
	return h.When == 0 && h.Client == "" && h.Crew == "" && h.Care == "" && h.Remarks == ""
}

func (h *HandOver) fields(p *pass) {
	p.when("when", "Handed over", &h.When, false)
	p.text("client", "Client", &h.Client, lineRule)
	p.text("crew", "Crew", &h.Crew, lineRule)
	p.text("care", "Care of the surface", &h.Care, textRule)
	p.text("remarks", "Remarks", &h.Remarks, textRule)
}

func (m *Material) fields(p *pass) {
	p.text("id", "ID", &m.ID, idRule)
	p.text("name", "Material", &m.Name, lineRule)
	p.text("product", "Product", &m.Product, lineRule)
	p.text("lots", "Bag lots", &m.Lots, lineRule)
}
