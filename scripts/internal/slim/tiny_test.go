package slim

import (
	"encoding/binary"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Addresses in the memory of a tiny module, chosen so that some are no multiple of 8.
const (
	tinyText   = 0x20 // some other content
	tinyHeader = 0x100
	tinyNames  = 0x180
	tinyFiles  = 0x1d0
	tinyRuns   = 0x1e9
	tinyFuncs  = 0x220
	tinyData   = 0x420
	tinyEnd    = 0x4a0
	tinyModule = 0x4b0
	tinySize   = 0x800
)

const tinyNameTable = "\x00main.f\x00runtime.(*T).M\x00reflect.makeFuncStub\x00main.(*T).M\x00runtime.g\x00"

// Runs of the tiny module, and where they are: 1 to 3 are of lines only, 4 is one of lines and one of stack depths too.
var tinyRunTable = "\x00" +
	"\x02\x05\x00" + // at 1
	"\x04\x05\x00" + // at 4
	"\x02\x81\x01\x03\x01\x00" + // at 7
	"\x20\x05\x00" + // at 13: a depth of 15
	"\x06\x02\x01\x03\x04\x01\x00" + // at 16: 2, 1, 3
	"\x02\x09\x00" // at 23

// tinyMemory is the memory of a program with four functions, as Go's linker would lay it out.
func tinyMemory() []byte {
	mem := make([]byte, tinySize)
	copy(mem[tinyText:], "some other content")
	copy(mem[tinyHeader:], magic)
	put8 := func(at int, values ...uint64) {
		for i, v := range values {
			le.PutUint64(mem[at+8*i:], v)
		}
	}
	put8(tinyHeader+8, 4, 1, 0, tinyNames-tinyHeader, tinyFiles-tinyHeader, tinyFiles+8-tinyHeader, tinyRuns-tinyHeader, tinyFuncs-tinyHeader)
	copy(mem[tinyNames:], tinyNameTable)
	copy(mem[tinyFiles:], "\x00\x00\x00\x00\x00\x00\x00\x00main.go\x00")
	copy(mem[tinyRuns:], tinyRunTable)
	at := 40
	record := func(n int, words ...uint32) {
		le.PutUint32(mem[tinyFuncs+8*n:], uint32(0x1000+n))
		le.PutUint32(mem[tinyFuncs+8*n+4:], uint32(at))
		for i, w := range append([]uint32{uint32(0x1000 + n)}, words...) {
			le.PutUint32(mem[tinyFuncs+at+4*i:], w)
		}
		at = (at + 4*len(words) + 4 + 7) / 8 * 8
	}
	// name, args, deferreturn, pcsp, pcfile, pcln, npcdata, cuOffset, startLine, ID and flag and nfuncdata
	record(0, 1, 8, 2, 13, 1, 4, 3, 0, 77, 6<<24 /* runs */, 7, 23, 16 /* data */, 0, none, none, 0x20, none, 0x10)
	record(1, 8, 8, 0, 4, 1, 4, 0, 0, 88, 0x17)
	record(2, 23, 1<<31, 0, 13, 0, 0, 1, 0, 99, 1<<24, 0, 0x10)
	record(3, 44, 8, 0, 13, 1, 7, 0, 0, 11, 0)
	le.PutUint32(mem[tinyFuncs+32:], 0x1004)
	copy(mem[tinyData:], "stack map 16 byte"[:16])
	copy(mem[tinyData+0x10:], "\x00\x08\x08\x08\xff")
	for i := range 4 { // inlined calls 0 to 3
		call := mem[tinyData+0x20+16*i:]
		call[0] = byte(i)
		le.PutUint32(call[4:], 56)
		le.PutUint32(call[8:], uint32(0x30+i))
		le.PutUint32(call[12:], uint32(0x40+i))
	}
	put8(tinyModule, tinyHeader, tinyNames, 80, 80, tinyFiles, 2, 2, tinyFiles+8, 17, 17, tinyRuns, 55, 55, tinyFuncs, 512, 512, tinyFuncs, 5, 5)
	put8(tinyModule+8*40, tinyData, tinyEnd)
	mem[tinySize-1] = 1
	return mem
}

// tinyModuleOf wraps a memory in a module.
func tinyModuleOf(mem []byte, version string) module {
	name := func(s string) string { return string(append(binary.AppendUvarint(nil, uint64(len(s))), s...)) }
	return module{
		{customSection, []byte(name("go:buildid") + "abc")},
		{typeSection, []byte{1, 0x60, 1, 0x7f, 1, 0x7f}},
		{importSection, []byte("\x02" + name("gojs") + name("a") + "\x00\x00" + name("gojs") + name("b") + "\x00\x00")},
		{functionSection, []byte{1, 0}},
		{memorySection, []byte{1, 0, 1}},
		{7, []byte{0}},
		{9, []byte{0}},
		{codeSection, []byte{1, 4, 0, 0x41, 0, 0x0b}},
		{dataSection, segments(mem)},
		{customSection, []byte(name("producers") + "\x01" + name("language") + "\x01" + name("Go") + name(version))},
	}
}

func tiny() []byte { return tinyModuleOf(tinyMemory(), "go1.26.8-X:nogreenteagc").write() }

func TestTiny(t *testing.T) {
	out, err := Slim(tiny())
	require.NoError(t, err)
	m, err := readModule(out)
	require.NoError(t, err)

	assert.Equal(t, []byte{2, 0x60, 1, 0x7f, 1, 0x7f, 0x60, 0, 0}, m.find(typeSection).body)
	assert.Equal(t, []byte{2, 0, 1}, m.find(functionSection).body)
	assert.Equal(t, []byte{3}, m.find(startSection).body, "behind two imported functions and one other")
	assert.Equal(t, 7, slices.IndexFunc(m, func(s section) bool { return s.id == 9 }), "elements come after the start")
	assert.Equal(t, []byte{2, 4, 0, 0x41, 0, 0x0b}, m.find(codeSection).body[:6])

	mem, err := m.memory()
	require.NoError(t, err)
	was := tinyMemory()
	assert.Equal(t, was[:tinyNames], mem[:tinyNames], "before the tables")
	assert.Equal(t, was[tinyEnd:], mem[tinyEnd:tinySize], "behind the tables")
	assert.Len(t, mem, page)
	assert.Equal(t, 44, zeros(mem[tinyFuncs:]), "the index, up to a multiple of 8, and the number in the first record")

	tables, err := findTables(mem)
	require.NoError(t, err)
	tables.fill()
	name := func(n int) string {
		rest := tables.names[tables.records[n].word(nameOff):]
		return string(rest[:slices.Index(rest, 0)])
	}
	assert.Equal(t, []string{"f", "runtime.(*T).m", "reflect.makeFuncStub", "p.(*T).m"}, []string{name(0), name(1), name(2), name(3)})
	assert.Equal(t, len(tables.files), zeros(tables.files))

	// The runs that are left, the short ones first; that of lines alone and that of signals are gone.
	assert.Equal(t, "\x00"+"\x02\x09\x00"+"\x20\x05\x00"+"\x04\x05\x00"+"\x06\x02\x01\x03\x04\x01\x00", string(tables.runs[:17]))
	assert.Equal(t, len(tables.runs)-17, zeros(tables.runs[17:]))
	rest := func(n int) []uint32 {
		var words []uint32
		for word := range len(tables.records[n]) / 4 {
			if word != nameOff {
				words = append(words, tables.records[n].word(word))
			}
		}
		return words
	}
	// What another record needs too is not cleared (here the data at 0x10).
	assert.Equal(t, []uint32{0x1000, 8, 2, 4, 0, 0, 3, 0, 0, 6 << 24, 0, 1, 10, 0, none, none, 0x20, none, none}, rest(0))
	assert.Equal(t, []uint32{0x1001, 8, 0, 7, 0, 0, 0, 0, 0, 0x17}, rest(1))
	assert.Equal(t, []uint32{0x1002, 1 << 31, 0, 4, 0, 0, 1, 0, 0, 1 << 24, 0, 0x10}, rest(2))
	assert.Equal(t, []uint32{0x1003, 8, 0, 4, 0, 0, 0, 0, 0, 0}, rest(3))
	assert.Equal(t, was[tinyData:tinyData+0x20], tables.data[:0x20])
	for i := range 4 {
		call := tables.data[0x20+16*i:]
		assert.Equal(t, []byte{byte(i), 0, 0, 0}, call[:4])
		assert.Equal(t, "runtime.f\x00", string(tables.names[le.Uint32(call[4:]):][:10]))
		assert.Equal(t, []byte{byte(0x30 + i), 0, 0, 0, 0, 0, 0, 0}, call[8:16])
	}
	again, err := Slim(out)
	require.NoError(t, err)
	assert.Equal(t, out, again)
}

// TestRefuses: what is not laid out as it is known to be is not touched.
func TestRefuses(t *testing.T) {
	memory := func(change func(mem []byte)) []byte {
		mem := tinyMemory()
		change(mem)
		return tinyModuleOf(mem, "go1.26.8").write()
	}
	word := func(at int, v uint32) []byte { return memory(func(mem []byte) { le.PutUint32(mem[at:], v) }) }
	second := func(mem []byte) { // all of the tables once more, 0x4000 further on
		copy(mem[0x4000:], mem[:tinySize])
		for _, at := range []int{0, 1, 4, 7, 10, 13, 16, 40, 41} {
			place := mem[0x4000+tinyModule+8*at:]
			le.PutUint64(place, le.Uint64(place)+0x4000)
		}
	}
	twice := make([]byte, 0x8000)
	copy(twice, tinyMemory())
	second(twice)
	without := func(id byte) []byte {
		return slices.DeleteFunc(tinyModuleOf(tinyMemory(), "go1.26"), func(s section) bool { return s.id == id }).write()
	}
	start := slices.Insert(tinyModuleOf(tinyMemory(), "go1.26"), 6, section{startSection, []byte{2}})
	double := append(tinyModuleOf(tinyMemory(), "go1.26"), section{typeSection, []byte{0}})
	global := tinyModuleOf(tinyMemory(), "go1.26")
	global.find(importSection).body[len("\x02\x04gojs\x01a")] = 3
	data := func(body string) []byte {
		m := tinyModuleOf(tinyMemory(), "go1.26")
		m.find(dataSection).body = []byte(body)
		return m.write()
	}
	huge := tinyModuleOf(tinyMemory(), "go1.26")
	huge.find(memorySection).body = []byte{1, 0, 0x80, 0x80, 4}
	firstRecord := tinyFuncs + 40
	for what, c := range map[string]struct {
		wasm []byte
		says string
	}{
		"nothing":                        {nil, "not a WebAssembly module"},
		"an older module":                {[]byte("\x00asm\x00\x00\x00\x00"), "not a WebAssembly module"},
		"an empty module":                {preamble, "missing"},
		"a module cut short":             {tiny()[:len(tiny())-1], "cut short"},
		"no code":                        {without(codeSection), "section 10 is missing"},
		"no data":                        {without(dataSection), "section 11 is missing"},
		"a section twice":                {double.write(), "twice"},
		"another start function":         {start.write(), "start function of its own"},
		"something else imported":        {global.write(), "no function"},
		"a later Go":                     {tinyModuleOf(tinyMemory(), "go1.27").write(), "made by go1.27"},
		"a much later Go":                {tinyModuleOf(tinyMemory(), "go1.260").write(), "made by go1.260"},
		"no Go":                          {without(customSection), "which Go"},
		"a memory of 4 GB":               {huge.write(), "usual size"},
		"data that wait for the program": {data("\x01\x01\x01a"), "not of the kind"},
		"data at no constant":            {data("\x01\x00\x23\x00\x0b\x01a"), "not of the kind"},
		"data outside the memory":        {data("\x01\x00\x41\xff\xff\x03\x0b\x02ab"), "outside"},
		"data cut short":                 {data("\x01\x00\x41\x00\x0b\x02a"), "cut short"},
		"another magic":                  {memory(func(mem []byte) { mem[tinyHeader] = 0xf0 }), "known layout"},
		"another step":                   {memory(func(mem []byte) { mem[tinyHeader+6] = 4 }), "known layout"},
		"small pointers":                 {memory(func(mem []byte) { mem[tinyHeader+7] = 4 }), "known layout"},
		"no module data":                 {word(tinyModule, 0), "known layout"},
		"another table of names":         {word(tinyModule+8, tinyNames+1), "known layout"},
		"data before the functions":      {word(tinyModule+8*40, tinyFuncs-1), "known layout"},
		"data beyond the memory":         {word(tinyModule+8*41, page+1), "known layout"},
		"another count":                  {word(tinyHeader+8, 3), "known layout"},
		"two sets of tables":             {tinyModuleOf(twice, "go1.26").write(), "two sets"},
		"an index of another order":      {word(tinyFuncs+8, 0x1002), "one after another"},
		"an index that leads elsewhere":  {word(tinyFuncs+12, 41), "one after another"},
		"a record of another function":   {word(firstRecord, 0x1001), "one after another"},
		"a record with too many runs":    {word(firstRecord+28, 1<<30), "cut short"},
		"a name beyond the table":        {word(firstRecord+4, 80), "name is not there"},
		"a run beyond the table":         {word(firstRecord+16, 55), "run is not there"},
		"a run without an end":           {word(firstRecord+16, 54), "run is not there"},
		"data beyond the end":            {word(firstRecord+56, 0x80), "data is not there"},
		"arguments without an end":       {word(firstRecord+4*19, 0x20), "data is not there"},
		"inlined calls beyond the end":   {word(firstRecord+4*17, 0x50), "inlined"},
		"inlined calls of another":       {word(firstRecord+4*17, 1<<31-1), "not there"},
		"an inlined call without a name": {word(tinyData+0x24, 80), "name of an inlined call"},
	} {
		out, err := Slim(c.wasm)
		require.ErrorContains(t, err, c.says, what)
		assert.Nil(t, out, what)
	}
}

// FuzzSlim: whatever comes, no panic; and what was made slim once can be made slim again, to the same.
func FuzzSlim(f *testing.F) {
	f.Add(tiny())
	f.Add([]byte{})
	f.Add(tiny()[:100])
	out, err := Slim(tiny())
	require.NoError(f, err)
	f.Add(out)
	f.Fuzz(func(t *testing.T, wasm []byte) {
		out, err := Slim(wasm)
		if err != nil {
			require.Nil(t, out)
			return
		}
		again, err := Slim(out)
		require.NoError(t, err)
		require.Equal(t, out, again)
	})
}

// FuzzTables changes the memory of a module that is sound in all else.
func FuzzTables(f *testing.F) {
	f.Add(uint16(tinyFuncs+40+28), uint32(2), uint16(tinyRuns), uint32(7))
	f.Fuzz(func(t *testing.T, at1 uint16, v1 uint32, at2 uint16, v2 uint32) {
		mem := tinyMemory()
		le.PutUint32(mem[int(at1)%(tinySize-4):], v1)
		le.PutUint32(mem[int(at2)%(tinySize-4):], v2)
		wasm := tinyModuleOf(mem, "go1.26").write()
		out, err := Slim(wasm)
		if err != nil {
			require.Nil(t, out)
			return
		}
		again, err := Slim(out)
		require.NoError(t, err)
		require.Equal(t, out, again)
	})
}

func TestSignedNumbers(t *testing.T) {
	for _, v := range []int32{0, 1, -1, 63, 64, -64, -65, 8191, 8192, 1 << 20, 1<<31 - 1, -1 << 31} {
		r := &reader{b: appendS32(nil, v)}
		assert.Equal(t, v, r.s32())
		assert.False(t, r.broken)
		assert.Empty(t, r.b)
	}
	// The examples of DWARF 5, section 7.6.
	for v, want := range map[int32]string{2: "\x02", -2: "\x7e", 127: "\xff\x00", -127: "\x81\x7f", 128: "\x80\x01", -128: "\x80\x7f", 129: "\x81\x01", -129: "\xff\x7e"} {
		assert.Equal(t, want, string(appendS32(nil, v)))
	}
}
