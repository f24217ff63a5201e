package jobpage_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/all"
	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/jobpage"
	"setbook/calc/languages"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// spanish reads Spanish and metric, with a decimal comma.
var spanish = words.Reader{Language: languages.Spanish, Style: unit.Style{System: unit.Metric, Decimal: ','}}

// under is what stands under a field.
func under(t *testing.T, v *jobpage.View, key string) string {
	t.Helper()
	return part(t, v, "note-"+key)
}

// The limits are those of testdata/job.schema.json: 100 characters of a name, 300 of a line, 4,000 of a text.
func TestATextThatIsTooLongIsRefused(t *testing.T) {
	for key, most := range map[string]int{"name": 100, "place": 300, "address": 300, "client": 300, "crew": 300, "care": 4000, "remarks": 4000} {
		j := begun(t)
		v := view(us, j)
		before := job.Write(j)
		long := strings.Repeat("ñ", most+1)
		assert.False(t, v.Type(key, long, at), key)
		assert.Equal(t, before, job.Write(j), "%s: nothing is saved", key)
		assert.True(t, v.Invalid(key), key)
		assert.Contains(t, under(t, v, key), us.Style.Print(unit.Figure{Kind: unit.KindNumber, Base: float64(most + 1), As: unit.Whole1})+" characters", key)
		text, _ := v.Field(key)
		assert.Equal(t, long, text, "%s: what was typed stays", key)
		assert.True(t, v.Type(key, long[:2*most], at), "%s: one less is taken", key)
		assert.False(t, v.Invalid(key), key)
		whole(t, j)
	}
}

func TestALineWithATextThatIsTooLongIsNotPutIn(t *testing.T) {
	good := map[string]string{"mix-amount": "25 kg", "check-where": "Row 1", "check-contact": "96 %", "note-text": "Swept", "material-name": "Grout"}
	for key, most := range map[string]int{"mix-product": 300, "mix-lot": 300, "check-where": 300, "check-corners": 300, "check-note": 300, "note-text": 4000,
		"material-name": 300, "material-product": 300, "material-lots": 300} {
		j := begun(t)
		v := view(us, j)
		for field, text := range good {
			v.Type(field, text, at)
		}
		before := job.Write(j)
		form, _, _ := strings.Cut(key, "-")
		v.Type(key, strings.Repeat("é", most+1), at)
		assert.Contains(t, under(t, v, key), "characters", "%s: it is said before the button is pressed", key)
		changed, wants := v.Act(form, "", at, "x1")
		assert.False(t, changed, key)
		assert.Equal(t, key, wants)
		assert.Equal(t, before, job.Write(j), "%s: nothing is put in", key)
		text, _ := v.Field(key)
		assert.Len(t, []rune(text), most+1, "%s: what was typed stays", key)

		v.Type(key, strings.Repeat("é", most), at)
		changed, wants = v.Act(form, "", at, "x1")
		assert.True(t, changed, key)
		assert.Empty(t, wants)
		assert.Contains(t, job.Write(j), strings.Repeat("é", most), "%s: all of it is kept", key)
		whole(t, j)
	}
}

// A wrong field elsewhere on the page is not that of the line.
func TestOnlyAFieldOfTheLineIsWanted(t *testing.T) {
	v := view(us, begun(t))
	v.Type("air", "much", at)
	require.True(t, v.Invalid("air"))
	_, wants := v.Act("note", "", at, "x1")
	assert.Equal(t, "note-text", wants)
	_, wants = v.Act("unhanded", "", at, "x1")
	assert.Empty(t, wants)
}

func TestTheNameOfASumThatIsTooLong(t *testing.T) {
	j := job.Demo(at)
	v := view(us, j)
	was := j.Entries[0].Name
	key := "entry-" + j.Entries[0].ID
	assert.False(t, v.Type(key, strings.Repeat("x", 301), at))
	assert.Equal(t, was, j.Entries[0].Name)
	assert.Contains(t, read(t, v.Names()[0].HTML), "301 characters")
	for _, p := range v.Parts(at) {
		if p.Name == "sums" {
			assert.Contains(t, p.HTML, strings.Repeat("x", 301), "it stays in its field")
		}
	}
	assert.True(t, v.Type(key, "Steps", at))
	assert.Equal(t, "Steps", j.Entries[0].Name)
	assert.Empty(t, v.Names()[0].HTML)
}

func TestANewJobWithANameThatIsTooLong(t *testing.T) {
	l := &jobpage.List{Book: book(us), Ready: true}
	for key, most := range map[string]int{"name": 100, "place": 300} {
		l.Type(key, strings.Repeat("ü", most+1))
		assert.Equal(t, key, l.Wants())
		assert.Contains(t, read(t, made(t, l, "new-"+key)), "characters")
		l.Type(key, strings.Repeat("ü", most))
		assert.Empty(t, l.Wants())
		assert.Empty(t, made(t, l, "new-"+key))
	}
	_, ok := l.New("a", strings.Repeat("ü", 101), "", at)
	assert.False(t, ok)
	_, ok = l.New("a", "A", strings.Repeat("ü", 301), at)
	assert.False(t, ok)
	j, ok := l.New("a", strings.Repeat("ü", 100), strings.Repeat("ü", 300), at)
	assert.True(t, ok)
	whole(t, j)
}

const hour = countdown.Instant(3_600_000)

// The record has one time for four readings: it never makes one of them newer than it is.
func TestTheTimeOfTheWeatherIsThatOfItsOldestReading(t *testing.T) {
	j := begun(t)
	j.Weather = job.Weather{When: at - 72*hour, Air: "84 °F", Surface: "90 °F", Wind: "4 mph"}
	v := view(us, j)
	require.True(t, v.Type("wind", "6 mph", at))
	assert.Equal(t, at-72*hour, j.Weather.When, "the wind makes no three-day-old air new")
	for _, old := range []string{"air", "surface"} {
		assert.Contains(t, under(t, v, old), "Last entered Tue 9 June 2026, 14:05", old)
	}
	assert.Empty(t, under(t, v, "wind"))
	assert.Empty(t, under(t, v, "humidity"), "nothing stands there")
	assert.Equal(t, 1, strings.Count(v.HTML(at), `data-job-do="still"`), "one button for all")

	assert.False(t, v.Type("air", "84 °F", at+hour), "the same figure again leaves the oldest reading the oldest")
	assert.Empty(t, under(t, v, "air"))
	require.True(t, v.Type("surface", "90 °F", at+hour), "now all have been entered again")
	assert.Equal(t, at, j.Weather.When)
	assert.Empty(t, under(t, v, "surface"))

	require.True(t, v.Type("wind", "", at+9*hour), "what is taken away")
	assert.Equal(t, at+hour, j.Weather.When, "leaves the others as old as they are")
	require.True(t, v.Type("air", "80 F", at+9*hour))
	assert.Equal(t, at+hour, j.Weather.When)
	changed, _ := v.Act("still", "", at+10*hour, "")
	assert.True(t, changed)
	assert.Equal(t, at+10*hour, j.Weather.When)
	assert.Equal(t, "90 °F", j.Weather.Surface)
	v.Type("air", "", at)
	v.Type("surface", "", at)
	assert.Equal(t, job.Weather{}, j.Weather)
}

func TestTheSameAirAgainIsMeasuredNow(t *testing.T) {
	j := begun(t)
	v := view(us, j)
	v.Type("air", "84 F", at)
	kept := j.Weather.Air
	assert.True(t, v.Type("air", "84 F", at+24*hour))
	assert.Equal(t, at+24*hour, j.Weather.When)
	assert.Equal(t, kept, j.Weather.Air)
	assert.False(t, v.Type("air", "84 F", at+24*hour+10), "the event that follows the last key is no second reading")
	assert.False(t, v.Type("air", "hot", at+48*hour))
	assert.Equal(t, at+24*hour, j.Weather.When, "what cannot be read is no reading")
}

// What another page has saved is of its own time.
func TestAnotherPagesWeatherIsOfItsOwnTime(t *testing.T) {
	v := view(us, begun(t))
	v.Type("air", "84 F", at)
	theirs := begun(t)
	theirs.Weather = job.Weather{When: at - 30*hour, Air: "60 °F", Wind: "4 mph"}
	v.Replace(theirs)
	v.Type("wind", "5 mph", at)
	assert.Equal(t, at-30*hour, v.Job.Weather.When)
	assert.Contains(t, under(t, v, "air"), "Last entered")
}

// Words with which somebody says that nothing was bare are no bare corner; a sentence that begins with one is.
func TestNothingBareInWords(t *testing.T) {
	for corners, bare := range map[string]bool{"": false, "none": false, "No": false, " Nothing. ": false, "-": false, "–": false, "0": false, "ninguno": false, "Ninguna": false, "nada": false, "no hay": false,
		"n/a": false, "one": true, "No mortar at the drain": true, "1": true, "north": true, "ninguno cubierto": true} {
		j := begun(t)
		v := view(us, j)
		v.Type("check-where", "Row 1", at)
		v.Type("check-contact", "97 %", at)
		v.Type("check-corners", corners, at)
		changed, _ := v.Act("check", "", at, "c1")
		require.True(t, changed)
		told := false
		for _, n := range job.Today(j, at, all.ByID).Next {
			told = told || n.Calculator == "contact" && strings.Contains(us.Line(n.Says), "not bedded")
		}
		assert.Equal(t, bare, told, "%q", corners)
	}
}

// Bags are read in the reader's own word too, and kept so that every reader's Setbook knows them.
func TestBagsInTheReadersWords(t *testing.T) {
	for text, kept := range map[string]string{"2 sacos": "2 bags", "1 saco": "1 bag", "1,5 Sacos": "1.5 bags", "2 bags": "2 bags", "1/2 saco": "0.5 bags", "12,5 kg": "12,5 kg"} {
		v := view(spanish, begun(t))
		v.Type("mix-amount", text, at)
		changed, _ := v.Act("mix", "", at, "x1")
		if assert.True(t, changed, text) {
			assert.Equal(t, kept, strings.ReplaceAll(v.Job.Mixes[0].Amount, "\u00a0", " "), text)
		}
		whole(t, v.Job)
	}
	v := view(spanish, begun(t))
	assert.Contains(t, under(t, v, "mix-amount"), "2 sacos")
	v.Type("mix-amount", "2 cubos", at)
	changed, _ := v.Act("mix", "", at, "x1")
	assert.False(t, changed)
	assert.Contains(t, under(t, view(us, begun(t)), "mix-amount"), "2 bags")
}

func TestAJobGoesForGoodByTwoPresses(t *testing.T) {
	l := &jobpage.List{Book: book(us), Ready: true, Heads: []jobpage.Head{jobpage.HeadOf(begun(t)), jobpage.HeadOf(job.Demo(at))}}
	l.Heads[0].Gone, l.Heads[1].Gone = at, at
	assert.NotContains(t, l.HTML(at), "erase-sure")
	l.Sure = "demo"
	made := made(t, l, "gone")
	assert.Equal(t, 1, strings.Count(made, `data-job-do="erase-sure" data-job-id="demo"`))
	assert.Equal(t, 1, strings.Count(made, `data-job-do="spare" data-job-id="demo"`))
	assert.Equal(t, 1, strings.Count(made, `data-job-do="erase"`), "the other job's")
	assert.Contains(t, read(t, made), "Really delete Courtyard (demo job) for good")
}

func TestTheStripSaysWhatItShowsAndHelpsOut(t *testing.T) {
	j := job.Demo(at)
	s := &jobpage.Strip{Book: book(us), Job: j}
	assert.Empty(t, s.Fed())
	var heat job.Entry
	for _, e := range j.Entries {
		if e.Calculator == "gohold" {
			heat = e
		}
	}
	s.Open(heat.ID, "gohold")
	assert.Contains(t, heat.Link, "air=16+C")
	assert.Contains(t, s.Fed(), "air=18+%C2%B0C", "with the weather of the job in it")
	assert.Contains(t, s.Fed(), "rain=48+h")
	assert.NotContains(t, read(t, s.HTML(at)), "the link held")
	s.Other = true
	assert.Contains(t, read(t, s.HTML(at)), "Shown as the job keeps it; the link held other figures.")

	for trouble, button := range map[jobpage.Trouble]string{jobpage.Full: "again", jobpage.Failed: "again", jobpage.TooLarge: "again", jobpage.Unfit: "again", jobpage.Conflict: "add"} {
		s.Trouble = trouble
		assert.Contains(t, s.HTML(at), `data-job-do="`+button+`"`)
		assert.Contains(t, s.HTML(at), `data-job-do="file"`)
	}
	// The file that is handed on has the sum as it stands on the page, though another page has changed it.
	s.Known = "v=1&air=1+C"
	with := s.With("gohold", "v=1&air=7+C", at)
	assert.Len(t, with.Entries, len(j.Entries))
	assert.Contains(t, job.Write(with), `"v=1&air=7+C"`)
	assert.NotContains(t, job.Write(j), `"v=1&air=7+C"`)
	j.Entries = j.Entries[:1]
	assert.Len(t, s.With("gohold", "v=1&air=7+C", at).Entries, 2, "it was removed on another page")
}
