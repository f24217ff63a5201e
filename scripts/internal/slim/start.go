package slim

import (
	"bytes"
	"encoding/binary"
	"errors"
	"slices"
)

// firstFunction is the number that Go gives to the first function (funcValueOffset in cmd/link/internal/wasm/asm.go).
const firstFunction = 0x1000

// fill writes the index, which says of each function where its record is, and the number of each function into its
// record. As both are counted up, they need not be sent: a start function in the module does the same as fill
// before anything else runs.
func (t *tables) fill() {
	at := t.firstRecord()
	for n, f := range t.records {
		le.PutUint32(t.funcs[8*n:], uint32(firstFunction+n))
		le.PutUint32(t.funcs[8*n+4:], uint32(at))
		f.set(entryOff, uint32(firstFunction+n))
		at += align(len(f))
	}
	le.PutUint32(t.funcs[8*len(t.records):], uint32(firstFunction+len(t.records)))
}

// unfill takes away what fill writes.
func (t *tables) unfill() {
	clear(t.funcs[:8*len(t.records)+4])
	for _, f := range t.records {
		f.set(entryOff, 0)
	}
}

// Instructions of WebAssembly (Core Specification 2.0, 5.4).
const (
	opLoop     = 0x03
	opEnd      = 0x0b
	opBranchIf = 0x0d
	opGet      = 0x20
	opSet      = 0x21
	opTee      = 0x22
	opLoad     = 0x28
	opLoadByte = 0x2d
	opStore    = 0x36
	opConst    = 0x41
	opLess     = 0x49
	opAdd      = 0x6a
	opSubtract = 0x6b
	opMultiply = 0x6c
	opAnd      = 0x71

	i32      = 0x7f
	noResult = 0x40
	byWords  = 2 // addresses are multiples of 4
	byBytes  = 0

	counter = 0 // local variable: how many functions were done
	where   = 1 // local variable: the address of the next one's record
)

// filler is the start function as it stands in the code section, with its size before it.
func (t *tables) filler() []byte {
	b := []byte{1, 2, i32} // one kind of local variables, two of it
	constant := func(v int) { b = appendS32(append(b, opConst), int32(v)) }
	access := func(op, alignment byte, offset int) {
		b = binary.AppendUvarint(append(b, op, alignment), uint64(offset))
	}
	entry := func() { // the place of the function's entry in the index, from the start of the index
		b = append(b, opGet, counter)
		constant(8)
		b = append(b, opMultiply)
	}
	number := func() {
		b = append(b, opGet, counter)
		constant(firstFunction)
		b = append(b, opAdd)
	}
	constant(t.start + t.firstRecord())
	b = append(b, opSet, where, opLoop, noResult)

	entry()
	number()
	access(opStore, byWords, t.start)
	entry()
	b = append(b, opGet, where)
	constant(t.start)
	b = append(b, opSubtract)
	access(opStore, byWords, t.start+4)
	b = append(b, opGet, where)
	number()
	access(opStore, byWords, 4*entryOff)

	// where += align(4 * (fixed + npcdata + nfuncdata))
	b = append(b, opGet, where, opGet, where)
	access(opLoad, byWords, 4*npcdata)
	b = append(b, opGet, where)
	access(opLoadByte, byBytes, nfuncdata)
	b = append(b, opAdd)
	constant(4)
	b = append(b, opMultiply)
	constant(4*fixed + 7)
	b = append(b, opAdd)
	constant(-8)
	b = append(b, opAnd, opAdd, opSet, where)

	b = append(b, opGet, counter)
	constant(1)
	b = append(b, opAdd, opTee, counter)
	constant(len(t.records))
	b = append(b, opLess, opBranchIf, 0, opEnd)

	constant(0)
	constant(firstFunction + len(t.records))
	access(opStore, byWords, t.start+8*len(t.records))
	b = append(b, opEnd)
	return append(binary.AppendUvarint(nil, uint64(len(b))), b...)
}

// procedure is the type of a function that neither takes nor gives anything.
var procedure = []byte{0x60, 0, 0}

// addStart adds a function to the module, behind all others, that runs before the program does.
func (m module) addStart(body []byte) (module, error) {
	number, err := m.nextFunction()
	if err != nil {
		return nil, err
	}
	types := m.find(typeSection)
	m.find(functionSection).push(leb(types.count()))
	types.push(procedure)
	m.find(codeSection).push(body)
	later := slices.IndexFunc(m, func(s section) bool { return s.id > startSection })
	return slices.Insert(m, later, section{startSection, number}), nil
}

// dropStart takes away what addStart added, so that a module may be made slim again.
func (m module) dropStart(body []byte) (module, error) {
	types := m.find(typeSection)
	ours := m.find(codeSection).pop(body) && types.pop(procedure) && m.find(functionSection).pop(leb(types.count()))
	number, err := m.nextFunction()
	if err != nil {
		return nil, err
	}
	if !ours || !bytes.Equal(m.find(startSection).body, number) {
		return nil, errors.New("it has a start function of its own")
	}
	return slices.DeleteFunc(m, func(s section) bool { return s.id == startSection }), nil
}

// nextFunction gives the number that the next function added to the module gets: functions that are
// imported, which is all that Go's linker imports, are counted first.
func (m module) nextFunction() ([]byte, error) {
	r := &reader{b: m.find(importSection).body}
	imports := r.u32()
	for n := imports; n > 0; n-- {
		r.name() // that of the module,
		r.name() // and its own
		if kind := r.byte(); kind != 0 || r.broken {
			return nil, errors.New("it imports something that is no function")
		}
		r.u32()
	}
	return leb(imports + m.find(functionSection).count()), nil
}

func leb(v uint32) []byte { return binary.AppendUvarint(nil, uint64(v)) }
