package jobpage_test

import (
	"bytes"
	"encoding/base64"
	"image"
	"image/jpeg"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/jobpage"
	"setbook/calc/page"
)

// photo is a JPEG of so many pixels as a data URL, made so long with what a decoder passes over.
func photo(t *testing.T, width, height, letters int) string {
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, image.NewGray(image.Rect(0, 0, width, height)), nil))
	text := "data:image/jpeg;base64," + base64.StdEncoding.EncodeToString(b.Bytes()[:b.Len()/3*3])
	return text + strings.Repeat("A", max(0, letters-len(text))/4*4)
}

// A picture goes into the log with its check, to a check of the log later, and away again so that it can be brought back.
func TestAPictureGoesWithItsCheck(t *testing.T) {
	v := view(us, job.Demo(at))
	one, two := photo(t, 40, 30, 0), photo(t, 30, 40, 0)
	assert.False(t, v.TakePicture(v.BeginPicture(""), one), "nothing is in the record until the check is")
	assert.Contains(t, made(t, v, "picture"), `width="40" height="30"`)
	assert.NotContains(t, made(t, v, "picture"), "base64", "no text of a record is handed to a page as an address")
	v.Type("check-where", "By the gate", at)
	v.Type("check-contact", "96", at)
	require.True(t, v.Press("check", "", at, "new"))
	n := len(v.Job.Checks) - 1
	assert.Equal(t, one, v.Job.Checks[n].Picture)
	assert.Empty(t, v.Picture(""), "the next check begins without one")
	assert.Contains(t, made(t, v, "checks"), "with a picture")

	require.True(t, v.TakePicture(v.BeginPicture("c1"), two))
	assert.Equal(t, two, v.Job.Checks[0].Picture)
	assert.False(t, v.TakePicture(v.BeginPicture("c1"), two), "the same again is no change")
	require.True(t, v.Press("drop-picture", "c1", at, "x"))
	assert.Empty(t, v.Job.Checks[0].Picture)
	require.True(t, v.Press("undo", "", at, "x"))
	assert.Equal(t, two, v.Job.Checks[0].Picture)

	v.TakePicture(v.BeginPicture(""), one)
	assert.False(t, v.Press("drop-picture", "", at, "x"))
	assert.Empty(t, v.Picture(""))
	assert.False(t, v.TakePicture(v.BeginPicture("nobody"), one))

	v.Mode = jobpage.HandOver
	sheet := made(t, v, "sheet")
	assert.Equal(t, 2, strings.Count(sheet, "<canvas"))
	assert.Contains(t, sheet, "Pictures of the contact checks")
	assert.Contains(t, sheet, "Picture of the check: By the gate")
	assert.Equal(t, "setbook-demo-1.jpeg", v.PictureName("c1"))
}

// A picture that is still being read when its check is put into the log goes to that check, and not to the next one; of two chosen for one check
// the later is taken, whichever is read first; one whose check was removed goes nowhere.
func TestAPictureFollowsItsCheck(t *testing.T) {
	v := view(us, job.Demo(at))
	one, two := photo(t, 40, 30, 0), photo(t, 30, 40, 0)
	s := v.BeginPicture("")
	assert.Contains(t, made(t, v, "picture"), "is being read")
	v.Type("check-where", "Gate", at)
	v.Type("check-contact", "96", at)
	require.True(t, v.Press("check", "", at, "gate"))
	assert.NotContains(t, made(t, v, "picture"), "is being read")
	require.True(t, v.TakePicture(s, one))
	assert.Equal(t, one, v.Picture("gate"))
	assert.Empty(t, v.Picture(""))

	first, second := v.BeginPicture("c1"), v.BeginPicture("c1")
	assert.True(t, v.TakePicture(second, two))
	assert.False(t, v.TakePicture(first, one))
	assert.Equal(t, two, v.Picture("c1"))
	first, second = v.BeginPicture("c1"), v.BeginPicture("c1")
	assert.False(t, v.TakePicture(first, ""), "of the one that is no longer wanted no complaint is heard")
	assert.NotContains(t, made(t, v, "checks"), "could not read")
	assert.True(t, v.TakePicture(second, one))

	s = v.BeginPicture("c2")
	require.True(t, v.Press("remove", "checks/c2", at, "x"))
	assert.False(t, v.TakePicture(s, one))
}

// What was removed comes back in turn, also once the job on the page is another state of it, and a picture that took the place of another is not lost by that.
func TestPicturesAreBroughtBackInTurn(t *testing.T) {
	v := view(us, job.Demo(at))
	one, two := photo(t, 40, 30, 0), photo(t, 30, 40, 0)
	v.TakePicture(v.BeginPicture("c1"), one)
	require.True(t, v.Press("drop-picture", "c1", at, "x"))
	v.TakePicture(v.BeginPicture("c1"), two)
	require.True(t, v.Press("undo", "", at, "x"))
	assert.Equal(t, one, v.Picture("c1"))
	require.True(t, v.Press("undo", "", at, "x"))
	assert.Equal(t, two, v.Picture("c1"), "and the other one again")

	require.True(t, v.Press("remove", "notes/n1", at, "x"))
	v.Type("wind", "strong", at)
	v.Replace(v.Job.Clone())
	require.True(t, v.Press("undo", "", at, "x"))
	assert.Len(t, v.Job.Notes, 2)
	assert.Equal(t, "notes/n1", v.Back)
	text, _ := v.Field("wind")
	assert.Equal(t, "strong", text, "what was refused still stands in its field")
}

// What is no picture, is too large, or is more than a job holds is refused in words, and nothing is changed; a job of a newer program takes none.
func TestAPictureThatIsNotTaken(t *testing.T) {
	v := view(us, job.Demo(at))
	before := job.Write(v.Job)
	for _, bad := range []string{"", "data:image/svg+xml;base64,PHN2Zz4=", photo(t, 40, 30, job.MaxTaken+10)} {
		assert.False(t, v.TakePicture(v.BeginPicture("c1"), bad))
		assert.Contains(t, made(t, v, "checks"), "could not read that as a picture")
		assert.False(t, v.TakePicture(v.BeginPicture(""), bad))
		assert.Contains(t, made(t, v, "picture"), "could not read that as a picture")
	}
	assert.Equal(t, before, job.Write(v.Job))
	assert.False(t, v.TakePicture(v.BeginPicture(""), photo(t, 40, 30, 0)))
	assert.NotContains(t, made(t, v, "picture"), "could not read", "a good one takes the complaint away")

	large := photo(t, 40, 30, job.MaxTaken-10)
	for i := 0; v.Job.Pictures() <= job.MaxPictures-2*len(large); i++ {
		v.Job.Checks = append(v.Job.Checks, job.Check{ID: "m" + strings.Repeat("x", i), When: at, Contact: "96 %", Picture: large})
	}
	assert.True(t, v.TakePicture(v.BeginPicture("c1"), large), "the last that there is room for beside the one that is being written")
	assert.False(t, v.TakePicture(v.BeginPicture("c2"), large))
	assert.Empty(t, v.Job.Checks[1].Picture)
	v.Press("more", "", at, "x")
	assert.True(t, strings.Contains(made(t, v, "checks"), "no room for more"))
	assert.LessOrEqual(t, v.Job.Pictures()+len(v.Picture("")), job.MaxPictures)
	assert.Equal(t, true, job.Takes(job.Write(v.Job)), "a record full of pictures is read again")
	assert.True(t, v.TakePicture(v.BeginPicture("c1"), photo(t, 31, 30, len(large))), "one in the place of another is counted once")

	v = view(us, job.Demo(at))
	v.Job.Newer = 2
	assert.False(t, v.TakePicture(v.BeginPicture("c1"), photo(t, 40, 30, 0)))
	assert.Empty(t, v.Job.Checks[0].Picture)
	assert.NotContains(t, made(t, v, "checks"), "take-picture")
}

// made is the markup of a region.
func made(t *testing.T, of interface {
	Parts(countdown.Instant) []page.Part
}, name string) string {
	t.Helper()
	for _, p := range of.Parts(at) {
		if p.Name == name {
			return p.HTML
		}
	}
	require.Fail(t, "no part", name)
	return ""
}
