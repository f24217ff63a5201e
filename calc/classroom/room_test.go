package classroom_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"setbook/calc"
	"setbook/calc/all"
	"setbook/calc/bed"
	"setbook/calc/classroom"
	"setbook/calc/drill"
	"setbook/calc/paddle"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	us          = words.Reader{Language: words.English, Style: unit.Style{System: unit.US, Decimal: '.'}}
	comma       = words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: ','}}
	calculators = []*calc.Calculator{&bed.Calculator, &paddle.Calculator}
)

// key is what the room's exercise at a place asks for, as it is printed: made anew from the teacher's link.
func key(seed uint64, at int, r words.Reader) string {
	x := drill.Set(&bed.Calculator, seed, at+1, r.Style.System)[at]
	return r.Style.Print(x.Asked.Is)
}

// A round of three: right at once, right in the end, given up.
func TestARoundKeepsTheScore(t *testing.T) {
	room := classroom.New(calculators, us)
	require.True(t, room.Load("calculator=bed&seed=5&count=3&units=us"))
	assert.Contains(t, room.Round(), "Exercise 1 of 3")
	assert.NotContains(t, room.Round(), "step by step", "the key stays hidden until there is an answer")
	room.Answer("what?") // no try: it cannot be read
	assert.Contains(t, room.Round(), "cannot be read")
	assert.Contains(t, room.Round(), "what?", "what was typed stays")
	room.Answer(key(5, 0, us))
	assert.Contains(t, room.Round(), `data-right="true"`)
	room.Answer("1 mm") // it is judged already
	assert.Contains(t, room.Round(), `data-right="true"`)
	room.Next()
	room.Answer("123456")
	room.Answer(key(5, 1, us))
	room.Next()
	room.Next()
	room.Next() // there is no fourth
	end := room.Round()
	assert.Contains(t, end, "1 of 3 right at the first try")
	assert.Equal(t, 1, strings.Count(end, "right in the end"))
	assert.Equal(t, 1, strings.Count(end, "not solved"))
	assert.Equal(t, "bed=3", room.Kept(), "a third of ten, rounded down")
	other := classroom.New(calculators, us)
	other.Recall(room.Kept() + ";nothing=4;paddle=99;x")
	assert.Equal(t, "bed=3", other.Kept())
}

// The link that a teacher hands out makes the same worksheet on another device, in its units, and does not give the key away.
func TestATeachersLink(t *testing.T) {
	teacher := classroom.New(calculators, us)
	for key, value := range map[string]string{"calculator": "paddle", "seed": "77", "count": "4", "units": "metric"} {
		require.True(t, teacher.Choose(key, value), key)
	}
	require.True(t, teacher.Choose("view", "key"))
	student := classroom.New(calculators, us)
	require.True(t, student.Load(teacher.Link()), teacher.Link())
	assert.Contains(t, student.Round(), "Set 77, 4 exercises")
	assert.NotContains(t, student.Round(), "worksheet-key")
	assert.Equal(t, teacher.Link(), student.Link())
	sheet, _, _ := strings.Cut(teacher.Round(), "worksheet-key")
	assert.True(t, strings.HasPrefix(sheet, strings.TrimSuffix(student.Round(), "</ol></article>")), "the same exercises, before the key")
	assert.Contains(t, teacher.Round(), "worksheet-key")
	assert.Contains(t, student.Round(), " mm", "metric, whatever the device shows")
}

// What cannot be taken is said with what was read and what is taken, and changes nothing.
func TestABadChoice(t *testing.T) {
	room := classroom.New(calculators, us)
	before := room.Link()
	for key, value := range map[string]string{"seed": "1000000", "count": "41", "calculator": "none", "units": "feet", "view": "x", "other": "1"} {
		assert.False(t, room.Choose(key, value), key)
		assert.Contains(t, room.Said(), value)
		assert.Equal(t, before, room.Link())
	}
	assert.False(t, room.Load("seed=1&seed=2"))
	assert.NotEmpty(t, room.Said())
	assert.Equal(t, before, room.Link())
	require.True(t, room.Choose("seed", "3"))
	assert.Empty(t, room.Said())
}

// Another reader sees the same exercise where its units are the link's, and figures in that habit.
func TestAnotherHabit(t *testing.T) {
	room := classroom.New(calculators, us)
	require.True(t, room.Load("calculator=bed&seed=5&count=3&units=metric"))
	room.Address(comma)
	room.Answer(key(5, 0, comma))
	assert.Contains(t, room.Round(), `data-right="true"`)
}

// Nothing that is typed or linked comes out as markup.
func TestHostileAnswers(t *testing.T) {
	const evil = `"><script>alert(1)</script><img src=x onerror=alert(1)>`
	room := classroom.New(calculators, us)
	room.Answer(evil)
	room.Choose("seed", evil)
	z := html.NewTokenizer(strings.NewReader(room.HTML()))
	seen := false
	for z.Next() != html.ErrorToken {
		token := z.Token()
		assert.NotContains(t, []string{"script", "img"}, token.Data)
		seen = seen || strings.Contains(token.Data, "<script")
	}
	assert.True(t, seen, "it is there to be read")
}

// A hostile link or answer never panics.
func FuzzLoad(f *testing.F) {
	f.Add("calculator=bed&seed=5&count=3&units=metric&view=sheet", "12 mm")
	f.Fuzz(func(t *testing.T, link, answer string) {
		room := classroom.New(calculators[1:], us)
		room.Load(link)
		room.Answer(answer)
		room.Recall(answer)
		require.NotEmpty(t, room.HTML())
	})
}

// The page shows what the exercise gives and nothing else, each as the very text that the key is worked from.
func TestWhatIsGivenIsShown(t *testing.T) {
	cell := regexp.MustCompile(`<tr><th scope="row">([^<]*) <var>.*?</th><td>([^<]*)</td></tr>`)
	metric := comma
	metric.Style.Decimal = '.'
	for _, r := range []words.Reader{us, metric, comma} {
		for seed := range uint64(60) {
			room := classroom.New(calculators, r)
			require.True(t, room.Load("calculator=bed&count=1&units="+map[unit.System]string{unit.US: "us", unit.Metric: "metric"}[r.Style.System]+"&seed="+strconv.FormatUint(seed, 10)))
			x := drill.Set(&bed.Calculator, seed, 1, r.Style.System)[0]
			rows, given := cell.FindAllStringSubmatch(room.Round(), -1), x.Given()
			require.Len(t, rows, len(given))
			for i, in := range given {
				require.Equal(t, string(in.Label), html.UnescapeString(rows[i][1]))
				if len(in.Options) > 0 {
					continue
				}
				require.NotRegexp(t, map[byte]string{'.': `,`, ',': `\.`}[r.Style.Decimal], rows[i][2])
				base, fault := unit.Read(in.Kind, html.UnescapeString(rows[i][2]), unit.Habit{Decimal: r.Style.Decimal})
				require.Nil(t, fault, rows[i][2])
				require.Equal(t, x.Entry.Reading(in.Key).Base, base, "what is read off the page is what the key has")
			}
		}
	}
}

// The room opens with a sum that makes a first exercise, where it is there.
func TestTheFirstExercise(t *testing.T) {
	assert.Contains(t, classroom.New(all.Calculators(), us).Link(), "calculator=slope&")
	assert.Contains(t, classroom.New(calculators, us).Link(), "calculator=bed&")
}

// One is one.
func TestOneExercise(t *testing.T) {
	room := classroom.New(calculators, us)
	require.True(t, room.Load("count=1&seed=4&view=key"))
	assert.Contains(t, room.Round(), "Set 4, one exercise")
	assert.NotContains(t, room.Round(), "exercises")
}
