//go:build js && wasm

package main

import (
	"context"
	"errors"
	"syscall/js"

	"github.com/hack-pad/go-indexeddb/idb"
	"setbook/calc/words"
)

// The database of the browser that holds the last entry of each calculator: link
// text under the calculator's ID.
const (
	databaseName    = "setbook"
	databaseVersion = 1
	entryStore      = "entries"
)

const notKept words.Msg = "This browser keeps nothing for this page, so your last entry will not be here next time. Answers work all the same. The link in the address bar holds the entry."

// errNoStorage is the normal state of a browser that keeps nothing: private
// windows, storage forbidden, a disk that is full.
var errNoStorage = errors.New("the browser keeps nothing for this page")

// store is the open database.
type store struct{ db *idb.Database }

// openStore opens the database, making it the first time. It blocks until the browser
// has answered. The binding panics where IndexedDB is missing, so the browser is asked first.
func openStore(ctx context.Context) (opened *store, err error) {
	defer func() {
		if recover() != nil {
			opened, err = nil, errNoStorage
		}
	}()
	if !global("indexedDB").Truthy() {
		return nil, errNoStorage
	}
	request, err := idb.Global().Open(ctx, databaseName, databaseVersion, func(db *idb.Database, _, _ uint) error {
		_, err := db.CreateObjectStore(entryStore, idb.ObjectStoreOptions{})
		return err
	})
	if err != nil {
		return nil, err
	}
	db, err := request.Await(ctx)
	switch {
	case err != nil:
		return nil, err
	case ctx.Err() != nil:
		return nil, ctx.Err()
	}
	return &store{db}, nil
}

// read gives the text kept under a calculator's ID, "" where there is none. It blocks.
func (s *store) read(ctx context.Context, id string) (string, error) {
	entries, err := s.entries(idb.TransactionReadOnly)
	if err != nil {
		return "", err
	}
	request, err := entries.Get(js.ValueOf(id))
	if err != nil {
		return "", err
	}
	v, err := request.Await(ctx)
	if err != nil || v.Type() != js.TypeString {
		return "", err
	}
	return v.String(), nil
}

// write keeps a text under a calculator's ID, or nothing where the text is "". It returns as
// soon as the browser has taken the order, and calls failed if it cannot carry it out.
func (s *store) write(ctx context.Context, id, text string, failed func()) error {
	entries, err := s.entries(idb.TransactionReadWrite)
	if err != nil {
		return err
	}
	request, err := order(entries, id, text)
	if err != nil {
		return err
	}
	if err := request.ListenError(ctx, failed); err != nil {
		return err
	}
	// Committed at once, so that a page that is closed on the next instant has kept it.
	transaction, err := entries.Transaction()
	if err != nil {
		return err
	}
	return transaction.Commit()
}

func order(entries *idb.ObjectStore, id, text string) (*idb.Request, error) {
	if text != "" {
		return entries.PutKey(js.ValueOf(id), js.ValueOf(text))
	}
	gone, err := entries.Delete(js.ValueOf(id))
	if err != nil {
		return nil, err
	}
	return gone.Request, nil
}

func (s *store) entries(mode idb.TransactionMode) (*idb.ObjectStore, error) {
	t, err := s.db.Transaction(mode, entryStore)
	if err != nil {
		return nil, err
	}
	return t.ObjectStore(entryStore)
}
