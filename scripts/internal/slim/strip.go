package slim

import (
	"bytes"
	"cmp"
	"errors"
	"slices"
	"strings"
)

// strip drops from the tables what only the text of a stack trace is made of, and what the start function makes.
func (t *tables) strip() error {
	if err := t.check(); err != nil {
		return err
	}
	if err := t.rename(); err != nil {
		return err
	}
	t.unline()
	t.unargue()
	if err := t.pack(); err != nil {
		return err
	}
	t.unfill()
	return nil
}

// rename gives every function one of a few names, such that each place where the runtime decides by a name finds
// what it looks for. The comment of the package lists them.
func (t *tables) rename() error {
	var table []byte
	at := map[string]uint32{}
	fresh := func(old uint32) uint32 {
		if old == 0 {
			return 0 // no name
		}
		name, _, _ := bytes.Cut(t.names[old:], []byte{0})
		short := shorten(string(name))
		if _, ok := at[short]; !ok {
			table = append(table, 0)
			at[short] = uint32(len(table))
			table = append(table, short...)
		}
		return at[short]
	}
	for _, f := range t.records {
		f.set(nameOff, fresh(f.word(nameOff)))
	}
	for _, call := range t.calls {
		le.PutUint32(call[inlinedName:], fresh(le.Uint32(call[inlinedName:])))
	}
	if len(table) >= len(t.names) {
		return errors.New("the names of functions take less than their short forms")
	}
	clear(t.names)
	copy(t.names, table)
	return nil
}

func shorten(name string) string {
	switch {
	case name == "reflect.makeFuncStub", name == "reflect.methodValueCall":
		return name
	case strings.HasPrefix(name, "runtime.") && wraps(name):
		return "runtime.(*T).m"
	case strings.HasPrefix(name, "runtime."):
		return "runtime.f"
	case wraps(name):
		return "p.(*T).m"
	}
	return "f"
}

// wraps reports whether panicwrap can take a name apart: "package.(*Type).Method".
func wraps(name string) bool {
	_, rest, ok := strings.Cut(name, ".(*")
	_, method, closed := strings.Cut(rest, ").")
	return ok && closed && method != ""
}

// unline drops source files and lines, and where a signal may stop a function: a browser sends none.
func (t *tables) unline() {
	clear(t.files)
	for _, f := range t.records {
		for _, word := range []int{pcfile, pcln, cuOffset, startLine} {
			f.set(word, 0)
		}
		if places := f.pcdata(); len(places) > unsafePoint {
			f.set(places[unsafePoint], 0)
		}
	}
	for _, call := range t.calls {
		le.PutUint32(call[inlinedLine:], 0)
	}
}

// unargue drops how the arguments of a function are printed.
func (t *tables) unargue() {
	needed, dropped := map[uint32]bool{}, map[uint32]bool{}
	for _, f := range t.records {
		for n, word := range f.funcdata() {
			if n != argInfo {
				needed[f.word(word)] = true
			} else if at := f.word(word); at != none {
				dropped[at] = true
				f.set(word, none)
			}
		}
	}
	for at := range dropped {
		if !needed[at] {
			end := bytes.IndexByte(t.data[at:], argEnd)
			clear(t.data[at : int(at)+end+1])
		}
	}
}

// pack moves the runs that are still referred to together, the short ones first: their places are then smaller
// numbers, and like lies beside like.
func (t *tables) pack() error {
	var kept []uint32
	length := map[uint32]int{}
	t.redirect(func(at uint32) uint32 {
		if _, ok := length[at]; !ok {
			length[at], _, _ = t.run(at)
			kept = append(kept, at)
		}
		return at
	})
	slices.SortStableFunc(kept, func(a, b uint32) int { return cmp.Compare(length[a], length[b]) })
	packed := []byte{0} // the runtime takes place 0 for no run
	moved := map[uint32]uint32{}
	for _, at := range kept {
		moved[at] = uint32(len(packed))
		packed = append(packed, t.runs[at:int(at)+length[at]]...)
	}
	if len(packed) > len(t.runs) {
		return errors.New("runs of the tables by places overlap")
	}
	t.redirect(func(at uint32) uint32 { return moved[at] })
	clear(t.runs)
	copy(t.runs, packed)
	return nil
}

// redirect changes every reference to a run.
func (t *tables) redirect(change func(at uint32) uint32) {
	for _, f := range t.records {
		for _, word := range f.references() {
			if at := f.word(word); at != 0 {
				f.set(word, change(at))
			}
		}
	}
}
