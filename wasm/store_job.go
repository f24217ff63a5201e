//go:build js && wasm

package main

import (
	"context"
	"errors"

	"github.com/hack-pad/go-indexeddb/idb"
	"setbook/calc/jobpage"
)

// jobs opens a transaction over heads and records, so that the two never differ. A save is strict: the browser says that it
// is complete only once it has handed it to the disk.
func (s *store) jobs(mode idb.TransactionMode) (t *idb.Transaction, heads, records *idb.ObjectStore, err error) {
	if s.newer && mode == idb.TransactionReadWrite {
		return nil, nil, nil, errNewer
	}
	t, err = s.db.TransactionWithOptions(idb.TransactionOptions{Mode: mode, Durability: idb.DurabilityStrict}, headStore, jobStore)
	if err != nil {
		return nil, nil, nil, err
	}
	if heads, err = t.ObjectStore(headStore); err != nil {
		return nil, nil, nil, err
	}
	records, err = t.ObjectStore(jobStore)
	return t, heads, records, err
}

// readJob gives the head and the record of a job, "" where there is none. It blocks.
func (s *store) readJob(ctx context.Context, id string) (head, record string, err error) {
	_, heads, records, err := s.jobs(idb.TransactionReadOnly)
	if err != nil {
		return "", "", err
	}
	if head, err = get(ctx, heads, id); err != nil {
		return "", "", err
	}
	record, err = get(ctx, records, id)
	return head, record, err
}

// swapJob keeps a job where the kept one is still of the revision that it was read at (0: there is none yet). Reading
// and writing are one transaction, so no other page comes in between. It blocks until the transaction is complete: only then is
// the job saved.
func (s *store) swapJob(ctx context.Context, id string, was int64, head, record string) error {
	t, heads, records, err := s.jobs(idb.TransactionReadWrite)
	if err != nil {
		return err
	}
	kept, err := get(ctx, heads, id)
	if err == nil {
		err = jobpage.May(id, kept, was).Err()
	}
	if err != nil {
		return abort(t, err)
	}
	if err := put(heads, id, head); err != nil {
		return abort(t, err)
	}
	if err := put(records, id, record); err != nil {
		return abort(t, err)
	}
	return t.Await(ctx)
}

// markJob changes the head of a job alone, as it is kept at that moment: it is deleted, or brought back.
func (s *store) markJob(ctx context.Context, id string, change func(*jobpage.Head)) error {
	t, heads, _, err := s.jobs(idb.TransactionReadWrite)
	if err != nil {
		return err
	}
	kept, err := get(ctx, heads, id)
	if err != nil {
		return abort(t, err)
	}
	h, ok := jobpage.ReadHead(id, kept)
	switch {
	case kept == "":
		return abort(t, jobpage.Gone)
	case !ok:
		return abort(t, jobpage.NewerJob)
	}
	change(&h)
	if err := put(heads, id, h.Text()); err != nil {
		return abort(t, err)
	}
	return t.Await(ctx)
}

// eraseJob takes a job away for good: one that is among the deleted ones at that moment, or whatever stands there.
func (s *store) eraseJob(ctx context.Context, id string, whatever bool) error {
	t, heads, records, err := s.jobs(idb.TransactionReadWrite)
	if err != nil {
		return err
	}
	if kept, err := get(ctx, heads, id); err != nil {
		return abort(t, err)
	} else if h, ok := jobpage.ReadHead(id, kept); !whatever && (!ok || h.Gone == 0) {
		return abort(t, jobpage.Stale) // another page has brought it back, or a newer program wrote it
	}
	if err := put(heads, id, ""); err != nil {
		return abort(t, err)
	}
	if err := put(records, id, ""); err != nil {
		return abort(t, err)
	}
	return t.Await(ctx)
}

func put(objects *idb.ObjectStore, id, text string) error {
	_, err := order(objects, id, text)
	return err
}

// abort gives up a transaction: nothing of it is kept.
func abort(t *idb.Transaction, why error) error {
	if t.Abort() != nil {
		return errNoStorage // it has ended by itself, which the browser does where it can do no more
	}
	return why
}

// troubleOf names an error of the store for the page.
func troubleOf(err error) jobpage.Trouble {
	var own jobpage.Trouble
	switch {
	case err == nil:
		return jobpage.None
	case errors.As(err, &own):
		return own
	case errors.Is(err, errNoStorage):
		return jobpage.NoStorage
	case errors.Is(err, errNewer):
		return jobpage.NewerBase
	case errors.Is(err, idb.NewDOMException(noRoom)):
		return jobpage.Full
	}
	return jobpage.Failed
}

// noRoom is what the browser calls a storage that is full (Indexed Database API 3.0).
const noRoom = "QuotaExceededError"
