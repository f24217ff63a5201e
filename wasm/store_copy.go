//go:build js && wasm

package main

import (
	"context"
	"slices"
	"syscall/js"

	"github.com/hack-pad/go-indexeddb/idb"
	"setbook/calc/countdown"
	"setbook/calc/jobpage"
)

// Every job is kept twice where the browser has storage buckets (Storage Buckets API; Chromium), which keep their files apart. Why: Chromium's
// IndexedDB goes on writing at the end of the log file that it finds (LevelDB, reuse_logs). Where the browser was killed in the middle of a
// write, a torn record is left there; the next start passes over it, writes behind it, and the start after that takes the file
// for corrupt and deletes all that the site has. Killed often, it did so three times in some 250 kills (TestAKilledBrowserLosesNothing
// without the copy; the file was looked at). The two are written one after the other, so that one kill tears one at most.
const copyBucket = "jobs-copy"

// openBucket opens the database in a storage bucket of its own, the first time with these stores, and gives the first of them; nil where
// the browser has no buckets, or will not give one. It blocks.
func (d *desk) openBucket(ctx context.Context, bucket string, stores ...string) (opened *store) {
	defer func() {
		if recover() != nil {
			opened = nil // the binding panics where it meets what it does not expect; the first copy is there all the same
		}
	}()
	buckets := js.Global().Get("navigator").Get("storageBuckets")
	if !buckets.Truthy() {
		return nil
	}
	given := make(chan js.Value, 1)
	d.then(buckets.Call("open", bucket, map[string]any{"durability": "strict"}), func(v js.Value) { given <- v }, func() { given <- js.Undefined() })
	var in js.Value
	select {
	case in = <-given:
	case <-ctx.Done():
	}
	if !in.Truthy() || !in.Get("indexedDB").Truthy() {
		return nil
	}
	factory, err := idb.WrapFactory(in.Get("indexedDB"))
	if err != nil {
		return nil
	}
	request, err := factory.Open(ctx, databaseName, 1, func(db *idb.Database, _, _ uint) error {
		for _, name := range stores {
			if _, err := db.CreateObjectStore(name, idb.ObjectStoreOptions{}); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return nil
	}
	db, err := request.Await(ctx)
	if err != nil || ctx.Err() != nil {
		return nil
	}
	return &store{db: db, name: stores[0]}
}

// dropCopies takes the second copies away with all that is in them, and waits until that is done.
func (d *desk) dropCopies() {
	buckets := js.Global().Get("navigator").Get("storageBuckets")
	if !buckets.Truthy() {
		return
	}
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	for _, name := range [...]string{copyBucket, spareBucket} {
		gone := make(chan bool, 1)
		d.then(buckets.Call("delete", name), func(js.Value) { gone <- true }, func() { gone <- false })
		select {
		case <-gone:
		case <-ctx.Done():
		}
	}
}

// second is the second copy, opened when it is first asked for. It blocks.
func (d *desk) second(ctx context.Context) *store {
	c := &d.clerk
	if !c.asked && c.store != nil && !c.store.newer {
		c.asked = true
		c.copy = d.openBucket(ctx, copyBucket, headStore, jobStore)
	}
	return c.copy
}

// copyJob puts a job into the second copy as it was kept in the first. What goes wrong there is no trouble: the first one holds. It
// blocks until the transaction is complete.
func (d *desk) copyJob(ctx context.Context, id, head, record string) {
	s := d.second(ctx)
	if s == nil {
		return
	}
	if t, heads, records, err := s.jobs(idb.TransactionReadWrite); err == nil && put(heads, id, head) == nil && put(records, id, record) == nil && t.Await(ctx) == nil {
		return
	}
	d.clerk.copy = nil
}

// mend brings the two copies in step: what one has lost comes back from the other. It gives how many jobs came back. It blocks.
func (d *desk) mend(ctx context.Context) (back int) {
	c := &d.clerk
	s := d.second(ctx)
	if s == nil {
		return 0
	}
	first, err := c.store.of(headStore).keys(ctx)
	more, wrong := s.keys(ctx)
	if err != nil || wrong != nil {
		return 0
	}
	for _, id := range more {
		if !slices.Contains(first, id) {
			first = append(first, id)
		}
	}
	for _, id := range first {
		kept, record, err := c.store.readJob(ctx, id)
		other, otherRecord, wrong := s.readJob(ctx, id)
		if err != nil || wrong != nil {
			continue
		}
		switch jobpage.Ahead(id, kept, other) {
		case jobpage.First:
			d.copyJob(ctx, id, kept, record)
		case jobpage.Second:
			h, _ := jobpage.ReadHead(id, kept)
			if c.store.swapJob(ctx, id, h.Revision, other, otherRecord) == nil {
				back++
			}
		}
	}
	return back
}

// markJob puts a job among the deleted ones, or brings it back (0), in both copies. It blocks.
func (d *desk) markJob(ctx context.Context, id string, gone countdown.Instant) error {
	if d.clerk.store == nil {
		return errNoStorage
	}
	mark := func(h *jobpage.Head) { h.Gone = gone }
	err := d.clerk.store.markJob(ctx, id, mark)
	if s := d.second(ctx); err == nil && s != nil && s.markJob(ctx, id, mark) != nil {
		d.clerk.copy = nil
	}
	return err
}

// eraseJob takes a job away for good, out of both copies. It blocks.
func (d *desk) eraseJob(ctx context.Context, id string) error {
	if d.clerk.store == nil {
		return errNoStorage
	}
	err := d.clerk.store.eraseJob(ctx, id, false)
	if s := d.second(ctx); err == nil && s != nil && s.eraseJob(ctx, id, true) != nil {
		d.clerk.copy = nil
	}
	return err
}
