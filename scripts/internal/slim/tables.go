package slim

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
)

var le = binary.LittleEndian

// tables are what Go's linker writes into memory for the runtime to find its way about the code and the stacks:
// runtime.pcHeader and what follows it (cmd/link/internal/ld/pcln.go). Each slice is a part of the memory itself.
type tables struct {
	names []byte // runtime.funcnametab: names of functions, each ended by a 0
	files []byte // runtime.cutab and runtime.filetab: names of source files
	runs  []byte // runtime.pctab: what holds from one place in a function to the next
	funcs []byte // runtime.functab: an index, and behind it a record for each function
	data  []byte // go:func.*: which words of a stack hold pointers, what was inlined, and the like

	start   int // address of funcs
	records []record
	calls   [][]byte // every runtime.inlinedCall in data
}

// Where a runtime.pcHeader has what, in words of 8 bytes.
const (
	headerCount = 1 // of functions
	headerNames = 4 // then cutab, filetab, pctab and functab, as distances from the header
	headerEnd   = 9
)

// Where a runtime.moduledata has what, in words of 8 bytes. It begins with the address of the header.
const (
	moduleNames = 1 // a slice of 3 words, then those of cutab, filetab, pctab and functab
	moduleIndex = 16
	moduleData  = 40 // address of go:func.*
	moduleEnd   = 41 // and that of its end
)

// magic begins a header: abi.CurrentPCLnTabMagic, two zeros, the step of a program counter, the size of a pointer.
var magic = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// findTables finds the tables in a memory. What looks like a header is one where a runtime.moduledata points to it
// and to every table that it announces.
func findTables(mem []byte) (*tables, error) {
	var found *tables
	for at := range places(mem, magic) {
		if t := tablesAt(mem, at); t != nil && found != nil {
			return nil, errors.New("there are two sets of tables of functions")
		} else if t != nil {
			found = t
		}
	}
	if found == nil {
		return nil, errors.New("there are no tables of functions of the known layout")
	}
	return found, found.walk()
}

// places gives every place in b where what stands.
func places(b, what []byte) func(yield func(int) bool) {
	return func(yield func(int) bool) {
		for from := 0; ; from++ {
			next := bytes.Index(b[from:], what)
			if next < 0 {
				return
			}
			from += next
			if !yield(from) {
				return
			}
		}
	}
}

func tablesAt(mem []byte, header int) *tables {
	if len(mem)-header < 8*headerEnd {
		return nil
	}
	count := le.Uint64(mem[header+8*headerCount:])
	if count == 0 || count > uint64(len(mem)) {
		return nil
	}
	var begins []uint64
	for word := headerNames; word < headerEnd; word++ {
		begins = append(begins, uint64(header)+le.Uint64(mem[header+8*word:]))
	}
	pointer := le.AppendUint64(nil, uint64(header))
	for at := range places(mem, pointer) {
		if len(mem)-at < 8*(moduleEnd+1) {
			return nil
		}
		word := func(n int) uint64 { return le.Uint64(mem[at+8*n:]) }
		fits := word(moduleIndex) == begins[4] && word(moduleIndex+1) == count+1
		for i, begin := range begins {
			fits = fits && word(moduleNames+3*i) == begin
		}
		edges := append(begins[:5:5], word(moduleData), word(moduleEnd))
		last := uint64(header + 8*headerEnd)
		for _, edge := range edges {
			fits = fits && last <= edge && edge <= uint64(len(mem))
			last = edge
		}
		if !fits || edges[1] == edges[0] || edges[5]-edges[4] < 8*count+4 {
			continue
		}
		part := func(from, to int) []byte { return mem[edges[from]:edges[to]:edges[to]] }
		return &tables{
			names: part(0, 1), files: part(1, 3), runs: part(3, 4), funcs: part(4, 5), data: part(5, 6),
			start: int(edges[4]), records: make([]record, count),
		}
	}
	return nil
}

// walk finds the records. They lie one behind another, each at a multiple of 8 from the start of the index.
func (t *tables) walk() error {
	at := t.firstRecord()
	for n := range t.records {
		f := recordAt(t.funcs, at)
		if f == nil {
			return errors.New("the records of functions are cut short")
		}
		t.records[n] = f
		at += align(len(f))
	}
	return nil
}

func (t *tables) firstRecord() int { return align(8*len(t.records) + 4) }

func align(n int) int { return (n + 7) &^ 7 }

// check takes the records apart as far as they are relied on later.
func (t *tables) check() error {
	before := bytes.Clone(t.funcs)
	t.fill()
	if !bytes.Equal(before, t.funcs) {
		return errors.New("the functions are not numbered or not placed one after another")
	}
	if t.names[len(t.names)-1] != 0 {
		return errors.New("the names of functions have no end")
	}
	trees := map[uint32]bool{}
	for n, f := range t.records {
		if err := t.checkRecord(f, trees); err != nil {
			return fmt.Errorf("function %d: %w", n, err)
		}
	}
	return nil
}

func (t *tables) checkRecord(f record, trees map[uint32]bool) error {
	for _, word := range f.references() {
		if at := f.word(word); at != 0 {
			if _, _, ok := t.run(at); !ok {
				return errors.New("a run is not there")
			}
		}
	}
	for n, word := range f.funcdata() {
		at := f.word(word)
		if at == none {
			continue
		}
		if at >= uint32(len(t.data)) || n == argInfo && bytes.IndexByte(t.data[at:], argEnd) < 0 {
			return errors.New("a piece of data is not there")
		}
	}
	if f.word(nameOff) >= uint32(len(t.names)) {
		return errors.New("its name is not there")
	}
	return t.checkInlined(f, trees)
}

// checkInlined adds to the inlined calls those of one function. No two share a list.
func (t *tables) checkInlined(f record, trees map[uint32]bool) error {
	places, lists := f.pcdata(), f.funcdata()
	if len(places) <= inlTreeIndex || len(lists) <= inlTree {
		return nil
	}
	index, at := f.word(places[inlTreeIndex]), f.word(lists[inlTree])
	if index == 0 || at == none {
		return nil
	}
	_, last, _ := t.run(index) // the list ends with the greatest number that the run refers to
	if trees[at] || int(at)+inlinedSize*(int(last)+1) > len(t.data) {
		return errors.New("what was inlined is not there or not its own")
	}
	trees[at] = true
	for n := range int(last) + 1 {
		call := t.data[int(at)+inlinedSize*n:][:inlinedSize]
		if le.Uint32(call[inlinedName:]) >= uint32(len(t.names)) {
			return errors.New("the name of an inlined call is not there")
		}
		t.calls = append(t.calls, call)
	}
	return nil
}

// run takes one run apart: pairs, in LEB128, of how a value changes and how far it then holds, up to a change of 0 that
// is not the first (runtime.pcvalue, runtime.step). It gives its length in bytes and the greatest value.
func (t *tables) run(at uint32) (length int, greatest int32, ok bool) {
	if int64(at) >= int64(len(t.runs)) {
		return 0, 0, false
	}
	r := &reader{b: t.runs[at:]}
	value := int32(-1)
	greatest = value
	for first := true; ; first = false {
		change := r.u32()
		if r.broken {
			return 0, 0, false
		}
		if change == 0 && !first {
			return len(t.runs) - int(at) - len(r.b), greatest, true
		}
		value += int32(-(change & 1) ^ (change >> 1))
		greatest = max(greatest, value)
		r.u32()
	}
}
