package job_test

import (
	"bytes"
	"encoding/base64"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	_ "golang.org/x/image/webp"

	"setbook/calc/job"
)

func dataURL(kind string, bytes []byte) string {
	return "data:image/" + kind + ";base64," + base64.StdEncoding.EncodeToString(bytes)
}

// drawn is an image that does not compress to nothing.
func drawn(width, height int) image.Image {
	i := image.NewRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			i.Set(x, y, color.RGBA{uint8(x * y), uint8(x ^ y), uint8(x + 3*y), 255})
		}
	}
	return i
}

func encoded(t testing.TB, width, height int) map[string][]byte {
	var j, p bytes.Buffer
	require.NoError(t, jpeg.Encode(&j, drawn(width, height), nil))
	require.NoError(t, png.Encode(&p, drawn(width, height)))
	return map[string][]byte{"jpeg": j.Bytes(), "png": p.Bytes()}
}

// heads are the first bytes of three images that golang.org/x/image tests its own decoder with (blue-purple-pink.lossy.webp, the same lossless, and
// yellow_rose.lossy-with-alpha.webp): a frame with loss, one without, and a canvas. A browser's tests cannot read files.
var heads = [...]string{
	"UklGRooJAABXRUJQVlA4IH4JAAAyLwCdASqWAGQAPo04lUeioYwGg0EUBGJZQDWZNsO1JP5n64fB3Ub8v+o9XG3d53fTuYGQ1jfacgmJk6PthcDb6Dzr0z01vyivwkv9",
	"UklGRm5MAABXRUJQVlA4TGJMAAAvlcAYAI0waBvJkWbue/b5091yICL6n4cTUWbEWGxykqE7+EmlKQUilWymdZATM23bmD/inu1GAmUkSVpcHDyc/CN7XHxU1DaS4y38",
	"UklGRiwtAABXRUJQVlA4WAoAAAAQAAAAjwEALAEAQUxQSOMOAAAB/yckSPD/eGtEpO7hD9v/dUr8/7sR0qFIuwp2d8emHZvYwfZa66rbbXd3d8eW3e2G3Yq+FF8qIaDY",
}

func webps(t testing.TB) (all [][]byte) {
	for _, text := range heads {
		b, err := base64.StdEncoding.DecodeString(text)
		require.NoError(t, err)
		all = append(all, b)
	}
	return all
}

// The size of a picture is what the decoders of the standard library and of golang.org/x/image say; the bytes are those of encoding/base64.
func TestPictureSize(t *testing.T) {
	check := func(kind string, held []byte) {
		t.Helper()
		want, name, err := image.DecodeConfig(bytes.NewReader(held))
		require.NoError(t, err)
		require.Equal(t, kind, name)
		width, height, ok := job.PictureSize(dataURL(kind, held))
		assert.True(t, ok)
		assert.Equal(t, [2]int{want.Width, want.Height}, [2]int{width, height}, kind)
		media, got := job.PictureBytes(dataURL(kind, held))
		assert.Equal(t, "image/"+kind, media)
		assert.Equal(t, held, got)
	}
	for _, size := range [][2]int{{1, 1}, {3, 2}, {640, 481}, {17, 300}} {
		for kind, held := range encoded(t, size[0], size[1]) {
			check(kind, held)
		}
	}
	for _, held := range webps(t) {
		check("webp", held)
	}
	// A table of codes may stand before the frame (ITU-T T.81, B.2.4), and is no frame, though its mark is among theirs.
	held := encoded(t, 640, 481)["jpeg"]
	at := bytes.Index(held, []byte("\xff\xc4"))
	end := at + 2 + int(held[at+2])<<8 + int(held[at+3])
	check("jpeg", slices.Concat(held[:2], held[at:end], held[2:at], held[end:]))
}

// What names a kind that it is not, is cut short, or is no base64, is no picture; nor is an image that opens into more pixels than a phone should be
// handed, however few letters it has.
func TestPicturesThatAreNotTaken(t *testing.T) {
	held := encoded(t, 40, 30)
	good := dataURL("png", held["png"])
	huge := append([]byte(nil), held["png"]...)
	copy(huge[16:24], []byte{0, 0, 0x75, 0x30, 0, 0, 0x75, 0x30}) // 30,000 by 30,000 pixels in a few hundred bytes
	large := dataURL("jpeg", encoded(t, job.MaxSide+1, 1)["jpeg"])
	record := func(picture string) string {
		j := job.Demo(noon)
		j.Checks[1].Picture = picture
		return job.Write(j)
	}
	j, problems := job.Read(record(good))
	require.Empty(t, problems)
	assert.Equal(t, good, j.Checks[1].Picture)
	most := dataURL("jpeg", encoded(t, job.MaxSide, 1)["jpeg"])
	_, problems = job.Read(record(most))
	assert.Empty(t, problems)
	for bad, want := range map[string]string{
		dataURL("jpeg", held["png"]):                        "no JPEG, PNG or WebP",
		dataURL("png", held["jpeg"]):                        "no JPEG, PNG or WebP",
		dataURL("webp", held["png"]):                        "no JPEG, PNG or WebP",
		dataURL("gif", []byte("GIF89a")):                    "no JPEG, PNG or WebP",
		dataURL("svg+xml", []byte("<svg/>")):                "no JPEG, PNG or WebP",
		dataURL("png", held["png"][:20]):                    "no JPEG, PNG or WebP",
		dataURL("jpeg", held["jpeg"][:100]):                 "no JPEG, PNG or WebP",
		good[:len(good)-1]:                                  "no JPEG, PNG or WebP",
		good[:60] + "=" + good[61:]:                         "no JPEG, PNG or WebP",
		good[:60] + "\\" + good[61:]:                        "no JPEG, PNG or WebP",
		"data:image/png;base64,":                            "no JPEG, PNG or WebP",
		"data:text/html;base64,PHNjcmlwdD4=":                "no JPEG, PNG or WebP",
		"javascript:alert(1)":                               "no JPEG, PNG or WebP",
		dataURL("png", huge):                                "30000 by 30000",
		large:                                               "2049 by 1",
		dataURL("png", encoded(t, 1, job.MaxSide+1)["png"]): "1 by 2049",
		good + strings.Repeat("A", job.MaxPicture):          "more than 400000",
	} {
		j, problems := job.Read(record(bad))
		assert.Nil(t, j, bad[:15])
		require.Len(t, problems, 1, bad[:15])
		assert.Equal(t, "checks[2].picture", problems[0].Path)
		assert.Contains(t, says(problems), want)
	}
}

// Shots keep the shape of a picture, never make it larger, and come to a size that always fits: 320 by 320 pixels at 8 bits each are fewer than MaxTaken
// letters of base64.
func TestShots(t *testing.T) {
	for _, size := range [][2]int{{4000, 3000}, {3000, 4000}, {1024, 768}, {1000, 10}, {640, 640}, {100, 50}, {1, 1}, {20_000, 1}} {
		shots := job.Shots(size[0], size[1])
		before := job.Shot{Width: size[0], Height: size[1], Quality: 1}
		for _, s := range shots {
			assert.True(t, 1 <= s.Width && s.Width <= before.Width && 1 <= s.Height && s.Height <= before.Height, "%v after %v", s, before)
			assert.True(t, s.Width < before.Width || s.Quality < before.Quality, "each is smaller than the last: %v after %v", s, before)
			assert.LessOrEqual(t, max(s.Width, s.Height), 1024)
			assert.True(t, 0 < s.Quality && s.Quality < 1)
			if min(s.Width, s.Height) > 20 {
				assert.InEpsilon(t, float64(size[0])/float64(size[1]), float64(s.Width)/float64(s.Height), 0.05)
			}
			before = s
		}
		last := shots[len(shots)-1]
		assert.LessOrEqual(t, last.Width*last.Height*8/6, max(job.MaxTaken, 320*320*8/6))
		assert.LessOrEqual(t, max(last.Width, last.Height), 320)
	}
}

// A picture that one phone added to a check is not lost where the other changed the job later; and what an import would bring is told by its size.
func TestAPictureIsMerged(t *testing.T) {
	picture := dataURL("jpeg", encoded(t, 40, 30)["jpeg"])
	with, without := job.Demo(noon), job.Demo(noon)
	with.Checks[0].Picture = picture
	without.Changed += 5
	without.Place = "Elsewhere"
	for _, pair := range [][2]*job.Job{{with, without}, {without, with}} {
		m, problems := job.Merge(pair[0], pair[1], noon+9)
		require.Empty(t, problems)
		assert.Equal(t, picture, m.Checks[0].Picture)
		assert.Equal(t, "Elsewhere", m.Place)
		assert.Empty(t, m.Checks[1].Picture)
	}
	changes := job.Diff(without, with)
	require.Len(t, changes, 2)
	said := english.Line(changes[1].Says)
	assert.Contains(t, said, "40 × 30 px")
	assert.NotContains(t, said, "data:")
	other := job.Demo(noon)
	other.Checks[0].Picture = dataURL("png", encoded(t, 40, 30)["png"])
	require.Len(t, job.Diff(with, other), 1, "another picture of the same size is a change")
}

// No text has the size of a picture read past its end, and where both read it, the size is that of the standard library's decoders and of golang.org/x/image.
func FuzzPictureSize(f *testing.F) {
	for kind, held := range encoded(f, 9, 7) {
		f.Add(kind, held)
		f.Add(kind, held[:len(held)/2])
	}
	for _, held := range webps(f) {
		f.Add("webp", held[:min(len(held), 64)])
	}
	f.Fuzz(func(t *testing.T, kind string, held []byte) {
		text := dataURL(kind, held)
		width, height, ok := job.PictureSize(text)
		_, bytesOf := job.PictureBytes(text)
		if ok {
			require.Equal(t, held, bytesOf)
			require.True(t, width > 0 && height > 0)
		}
		if want, name, err := image.DecodeConfig(bytes.NewReader(held)); ok && err == nil && name == kind && want.Width > 0 {
			require.Equal(t, [2]int{want.Width, want.Height}, [2]int{width, height})
		}
	})
}
