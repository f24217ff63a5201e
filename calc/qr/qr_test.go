package qr_test

import (
	"encoding/xml"
	"image"
	"image/color"
	"strconv"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/job"
	"setbook/calc/qr"
)

// scan reads a code as a camera would see it, drawn from the SVG path alone, by a library that has nothing to do with the one
// that drew it (github.com/makiuchi-d/gozxing).
func scan(t testing.TB, c *qr.Code) string {
	t.Helper()
	const scale = 3
	var ox, oy, w, h int
	for i, part := range strings.Fields(c.Box()) {
		n, err := strconv.Atoi(part)
		require.NoError(t, err)
		*[]*int{&ox, &oy, &w, &h}[i] = n
	}
	picture := image.NewGray(image.Rect(0, 0, w*scale, h*scale))
	for i := range picture.Pix {
		picture.Pix[i] = 255
	}
	for _, bar := range strings.Split(strings.TrimSuffix(c.Path(), "z"), "z") {
		// M x y h long v1 h -long
		numbers := strings.FieldsFunc(bar, func(r rune) bool { return strings.ContainsRune("Mhv ", r) })
		require.Len(t, numbers, 5, bar)
		x, _ := strconv.Atoi(numbers[0])
		y, _ := strconv.Atoi(numbers[1])
		long, _ := strconv.Atoi(numbers[2])
		require.Equal(t, []string{"1", "-" + numbers[2]}, numbers[3:])
		for py := y * scale; py < (y+1)*scale; py++ {
			for px := x * scale; px < (x+long)*scale; px++ {
				picture.SetGray(px, py, color.Gray{})
			}
		}
	}
	for y := range c.Side {
		for x := range c.Side {
			white := picture.GrayAt((x+qr.Quiet)*scale+1, (y+qr.Quiet)*scale+1).Y
			require.Equal(t, c.Black(x, y), white == 0, "module %d, %d", x, y) // a scanner would mend what the path leaves out
		}
	}
	bits, err := gozxing.NewBinaryBitmapFromImage(picture)
	require.NoError(t, err)
	read, err := qrcode.NewQRCodeReader().Decode(bits, map[gozxing.DecodeHintType]interface{}{gozxing.DecodeHintType_CHARACTER_SET: "UTF-8", gozxing.DecodeHintType_PURE_BARCODE: true})
	require.NoError(t, err)
	return read.GetText()
}

// What is drawn is scanned again by another library, from the smallest code to the largest.
func TestScans(t *testing.T) {
	packed, ok := job.Pack(job.Demo(1_777_000_000_000))
	require.True(t, ok)
	for _, text := range []string{"x", "https://setbook.invalid/bed/#v=1&width=1/2+in", "Größe 12,5 mm · 日本", strings.Repeat("ab12", 300), "https://setbook.invalid/job/#" + packed} {
		c, ok := qr.Of(text)
		require.True(t, ok, text)
		assert.Equal(t, text, scan(t, c))
	}
}

// The capacities of level L for bytes, from ISO/IEC 18004, table 7, as commonly reprinted: 17, 271, 858, 2,953 for versions 1, 10, 20 and 40,
// whose sides are 21, 57, 97 and 177 modules.
func TestCapacities(t *testing.T) {
	for most, side := range map[int]int{17: 21, 271: 57, 858: 97, qr.Most: 177} {
		c, ok := qr.Of(strings.Repeat("j", most))
		require.True(t, ok)
		assert.Equal(t, side, c.Side, "%d bytes just fit", most)
		larger, ok := qr.Of(strings.Repeat("j", most+1))
		assert.Equal(t, most != qr.Most, ok)
		if ok {
			assert.Equal(t, side+4, larger.Side, "one byte more takes the next size")
		}
	}
}

// The path stands in an attribute as it is.
func TestPathIsPlain(t *testing.T) {
	c, _ := qr.Of("<&\">")
	assert.Equal(t, "0 0 29 29", c.Box(), "21 modules, and 4 of white on each side (ISO/IEC 18004)")
	assert.True(t, strings.HasPrefix(c.Path(), "M4 4h7v1h-7z"), "the first finder pattern begins inside the white: %s", c.Path()[:20])
	var svg struct {
		Path struct {
			D string `xml:"d,attr"`
		} `xml:"path"`
	}
	require.NoError(t, xml.Unmarshal([]byte(`<svg viewBox="`+c.Box()+`"><path d="`+c.Path()+`"/></svg>`), &svg))
	assert.Equal(t, c.Path(), svg.Path.D)
}

// Any text that fits is scanned again.
func FuzzScan(f *testing.F) {
	f.Add("https://setbook.invalid/")
	f.Fuzz(func(t *testing.T, text string) {
		text = strings.ToValidUTF8(text, "?")
		if text == "" || len(text) > 500 || strings.ContainsRune(text, 0) {
			return
		}
		c, ok := qr.Of(text)
		require.True(t, ok)
		require.Equal(t, text, scan(t, c))
	})
}
