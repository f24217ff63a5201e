package job

import (
	"bytes"
	"compress/flate"
	stdbase64 "encoding/base64"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/countdown"
)

// What is packed comes back through the standard library's reader of DEFLATE, which knows nothing of this one, and through ours.
func FuzzDeflate(f *testing.F) {
	for _, seed := range []string{"", "a", "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", strings.Repeat("ab", 400), "\x00\xff\x90\x8f", Write(Demo(1_777_000_000_000))} {
		f.Add(seed, "")
		f.Add(seed, dictionary)
	}
	f.Fuzz(func(t *testing.T, text, before string) {
		before = before[:min(len(before), 30_000)]
		packed := deflate(text, before)
		other, err := io.ReadAll(flate.NewReaderDict(bytes.NewReader(packed), []byte(before)))
		require.NoError(t, err)
		require.Equal(t, text, string(other))
		again, ok := inflate(packed, before, len(text))
		require.True(t, ok)
		require.Equal(t, text, again)
		if text != "" {
			_, ok = inflate(packed, before, len(text)-1)
			require.False(t, ok, "a bomb is not let grow")
			_, ok = inflate(packed[:len(packed)-1], before, len(text))
			require.False(t, ok, "cut short")
		}
		letters := base64(packed)
		require.Equal(t, stdbase64.RawURLEncoding.EncodeToString(packed), letters)
		back, ok := unbase64(letters)
		require.True(t, ok)
		require.True(t, bytes.Equal(packed, back))
	})
}

// Any bytes at all are told apart: no panic, nothing beyond the most, and where the standard library reads a
// stream of one fixed block that ends where its bytes end, so do we, with the same text.
func FuzzInflate(f *testing.F) {
	f.Add([]byte{3, 0})
	f.Add([]byte{0x4b, 0x04, 0})
	f.Fuzz(func(t *testing.T, packed []byte) {
		const most = 1000
		text, ok := inflate(packed, "abc", most)
		require.LessOrEqual(t, len(text), most+longest)
		in := bytes.NewReader(packed)
		other, err := io.ReadAll(io.LimitReader(flate.NewReaderDict(in, []byte("abc")), most+longest))
		if ok {
			require.NoError(t, err)
			require.Equal(t, string(other), text)
			return
		}
		if err == nil && len(packed) > 0 && packed[0]&7 == 3 && in.Len() == 0 && len(other) <= most {
			t.Fatalf("the standard library reads %q", other)
		}
	})
}

// The codes of lengths and distances, at the ends of each row of the tables in RFC 1951, section 3.2.5.
func TestCodesOfRFC1951(t *testing.T) {
	for _, row := range [][4]int{{257, 0, 3, 3}, {264, 0, 10, 10}, {265, 1, 11, 12}, {268, 1, 17, 18}, {269, 2, 19, 22}, {273, 3, 35, 42},
		{276, 3, 59, 66}, {277, 4, 67, 82}, {280, 4, 115, 130}, {281, 5, 131, 162}, {284, 5, 227, 257}, {285, 0, 258, 258}} {
		for _, length := range []int{row[2], row[3]} {
			code, base, bits := lengthCode(length)
			assert.Equal(t, [3]int{row[0], row[2], row[1]}, [3]int{code, base, bits}, length)
		}
		base, bits := lengthOf(row[0])
		assert.Equal(t, [2]int{row[2], row[1]}, [2]int{base, bits}, row[0])
	}
	for _, row := range [][4]int{{0, 0, 1, 1}, {3, 0, 4, 4}, {4, 1, 5, 6}, {5, 1, 7, 8}, {6, 2, 9, 12}, {9, 3, 25, 32}, {10, 4, 33, 48}, {19, 8, 769, 1024},
		{28, 13, 16_385, 24_576}, {29, 13, 24_577, 32_768}} {
		for _, distance := range []int{row[2], row[3]} {
			code, base, bits := distanceCode(distance)
			assert.Equal(t, [3]int{row[0], row[2], row[1]}, [3]int{code, base, bits}, distance)
		}
		base, bits := distanceOf(row[0])
		assert.Equal(t, [2]int{row[2], row[1]}, [2]int{base, bits}, row[0])
	}
}

// What no writer of DEFLATE makes is refused: a match from before the beginning, codes that the RFC leaves out (3.2.6), letters of base64url
// with bits left over (RFC 4648, 3.5).
func TestBrokenStreams(t *testing.T) {
	stream := func(length, distance, more int) []byte {
		w := &bitWriter{}
		w.put(1|1<<1, 3)
		w.code(fixed('a'))
		w.code(fixed(length))
		w.code(distance, 5)
		w.put(0, more)
		w.code(fixed(endCode))
		w.put(0, 7)
		return w.out
	}
	text, ok := inflate(stream(257, 3, 0), "abc", 100) // three bytes from four back
	assert.True(t, ok)
	assert.Equal(t, "aabc", text)
	for _, broken := range [][]byte{stream(257, 10, 4), stream(257, 30, 0), stream(286, 0, 0), {}, {7}} {
		_, ok = inflate(broken, "abc", 100)
		assert.False(t, ok, "%v", broken)
	}
	for letters, want := range map[string]bool{"": true, "AA": true, "AB": false, "A": false, "AAE": true, "AAF": false, "A=": false} {
		_, ok := unbase64(letters)
		assert.Equal(t, want, ok, letters)
	}
}

// How well the demo job packs, and that it is a link.
func TestPack(t *testing.T) {
	demo := Demo(1_777_000_000_000)
	packed, ok := Pack(demo)
	require.True(t, ok)
	t.Logf("%d bytes of record, %d characters packed", len(Write(demo)), len(packed))
	assert.Less(t, len(packed), 2900, "it fits a QR code, which holds 2,953 bytes (ISO/IEC 18004, version 40, level L)")
	assert.Empty(t, strings.Trim(packed, urlSigns+"=."), "letters that stand in a fragment as they are (RFC 3986, section 3.5)")
	again, problems := Unpack("#" + packed)
	require.Empty(t, problems)
	assert.Equal(t, demo, again)
	assert.True(t, Packed("#"+packed))

	for cut := range len(packed) {
		j, problems := Unpack(packed[:cut])
		require.Nil(t, j)
		require.Len(t, problems, 1)
	}
	large := Demo(1_777_000_000_000)
	for i := range 400 {
		large.Notes = append(large.Notes, Note{"z" + countdown.Pad(int64(i), 1), countdown.Instant(i * 7919), strings.Repeat(string(rune('a'+i%26)), i%17+1) + countdown.Pad(int64(i*i*7919), 1)})
	}
	_, ok = Pack(large)
	assert.False(t, ok, "too large for a link")
	bomb := packedKey + base64(deflate(strings.Repeat(" ", 400_000), dictionary))
	require.Less(t, len(bomb), MaxPacked)
	j, problems := Unpack(bomb)
	assert.Nil(t, j)
	assert.Len(t, problems, 1)
}

// No link, however broken, gives part of a job.
func FuzzUnpack(f *testing.F) {
	packed, _ := Pack(Demo(1_777_000_000_000))
	f.Add(packed)
	f.Add(packedKey)
	f.Fuzz(func(t *testing.T, text string) {
		j, problems := Unpack(text)
		require.Equal(t, j == nil, len(problems) > 0)
		if j != nil && j.Newer == 0 {
			again, problems := Read(Write(j))
			require.Empty(t, problems)
			require.Equal(t, j, again)
		}
	})
}
