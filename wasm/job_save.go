//go:build js && wasm

package main

import (
	"context"
	"errors"
	"strconv"
	"syscall/js"

	"setbook/calc/job"
	"setbook/calc/jobpage"
)

// saveJob keeps the job after a change. One save is on its way at a time; what changes meanwhile goes with the next. The page says
// "Saved" only once nothing is left to save and the last transaction is complete. A job whose page was left for another one meanwhile is
// kept all the same.
func (d *desk) saveJob() { d.saveView(d.clerk.view) }

func (d *desk) saveView(v *jobpage.View) {
	v.Unkept = true
	if v.Saving || v.Trouble != jobpage.None {
		return
	}
	v.Saving = true
	d.markKept()
	go d.run(nil, func() {
		err := errors.New("a fault in the page") // what stands where keep does not return
		defer func() {
			v.Saving = false
			if v.Trouble = troubleOf(err); v.Trouble == jobpage.None {
				v.SavedAt = now()
			} else {
				v.Unkept = true
			}
			d.markKept()
			d.refreshJob("")
			d.askLasting()
		}()
		for err = nil; err == nil && v.Unkept; {
			v.Unkept = false
			var kept *job.Job
			if kept, v.Unfit, err = d.keepOne(v.Job, v.Job.Revision); err == nil {
				v.Base = kept // not the job as it stands by now: more may have been changed meanwhile
			}
		}
		if errors.Is(err, jobpage.Conflict) {
			v.Theirs, _, _, _ = d.clerk.readJob(context.Background(), v.Job.ID)
		}
	})
}

// keepOne keeps a job as it stands now in the place of the one of a revision. It blocks until the browser says that it is kept. What
// could not be read again is not kept. A database that was closed under the page is opened once more. It gives the job as it was kept.
func (d *desk) keepOne(j *job.Job, was int64) (next *job.Job, unfit []job.Problem, err error) {
	c := &d.clerk
	if c.store == nil {
		return nil, nil, errNoStorage
	}
	next = j.Clone()
	next.Revision++
	next.Changed = now()
	record, head := job.Write(next), jobpage.HeadOf(next)
	if !job.Takes(record) {
		return nil, nil, jobpage.TooLarge
	}
	if _, unfit = job.Read(record); len(unfit) > 0 {
		return nil, unfit, jobpage.Unfit
	}
	err = c.store.swapJob(context.Background(), j.ID, was, head.Text(), record)
	if troubleOf(err) == jobpage.Failed {
		report(err.Error())
		opened, again := openStore(context.Background())
		if again != nil {
			return nil, nil, err
		}
		d.store, c.store = opened, opened
		err = c.store.swapJob(context.Background(), j.ID, was, head.Text(), record)
	}
	if err == nil {
		j.Revision, j.Changed = next.Revision, next.Changed
		d.copyJob(context.Background(), j.ID, head.Text(), record)
	}
	return next, nil, err
}

// markKept shows the state in the document, for the style sheet and for whoever watches the page from outside.
func (d *desk) markKept() {
	c := &d.clerk
	v := c.view
	if v == nil {
		return
	}
	state := "saved"
	switch {
	case v.Trouble != jobpage.None:
		state = "not"
	case v.Saving || v.Unkept:
		state = "saving"
	}
	c.root.SetAttribute("data-kept", state)
	c.root.SetAttribute("data-revision", strconv.FormatInt(v.Job.Revision, 10))
}

// settle goes on after a trouble in the way that the person chose.
func (d *desk) settle(do string) {
	c := &d.clerk
	v := c.view
	switch do {
	case "again":
		if v.Trouble == jobpage.Gone {
			d.revive(v)
			return
		}
		v.Trouble = jobpage.None
	case "theirs":
		v.Unkept = false
		v.Replace(v.Theirs)
		d.writeJob()
		return
	case "both":
		d.beside(func(ctx context.Context) { d.putTogether(ctx, v) })
		return
	case "mine":
		_, id := instantID()
		forgetDraft(v.Job.ID) // it goes with the copy
		v.Copy(id)
		recallJob(id)
		js.Global().Get("history").Call("replaceState", nil, "", c.book.Href(id, v.Mode))
	}
	d.writeJob()
	d.saveJob()
}

// putTogether joins what stands here with what the other page has made of the job by now. It blocks.
func (d *desk) putTogether(ctx context.Context, v *jobpage.View) {
	if theirs, _, _, err := d.clerk.readJob(ctx, v.Job.ID); err == nil && theirs != nil {
		v.Theirs = theirs
	}
	joined, problems := job.Join(v.Base, v.Theirs, v.Job, now())
	if len(problems) > 0 {
		v.Trouble, v.Unfit = jobpage.Unfit, problems
		d.refreshJob("")
		return
	}
	theirs := v.Theirs
	v.Replace(joined)
	v.Base = theirs // what is joined is not kept yet
	if d.clerk.view == v {
		d.writeJob()
	}
	d.saveView(v)
}

// revive keeps a job again that is no longer kept. Where it was deleted on another page, what that page had saved before is put together with
// what stands here.
func (d *desk) revive(v *jobpage.View) {
	d.beside(func(ctx context.Context) {
		_, record, err := d.clerk.store.readJob(ctx, v.Job.ID)
		before, next := v.Job.Clone(), v.Job.Clone()
		v.Unkept = false
		if theirs, _ := job.Read(record); err == nil && theirs != nil {
			if joined, problems := job.Join(v.Base, theirs, next, now()); len(problems) == 0 {
				next = joined
				next.Revision = max(theirs.Revision, v.Job.Revision)
			}
		}
		if err == nil {
			_, v.Unfit, err = d.keepOne(next, jobpage.Revived)
		}
		if err == nil {
			// What was changed while it was on its way goes with the next save.
			if joined, problems := job.Join(before, next, v.Job, now()); v.Unkept && len(problems) == 0 {
				v.Replace(joined)
				v.Base = next
				d.saveView(v)
			} else {
				v.Replace(next)
				v.SavedAt = now()
			}
			if d.clerk.view == v {
				d.writeJob()
			}
			return
		}
		v.Unkept = true
		if v.Trouble = troubleOf(err); v.Trouble == jobpage.Conflict {
			v.Theirs, _, _, _ = d.clerk.readJob(ctx, v.Job.ID) // another page was there first
		}
		d.markKept()
		d.refreshJob("")
	})
}

// lastingKey remembers that the browser was asked to keep what is stored.
const lastingKey = "setbook.lasting"

// askLasting asks the browser at the first save to keep what is stored until the person clears it, and says what it answered.
func (d *desk) askLasting() {
	c := &d.clerk
	if c.book.Lasting != jobpage.NotAsked || c.store == nil || lastingAsked() {
		return
	}
	storage := js.Global().Get("navigator").Get("storage")
	if !storage.Truthy() || storage.Get("persist").IsUndefined() {
		d.toldLasting(jobpage.Unasked)
		return
	}
	c.book.Lasting = jobpage.Refused // until it answers
	d.then(storage.Call("persist"), d.answered, func() { d.toldLasting(jobpage.Refused) })
}

func lastingAsked() (put bool) {
	try(func() { put = global("localStorage").Call("getItem", lastingKey).Equal(js.ValueOf("yes")) })
	return put
}

// askedLasting asks how it stands, where the question was put before.
func (d *desk) askedLasting() {
	storage := js.Global().Get("navigator").Get("storage")
	if lastingAsked() && storage.Truthy() && !storage.Get("persisted").IsUndefined() {
		d.then(storage.Call("persisted"), d.answered, nil)
	}
}

func (d *desk) answered(yes js.Value) {
	if yes.Truthy() {
		d.toldLasting(jobpage.Promised)
	} else {
		d.toldLasting(jobpage.Refused)
	}
}

func (d *desk) toldLasting(l jobpage.Lasting) {
	d.clerk.book.Lasting = l
	try(func() { global("localStorage").Call("setItem", lastingKey, "yes") })
	d.refreshJob("")
}
