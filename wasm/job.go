//go:build js && wasm

package main

import (
	"cmp"
	"context"
	"slices"
	"strings"
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/all"
	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/jobpage"
	"setbook/calc/page"
)

// clerk is what a page has to do with jobs: it is the list of them, one of them, or a strip over a calculator.
type clerk struct {
	book    jobpage.Book
	root    *dom.BasicHTMLElement // nil: this page has no part in jobs
	store   *store                // nil until it is open, and where it cannot be
	trouble jobpage.Trouble       // of the storage as a whole
	shown   map[string]string     // the HTML that each part was last given

	list  *jobpage.List
	view  *jobpage.View
	strip *jobpage.Strip
	raw   string // a record that cannot be read: it is handed on as it is
	rawID string

	wanted string          // the ID of the job that the address asked for last
	parked []*jobpage.View // jobs that were left for another one on this page: what is not kept of them, half typed or can be brought back stays

	copy  *store // the second copy of every job, once it was asked for; nil where the browser has none
	asked bool

	draft     string // the job and the draft of it that were kept last
	pressed   string // the button whose press is being saved; "": none
	pictureOf string // the check that a picture is being taken of; "": the one that is being written

	dirty, saving bool // of the strip
}

// currentKey is where the ID of the job that was opened last is remembered.
const currentKey = "setbook.job"

// offerJobs finds what of jobs the page has, and listens.
func (d *desk) offerJobs() {
	if !whole {
		return // who keeps jobs has the whole program on every page: the boot script sees to it
	}
	document := js.Global().Get("document")
	c := &d.clerk
	for _, id := range []string{"#jobs", "#job", "#job-strip"} {
		if root, ok := find(document, id); ok {
			c.root = root
		}
	}
	if c.root == nil {
		return
	}
	c.book = jobpage.Book{Board: page.Board{Reader: d.reader, West: west}, Find: all.ByID, All: all.Calculators()}
	if script, ok := find(document, "script[data-home]"); ok {
		c.book.Root = script.GetAttribute("data-home")
		c.book.Version = script.GetAttribute("data-version")
	}
	root := c.root.Underlying()
	d.on(root, "input", nil, d.typeJob)
	d.on(root, "change", nil, d.typeJob)
	d.on(root, "click", nil, d.pressJob)
	d.onCapture(root, "toggle", func(*dom.BasicEvent) { d.drawPictures() }) // it does not bubble
	if c.root.ID() == "job-strip" {
		d.fromJob()
		return
	}
	d.on(root, "click", nil, d.turnJob)
	d.on(js.Global(), "beforeunload", nil, d.askToStay)
	d.on(js.Global(), "hashchange", nil, func(*dom.BasicEvent) { d.showJobs() })
	d.on(document, "visibilitychange", nil, func(*dom.BasicEvent) {
		if visible() {
			d.lookAgain()
		}
	})
	d.tickJob()
}

// tickJob has the times on the page follow the clock.
func (d *desk) tickJob() {
	d.later(20_000, func() {
		if visible() {
			d.refreshJob("")
		}
		d.tickJob()
	})
}

// openJobs takes the store once it is open, or the reason why there is none, and shows what the page is for.
func (d *desk) openJobs(opened *store, err error) {
	if !whole {
		return
	}
	c := &d.clerk
	c.store = opened
	if err != nil {
		c.trouble = jobpage.NoStorage
	} else if opened.newer {
		c.trouble = jobpage.NewerBase
	}
	d.askedLasting()
	if c.root != nil && c.root.ID() != "job-strip" && c.trouble == jobpage.None {
		ctx, cancel := context.WithTimeout(context.Background(), patience)
		defer cancel()
		c.book.Back = d.mend(ctx)
	}
	d.showJobs()
}

// showJobs shows what the address asks for.
func (d *desk) showJobs() {
	c := &d.clerk
	if c.root == nil {
		return
	}
	switch id := c.root.ID(); {
	case id == "job-strip":
		d.showStrip()
	case id == "jobs":
		d.showList()
	case id == "job":
		d.showJob()
	}
}

func hash() string { return strings.TrimPrefix(dom.GetWindow().Location().Hash(), "#") }

// current is the ID of the job that was opened last.
func current() (id string) {
	try(func() {
		if kept := global("localStorage").Call("getItem", currentKey); kept.Type() == js.TypeString {
			id = kept.String()
		}
	})
	return id
}

func recallJob(id string) {
	try(func() { global("localStorage").Call("setItem", currentKey, id) }) // where nothing can be kept, the address names the job
}

// beside does what waits on the browser, beside the rest.
func (d *desk) beside(do func(ctx context.Context)) {
	go d.run(nil, func() {
		ctx, cancel := context.WithTimeout(context.Background(), patience)
		defer cancel()
		do(ctx)
	})
}

// readJob reads a job as it is kept. A job that is not there, or was deleted, comes as nil with no problem. It blocks.
func (c *clerk) readJob(ctx context.Context, id string) (j *job.Job, record string, problems []job.Problem, err error) {
	if c.store == nil {
		return nil, "", nil, jobpage.NoStorage
	}
	head, record, err := c.store.readJob(ctx, id)
	if h, ok := jobpage.ReadHead(id, head); err != nil || record == "" || ok && h.Gone != 0 {
		return nil, "", nil, err
	}
	j, problems = job.Read(record)
	return j, record, problems, nil
}

// showJob reads the job that the address names, or the one that was opened last, and writes its page.
func (d *desk) showJob() {
	c := &d.clerk
	id, mode := jobpage.At(hash())
	asked := id != ""
	if !asked {
		id = current()
	}
	c.wanted = id
	if c.view != nil && !slices.Contains(c.parked, c.view) {
		c.parked = append(c.parked, c.view)
	}
	if i := slices.IndexFunc(c.parked, func(v *jobpage.View) bool { return v.Job.ID == id }); i >= 0 {
		if c.view != c.parked[i] {
			c.view, c.pressed = c.parked[i], ""
		}
		c.view.Mode = mode
		recallJob(id)
		d.writeJob()
		d.lookAgain()
		return
	}
	d.beside(func(ctx context.Context) {
		j, record, problems, err := c.readJob(ctx, id)
		if c.wanted != id {
			return // meanwhile another one was asked for
		}
		c.raw, c.rawID = record, id
		switch {
		case err != nil || j == nil && len(problems) == 0:
			c.view = nil
			t := c.trouble
			if err != nil && t == jobpage.None {
				t = troubleOf(err)
			}
			c.root.SetInnerHTML(c.book.Absent(asked, t))
		case j == nil:
			c.view = nil
			c.root.SetInnerHTML(c.book.Broken(problems))
		default:
			c.view, c.pressed = jobpage.NewView(&c.book, j, mode), ""
			c.view.Trouble, c.view.Raw = c.standing(j), record
			recallJob(id)
			c.view.Redraft(draftOf(id), now())
			d.writeJob()
			if c.view.Trouble == jobpage.None {
				d.askLasting() // it was kept for the first time just before, on the page of the list
			}
		}
		c.root.SetAttribute("data-shown", "yes")
	})
}

// standing is the trouble that a job has before anything is changed.
func (c *clerk) standing(j *job.Job) jobpage.Trouble {
	if j.Newer != 0 {
		return jobpage.NewerJob
	}
	return c.trouble
}

// writeJob writes the whole page of the job.
func (d *desk) writeJob() {
	c := &d.clerk
	c.shown = map[string]string{}
	c.view.Phone = d.board.Running()
	at := now()
	if rewrite(c.root, c.view.HTML(at)) {
		if h, ok := find(c.root.Underlying(), "h1"); ok {
			h.SetAttribute("tabindex", "-1")
			focusQuietly(h)
		}
	}
	for _, p := range c.view.Parts(at) {
		c.shown[p.Name] = p.HTML
	}
	d.flagFields()
	d.drawPictures()
	js.Global().Get("document").Set("title", c.view.Job.Name)
	d.markKept()
}

// lookAgain shows what another page of this phone has made of the job meanwhile, where nothing here waits to be saved.
func (d *desk) lookAgain() {
	c := &d.clerk
	if c.list != nil {
		d.readHeads()
	}
	v := c.view
	if v == nil || v.Unkept || v.Saving || v.Trouble != jobpage.None {
		return
	}
	revision := v.Job.Revision
	d.beside(func(ctx context.Context) {
		j, record, _, err := c.readJob(ctx, v.Job.ID)
		if err == nil && j != nil && j.Revision != revision && !v.Unkept && !v.Saving && v.Job.Revision == revision && c.view == v {
			v.Raw = record
			v.Replace(j)
			v.Trouble = c.standing(j)
			d.writeJob()
		}
	})
}

// turnJob shows another view of a job that is nowhere but on this page: following the link would lose it.
func (d *desk) turnJob(e *dom.BasicEvent) {
	c := &d.clerk
	a, ok := around(e, "href")
	if !ok || c.view == nil || c.root.ID() == "job" {
		return
	}
	_, fragment, _ := strings.Cut(a.GetAttribute("href"), "#")
	if id, mode := jobpage.At(fragment); id == c.view.Job.ID {
		e.PreventDefault()
		c.view.Mode = mode
		d.writeJob()
		c.root.Call("scrollIntoView")
	}
}

// askToStay has the browser ask before a page is left that holds what is kept nowhere.
func (d *desk) askToStay(e *dom.BasicEvent) {
	c := &d.clerk
	unkept := c.view != nil && c.view.Unkept
	for _, v := range c.parked {
		unkept = unkept || v.Unkept
	}
	if unkept {
		e.PreventDefault()
	}
}

// typeJob takes what a field holds.
func (d *desk) typeJob(e *dom.BasicEvent) {
	c := &d.clerk
	if f, ok := around(e, "data-job-file"); ok {
		d.openFile(f)
		return
	}
	if f, ok := around(e, "data-job-picture"); ok {
		d.openPicture(f)
		return
	}
	if f, ok := around(e, "data-jobs-field"); ok && c.list != nil {
		c.list.Type(f.GetAttribute("data-jobs-field"), f.Get("value").String())
		d.refreshJob("")
		return
	}
	f, ok := around(e, "data-job-field")
	if !ok || c.view == nil {
		return
	}
	key := f.GetAttribute("data-job-field")
	if form, _, ok := strings.Cut(key, "-"); ok {
		c.told(form, "") // what was said of the last line is not said of this one
	}
	if c.view.Type(key, f.Get("value").String(), now()) {
		d.saveJob()
		d.refreshJob("")
		return
	}
	d.flagFields()
	c.keepDraft()
	d.writeParts(c.view.Notes()) // a long log is not written anew at every key
}

// refreshJob writes every part that differs from what it was last given. A part in which somebody types is left until that is over.
func (d *desk) refreshJob(focus string) {
	c := &d.clerk
	var parts []page.Part
	switch {
	case c.view != nil:
		c.view.Phone = d.board.Running()
		parts = c.view.Parts(now())
		d.flagFields()
		c.tellKept()
		c.keepDraft()
	case c.list != nil:
		parts = c.list.Parts(now())
	}
	d.writeParts(parts)
	d.drawPictures()
	if focus != "" {
		if e, ok := find(c.root.Underlying(), focus); ok {
			e.Focus()
		}
	}
}

// writeParts writes what differs from what was written last.
func (d *desk) writeParts(parts []page.Part) {
	c := &d.clerk
	for _, p := range parts {
		if html, ok := c.shown[p.Name]; ok && html == p.HTML {
			continue
		}
		part, ok := find(c.root.Underlying(), `[data-part="`+p.Name+`"]`)
		if !ok || typedIn(part) {
			continue
		}
		replace(part, p.HTML)
		c.shown[p.Name] = p.HTML
	}
}

// typedIn reports whether a field in an element has the focus.
func typedIn(e *dom.BasicHTMLElement) bool {
	active := js.Global().Get("document").Get("activeElement")
	return active.Truthy() && e.Call("contains", active).Bool() && wrap(active).HasAttribute("data-job-field")
}

// replace writes an element anew. What is unfolded in it stays so, and what was pressed keeps the focus; where that is gone, what belongs to the
// same line has it, else the first thing that can be pressed in its place, else the place itself.
func replace(e *dom.BasicHTMLElement, html string) {
	if !rewrite(e, html) {
		return
	}
	a, ok := find(e.Underlying(), "summary, a, button")
	if !ok {
		a = wrap(e.Get("parentElement"))
		a.SetAttribute("tabindex", "-1")
	}
	focusQuietly(a)
}

// rewrite is replace, but reports whether what had the focus is gone, and puts it nowhere else.
func rewrite(e *dom.BasicHTMLElement, html string) (lost bool) {
	var had []string // where the focus may be again, the best first
	caret := js.Undefined()
	if active := js.Global().Get("document").Get("activeElement"); active.Truthy() && e.Call("contains", active).Bool() {
		a := wrap(active)
		switch {
		case a.HasAttribute("data-job-field"):
			had = append(had, attribute(a, "data-job-field"))
			caret = active.Get("selectionStart")
		case a.HasAttribute("data-job-do"):
			do, id := attribute(a, "data-job-do"), ""
			if a.HasAttribute("data-job-id") {
				id = attribute(a, "data-job-id")
				had = append(had, do+id)
			}
			had = append(had, cmp.Or(id, do))
		}
		if fold := active.Call("closest", "[data-fold]"); fold.Truthy() {
			had = append(had, attribute(wrap(fold), "data-fold")+" summary")
		}
		lost = true
	}
	var open []string
	for _, fold := range every(e.Underlying(), "details[data-fold][open]") {
		open = append(open, attribute(fold, "data-fold"))
	}
	e.SetInnerHTML(html)
	for _, fold := range open {
		if f, ok := find(e.Underlying(), fold); ok {
			f.SetAttribute("open", "")
		}
	}
	for _, selector := range had {
		if a, ok := find(e.Underlying(), selector); ok {
			focusQuietly(a)
			if caret.Type() == js.TypeNumber {
				a.Call("setSelectionRange", caret, caret)
			}
			return false
		}
	}
	return lost
}

// attribute selects what has an attribute as an element has it.
func attribute(e *dom.BasicHTMLElement, name string) string {
	return "[" + name + `="` + e.GetAttribute(name) + `"]`
}

func focusQuietly(e *dom.BasicHTMLElement) {
	e.Call("focus", map[string]any{"preventScroll": true})
}

// flagFields marks each field that cannot be taken.
func (d *desk) flagFields() {
	for _, f := range every(d.clerk.root.Underlying(), "[data-job-field]") {
		mark(f, "aria-invalid", d.clerk.view.Invalid(f.GetAttribute("data-job-field")))
	}
}

// refill writes into each field what it is to hold, once a press has put a line into the record.
func (d *desk) refill() {
	for _, f := range every(d.clerk.root.Underlying(), "[data-job-field]") {
		if text, ok := d.clerk.view.Field(f.GetAttribute("data-job-field")); ok && f.Get("value").String() != text {
			f.Set("value", text)
		}
	}
}

// addressJobs writes the page for another reader.
func (d *desk) addressJobs() {
	if !whole {
		return
	}
	c := &d.clerk
	if c.root == nil {
		return
	}
	to := func(b *jobpage.Book) { b.Reader = d.reader }
	switch {
	case c.view != nil:
		c.view.Address(to)
		d.writeJob()
	case c.strip != nil:
		to(&c.book)
		d.writeStrip()
	default:
		to(&c.book)
	}
}

// instantID is the phone's time and an ID that nothing has yet.
func instantID() (countdown.Instant, string) {
	at := now()
	return at, fresh(at)
}
