//go:build js && wasm

package main

import (
	"context"
	"strings"
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/job"
	"setbook/calc/jobpage"
	"setbook/calc/words"
)

// pressJob does what a button asks for.
func (d *desk) pressJob(e *dom.BasicEvent) {
	b, ok := around(e, "data-job-do")
	if !ok {
		return
	}
	c := &d.clerk
	do, what := b.GetAttribute("data-job-do"), b.GetAttribute("data-job-id")
	switch {
	case do == "go":
		if part, ok := find(c.root.Underlying(), `[data-go="`+what+`"]`); ok {
			part.Call("scrollIntoView")
		}
	case do == "print":
		js.Global().Call("print")
	case do == "file" || do == "share" || do == "link" || do == "code" || do == "copy":
		d.handOn(do)
	case c.strip != nil && do == "again":
		d.tryAgain()
	case c.strip != nil:
		d.addToJob()
	case c.list != nil && (do == "erase" || do == "spare"):
		d.askSure(do == "erase", what)
	case c.list != nil && do == "erase-sure":
		c.list.Sure = ""
		d.pressList("erase", what)
	case c.list != nil && do == "new" && c.list.Wants() != "":
		d.focusOn(`[data-jobs-field="` + c.list.Wants() + `"]`)
	case c.list != nil:
		d.pressList(do, what)
	case c.view == nil:
	case do == "take-picture" || do == "choose-picture":
		d.askPicture(do, what)
	case do == "save-picture":
		d.savePicture(what)
	case do == "again" || do == "theirs" || do == "both" || do == "mine":
		d.settle(do)
	case do == "delete":
		d.deleteJob()
	default:
		at, id := instantID()
		changed, wants := c.view.Act(do, what, at, id)
		d.refill()
		if changed {
			c.told(do, "")
			c.pressed = do
			d.saveJob()
		}
		d.refreshJob("")
		switch {
		case wants != "":
			d.focusOn(`[data-job-field="` + wants + `"]`)
		case changed && (do == "remove" || do == "drop-picture"):
			d.focusOn(`[data-job-do="undo"]`)
		case changed && do == "undo":
			d.focusBack(c.view.Back)
		}
	}
}

func (d *desk) focusOn(selector string) {
	if e, ok := find(d.clerk.root.Underlying(), selector); ok {
		e.Focus()
	}
}

// askSure asks whether a job is to go for good, or takes the question back. The focus goes to what leaves things as they are.
func (d *desk) askSure(ask bool, id string) {
	d.clerk.list.Sure = ""
	to := `[data-job-do="erase"][data-job-id="` + id + `"]`
	if ask {
		d.clerk.list.Sure = id
		to = `[data-job-do="spare"]`
	}
	d.refreshJob(to)
}

// focusBack puts the focus on what was brought back: the line that its button for removing it stands in. Where a long log does not show
// that line, on the log.
func (d *desk) focusBack(what string) {
	root := d.clerk.root.Underlying()
	if b, ok := find(root, `[data-job-id="`+what+`"]`); ok {
		if fold := b.Call("closest", "[data-fold]"); fold.Truthy() {
			b, _ = find(fold, "summary")
		}
		b.Focus()
		return
	}
	list, _, _ := strings.Cut(what, "/")
	if part, ok := find(root, `[data-part="`+list+`"]`); ok {
		part.SetAttribute("tabindex", "-1")
		part.Focus()
	}
}

const (
	putIn    words.Msg = "Put in and saved."
	notSaved words.Msg = "Not saved. Why stands at the top of this page."
)

// tellKept says beside the button that was pressed last what became of it, once that is known.
func (c *clerk) tellKept() {
	switch v := c.view; {
	case c.pressed == "" || v.Saving || v.Unkept && v.Trouble == jobpage.None:
		return
	case v.Trouble == jobpage.None:
		c.told(c.pressed, say(putIn))
	default:
		c.told(c.pressed, say(notSaved))
	}
	c.pressed = ""
}

// told writes what is said beside a button.
func (c *clerk) told(do, text string) {
	if p, ok := find(c.root.Underlying(), `[data-said="`+do+`"]`); ok {
		p.SetTextContent(text)
	}
}

// deleteJob puts the job among the deleted ones and goes to the list, where it can be brought back.
func (d *desk) deleteJob() {
	c := &d.clerk
	id := c.view.Job.ID
	d.beside(func(ctx context.Context) {
		if err := d.markJob(ctx, id, now()); err != nil {
			c.view.Trouble = troubleOf(err)
			d.refreshJob("")
			return
		}
		recallJob("")
		js.Global().Get("location").Set("href", c.book.Root+"jobs/")
	})
}

// goTo opens a job's page.
func (d *desk) goTo(id string) {
	js.Global().Get("location").Set("href", d.clerk.book.Href(id, jobpage.Work))
}

// beginJob keeps a new job, or one that was brought (raw: as a newer program wrote it), and opens it. Where it cannot be kept it is opened
// on this very page, so that it can be worked with and handed on. It blocks.
func (d *desk) beginJob(j *job.Job, raw string, was int64) {
	c := &d.clerk
	err := error(jobpage.NoStorage)
	switch {
	case c.store == nil:
	case raw != "":
		head := jobpage.HeadOf(j)
		if err = c.store.swapJob(context.Background(), j.ID, was, head.Text(), raw); err == nil {
			d.copyJob(context.Background(), j.ID, head.Text(), raw)
		}
	default:
		_, _, err = d.keepOne(j, was)
	}
	if err == nil {
		d.goTo(j.ID)
		return
	}
	switch t := troubleOf(err); t {
	case jobpage.Conflict, jobpage.Gone: // the list is out of date
		c.list.Trouble = jobpage.Stale
		if c.list.Preview != nil {
			d.look(c.list.Preview)
		}
		d.readHeads()
	default:
		c.list, c.view = nil, jobpage.NewView(&c.book, j, jobpage.Work)
		c.view.Raw = raw
		c.view.Trouble, c.view.Unkept = t, true
		d.writeJob()
	}
}
