package slim

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
)

// Sections of a module, by their number (WebAssembly Core Specification 2.0, 5.5.2).
const (
	customSection   = 0
	typeSection     = 1
	importSection   = 2
	functionSection = 3
	memorySection   = 5
	startSection    = 8
	codeSection     = 10
	dataSection     = 11
)

// module is the sections of a WebAssembly file in the order of the file.
type module []section

type section struct {
	id   byte
	body []byte
}

var preamble = []byte("\x00asm\x01\x00\x00\x00")

func readModule(wasm []byte) (module, error) {
	rest, ok := bytes.CutPrefix(wasm, preamble)
	if !ok {
		return nil, errors.New("not a WebAssembly module")
	}
	var m module
	for r := (&reader{b: rest}); len(r.b) > 0; {
		id := r.byte()
		body := r.bytes(int(r.u32()))
		if r.broken {
			return nil, errors.New("a section is cut short")
		}
		if id != customSection && m.find(id) != nil {
			return nil, fmt.Errorf("section %d is there twice", id)
		}
		m = append(m, section{id, body})
	}
	for _, id := range []byte{typeSection, importSection, functionSection, memorySection, codeSection, dataSection} {
		if s := m.find(id); s == nil {
			return nil, fmt.Errorf("section %d is missing", id)
		} else if r := (&reader{b: s.body}); r.u32() == 0 && r.broken {
			return nil, fmt.Errorf("section %d has no count", id)
		}
	}
	return m, nil
}

// find gives a section, or nil.
func (m module) find(id byte) *section {
	for i := range m {
		if m[i].id == id {
			return &m[i]
		}
	}
	return nil
}

// count gives how many items a section says it holds.
func (s *section) count() uint32 { return (&reader{b: s.body}).u32() }

// push adds an item to a section.
func (s *section) push(item []byte) { s.recount(s.count()+1, item) }

// pop takes an item away where it is the last of a section.
func (s *section) pop(item []byte) bool {
	shorter, ok := bytes.CutSuffix(s.body, item)
	if !ok || s.count() == 0 {
		return false
	}
	s.body = shorter
	s.recount(s.count()-1, nil)
	return true
}

func (s *section) recount(count uint32, more []byte) {
	r := &reader{b: s.body}
	r.u32()
	s.body = slices.Concat(binary.AppendUvarint(nil, uint64(count)), r.b, more)
}

func (m module) write() []byte {
	out := bytes.Clone(preamble)
	for _, s := range m {
		out = append(out, s.id)
		out = binary.AppendUvarint(out, uint64(len(s.body)))
		out = append(out, s.body...)
	}
	return out
}

// reader takes a section apart. After the first thing that is not there it is broken and gives zeros.
type reader struct {
	b      []byte
	broken bool
}

func (r *reader) bytes(n int) []byte {
	if n < 0 || n > len(r.b) {
		r.broken, r.b = true, nil
		return nil
	}
	taken := r.b[:n:n]
	r.b = r.b[n:]
	return taken
}

func (r *reader) byte() byte {
	if taken := r.bytes(1); taken != nil {
		return taken[0]
	}
	return 0
}

func (r *reader) name() string { return string(r.bytes(int(r.u32()))) }

// u32 reads an unsigned LEB128 of 32 bits.
func (r *reader) u32() uint32 {
	v, n := binary.Uvarint(r.b)
	if n <= 0 || n > 5 || v > 1<<32-1 {
		r.broken, r.b = true, nil
		return 0
	}
	r.b = r.b[n:]
	return uint32(v)
}

// s32 reads a signed LEB128 of 32 bits.
func (r *reader) s32() int32 {
	var v uint64
	for shift := 0; shift < 35; shift += 7 {
		b := r.byte()
		v |= uint64(b&0x7f) << shift
		if b < 0x80 {
			return int32(int64(v<<(57-shift)) >> (57 - shift))
		}
	}
	r.broken, r.b = true, nil
	return 0
}

// appendS32 writes a signed LEB128.
func appendS32(out []byte, v int32) []byte {
	for ; v < -64 || v > 63; v >>= 7 {
		out = append(out, byte(v)|0x80)
	}
	return append(out, byte(v)&0x7f)
}
