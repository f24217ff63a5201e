package job

import (
	"math"
	"strings"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// A picture stands in the record as a data URL (RFC 2397) of a JPEG, PNG or WebP image in base64 (RFC 4648, section 4). Nothing else is
// taken: SVG can run. How many pixels it opens into is read from its own head before any browser is handed it, so that a small file cannot
// fill a phone.
const (
	MaxPicture  = 400_000   // characters of one that is read
	MaxSide     = 2048      // pixels of one that is read, each way
	MaxTaken    = 120_000   // characters of one that this program makes
	MaxPictures = 4_000_000 // characters of all of a job that this program puts into it: half of what a file may hold
)

// Shot is one way of making a picture small: its size in pixels, and the quality of the JPEG from 0 to 1.
type Shot struct {
	Width, Height int
	Quality       float64
}

// Shots are the ways of making a picture of so many pixels small, the best first: the first that gives no more than MaxTaken characters
// is the one to keep. A corner of a paver is told apart at any of them.
func Shots(width, height int) (list []Shot) {
	for _, side := range [...]int{1024, 800, 640, 480, 320} {
		if long := max(width, height); side < long || len(list) == 0 {
			share := min(1, float64(side)/float64(max(long, 1)))
			w, h := part(width, share), part(height, share)
			list = append(list, Shot{w, h, 0.75}, Shot{w, h, 0.5})
		}
	}
	return list
}

func part(pixels int, share float64) int { return max(1, int(math.Round(float64(pixels)*share))) }

// Small reports whether a picture is small enough to keep.
func Small(text string) bool { return len(text) <= MaxTaken }

// Pictures is how many characters the pictures of a job take, all together.
func (j *Job) Pictures() (sum int) {
	for i := range j.Checks {
		sum += len(j.Checks[i].Picture)
	}
	return sum
}

// checkPicture takes an image that a browser shows and that can run nothing.
func checkPicture(text string) words.Line {
	_, in, ok := pictureOf(text)
	if width, height, known := PictureSize(text); !ok || !known || !in.whole() {
		return words.Say("read “{read}”, which is no JPEG, PNG or WebP image written as a data URL in base64.", words.Text("read", calc.Cut(Clean(text[:min(len(text), MaxName)], MaxName))))
	} else if max(width, height) > MaxSide {
		return words.Say("read an image of {width} by {height} pixels. The most is {most} each way.",
			words.Is("width", unit.Count(width), unit.Whole1), words.Is("height", unit.Count(height), unit.Whole1), words.Is("most", unit.Count(MaxSide), unit.Whole1))
	}
	return fine
}

// PictureSize is the size in pixels of a picture as it stands in the record, as its own head tells it. It reports false for
// anything that does not begin as the data URL of an image of the kind that it names. What follows the head is not looked at.
func PictureSize(text string) (width, height int, ok bool) {
	kind, in, ok := pictureOf(text)
	if !ok {
		return 0, 0, false
	}
	switch kind {
	case "jpeg":
		width, height = in.jpeg()
	case "png":
		width, height = in.png()
	case "webp":
		width, height = in.webp()
	}
	return width, height, width > 0 && height > 0
}

// PictureBytes is the image itself and its media type (RFC 2046), for a browser; nil where the text is no picture.
func PictureBytes(text string) (media string, image []byte) {
	kind, in, ok := pictureOf(text)
	if !ok || !in.whole() {
		return "", nil
	}
	image = make([]byte, in.size)
	for i := range image {
		image[i] = byte(in.at(i))
	}
	return "image/" + kind, image
}

// letters is base64 whose bytes are read where they are wanted.
type letters struct {
	text string
	size int // bytes
}

// pictureOf parts a data URL of an image into its kind and its base64.
func pictureOf(text string) (kind string, in letters, ok bool) {
	rest, ok := strings.CutPrefix(text, "data:image/")
	if !ok {
		return "", in, false
	}
	kind, rest, ok = strings.Cut(rest, ";base64,")
	if !ok || kind != "jpeg" && kind != "png" && kind != "webp" || len(rest)%4 != 0 {
		return "", in, false
	}
	bare := strings.TrimSuffix(strings.TrimSuffix(rest, "="), "=")
	return kind, letters{bare, len(bare) * 6 / 8}, true
}

// whole reports whether all of it is base64.
func (l letters) whole() bool {
	for i := range len(l.text) {
		if base64Value[l.text[i]] == 0 {
			return false
		}
	}
	return true
}

const base64Signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/"

// base64Value is one more than what a letter of base64 stands for; 0: it is none.
var base64Value = func() (value [256]uint8) {
	for i, c := range []byte(base64Signs) {
		value[c] = uint8(i + 1)
	}
	return value
}()

// at is a byte; beyond the end it is -1, so that no head is read past it.
func (l letters) at(i int) int {
	if i < 0 || i >= l.size {
		return -1
	}
	first, shift := i*8/6, 4-i%3*2 // byte 0, 1, 2 of three begins in letter 0, 1, 2 of four and leaves 4, 2, 0 bits of the next
	two := (int(base64Value[l.text[first]])-1)<<6 | (int(base64Value[l.text[first+1]]) - 1)
	return two >> shift & 0xff
}

// is reports whether bytes stand at a place.
func (l letters) is(at int, bytes string) bool {
	for i := range len(bytes) {
		if l.at(at+i) != int(bytes[i]) {
			return false
		}
	}
	return true
}

// big and little are whole numbers of some bytes, the highest first or last; 0 where the end comes before.
func (l letters) big(at, bytes int) (n int) {
	for i := range bytes {
		n = n<<8 | max(0, l.at(at+i))
	}
	return n
}

func (l letters) little(at, bytes int) (n int) {
	for i := range bytes {
		n |= max(0, l.at(at+i)) << (8 * i)
	}
	return n
}

// jpeg walks over the segments to the head of the frame (ITU-T T.81, annex B).
func (l letters) jpeg() (width, height int) {
	if !l.is(0, "\xff\xd8\xff") {
		return 0, 0
	}
	for at := 2; l.at(at) == 0xff; {
		switch mark := l.at(at + 1); {
		case mark == 0xff: // a byte of filling
			at++
		case 0xc0 <= mark && mark <= 0xcf && mark != 0xc4 && mark != 0xc8 && mark != 0xcc:
			return l.big(at+7, 2), l.big(at+5, 2)
		case mark < 0xc0 || 0xd0 <= mark && mark <= 0xda: // what comes before the frame has none of these
			return 0, 0
		default:
			at += 2 + max(2, l.big(at+2, 2))
		}
	}
	return 0, 0
}

// png reads its first chunk (Portable Network Graphics, third edition, W3C, 11.2.1).
func (l letters) png() (width, height int) {
	if !l.is(0, "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR") {
		return 0, 0
	}
	return l.big(16, 4), l.big(20, 4)
}

// webp reads its first chunk: the head of the canvas, of an image without loss (RFC 9649), or of a frame with loss (RFC 6386, 9.1).
func (l letters) webp() (width, height int) {
	if !l.is(0, "RIFF") || !l.is(8, "WEBPVP8") {
		return 0, 0
	}
	switch {
	case l.is(15, "X") && l.at(29) >= 0:
		return 1 + l.little(24, 3), 1 + l.little(27, 3)
	case l.is(15, "L") && l.is(20, "\x2f") && l.at(24) >= 0:
		bits := l.little(21, 4)
		return 1 + bits&0x3fff, 1 + bits>>14&0x3fff
	case l.is(15, " ") && l.is(23, "\x9d\x01\x2a"):
		return l.little(26, 2) & 0x3fff, l.little(28, 2) & 0x3fff
	}
	return 0, 0
}
