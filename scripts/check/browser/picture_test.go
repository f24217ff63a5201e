package browser

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/job"
	"setbook/scripts/internal/browser"
)

// secret is what a phone might write into a picture besides.
const secret = "58.1234N 11.5678E"

// photo is a file as a phone's camera writes it, of so many pixels: its left half red and its right half blue, both as rough as mortar, lying on its
// side, with a note that it is to be turned by a right angle (Exif 2.3, tag 0x0112, value 6: what lies on the left is to stand on top) and where it
// was taken.
func photo(t *testing.T, width, height int) string {
	t.Helper()
	i, r := image.NewRGBA(image.Rect(0, 0, width, height)), rand.New(rand.NewPCG(1, 2))
	for y := range height {
		for x := range width {
			rough := uint8(r.IntN(90))
			if x < width/2 {
				i.SetRGBA(x, y, color.RGBA{165 + rough, rough, rough, 255})
			} else {
				i.SetRGBA(x, y, color.RGBA{rough, rough, 165 + rough, 255})
			}
		}
	}
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, i, nil))
	exif := "Exif\x00\x00" + "II*\x00\x08\x00\x00\x00" + "\x01\x00" + "\x12\x01\x03\x00\x01\x00\x00\x00\x06\x00\x00\x00" + "\x00\x00\x00\x00" + secret
	head := "\xff\xd8\xff\xe1" + string([]byte{byte((len(exif) + 2) >> 8), byte(len(exif) + 2)}) + exif
	path := filepath.Join(t.TempDir(), "IMG_0001.jpg")
	require.NoError(t, os.WriteFile(path, append([]byte(head), b.Bytes()[2:]...), 0o600))
	return path
}

// shoot presses a button that asks for a picture, and hands the page a file.
func (v *visit) shoot(do, of, path string) {
	v.Helper()
	at := fmt.Sprintf(`[data-job-do="%s"][data-job-id="%s"]`, do, of)
	if of == "" {
		at = `[data-job-do="` + do + `"]:not([data-job-id])`
	}
	require.True(v, eval[bool](v, `(b => { for (let d = b?.closest("details"); d; d = d.parentElement.closest("details")) d.open = true; return !!b })(document.querySelector(`+quote(at)+`))`), "no button %s", at)
	require.NoError(v, v.tab.Chooses(path, func() error { v.press(at); return nil }))
}

// drawn waits until the picture of a check is drawn, and gives the colour of its upper and of its lower half.
func (v *visit) drawn(of string) (upper, lower string) {
	v.Helper()
	at := `[...document.querySelectorAll("canvas.job-shot")].find(c => (c.dataset.pictureOf ?? "") === ` + quote(of) + `)`
	colours := at + ` && (c => [0.25, 0.75].map(y => { const [r, , b, a] = c.getContext("2d").getImageData(c.width / 2, c.height * y, 1, 1).data; return a < 255 ? "none" : r > b ? "red" : "blue" }))(` + at + `)`
	v.wait(`(` + colours + `)?.every(c => c !== "none")`)
	both := eval[[]string](v, colours)
	return both[0], both[1]
}

// A picture of a check is taken with the phone's camera, with no signal: it is kept small and upright in the job, with nothing in it of where it was
// taken, it is there after a reload and on the hand-over sheet, and it can be removed and brought back.
func TestAPictureOfACheck(t *testing.T) {
	v := begin(t, browser.Phone, `{ window.blobs = []; const real = URL.createObjectURL; URL.createObjectURL = b => { blobs.push(b); return real(b) }; HTMLAnchorElement.prototype.click = function () { blobs.at(-1).named = this.download } }`)
	path := photo(t, 1600, 1200)
	v.open("")
	v.wait(`navigator.serviceWorker.controller`)
	require.NoError(t, v.site.Stop())
	id := v.beginJob("North terrace")
	assert.Equal(t, "environment ", eval[string](v, `[...document.querySelectorAll("[data-job-picture]")].map(i => i.getAttribute("capture") ?? "").join(" ")`), "one opens the camera, one the pictures")

	assert.False(t, eval[bool](v, `[...document.querySelectorAll("[data-job-picture]")].some(i => i.checkVisibility())`), "the buttons stand for them")

	v.fill("check-where", "By the gate")
	v.fill("check-contact", "96")
	v.shoot("take-picture", "", path)
	upper, lower := v.drawn("")
	assert.Equal(t, "red blue", upper+" "+lower, "it stands upright")
	assert.Empty(t, v.kept(id).Checks, "it goes into the job with its check")
	v.jobDo("check")
	v.saved()
	j := v.kept(id)
	require.Len(t, j.Checks, 1)
	c := j.Checks[0]
	media, held := job.PictureBytes(c.Picture)
	assert.Equal(t, "image/jpeg", media)
	assert.True(t, job.Small(c.Picture))
	assert.NotContains(t, string(held), secret)
	assert.NotContains(t, string(held), "Exif")
	shown, err := jpeg.Decode(bytes.NewReader(held))
	require.NoError(t, err)
	w, h := shown.Bounds().Dx(), shown.Bounds().Dy()
	assert.InDelta(t, 0.75, float64(w)/float64(h), 0.01, "upright and not pulled out of shape: %d by %d", w, h)
	assert.True(t, 320 <= h && h <= 1024, "%d by %d", w, h)
	r, _, b, _ := shown.At(w/2, h/4).RGBA()
	assert.Greater(t, r, b, "what lay on the left stands on top")

	v.reload()
	v.wait(`document.querySelector("#job").dataset.shown`)
	assert.Contains(t, v.text(`#job [data-part="checks"]`), "with a picture")
	assert.False(t, eval[bool](v, `"drawn" in document.querySelector("canvas[data-picture-of]").dataset`), "what is folded away is not drawn")
	v.press(`#job [data-part="checks"] summary`)
	upper, lower = v.drawn(c.ID)
	assert.Equal(t, "red blue", upper+" "+lower)
	v.jobDo("save-picture")
	v.wait(`window.blobs.length`)
	assert.Equal(t, "setbook-"+id+"-1.jpeg image/jpeg "+base64.StdEncoding.EncodeToString(held), eval[string](v, `blobs[0].arrayBuffer().then(a => blobs[0].named + " " + blobs[0].type + " " + btoa(String.fromCharCode(...new Uint8Array(a))))`))

	v.jobDo("drop-picture")
	v.saved()
	assert.Empty(t, v.kept(id).Checks[0].Picture)
	v.jobDo("undo")
	v.saved()
	assert.Equal(t, c.Picture, v.kept(id).Checks[0].Picture)

	// What is no picture changes nothing and is said, where it was asked for.
	bad := filepath.Join(t.TempDir(), "bad.jpg")
	require.NoError(t, os.WriteFile(bad, []byte("no picture"), 0o600))
	v.fill("check-where", "Last row")
	v.shoot("choose-picture", "", bad)
	v.wait(`document.querySelector('#job [data-part="picture"]').innerText.includes("could not read that as a picture")`)
	assert.Equal(t, "Last row", eval[string](v, `document.querySelector('[data-job-field="check-where"]').value`))
	v.fill("check-contact", "91")
	v.jobDo("check")
	v.saved()
	require.Len(t, v.kept(id).Checks, 2)
	late := v.kept(id).Checks[1]
	assert.Empty(t, late.Picture)
	v.shoot("choose-picture", late.ID, path) // later, from the pictures of the phone
	v.drawn(late.ID)
	v.saved()
	assert.NotEmpty(t, v.kept(id).Checks[1].Picture)

	v.openJob("job/#job=" + id + "&view=hand-over")
	v.drawn(c.ID)
	v.drawn(late.ID)
	assert.Contains(t, v.text(`#job [data-part="sheet"]`), "Pictures of the contact checks")
	pdf, _ := v.paper(8.27, 11.69)
	assert.GreaterOrEqual(t, strings.Count(string(pdf), "/Subtype /Image"), 2, "they are on paper")
}

// A picture of a file that lies about itself is an empty frame with its words; nothing is asked of the net for it, and nothing runs.
func TestAPictureThatIsNone(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	j := v.kept(id)
	whole, err := os.ReadFile(photo(t, 64, 48))
	require.NoError(t, err)
	j.Checks[0].Picture = "data:image/jpeg;base64," + base64.StdEncoding.EncodeToString(whole)
	j.Checks[1].Picture = "data:image/png;base64," + base64.StdEncoding.EncodeToString([]byte("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x00\x00\x10\x00\x00\x00\x10<script>struck=1</script>"))
	_, problems := job.Read(job.Write(j))
	require.Empty(t, problems)
	v.keepRecord(id, eval[string](v, inStore(`got(db.transaction("jobheads").objectStore("jobheads").get(`+quote(id)+`))`)), job.Write(j))
	v.reload()
	v.wait(`document.querySelector("#job").dataset.shown`)
	eval[string](v, unfold)
	v.drawn("c1")
	v.wait(`document.querySelector('canvas[data-picture-of="c2"]').dataset.drawn`)
	assert.Equal(t, "Picture of the check: Beside the drain", eval[string](v, `document.querySelector('canvas[data-picture-of="c2"]').ariaLabel`))
	assert.False(t, eval[bool](v, `"struck" in window`))
	assert.Zero(t, eval[int](v, `document.querySelectorAll("#job img, #job iframe, #job object").length`))
}

// A job that would be larger than its own file may be is not kept so that nobody could read it again: it is said, and goes on once something is removed.
func TestAJobThatIsTooLarge(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	j := v.kept(id)
	for i := 0; len(job.Write(j)) < job.MaxSize-5000; i++ {
		count := min(400, max(1, (job.MaxSize-5000-len(job.Write(j)))/4100))
		for k := range count {
			j.Notes = append(j.Notes, job.Note{ID: fmt.Sprintf("big-%d-%d", i, k), When: j.Changed, Text: strings.Repeat("x", 4000)})
		}
	}
	require.Equal(t, true, job.Takes(job.Write(j)))
	v.keepRecord(id, eval[string](v, inStore(`got(db.transaction("jobheads").objectStore("jobheads").get(`+quote(id)+`))`)), job.Write(j))
	v.reload()
	v.wait(`document.querySelector("#job").dataset.shown`)
	for range 2 {
		eval[bool](v, `(f => { f.value = "y".repeat(3900); f.dispatchEvent(new Event("input", {bubbles: true})); return true })(document.querySelector('[data-job-field="note-text"]'))`)
		v.jobDo("note")
		v.wait(`document.querySelector("#job").dataset.kept !== "saving"`)
	}
	v.unsaved()
	assert.Contains(t, v.text(`#job [data-part="kept"]`), "more than one job takes")
	held := v.kept(id) // it is read again
	for range 2 {
		eval[string](v, unfold)
		v.press(`#job [data-part="notes"] [data-job-do="remove"]`)
	}
	v.jobDo("again")
	v.saved()
	assert.Greater(t, v.kept(id).Revision, held.Revision)
}

// slow has the browser take its time to read a picture.
const slow = `{ const real = createImageBitmap; window.createImageBitmap = (...a) => real(...a).then(b => new Promise(ok => setTimeout(() => ok(b), window.wait ?? 0))) }`

// A picture that is still being read when its check is put into the log, or when the page turns to another job, goes to its check all the same.
func TestAPictureThatIsReadSlowly(t *testing.T) {
	v := begin(t, browser.Phone, slow)
	two := v.beginJob("South terrace")
	one := v.demoJob()
	path := photo(t, 64, 48)
	eval[bool](v, `!!(window.wait = 1500)`)
	v.fill("check-where", "Gate")
	v.fill("check-contact", "96")
	v.shoot("take-picture", "", path)
	v.wait(`document.querySelector('#job [data-part="picture"]').innerText.includes("being read")`)
	v.jobDo("check")
	v.saved()
	gate := v.kept(one).Checks[3]
	assert.Equal(t, "Gate", gate.Where)
	require.Eventually(t, func() bool { return v.kept(one).Checks[3].Picture != "" }, patience, tick)
	assert.Zero(t, eval[int](v, `document.querySelectorAll('#job [data-part="picture"] canvas').length`), "the next check begins without one")

	v.shoot("choose-picture", "c1", path)
	v.turn("job=" + two)
	v.wait(`document.querySelector("#job h1").innerText.includes("South")`)
	require.Eventually(t, func() bool { return v.kept(one).Checks[0].Picture != "" }, patience, tick)
	assert.Empty(t, v.kept(two).Checks)
	v.turn("job=" + one)
	v.wait(`document.querySelector("#job h1").innerText.includes("Courtyard")`)
	assert.Contains(t, v.text(`#job [data-part="checks"]`), "with a picture")

	// Whoever cannot see it is told, and the focus stays with its line.
	eval[bool](v, `!(window.wait = 0)`)
	v.shoot("choose-picture", "c2", path)
	v.wait(`document.querySelector('[data-said="picture-c2"]').innerText.includes("saved")`)
	assert.Equal(t, "c2", eval[string](v, `document.activeElement.dataset.jobId`))
}
