package jobpage_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/jobpage"
)

const aDay countdown.Instant = 24 * 60 * 60_000

// listed are the lines of a preview: those in sight, and those that are folded away.
func listed(t *testing.T, made string) (open, folded []string) {
	t.Helper()
	root, err := html.Parse(strings.NewReader(made))
	require.NoError(t, err)
	var walk func(n *html.Node, inFold bool)
	walk = func(n *html.Node, inFold bool) {
		switch {
		case n.Type == html.ElementNode && n.Data == "details":
			inFold = true
		case n.Type == html.ElementNode && n.Data == "li" && inFold:
			folded = append(folded, n.FirstChild.Data)
		case n.Type == html.ElementNode && n.Data == "li":
			open = append(open, n.FirstChild.Data)
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c, inFold)
		}
	}
	walk(root, false)
	return open, folded
}

// looked is the preview of a file over the demo job that is kept.
func looked(t *testing.T, change func(j *job.Job)) (*jobpage.Preview, string) {
	t.Helper()
	brought := job.Demo(at)
	change(brought)
	p := jobpage.Look(job.Write(brought))
	require.Empty(t, p.Problems)
	p.Against(job.Demo(at), at)
	require.Empty(t, p.Problems)
	list := &jobpage.List{Book: book(us), Ready: true, Preview: p}
	made := list.Parts(at)[1]
	require.Equal(t, "preview", made.Name)
	return p, made.HTML
}

// However much is new, what changes is seen, and before it.
func TestNothingThatChangesIsFolded(t *testing.T) {
	_, made := looked(t, func(j *job.Job) {
		j.Changed = at + 1
		j.Checks[1].Contact = "99 %"
		for i := range 100 {
			id := strconv.Itoa(i)
			j.Notes = append(j.Notes, job.Note{ID: "a" + id, When: at, Text: "Filling " + id})
			j.Entries = append(j.Entries, job.Entry{ID: "b" + id, Calculator: "slope", Link: "v=1&drop=" + id + "+mm", Changed: at})
		}
		j.HandOver.Crew = "Another crew"
	})
	open, folded := listed(t, made)
	require.Len(t, open, 42)
	assert.Contains(t, open[1], "93 %” becomes “99 %")
	assert.Contains(t, open[0], "Another crew")
	assert.Contains(t, open[2], "is new")
	assert.Len(t, folded, 160)
	assert.Contains(t, folded[159], "Filling 99")
	assert.Contains(t, made, "And 160 more that are new.")

	_, made = looked(t, func(j *job.Job) {
		j.Changed = at + 1
		for i := range j.Entries {
			j.Entries[i].Name, j.Entries[i].Link, j.Entries[i].Changed = "Other", "v=1", at+1
		}
		for i := range j.Mixes {
			j.Mixes[i].Amount, j.Mixes[i].Product, j.Mixes[i].Air, j.Mixes[i].Surface = "1 kg", "Other", "1 °C", "2 °C"
		}
	})
	open, folded = listed(t, made)
	assert.Len(t, open, 16*2+5*4, "more than were once shown")
	assert.Empty(t, folded)
	for _, line := range open {
		assert.NotContains(t, line, "is new")
	}
}

// A file from a day that is still to come would have the last word in everything: it is said before it is taken.
func TestAFileFromTheFutureIsSaidSo(t *testing.T) {
	const said, decides = "still to come", "the later time decides"
	for name, c := range map[string]struct {
		change func(j *job.Job)
		told   bool
	}{
		"as it is":           {func(*job.Job) {}, false},
		"a clock of a zone":  {func(j *job.Job) { j.Changed = at + aDay }, false},
		"the record":         {func(j *job.Job) { j.Changed = at + aDay + 1 }, true},
		"the year 9998":      {func(j *job.Job) { j.Changed = 253_370_764_799_999 }, true},
		"an entry":           {func(j *job.Job) { j.Entries[3].Changed = at + 2*aDay }, true},
		"the weather":        {func(j *job.Job) { j.Weather.When = at + 2*aDay }, true},
		"a mix":              {func(j *job.Job) { j.Mixes[0].When = at + 2*aDay }, true},
		"a day of hand-over": {func(j *job.Job) { j.HandOver.When = at + 9*aDay }, false},
	} {
		_, made := looked(t, c.change)
		assert.Equal(t, c.told, strings.Contains(made, said), name)
		assert.Equal(t, c.told, strings.Contains(made, decides), name)
	}
	_, made := looked(t, func(j *job.Job) { j.Changed = 253_370_764_799_999 })
	assert.Contains(t, made, "9998")

	fresh := job.Demo(at)
	fresh.Changed = at + 2*aDay
	p := jobpage.Look(job.Write(fresh))
	p.Against(nil, at)
	made = (&jobpage.List{Book: book(us), Preview: p}).Parts(at)[1].HTML
	assert.Contains(t, made, said, "also of a job that is not here")
	assert.NotContains(t, made, decides)
}

// What only the older of two files has is kept by taking in the newer.
func TestAnImportDropsNoField(t *testing.T) {
	p, made := looked(t, func(j *job.Job) {
		j.Changed, j.HandOver.Client, j.Address = at+1, "", "Long lane 1"
	})
	open, _ := listed(t, made)
	assert.Equal(t, []string{"Address: “Long lane 1” is new."}, open)
	taken := p.Taken(book(us), "fresh", false)
	assert.Equal(t, "Long lane 1", taken.Address)
	assert.Equal(t, job.Demo(at).HandOver.Client, taken.HandOver.Client)
}
