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
// "Saved" only once nothing is left to save and the last transaction is complete.
func (d *desk) saveJob() {
	c := &d.clerk
	c.dirty = true
	if c.saving || c.view.Trouble != jobpage.None {
		return
	}
	v := c.view
	c.saving, v.Saving = true, true
	d.markKept()
	go d.run(nil, func() {
		err := errors.New("a fault in the page") // what stands where keep does not return
		defer func() {
			c.saving, v.Saving = false, false
			v.Trouble = troubleOf(err)
			if err == nil {
				v.SavedAt = now()
			}
			d.markKept()
			d.refreshJob("")
			d.askLasting()
		}()
		for err = nil; err == nil && c.dirty; {
			c.dirty = false
			err = d.keepOne(v.Job)
		}
		if errors.Is(err, jobpage.Conflict) {
			v.Theirs, _, _, _ = c.readJob(context.Background(), v.Job.ID)
		}
	})
}

// keepOne keeps a job as it stands now. It blocks until the browser says that it is kept. A database that was closed under the page is
// opened once more.
func (d *desk) keepOne(j *job.Job) error {
	c := &d.clerk
	if c.store == nil {
		return errNoStorage
	}
	next := *j
	next.Revision++
	next.Changed = now()
	record, head := job.Write(&next), jobpage.HeadOf(&next)
	if !job.Takes(record) {
		return jobpage.TooLarge
	}
	err := c.store.swapJob(context.Background(), j.ID, j.Revision, head.Text(), record)
	if troubleOf(err) == jobpage.Failed {
		report(err.Error())
		opened, again := openStore(context.Background())
		if again != nil {
			return err
		}
		d.store, c.store = opened, opened
		err = c.store.swapJob(context.Background(), j.ID, j.Revision, head.Text(), record)
	}
	if err == nil {
		j.Revision, j.Changed = next.Revision, next.Changed
		d.copyJob(context.Background(), j.ID, head.Text(), record)
	}
	return err
}

// markKept shows the state in the document, for the style sheet and for whoever watches the page from outside.
func (d *desk) markKept() {
	c := &d.clerk
	if c.view == nil {
		return
	}
	state := "saved"
	switch {
	case c.view.Trouble != jobpage.None:
		state = "not"
	case c.saving || c.dirty:
		state = "saving"
	}
	c.root.SetAttribute("data-kept", state)
	c.root.SetAttribute("data-revision", strconv.FormatInt(c.view.Job.Revision, 10))
}

// settle goes on after a trouble in the way that the person chose.
func (d *desk) settle(do string) {
	c := &d.clerk
	v := c.view
	mine := v.Job
	switch do {
	case "again":
		if v.Trouble == jobpage.Gone {
			d.revive(v)
			return
		}
		v.Trouble = jobpage.None
	case "theirs":
		c.dirty = false
		v.Replace(v.Theirs)
		d.writeJob()
		return
	case "both":
		merged, problems := job.Merge(v.Theirs, mine, now())
		if len(problems) > 0 {
			return
		}
		merged.Revision = v.Theirs.Revision
		v.Replace(merged)
	case "mine":
		_, id := instantID()
		v.Copy(id)
		recallJob(id)
		js.Global().Get("history").Call("replaceState", nil, "", c.book.Href(id, v.Mode))
	}
	d.writeJob()
	d.saveJob()
}

// revive keeps a job again that is no longer kept.
func (d *desk) revive(v *jobpage.View) {
	go d.run(nil, func() {
		if d.eraseJob(context.Background(), v.Job.ID) != nil {
			v.Trouble = jobpage.Failed
			d.refreshJob("")
			return
		}
		v.Trouble, v.Job.Revision = jobpage.None, 0
		d.saveJob()
		d.refreshJob("")
	})
}

// lastingKey remembers that the browser was asked to keep what is stored.
const lastingKey = "setbook.lasting"

// askLasting asks the browser at the first save to keep what is stored until the person clears it, and says what it answered.
func (d *desk) askLasting() {
	c := &d.clerk
	if c.book.Lasting != jobpage.NotAsked || c.store == nil {
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

// askedLasting asks how it stands, where the question was put before.
func (d *desk) askedLasting() {
	put := false
	try(func() { put = global("localStorage").Call("getItem", lastingKey).Equal(js.ValueOf("yes")) })
	storage := js.Global().Get("navigator").Get("storage")
	if put && storage.Truthy() && !storage.Get("persisted").IsUndefined() {
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
