package browser

import (
	"context"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/job"
	"setbook/scripts/internal/browser"
)

// kills is how often the browser is ended; scripts/check gives 200 in its long mode.
var kills = flag.Int("kills", 20, "how often TestAKilledBrowserLosesNothing kills the browser")

// writes has the page put notes into the job without a pause, one to three at a time, by its own field and button. As soon as the page
// says that all is saved, which it says of a completed transaction, the number of the last note is reported out of the browser.
const writes = `((from) => {
	const root = document.querySelector("#job"), field = () => document.querySelector('[data-job-field="note-text"]');
	let last = from;
	const more = () => { for (let n = 1 + Math.floor(Math.random() * 3); n > 0; n--) {
		field().value = "note " + ++last + " " + "x".repeat(last * 37 %% 700); field().dispatchEvent(new Event("input", {bubbles: true}));
		document.querySelector('[data-job-do="note"]').click() } };
	new MutationObserver(() => { if (root.dataset.kept === "saved") { acknowledged(last); setTimeout(more) } }).observe(root, {attributeFilter: ["data-kept"]});
	more(); return true })(%d)`

// tally is what was acknowledged before the browser was killed.
type tally struct {
	mu   sync.Mutex
	last int
}

func (t *tally) take(_ context.Context, n float64) (chromedp.Void, error) {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.last = max(t.last, int(n))
	return chromedp.Void{}, nil
}

func (t *tally) sum() int {
	t.mu.Lock()
	defer t.mu.Unlock()
	return t.last
}

// A browser that is ended without warning (SIGKILL) in the middle of saves has, when it is started again on the same profile, every
// save that was acknowledged, and of the others each whole or not at all.
func TestAKilledBrowserLosesNothing(t *testing.T) {
	site, profile := serving(t), t.TempDir()
	start := func() (*visit, func()) {
		b, err := browser.Start(context.Background(), profile)
		require.NoError(t, err)
		t.Cleanup(b.Kill)
		tab, err := b.Open(browser.Phone)
		require.NoError(t, err)
		return &visit{t, site, tab}, b.Kill
	}
	v, kill := start()
	id := v.beginJob("Killed often")
	const full = 300 // notes; then they are removed, so that a save stays as long as a real one
	acknowledged, lost, beyond, unacknowledged, deleted, began := 0, 0, 0, 0, 0, time.Now()
	last := 0
	for round := range *kills {
		count := &tally{last: last}
		v.do(chromedp.ExposeFunc("acknowledged", count.take))
		require.True(t, eval[bool](v, fmt.Sprintf(writes, last)))
		// Not before something was acknowledged, then at any moment of some saves.
		require.Eventually(t, func() bool { return count.sum() > last }, 15*time.Second, time.Millisecond)
		time.Sleep(time.Duration(rand.IntN(250_000)) * time.Microsecond)
		kill()
		told := count.sum()

		v, kill = start()
		v.openJob("job/#job=" + id)
		if strings.Contains(v.text("#job"), "brought back from the second copy") {
			deleted++ // by the browser, which took its own file for corrupt: see wasm/store_copy.go
		}
		j := v.kept(id) // read strictly: whole
		found := 0
		for i, n := range j.Notes {
			number := 0
			_, err := fmt.Sscanf(n.Text, "note %d", &number)
			require.NoError(t, err)
			want := fmt.Sprintf("note %d %s", number, strings.Repeat("x", number*37%700))
			require.Equal(t, job.Clean(want, 4000), n.Text, "each note is whole")
			if i > 0 {
				require.Equal(t, found+1, number, "none is missing between two")
			}
			found = number
		}
		if found < told {
			lost += told - found
			t.Errorf("kill %d: acknowledged up to note %d, found up to note %d", round+1, told, found)
		}
		if found > told {
			beyond++
		}
		acknowledged += told - last
		unacknowledged += max(0, found-told)
		last = max(found, told)
		if len(j.Notes) > full {
			v.clear(id, j)
		}
	}
	assert.Zero(t, lost)
	fmt.Printf("killed %d times in %.0f s: %d acknowledged notes, %d lost; %d more were found whole that nobody had been told of, after %d of the kills; %d times the browser had deleted its database, and the second copy held\n",
		*kills, time.Since(began).Seconds(), acknowledged, lost, unacknowledged, beyond, deleted)
}

// A log that a kill has torn, with more written behind the tear, is taken for corrupt by Chromium, which then deletes all that the site has in that
// database. The tear is made here by hand, in the file of the first copy, so that it does not take hundreds of kills: the job comes back whole.
func TestATornLogLosesNothing(t *testing.T) {
	site, profile := serving(t), t.TempDir()
	first, err := browser.Start(context.Background(), profile)
	require.NoError(t, err)
	t.Cleanup(first.Kill)
	v := look(t, first, site, browser.Phone)
	id := v.beginJob("Torn")
	for i := range 5 {
		v.fill("note-text", fmt.Sprintf("note %d", i))
		v.jobDo("note")
		v.saved()
	}
	before := v.kept(id)
	first.Kill()

	tear(t, profile)
	second, err := browser.Start(context.Background(), profile)
	require.NoError(t, err)
	t.Cleanup(second.Kill)
	v = look(t, second, site, browser.Phone)
	v.openJob("job/#job=" + id)
	assert.Contains(t, v.text(`#job [data-part="kept"]`), "brought back from the second copy: 1")
	assert.Equal(t, before, v.kept(id))
}

// The same tear, and a countdown and the last entry of a calculator come back; nothing is lost but what was typed in the last second.
func TestATornLogLosesNoCountdownAndNoEntry(t *testing.T) {
	withPrograms(t, func(t *testing.T, script string) {
		site, profile := serving(t), t.TempDir()
		first, err := browser.Start(context.Background(), profile)
		require.NoError(t, err)
		t.Cleanup(first.Kill)
		v := look(t, first, site, browser.Phone, script)
		v.waiting()
		v.stepped()
		v.countdown("Foot traffic", "5 h")
		v.spares(1, "wait", "bag_time=5+h")
		v.open("bed/")
		v.enter("bed", "width", "3/8 in")
		v.spares(1, "bed", "width=3/8+in")
		v.stepped()
		first.Kill()

		tear(t, profile)

		second, err := browser.Start(context.Background(), profile)
		require.NoError(t, err)
		t.Cleanup(second.Kill)
		v = look(t, second, site, browser.Phone, script)
		v.open("bed/")
		v.wait(rows + `.length === 1`)
		assert.Regexp(t, `^Foot traffic (5 h 00|4 h \d\d) min`, v.panel()[0])
		assert.Contains(t, v.said("back"), broughtBack+"1.")
		v.wait(`document.querySelector('#bed [data-key="width"]').value === "3/8 in"`)
		v.spares(1, "bed", "width=3/8+in")
	})
}

// tear makes by hand, in the log of the site's own database, what a kill in the middle of a write leaves once more has been written behind it.
func tear(t *testing.T, profile string) {
	t.Helper()
	logs, err := filepath.Glob(filepath.Join(profile, "Default", "IndexedDB", "*.leveldb", "*.log"))
	require.NoError(t, err)
	require.Len(t, logs, 1)
	data, err := os.ReadFile(logs[0])
	require.NoError(t, err)
	for i := len(data) / 2; i < len(data)/2+64; i++ {
		data[i] ^= 0xff
	}
	require.NoError(t, os.WriteFile(logs[0], data, 0o600))
}

// clear takes all notes but the last out of the kept job.
func (v *visit) clear(id string, j *job.Job) {
	v.Helper()
	j.Notes = j.Notes[len(j.Notes)-1:]
	head := eval[string](v, inStore(`got(db.transaction("jobheads").objectStore("jobheads").get(`+quote(id)+`))`))
	v.keepRecord(id, head, job.Write(j))
	v.open("about/") // the same address again would load nothing
	v.openJob("job/#job=" + id)
}
