package slim

import (
	"bytes"
	"encoding/binary"
	"errors"
)

const (
	page    = 64 << 10
	largest = 256 << 20 // no program for a phone comes near; a damaged file may claim any address
)

// gap is the shortest run of zeros that is left out between two segments of data. Memory starts as zeros, so any gap
// may be left out or sent; but a segment has a header of its own, which compresses far worse than zeros do. The
// comment of the package shows what was measured.
const gap = 64

// memory gives the program's memory as it is before the first instruction.
func (m module) memory() ([]byte, error) {
	r := &reader{b: m.find(memorySection).body}
	memories, limits, pages := r.u32(), r.byte(), r.u32()
	if r.broken || memories != 1 || limits > 1 || pages > largest/page {
		return nil, errors.New("it has not one memory of a usual size")
	}
	mem := make([]byte, pages*page)
	r = &reader{b: m.find(dataSection).body}
	for n := r.u32(); n > 0; n-- {
		mode, instruction := r.u32(), r.byte()
		at := uint32(r.s32())
		end := r.byte()
		content := r.bytes(int(r.u32()))
		if r.broken || mode != 0 || instruction != opConst || end != opEnd {
			return nil, errors.New("a segment of data is cut short or not of the kind that Go's linker writes")
		}
		if int64(at)+int64(len(content)) > int64(len(mem)) {
			return nil, errors.New("a segment of data lies outside the memory")
		}
		copy(mem[at:], content)
	}
	return mem, nil
}

// segments writes a memory as the body of a data section.
func segments(mem []byte) []byte {
	var out []byte
	count := 0
	for at := 0; ; {
		at += zeros(mem[at:])
		if at == len(mem) {
			break
		}
		end := at
		for end < len(mem) {
			if mem[end] != 0 {
				end++
				continue
			}
			run := zeros(mem[end:])
			if run >= gap || end+run == len(mem) {
				break
			}
			end += run
		}
		count++
		out = append(out, 0, opConst)
		out = appendS32(out, int32(at))
		out = append(out, opEnd)
		out = binary.AppendUvarint(out, uint64(end-at))
		out = append(out, mem[at:end]...)
		at = end
	}
	return append(binary.AppendUvarint(nil, uint64(count)), out...)
}

// zeros counts the zeros at the head.
func zeros(b []byte) int { return len(b) - len(bytes.TrimLeft(b, "\x00")) }
