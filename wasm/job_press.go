//go:build js && wasm

package main

import (
	"context"
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/job"
	"setbook/calc/jobpage"
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
	case c.strip != nil:
		d.addToJob()
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
		changed := c.view.Press(do, what, at, id)
		d.refill()
		if changed {
			d.saveJob()
		}
		d.refreshJob("")
		if f, ok := find(c.root.Underlying(), `[data-job-field][aria-invalid]`); ok && !changed {
			f.Focus()
		}
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
		_, err = d.keepOne(j, was)
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
		c.list, c.raw, c.view = nil, raw, jobpage.NewView(&c.book, j, jobpage.Work)
		c.view.Trouble, c.view.Unkept = t, true
		d.writeJob()
	}
}
