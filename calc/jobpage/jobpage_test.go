package jobpage_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"setbook/calc/all"
	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/jobpage"
	"setbook/calc/page"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	us     = words.Reader{Language: words.English, Style: unit.Style{System: unit.US, Decimal: '.'}}
	metric = words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: '.'}}
	comma  = words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: ','}}
)

// at is a time in the middle of the work.
var at = countdown.Instant(time.Date(2026, 6, 12, 14, 5, 0, 0, time.UTC).UnixMilli())

func book(r words.Reader) *jobpage.Book {
	return &jobpage.Book{Board: page.Board{Reader: r, Root: "../", West: func(countdown.Instant) float64 { return 0 }},
		Find: all.ByID, All: all.Calculators(), Version: "0123abcd"}
}

func view(r words.Reader, j *job.Job) *jobpage.View { return jobpage.NewView(book(r), j, jobpage.Work) }

func begun(t *testing.T) *job.Job {
	t.Helper()
	j, ok := book(us).New("j1", " North\tterrace ", "Town", at)
	require.True(t, ok)
	assert.Equal(t, "North terrace", j.Name)
	return j
}

// part is what a person reads in a region.
func part(t *testing.T, v *jobpage.View, name string) string {
	t.Helper()
	for _, p := range v.Parts(at) {
		if p.Name == name {
			return read(t, p.HTML)
		}
	}
	require.Fail(t, "no part", name)
	return ""
}

// read is the text of a piece of markup.
func read(t *testing.T, made string) string {
	t.Helper()
	var texts []string
	z := html.NewTokenizer(strings.NewReader(made))
	for z.Next() != html.ErrorToken {
		if token := z.Token(); token.Type == html.TextToken && strings.TrimSpace(token.Data) != "" {
			texts = append(texts, strings.TrimSpace(token.Data))
		}
	}
	return strings.Join(texts, " ")
}

// whole holds a job to what the reader of files takes: whatever is typed and pressed, what would be kept is a record.
func whole(t *testing.T, j *job.Job) {
	t.Helper()
	again, problems := job.Read(job.Write(j))
	require.Empty(t, problems)
	require.Equal(t, j, again)
}

func TestAMixIsLoggedNow(t *testing.T) {
	v := view(us, begun(t))
	for field, text := range map[string]string{"mix-amount": "50 lb", "mix-product": "Mortar", "mix-lot": "M-1", "mix-air": "64", "mix-surface": "20 °C"} {
		assert.False(t, v.Type(field, text, at), "a line that is being written is no change yet")
	}
	require.True(t, v.Press("mix", "", at, "x1"))
	require.Len(t, v.Job.Mixes, 1)
	assert.Equal(t, job.Mix{ID: "x1", When: at, Amount: "50 lb", Product: "Mortar", Lot: "M-1", Air: "64 F", Surface: "20 °C"}, plainer(v.Job.Mixes[0]))
	whole(t, v.Job)
	assert.Contains(t, part(t, v, "mixes"), "50 lb · Mortar · lot M-1")
	product, _ := v.Field("mix-product")
	amount, _ := v.Field("mix-amount")
	assert.Equal(t, []string{"Mortar", ""}, []string{product, amount}, "the next mix is of the same product; its amount is asked anew")
}

// plainer writes a unit's sign as it is typed.
func plainer(m job.Mix) job.Mix {
	m.Air = strings.Replace(m.Air, "°F", "F", 1)
	return m
}

func TestWhatCannotBeReadIsNotLogged(t *testing.T) {
	v := view(metric, begun(t))
	for _, amount := range []string{"", "much", "25", "-1 kg", "2 boxes", "25 kg; drop"} {
		v.Type("mix-amount", amount, at)
		took := v.Press("mix", "", at, "x1")
		if amount == "25" { // a bare number is in the reader's own unit
			assert.True(t, took)
			assert.Equal(t, "25 kg", v.Job.Mixes[0].Amount)
			v.Job.Mixes = nil
			continue
		}
		assert.False(t, took, amount)
		assert.True(t, v.Invalid("mix-amount"), amount)
		assert.NotEmpty(t, part(t, v, "note-mix-amount"), amount)
		assert.Empty(t, v.Job.Mixes)
	}
	v.Type("mix-amount", "2 bags", at)
	v.Type("mix-air", "warm", at)
	assert.False(t, v.Press("mix", "", at, "x1"), "a temperature that cannot be read is not dropped")
	assert.True(t, v.Invalid("mix-air"))
}

func TestChecksNotesAndMaterials(t *testing.T) {
	v := view(us, begun(t))
	assert.False(t, v.Press("check", "", at, "c1"), "nothing is filled in")
	v.Type("check-where", "First row", at)
	v.Type("check-contact", "96", at)
	require.True(t, v.Press("check", "", at, "c1"))
	assert.Equal(t, job.Check{ID: "c1", When: at, Where: "First row", Contact: "96 %"}, v.Job.Checks[0])
	v.Type("note-text", "Two lines\nof one note", at)
	require.True(t, v.Press("note", "", at, "n1"))
	v.Type("material-name", "Mortar", at)
	v.Type("material-lots", "M-1, M-2", at)
	require.True(t, v.Press("material", "", at, "m1"))
	require.True(t, v.Press("handed", "", at, "h"))
	assert.Equal(t, at, v.Job.HandOver.When)
	whole(t, v.Job)
}

func TestWeatherIsTypedOnceAndStandsInEverySum(t *testing.T) {
	v := view(us, begun(t))
	require.True(t, v.Type("air", "84", at))
	assert.Equal(t, at, v.Job.Weather.When)
	require.False(t, v.Type("air", "8w", at+1))
	assert.True(t, v.Invalid("air"))
	assert.Equal(t, at, v.Job.Weather.When, "what cannot be read changes nothing")
	require.True(t, v.Type("humidity", "61", at+2))
	whole(t, v.Job)
	page := v.HTML(at)
	assert.Regexp(t, `href="\.\./heat/\?job=j1#[^"]*air=84\+`, page, "a sum that is begun from the job has it")
	v.Job.Entries = []job.Entry{{ID: "e1", Calculator: "heat", Link: "v=1&air=70+F&humidity=40+%25", Changed: at}}
	assert.Regexp(t, `href="\.\./heat/\?job=j1&amp;entry=e1#[^"]*air=84\+`, v.HTML(at), "and one that is opened from it")
}

func TestWhatIsRemovedComesBackWhereItStood(t *testing.T) {
	j := job.Demo(at)
	v := view(metric, j)
	before := job.Write(j)
	for _, what := range []string{"mixes/" + j.Mixes[1].ID, "checks/" + j.Checks[0].ID, "notes/" + j.Notes[0].ID, "entries/" + j.Entries[3].ID,
		"countdowns/" + j.Countdowns[0].ID, "materials/" + j.HandOver.Materials[2].ID} {
		require.True(t, v.Press("remove", what, at, ""), what)
		assert.NotEqual(t, before, job.Write(v.Job), what)
		assert.Contains(t, part(t, v, "undo"), "Removed: ")
		require.True(t, v.Press("undo", "", at, ""), what)
		assert.Equal(t, before, job.Write(v.Job), what)
		assert.Empty(t, part(t, v, "undo"))
	}
	assert.False(t, v.Press("remove", "mixes/none", at, ""))
	assert.False(t, v.Press("remove", "nothing", at, ""))
	assert.False(t, v.Press("undo", "", at, ""))
}

func TestTheCountdownsOfThePhoneAreTakenIn(t *testing.T) {
	v := view(us, begun(t))
	assert.NotContains(t, part(t, v, "day"), "Take in")
	c, ok := countdown.Begin("c-1", "Foot traffic", "wait", "v=1", at, 4*unit.Hour)
	require.True(t, ok)
	v.Phone = []*countdown.Countdown{c}
	assert.Contains(t, part(t, v, "day"), "Take in")
	require.True(t, v.Press("countdowns", "", at, ""))
	assert.False(t, v.Press("countdowns", "", at, ""), "each once")
	assert.Contains(t, part(t, v, "day"), "Foot traffic 4 h 00 min may go on 18:05")
	assert.NotContains(t, part(t, v, "day"), "Take in")
	whole(t, v.Job)
}

func TestANewerJobIsOnlyLookedAt(t *testing.T) {
	j := job.Demo(at)
	j.Newer = 9
	v := view(us, j)
	v.Trouble = jobpage.NewerJob
	before := *j
	assert.False(t, v.Type("name", "Mine", at))
	assert.False(t, v.Type("entry-"+j.Entries[0].ID, "Mine", at))
	for _, do := range []string{"mix", "check", "note", "handed", "material"} {
		v.Type("note-text", "x", at)
		assert.False(t, v.Press(do, "", at, "z"), do)
	}
	assert.False(t, v.Press("remove", "mixes/"+j.Mixes[0].ID, at, ""))
	assert.Equal(t, before, *j)
	assert.Contains(t, part(t, v, "kept"), "newer Setbook")
	assert.NotContains(t, v.HTML(at), `data-job-do="remove"`)
}

// A change of units changes what is shown and nothing that is kept.
func TestUnits(t *testing.T) {
	j := job.Demo(at)
	v := view(metric, j)
	before := job.Write(j)
	v.Type("mix-amount", "25", at)
	air, _ := v.Field("air")
	assert.Equal(t, "18 °C", air)
	v.Address(func(b *jobpage.Book) { b.Reader = us })
	air, _ = v.Field("air")
	assert.Equal(t, "64.4 °F", air)
	amount, _ := v.Field("mix-amount")
	assert.Equal(t, "25 kg", amount, "what is being typed keeps what it meant; a bag is sold as 25 kg to everybody")
	v.Address(func(b *jobpage.Book) { b.Reader = comma })
	require.True(t, v.Press("mix", "", at, "x9"))
	mass, ok := v.Job.Mixes[len(v.Job.Mixes)-1].Mass()
	require.True(t, ok)
	assert.InDelta(t, float64(25*unit.Kilogram), float64(mass), float64(unit.Gram))
	v.Job.Mixes = v.Job.Mixes[:len(v.Job.Mixes)-1]
	assert.Equal(t, before, job.Write(v.Job))
}

// Nothing that somebody wrote into a job, a file or a link is anything but text on any page of it.
func TestHostileTextIsText(t *testing.T) {
	const evil = `"><img src=x onerror=alert(1)><script>x</script>`
	j := job.Demo(at)
	j.Name, j.Place, j.Address, j.HandOver.Client, j.HandOver.Care = evil, evil, evil, evil, evil
	j.Entries[0].Name, j.Entries[1].Calculator = evil, "no-such-page"
	j.Mixes[0].Lot, j.Mixes[0].Product, j.Checks[0].Where, j.Checks[0].Note, j.Notes[0].Text, j.HandOver.Materials[0].Lots = evil, evil, evil, evil, evil, evil
	seen := 0
	held := func(made string) {
		z := html.NewTokenizer(strings.NewReader(made))
		for z.Next() != html.ErrorToken {
			token := z.Token()
			assert.NotContains(t, []string{"img", "script", "iframe"}, token.Data)
			for _, a := range token.Attr {
				assert.False(t, strings.HasPrefix(a.Key, "on"), "%s", token)
				assert.False(t, a.Key == "href" && strings.HasPrefix(a.Val, "javascript:"), "%s", token)
			}
			if token.Type == html.TextToken && strings.Contains(token.Data, "<img") {
				seen++
			}
		}
	}
	for _, m := range []jobpage.Mode{jobpage.Work, jobpage.HandOver, jobpage.Order} {
		held(jobpage.NewView(book(us), j, m).HTML(at))
	}
	p := jobpage.Look(job.Write(j))
	list := &jobpage.List{Book: book(us), Heads: []jobpage.Head{jobpage.HeadOf(j)}, Preview: p}
	held(list.HTML(at))
	p.Against(job.Demo(at), at)
	held(list.HTML(at))
	list.Preview = jobpage.Look(`{"setbook": "job", "version": 1, "name": "` + strings.ReplaceAll(evil, `"`, `\"`) + `"}`)
	held(list.HTML(at))
	assert.Greater(t, seen, 12, "the texts are there to be read")
}

func TestAHeadIsReadAsItWasWritten(t *testing.T) {
	j := job.Demo(at)
	j.Name, j.Entries[0].Name = "Gate & drive = 50 % | done", "a|b"
	h := jobpage.HeadOf(j)
	again, ok := jobpage.ReadHead(j.ID, h.Text())
	require.True(t, ok)
	assert.Equal(t, h, again)
	for _, broken := range []string{"", "head=2&revision=1", h.Text() + "&x=1", strings.Replace(h.Text(), "head=1", "head=2", 1), strings.Replace(h.Text(), "gone=0", "gone=x", 1)} {
		_, ok := jobpage.ReadHead(j.ID, broken)
		assert.False(t, ok, broken)
	}
}

func TestWhatMayBeKept(t *testing.T) {
	j := job.Demo(at)
	j.Revision = 4
	h := jobpage.HeadOf(j)
	gone := h
	gone.Gone = at
	for _, c := range []struct {
		kept string
		was  int64
		want jobpage.Trouble
	}{
		{"", 0, jobpage.None}, {"", 4, jobpage.Gone}, {h.Text(), 4, jobpage.None}, {h.Text(), 3, jobpage.Conflict}, {h.Text(), 5, jobpage.Conflict},
		{h.Text(), 0, jobpage.Conflict}, {gone.Text(), 4, jobpage.Gone}, {"head=2&all=new", 4, jobpage.NewerJob},
	} {
		assert.Equal(t, c.want, jobpage.May(j.ID, c.kept, c.was), "%q at %d", c.kept, c.was)
	}
}

// The second copy is taken only where it holds more than the first.
func TestWhichCopyIsAhead(t *testing.T) {
	j := job.Demo(at)
	head := func(revision int64, gone countdown.Instant) string {
		h := jobpage.HeadOf(j)
		h.Revision, h.Gone = revision, gone
		return h.Text()
	}
	for _, c := range []struct {
		first, second string
		want          jobpage.Side
	}{
		{head(3, 0), head(3, 0), jobpage.Neither}, {head(3, 0), head(2, 0), jobpage.First}, {head(3, 0), head(4, 0), jobpage.Second},
		{"", head(4, 0), jobpage.Second}, {"", "head=2&tomorrow", jobpage.Second}, {head(3, 0), "", jobpage.First}, {"head=2&tomorrow", "", jobpage.First},
		{head(3, at), head(3, 0), jobpage.First}, {head(3, at), head(4, 0), jobpage.First}, {head(3, 0), head(3, at), jobpage.First},
		{"head=2&tomorrow", head(9, 0), jobpage.First}, {head(3, 0), "head=2&tomorrow", jobpage.Neither},
	} {
		assert.Equal(t, c.want, jobpage.Ahead(j.ID, c.first, c.second), "%s against %s", c.first, c.second)
	}
}

func TestEveryTroubleIsSaid(t *testing.T) {
	j := job.Demo(at)
	seen := map[string]bool{}
	for trouble := jobpage.NoStorage; trouble <= jobpage.Stale; trouble++ {
		v := view(us, j)
		v.Trouble = trouble
		said := part(t, v, "kept")
		assert.NotEmpty(t, string(trouble.Says()))
		assert.Contains(t, said, string(trouble.Says()))
		assert.Contains(t, said, "Save as a file", "the job can be copied out, whatever is the matter")
		assert.False(t, seen[said])
		seen[said] = true
	}
	v := view(us, j)
	v.Trouble, v.Theirs = jobpage.Conflict, job.Demo(at)
	v.Theirs.Notes = v.Theirs.Notes[:1]
	said := part(t, v, "kept")
	for _, want := range []string{"Put both together", "Take the other page’s", "Keep mine as a copy", "goes"} {
		assert.Contains(t, said, want)
	}
}

func TestAPreviewChangesNothing(t *testing.T) {
	old, brought := job.Demo(at), job.Demo(at)
	old.Revision = 7
	brought.Notes = append(brought.Notes, job.Note{ID: "n9", When: at, Text: "From the other phone"})
	brought.Changed++
	before := job.Write(old)
	p := jobpage.Look(job.Write(brought))
	require.Empty(t, p.Problems)
	p.Against(old, at)
	list := &jobpage.List{Book: book(us), Preview: p}
	said := read(t, list.HTML(at))
	assert.Contains(t, said, "From the other phone")
	assert.Contains(t, said, "Make these changes")
	assert.Equal(t, before, job.Write(old))

	taken := p.Taken(book(us), "fresh", false)
	assert.EqualValues(t, 7, taken.Revision, "compared with what is kept")
	assert.Len(t, taken.Notes, len(old.Notes)+1)
	beside := p.Taken(book(us), "fresh", true)
	assert.Equal(t, "fresh", beside.ID)
	assert.Zero(t, beside.Revision)
	assert.NotEqual(t, old.Name, beside.Name)

	bad := jobpage.Look("{\n\"setbook\": \"job\",\n\"version\": 1\n}")
	assert.Nil(t, bad.New)
	list.Preview = bad
	said = read(t, list.HTML(at))
	assert.Contains(t, said, "Line ")
	assert.NotContains(t, said, "Keep this job")
}

func TestTheListIsSearchedAndTellsWhatWasDeleted(t *testing.T) {
	one, two, gone := job.Demo(at), job.Demo(at), job.Demo(at)
	one.ID, one.Name, two.ID, two.Name, gone.ID, gone.Name = "a", "North terrace", "b", "South steps", "c", "Gone yard"
	h := jobpage.HeadOf(gone)
	h.Gone = at - 1000
	l := &jobpage.List{Book: book(us), Ready: true, Heads: []jobpage.Head{jobpage.HeadOf(one), jobpage.HeadOf(two), h}}
	found := func() string { return read(t, l.Parts(at)[2].HTML) }
	assert.Contains(t, found(), "North terrace")
	assert.Contains(t, found(), "South steps")
	assert.NotContains(t, found(), "Gone yard")
	l.Query = "steps"
	assert.NotContains(t, found(), "North terrace")
	assert.Contains(t, found(), "South steps")
	l.Query = "nowhere"
	assert.Contains(t, found(), "No job has")
	assert.Contains(t, read(t, l.HTML(at)), "Gone yard · deleted 14:04 Bring it back Delete for good")
}

func TestTheHandOverSheetHasEverything(t *testing.T) {
	j := job.Demo(at)
	j.HandOver.When = at
	v := jobpage.NewView(book(metric), j, jobpage.HandOver)
	made := v.HTML(at)
	said := part(t, v, "sheet")
	for _, want := range []string{
		"Hand-over sheet", j.Name, j.HandOver.Client, j.HandOver.Crew, "12 June 2026, 14:05",
		"Materials", "M-0417", "G-1031", // lots
		"Conditions at mixing", "16 °C to 18 °C", "Weather as entered",
		"Contact checks", "97 %", "One corner bare", "none bare",
		"Stages and times", "Walk on the terrace", "Mixing",
		"Worked out", "Care of the surface", "No acid on grout or sealant.", "Cautions", "silica",
		"What the figures rest on", "edition 0123abcd",
	} {
		assert.Contains(t, said, want)
	}
	assert.Contains(t, made, "<svg", "a drawing")
	assert.NotContains(t, strings.ToLower(said), "safe ")
	for _, s := range []string{"ASTM", "ANSI", "NIOSH"} {
		if strings.Contains(said, s) {
			return
		}
	}
	assert.Fail(t, "no source is named")
}

func TestTheDaysOfMixing(t *testing.T) {
	j := begun(t)
	hour := countdown.Instant(3_600_000)
	j.Mixes = []job.Mix{
		{ID: "a", When: at, Amount: "25 kg", Air: "60 F", Surface: "70 F", Lot: "L1"},
		{ID: "b", When: at + hour, Amount: "1/2 bag", Air: "68 F", Lot: "L2"},
		{ID: "c", When: at + 12*hour, Amount: "50 lb", Lot: "L1"},
	}
	v := jobpage.NewView(book(us), j, jobpage.HandOver)
	said := part(t, v, "sheet")
	// By hand: 25 kg / 0.45359237 kg/lb = 55.12 lb; 12 June 14:05 and 15:05, and 13 June 02:05.
	assert.Regexp(t, `Fri 12 June 2026 2 55\.1\d* lb · 0\.5 bags 60 °F to 68 °F 70 °F L1, L2 Sat 13 June 2026 1 50 lb L1`, said)
}

func TestTheOrderSaysLikelyAndCautious(t *testing.T) {
	v := jobpage.NewView(book(us), job.Demo(at), jobpage.Order)
	said := part(t, v, "order")
	for _, want := range []string{"The order", "Likely", "enough 19 times in 20", "Mortar", "Grout", "pallets", "Terrace"} {
		assert.Contains(t, said, want)
	}
}

func TestALongLogIsShownInPart(t *testing.T) {
	j := begun(t)
	for i := range 2000 {
		j.Mixes = append(j.Mixes, job.Mix{ID: "x" + countdown.Pad(int64(i), 4), When: at, Amount: "25 kg"})
	}
	v := view(us, j)
	assert.Less(t, strings.Count(v.HTML(at), `data-job-id="mixes/`), 50)
	assert.Contains(t, part(t, v, "mixes"), "Show all 2000 lines")
	assert.False(t, v.Press("more", "", at, ""))
	assert.Equal(t, 2000, strings.Count(v.HTML(at), `data-job-id="mixes/`))
}

func TestAnAddressNamesAJob(t *testing.T) {
	b := book(us)
	for _, m := range []jobpage.Mode{jobpage.Work, jobpage.HandOver, jobpage.Order} {
		href := b.Href("j-1", m)
		_, fragment, _ := strings.Cut(href, "#")
		id, mode := jobpage.At(fragment)
		assert.Equal(t, "j-1", id)
		assert.Equal(t, m, mode)
	}
	id, _ := jobpage.At("job=%3Cimg%3E&view=nothing")
	assert.Equal(t, "<img>", id)
	id, _ = jobpage.At("%zz")
	assert.Empty(t, id)
}

func TestAStripKeepsOneSum(t *testing.T) {
	j := job.Demo(at)
	s := &jobpage.Strip{Book: book(us), Job: j}
	assert.Contains(t, read(t, s.HTML(at)), "Add to this job")
	s.Open(j.Entries[0].ID, "bed")
	assert.Empty(t, s.Entry, "an entry of another calculator")
	s.Open(j.Entries[0].ID, j.Entries[0].Calculator)
	require.NotEmpty(t, s.Entry)
	assert.Equal(t, jobpage.None, s.Put(j, j.Entries[0].Calculator, "v=1&drop=1+in", at))
	assert.Equal(t, "v=1&drop=1+in", j.Entries[0].Link)
	s.Known = "v=1&drop=1+in"
	j.Entries[0].Link = "v=1&drop=2+in"
	assert.Equal(t, jobpage.Conflict, s.Put(j, j.Entries[0].Calculator, "v=1&drop=3+in", at), "changed on another page")
	j.Entries = j.Entries[1:]
	assert.Equal(t, jobpage.Gone, s.Put(j, "slope", "v=1&drop=3+in", at), "removed on another page")
	s.Entry, s.Known = "e99", ""
	assert.Equal(t, jobpage.None, s.Put(j, "slope", "v=1", at))
	assert.Equal(t, job.Entry{ID: "e99", Calculator: "slope", Link: "v=1", Changed: at}, j.Entries[len(j.Entries)-1])
	whole(t, j)
}

func TestFileNames(t *testing.T) {
	j := begun(t)
	j.Name = `Größe "N" / ../x`
	assert.Regexp(t, `^setbook-[a-z0-9-]+-2026-06-12\.json$`, jobpage.FileName(j))
	j.Name = "日本"
	assert.Equal(t, "setbook-2026-06-12.json", jobpage.FileName(j))
}

// What the code says is the link, as a reader of codes that has nothing to do with the encoder would see it; qr's own tests scan it.
func TestACodeIsDrawnWhereItFits(t *testing.T) {
	b := book(us)
	made, ok := b.Code("https://example.org/jobs/#packed=1.AAAA")
	require.True(t, ok)
	assert.Regexp(t, `<svg class="job-code" viewBox="0 0 \d+ \d+" role="img" aria-label="[^"]+"><rect [^>]*fill="white"/><path [^>]*fill="black" d="M[^"]+z"/></svg>`, made)
	_, ok = b.Code(strings.Repeat("x", 3000))
	assert.False(t, ok, "more than the largest code holds")
}
