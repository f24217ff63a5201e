package job_test

import (
	"encoding/json"
	"math/rand"
	"slices"
	"sort"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/unit"
)

func changes(of []job.Change) (told []string) {
	for _, c := range of {
		told = append(told, c.Path+" | "+english.Line(c.Says))
	}
	return told
}

// What an import would change is told field by field and line by line, and the same job changes nothing.
func TestDiff(t *testing.T) {
	old, changed := job.Demo(noon), job.Demo(noon)
	assert.Empty(t, job.Diff(old, changed))
	changed.Revision, changed.Changed = 7, noon+1
	assert.Empty(t, job.Diff(old, changed), "how often it was saved is no news")

	changed.Name, changed.Place, changed.Address = "Courtyard", "", "Nowhere 1"
	changed.Weather.Air = "9 °C"
	changed.Mixes = slices.Delete(changed.Mixes, 1, 2)
	changed.Mixes[1].Amount = "49 lb"
	changed.Checks = append(changed.Checks, job.Check{ID: "new", When: noon, Contact: "99 %"})
	changed.HandOver.Materials[0].Lots = "M-0419"
	assert.Equal(t, []string{
		"name | Name: “Courtyard (demo job)” becomes “Courtyard”.",
		"place | Place: “Invented” goes.",
		"address | Address: “Nowhere 1” is new.",
		"air | Air temperature: “18 °C” becomes “9 °C”.",
		"mixes[x2] | Mix goes: 2026-04-22 21:06 UTC · 50 lb · Mortar · M-0417 · 17 °C · 17 °C",
		"mixes[x3].amount | Mix, 2026-04-22 21:48 UTC · 49 lb · Mortar · …: Powder mixed: “50 lb” becomes “49 lb”.",
		"checks[new] | Check is new: 2026-04-24 03:06 UTC · 99 %",
		"materials[m1].lots | Material, Mortar · Large and heavy tile mortar, wh…: Bag lots: “M-0417, M-0418” becomes “M-0419”.",
	}, changes(job.Diff(old, changed)))

	fresh := job.Diff(nil, old)
	lines := 0
	for _, c := range fresh {
		assert.Empty(t, c.Was)
		lines++
	}
	assert.Greater(t, lines, len(old.Entries)+len(old.Mixes))
}

// Two phones of one crew: nothing that only one of them has is lost, and what both have is the later's.
func TestMerge(t *testing.T) {
	here, there := job.Demo(noon), job.Demo(noon)
	here.Revision, there.Revision = 5, 9
	here.Mixes = append(here.Mixes, job.Mix{ID: "h", When: noon + 2, Amount: "25 kg"})
	there.Mixes = append(there.Mixes, job.Mix{ID: "t", When: noon + 1, Amount: "20 kg"})
	here.Entries[0].Link, here.Entries[0].Changed = "v=1&drop=80+mm", noon+3
	there.Entries[1].Link, there.Entries[1].Changed = "v=1&span=3+m", noon+3
	here.Name, there.Name, there.Changed = "Here", "There", noon+4
	here.Weather = job.Weather{When: noon + 5, Air: "1 °C"}
	before := job.Write(here)

	merged, problems := job.Merge(here, there, noon+10)
	require.Empty(t, problems)
	assert.Equal(t, before, job.Write(here), "nothing changes by asking")
	assert.Equal(t, "There", merged.Name)
	assert.EqualValues(t, 10, merged.Revision)
	assert.EqualValues(t, noon+10, merged.Changed)
	assert.Equal(t, "1 °C", merged.Weather.Air)
	assert.Equal(t, "v=1&drop=80+mm", merged.Entries[0].Link)
	assert.Equal(t, "v=1&span=3+m", merged.Entries[1].Link)
	assert.Equal(t, []string{"t", "h"}, []string{merged.Mixes[5].ID, merged.Mixes[6].ID}, "in the order of their times")
	assert.Len(t, merged.Mixes, 7)
	other, problems := job.Merge(there, here, noon+10)
	require.Empty(t, problems)
	assert.Empty(t, job.Diff(merged, other), "either way round")
	again, _ := job.Merge(merged, there, noon+11)
	assert.Empty(t, job.Diff(merged, again), "a second time changes nothing")

	newer := job.Demo(noon)
	newer.Newer = 2
	got, problems := job.Merge(here, newer, noon)
	assert.Nil(t, got)
	assert.Contains(t, says(problems), "newer Setbook")

	full := large(job.MaxLog - 5)
	_, problems = job.Merge(full, there, noon)
	assert.NotEmpty(t, problems, "more lines than a record takes")
}

// A field that one side alone has is kept, whichever record was changed last; where both have one, the later's is taken, and of two of the
// same time both phones take the same.
func TestMergeLosesNoField(t *testing.T) {
	noted, typed := job.Demo(noon), job.Demo(noon)
	noted.Changed, noted.HandOver.Client, noted.HandOver.When, noted.HandOver.Materials[0].Lots = noon+9, "", 0, ""
	noted.Notes = append(noted.Notes, job.Note{ID: "n9", When: noon + 9, Text: "Rain"})
	typed.Changed, typed.Address, typed.HandOver.When, typed.Name = noon+5, "Long lane 1", noon+4, "Yard"
	for _, pair := range [][2]*job.Job{{noted, typed}, {typed, noted}} {
		m, problems := job.Merge(pair[0], pair[1], noon+20)
		require.Empty(t, problems)
		assert.Equal(t, "Long lane 1", m.Address)
		assert.Equal(t, typed.HandOver.Client, m.HandOver.Client)
		assert.EqualValues(t, noon+4, m.HandOver.When)
		assert.Equal(t, typed.HandOver.Materials[0].Lots, m.HandOver.Materials[0].Lots)
		assert.Equal(t, noted.Name, m.Name, "the later's")
		assert.Len(t, m.Notes, 3)
	}
	noted.Changed = typed.Changed
	one, _ := job.Merge(noted, typed, noon+20)
	two, _ := job.Merge(typed, noted, noon+30)
	assert.Equal(t, one.Name, two.Name, "two phones do not swap names")

	// The weather is one measurement: nothing of an older one is put into a newer.
	noted.Weather = job.Weather{When: noon + 6, Air: "9 °C"}
	typed.Weather = job.Weather{When: noon + 7, Wind: "3 km/h"}
	m, _ := job.Merge(noted, typed, noon+20)
	assert.Equal(t, typed.Weather, m.Weather)
	typed.Weather = job.Weather{When: noon + 7}
	m, _ = job.Merge(noted, typed, noon+20)
	assert.Equal(t, noted.Weather, m.Weather)
}

// Two pages of one record: what each changed since both read it stands in what they come to.
func TestJoin(t *testing.T) {
	base := job.Demo(noon)
	base.Checks[0].Picture = onePixel
	theirs, mine := base.Clone(), base.Clone()
	theirs.Revision, theirs.Changed = 8, noon+9
	theirs.Notes = append(theirs.Notes, job.Note{ID: "t", When: noon + 2, Text: "Theirs"})
	theirs.HandOver.Client, theirs.Place = "", "Theirs"
	theirs.Entries[0].Name, theirs.Entries[0].Changed = "Renamed", noon+7
	theirs.Weather.Air, theirs.Weather.When = "5 °C", noon+3
	theirs.Mixes = theirs.Mixes[1:] // x1 goes
	theirs.Checks[1].Note = "Theirs"
	theirs.HandOver.Materials[0].Lots = "T"
	mine.Address, mine.Place = "Mine", "Mine"
	mine.Notes = append(mine.Notes[1:], job.Note{ID: "m", When: noon + 1, Text: "Mine"}) // n1 goes
	mine.Entries[0].Link, mine.Entries[0].Changed = "v=1&drop=1+m", noon+6
	mine.Weather.Wind, mine.Weather.When = "1 km/h", noon+2
	mine.Checks[0].Picture = ""
	mine.Checks = slices.Delete(mine.Checks, 1, 2) // c2, which they changed
	mine.HandOver.Materials[0].Lots, mine.HandOver.Materials[0].Product = "M", "P"

	j, problems := job.Join(base, theirs, mine, noon+20)
	require.Empty(t, problems)
	assert.Equal(t, "Mine", j.Address)
	assert.Equal(t, "Mine", j.Place, "where both changed one thing, mine")
	assert.Empty(t, j.HandOver.Client, "what they cleared stays cleared")
	assert.Equal(t, job.Entry{ID: "e1", Calculator: "slope", Name: "Renamed", Link: "v=1&drop=1+m", Changed: noon + 7}, j.Entries[0])
	assert.Equal(t, job.Weather{When: noon + 2, Air: "5 °C", Humidity: "55 %", Surface: "20 °C", Wind: "1 km/h"}, j.Weather, "as old as the older of the two may be")
	assert.Equal(t, base.Mixes[1:], j.Mixes)
	assert.Empty(t, j.Checks[0].Picture)
	assert.Equal(t, "Theirs", j.Checks[1].Note, "taken out by one and changed by the other: it stays")
	assert.Equal(t, job.Material{ID: "m1", Name: "Mortar", Product: "P", Lots: "M"}, j.HandOver.Materials[0])
	assert.Equal(t, []string{"n2", "m", "t"}, []string{j.Notes[0].ID, j.Notes[1].ID, j.Notes[2].ID})
	assert.EqualValues(t, 8, j.Revision, "to be kept in the place of theirs")
	assert.EqualValues(t, noon+20, j.Changed)
	j, _ = job.Join(base, theirs, mine, noon+1)
	assert.Equal(t, theirs.Changed, j.Changed, "a clock that is behind makes it no older")
	for _, early := range []*job.Job{mine, theirs} {
		created := early.Created
		early.Created = 5
		j, _ = job.Join(base, theirs, mine, noon+20)
		assert.EqualValues(t, 5, j.Created)
		j, _ = job.Merge(theirs, mine, noon+20)
		assert.EqualValues(t, 5, j.Created)
		early.Created = created
	}

	mine.Weather.Air = "6 °C"
	theirs.Entries[0].Link = "v=1&drop=2+m"
	j, _ = job.Join(base, theirs, mine, noon+20)
	assert.Equal(t, "v=1&drop=2+m", j.Entries[0].Link, "of an entry that both changed, the later")
	assert.Equal(t, "5 °C", j.Weather.Air, "and of the weather")
	mine.Weather = job.Weather{}
	j, _ = job.Join(base, theirs, mine, noon+20)
	assert.Equal(t, job.Weather{When: noon + 3, Air: "5 °C"}, j.Weather, "cleared by one and measured by the other")
	theirs.Weather = base.Weather
	j, _ = job.Join(base, theirs, mine, noon+20)
	assert.Equal(t, job.Weather{}, j.Weather)

	j, problems = job.Join(nil, theirs, mine, noon+20)
	require.Empty(t, problems)
	assert.Len(t, j.Notes, 4, "with nothing in common to begin with, nothing goes")
	assert.Len(t, j.Mixes, 5)

	theirs.Newer = 2
	j, problems = job.Join(base, theirs, mine, noon+20)
	assert.Nil(t, j)
	assert.Contains(t, says(problems), "newer Setbook")
	_, problems = job.Join(job.Demo(noon), large(job.MaxLog-2), mine, noon)
	assert.NotEmpty(t, problems, "more lines than a record takes")
}

// edit is one thing that somebody changes: of which line ("" for the record itself), which field of it ("" for all of it), and how.
type edit struct {
	line, field string
	do          func(j *job.Job)
}

// clash reports whether two edits concern the same thing.
func (e edit) clash(with edit) bool {
	return e.line == with.line && (e.field == with.field || e.line != "" && (e.field == "" || with.field == ""))
}

// edits makes up what one side changes in a copy of the demo job.
func edits(random *rand.Rand, side string, count int) (all []edit) {
	texts := []string{"", side, "Both the same", side + "\nand more", "Ä " + side, "x"}
	for n := range count {
		text, at := texts[random.Intn(len(texts))], noon+countdown.Instant(random.Intn(20))
		line := strings.ReplaceAll(text, "\n", " ")
		id, some := side+strconv.Itoa(n), random.Intn
		figure := strconv.Itoa(some(30))
		pick := func(prefix string, most int) string { return prefix + strconv.Itoa(1+some(most)) }
		add := func(line, field string, do func(j *job.Job)) { all = append(all, edit{line, field, do}) }
		entry := func(id string, do func(e *job.Entry)) func(j *job.Job) {
			return func(j *job.Job) {
				for i := range j.Entries {
					if j.Entries[i].ID == id {
						do(&j.Entries[i])
						j.Entries[i].Changed = at
					}
				}
			}
		}
		mix := func(id string, do func(m *job.Mix)) func(j *job.Job) {
			return func(j *job.Job) {
				for i := range j.Mixes {
					if j.Mixes[i].ID == id {
						do(&j.Mixes[i])
					}
				}
			}
		}
		check := func(id string, do func(c *job.Check)) func(j *job.Job) {
			return func(j *job.Job) {
				for i := range j.Checks {
					if j.Checks[i].ID == id {
						do(&j.Checks[i])
					}
				}
			}
		}
		switch some(18) {
		case 0:
			add("", "name", func(j *job.Job) { j.Name = "Name " + line })
		case 1:
			add("", "address", func(j *job.Job) { j.Address = line })
		case 2:
			add("", "client", func(j *job.Job) { j.HandOver.Client = line })
		case 3:
			add("", "care", func(j *job.Job) { j.HandOver.Care = text })
		case 4:
			add("", "handed over", func(j *job.Job) { j.HandOver.When = at })
		case 5:
			add("", "air", func(j *job.Job) { j.Weather.Air, j.Weather.When = figure+" °C", noon+99 })
		case 6:
			add("", "wind", func(j *job.Job) { j.Weather.Wind, j.Weather.When = figure+" km/h", noon+99 })
		case 7:
			id := pick("e", 16)
			add(id, "name", entry(id, func(e *job.Entry) { e.Name = line }))
		case 8:
			id := pick("e", 16)
			add(id, "link", entry(id, func(e *job.Entry) { e.Link = "v=1&x=" + figure }))
		case 9:
			id := pick("x", 5)
			add(id, "note", mix(id, func(m *job.Mix) { m.Note = text }))
		case 10:
			id := pick("x", 5)
			add(id, "lot", mix(id, func(m *job.Mix) { m.Lot = line }))
		case 11:
			id := pick("c", 3)
			add(id, "picture", check(id, func(c *job.Check) {
				if c.Picture == "" {
					c.Picture = onePixel
				} else {
					c.Picture = ""
				}
			}))
		case 12:
			id := pick("c", 3)
			add(id, "contact", check(id, func(c *job.Check) { c.Contact = figure + " %" }))
		case 13:
			id := pick("x", 5)
			add(id, "", func(j *job.Job) { j.Mixes = slices.DeleteFunc(j.Mixes, func(m job.Mix) bool { return m.ID == id }) })
		case 14:
			id := pick("e", 16)
			add(id, "", func(j *job.Job) {
				j.Entries = slices.DeleteFunc(j.Entries, func(e job.Entry) bool { return e.ID == id })
			})
		case 15:
			add(id, "", func(j *job.Job) { j.Notes = append(j.Notes, job.Note{ID: id, When: at, Text: "New " + text}) })
		case 16:
			add("both", "", func(j *job.Job) {
				if !slices.ContainsFunc(j.Mixes, func(m job.Mix) bool { return m.ID == "both" }) {
					j.Mixes = append(j.Mixes, job.Mix{ID: "both", When: at, Amount: "25 kg", Note: text})
				}
			})
		default:
			id := pick("demo-", 2)
			id = map[string]string{"demo-1": "demo-foot", "demo-2": "demo-membrane"}[id]
			long := unit.Span(1+some(50)) * unit.Hour
			add(id, "", func(j *job.Job) {
				j.Countdowns = slices.DeleteFunc(j.Countdowns, func(c job.Countdown) bool { return c.ID == id })
				if begun, ok := countdown.Begin(id, "Wait "+line, "wait", "v=1", at, long); ok && text != "" {
					j.Countdowns = append(j.Countdowns, job.Countdown{ID: id, Text: begun.Text()})
				}
			})
		}
	}
	return all
}

func edited(from *job.Job, edits []edit, at countdown.Instant) *job.Job {
	j := from.Clone()
	j.Changed = at
	for _, e := range edits {
		e.do(j)
	}
	return j
}

// flat is what a record says, by path, as the standard library reads it: nothing of it goes through this project's own comparing. A line stands
// under its ID with its fields, and once by itself.
func flat(t testing.TB, j *job.Job) map[string]string {
	var in map[string]any
	require.NoError(t, json.Unmarshal([]byte(job.Write(j)), &in))
	out := map[string]string{}
	for key, value := range in {
		switch v := value.(type) {
		case string:
			out[key] = v
		case map[string]any:
			for inner, text := range v {
				out[key+"."+inner] = text.(string)
			}
		case []any:
			for _, line := range v {
				fields := line.(map[string]any)
				path := key + "[" + fields["id"].(string) + "]"
				out[path] = "there"
				for inner, text := range fields {
					if inner != "id" && inner != "changed" {
						out[path+"."+inner] = text.(string)
					}
				}
			}
		}
	}
	for _, own := range []string{"id", "setbook", "created", "changed"} {
		delete(out, own)
	}
	return out
}

// lineOf is the path of the line in which a path stands; "": it stands in none.
func lineOf(path string) string {
	if i := strings.Index(path, "]"); i >= 0 {
		return path[:i+1]
	}
	return ""
}

// differing are the paths where two records differ, in the alphabet: of a line that one of them lacks, the line alone.
func differing(a, b map[string]string) (paths []string) {
	all := map[string]bool{}
	for _, m := range []map[string]string{a, b} {
		for path := range m {
			all[path] = true
		}
	}
	for path := range all {
		if line := lineOf(path); a[path] != b[path] && (path == line || a[line] == b[line]) {
			paths = append(paths, path)
		}
	}
	sort.Strings(paths)
	return paths
}

// paths are where a list of changes says that two records differ, in the words of differing: the parts of a countdown are one text.
func paths(of []job.Change) (list []string) {
	for _, c := range of {
		path := c.Path
		if line := lineOf(path); strings.HasPrefix(path, "countdowns") && path != line {
			path = line + ".text"
		}
		list = append(list, path)
	}
	sort.Strings(list)
	return slices.Compact(list)
}

// bare leaves out which object of the record a field stands in, as changes do.
func bare(paths []string) []string {
	for i, path := range paths {
		paths[i] = strings.TrimPrefix(strings.TrimPrefix(path, "weather."), "handover.")
	}
	sort.Strings(paths)
	return slices.Compact(paths)
}

// plain is a record without when and how often it was saved.
func plain(j *job.Job) string {
	c := j.Clone()
	c.ID, c.Created, c.Changed, c.Revision = "x", 0, 0, 0
	return job.Write(c)
}

// Random edits on two pages. What each page did comes to what a third reader of the same files says it must, field by field.
func TestJoinOfRandomEdits(t *testing.T) {
	clashes := 0
	for seed := range int64(150) {
		random := rand.New(rand.NewSource(seed))
		base := job.Demo(noon)
		base.Checks[0].Picture = onePixel
		ours := edits(random, "m", random.Intn(9))
		mine, theirs := edited(base, ours, noon+50), edited(base, edits(random, "t", random.Intn(9)), noon+60)
		theirs.Revision = 4
		before := plain(base) + plain(theirs) + plain(mine)
		j, problems := job.Join(base, theirs, mine, noon+100)
		require.Empty(t, problems, says(problems))
		require.Equal(t, before, plain(base)+plain(theirs)+plain(mine), "nothing changes by asking")

		b, th, m, got := flat(t, base), flat(t, theirs), flat(t, mine), flat(t, j)
		all := map[string]string{}
		for _, f := range []map[string]string{b, th, m, got} {
			for path := range f {
				all[path] = ""
			}
		}
		for path := range all {
			line := lineOf(path)
			want := m[path]
			switch {
			case line != "" && th[line] == "" && m[line] == "": // neither has it
				want = ""
			case line != "" && (th[line] == "" || m[line] == ""): // one of them has it: it goes if it is as it was, and else stands whole
				has := th
				if th[line] == "" {
					has = m
				}
				same := b[line] != ""
				for other := range all {
					same = same && (lineOf(other) != line || has[other] == b[other])
				}
				if want = has[path]; same && !touched(base, theirs, mine, line) {
					want = ""
				}
			case m[path] == b[path]:
				want = th[path]
			case th[path] != b[path] && th[path] != m[path]:
				clashes++
				if later(theirs, mine, path) {
					want = th[path]
				}
			}
			require.Equal(t, want, got[path], "seed %d, %s", seed, path)
		}
		require.Equal(t, bare(differing(m, got)), paths(job.Diff(mine, j)), "seed %d: every difference is named, and nothing else", seed)
		require.Equal(t, bare(differing(th, got)), paths(job.Diff(theirs, j)), "seed %d", seed)

		alone, _ := job.Join(base, base, mine, noon)
		require.Equal(t, plain(mine), plain(alone), "seed %d: they changed nothing", seed)
		alone, _ = job.Join(base, theirs, base, noon)
		require.Equal(t, plain(theirs), plain(alone), "seed %d: I changed nothing", seed)
		again, _ := job.Join(theirs, j, theirs, noon)
		require.Equal(t, plain(j), plain(again), "seed %d: nothing is doubled", seed)

		// Edits that do not touch come to the same as one after the other.
		apart := slices.DeleteFunc(edits(random, "t", 8), func(e edit) bool { return slices.ContainsFunc(ours, e.clash) })
		j, problems = job.Join(base, edited(base, apart, noon+60), mine, noon+100)
		require.Empty(t, problems, says(problems))
		require.Empty(t, differing(flat(t, edited(edited(base, apart, noon), ours, noon)), flat(t, j)), "seed %d", seed)
	}
	assert.Greater(t, clashes, 20, "both sides changed the same things now and then")
}

// touched reports whether one that still has an entry has it with another time: that is a change, which flat leaves out.
func touched(base, theirs, mine *job.Job, line string) bool {
	at := map[countdown.Instant]bool{}
	for _, j := range []*job.Job{base, theirs, mine} {
		for _, e := range j.Entries {
			if "entries["+e.ID+"]" == line {
				at[e.Changed] = true
			}
		}
	}
	return len(at) > 1
}

// later reports whether a path stands in an entry, or in the weather, that theirs holds with the later time.
func later(theirs, mine *job.Job, path string) bool {
	if strings.HasPrefix(path, "weather.") {
		return theirs.Weather.When > mine.Weather.When
	}
	for _, a := range theirs.Entries {
		for _, b := range mine.Entries {
			if a.ID == b.ID && "entries["+a.ID+"]" == lineOf(path) {
				return a.Changed > b.Changed
			}
		}
	}
	return false
}

// Random edits on two phones: both come to the same, nothing is lost, and taking it in again changes nothing.
func TestMergeOfRandomEdits(t *testing.T) {
	for seed := range int64(150) {
		random := rand.New(rand.NewSource(seed))
		base := job.Demo(noon)
		base.Weather.When = countdown.Instant(random.Intn(2)) * noon
		a := edited(base, edits(random, "a", random.Intn(9)), noon+countdown.Instant(random.Intn(3)))
		b := edited(base, edits(random, "b", random.Intn(9)), noon+countdown.Instant(random.Intn(3)))
		b.Revision = 9
		now := noon + countdown.Instant(random.Intn(100)) - 50
		one, problems := job.Merge(a, b, now)
		require.Empty(t, problems, says(problems))
		two, problems := job.Merge(b, a, now+7)
		require.Empty(t, problems, says(problems))
		require.Equal(t, plain(one), plain(two), "seed %d: either way round", seed)
		for _, with := range []*job.Job{a, b, one} {
			again, _ := job.Merge(one, with, now+9)
			require.Equal(t, plain(one), plain(again), "seed %d: a second time changes nothing", seed)
		}
		fa, fb, got := flat(t, a), flat(t, b), flat(t, one)
		for path, text := range got {
			require.True(t, text == fa[path] || text == fb[path], "seed %d, %s: nothing is made up", seed, path)
		}
		for _, f := range []map[string]string{fa, fb} {
			for path := range f {
				if !strings.HasPrefix(path, "weather.") {
					require.NotEmpty(t, got[path], "seed %d, %s", seed, path)
				}
			}
		}
		for path, text := range fa {
			if text != fb[path] && fb[path] != "" && lineOf(path) == "" && !strings.HasPrefix(path, "weather.") && a.Changed > b.Changed {
				require.Equal(t, text, got[path], "seed %d, %s: the later's", seed, path)
			}
		}
		require.Equal(t, bare(differing(fa, got)), paths(job.Diff(a, one)), "seed %d", seed)
	}
}

// oneChange is what a change of the demo job says.
func oneChange(t testing.TB, change func(j *job.Job)) string {
	j := job.Demo(noon)
	change(j)
	all := job.Diff(job.Demo(noon), j)
	require.Len(t, all, 1)
	return english.Line(all[0].Says)
}

// What differs is what is seen, however far down a text it stands and whatever it is made of.
func TestDiffShowsThePlace(t *testing.T) {
	assert.Equal(t, "Entry, bed · Terrace · area 40.12 m2, bag_yield…: Entry: waste 10 % → 90 %", oneChange(t, func(j *job.Job) {
		j.Entries[7].Link = strings.Replace(j.Entries[7].Link, "waste=10", "waste=90", 1)
	}))
	assert.Equal(t, "Entry, slope · House to drain · cross 0 mm, run…: Entry: drop 132 mm → –, run 6 m → 5 m, slip – → 1 mm", oneChange(t, func(j *job.Job) { j.Entries[0].Link = "v=1&run=5+m&cross=0+mm&slip=1+mm" }))
	assert.Equal(t, "Entry, slope · House to drain · cross 0 mm, dro…: Entry: “v=1&drop=132+mm&run=6+m&cross=0+mm” becomes “v=1&run=6+m&drop=132+mm&cross=0+mm”.",
		oneChange(t, func(j *job.Job) { j.Entries[0].Link = "v=1&run=6+m&drop=132+mm&cross=0+mm" }), "the same pairs, otherwise written")
	assert.Contains(t, oneChange(t, func(j *job.Job) { j.Entries[1].Link = strings.Replace(j.Entries[1].Link, "0,0,0&", "0,0,9&", 1) }), "grid …2,33,33;0,1,0,0,0,1,0,0,0 → …2,33,33;0,1,0,0,0,1,0,0,9")

	assert.Equal(t, "Care of the surface: “…ant once a year, in the cold season.” becomes “…ant once a year, in the warm season.”.",
		oneChange(t, func(j *job.Job) { j.HandOver.Care = strings.Replace(j.HandOver.Care, "cold", "warm", 1) }))
	said := oneChange(t, func(j *job.Job) { j.HandOver.Care = strings.Replace(j.HandOver.Care, ".\nNo", ". No", 1) })
	assert.Contains(t, said, "neutral cleaner. ¶ No acid")
	assert.Contains(t, said, "neutral cleaner. No acid")
	long := strings.Repeat("abcde ", 600)
	said = oneChange(t, func(j *job.Job) { j.HandOver.Remarks = long + "END" })
	assert.Contains(t, said, long+"END", "what is new is shown to its end")

	assert.Equal(t, "Address: “"+strings.Repeat("a", 60)+" Street 1” is new.", oneChange(t, func(j *job.Job) { j.Address = strings.Repeat("a", 60) + " Street 1" }))
	assert.Equal(t, "Remarks: “Two pavers of the same batch are left in the shed.” becomes “Two pavers of the same batch are left in the barn.”.",
		oneChange(t, func(j *job.Job) { j.HandOver.Remarks = "Two pavers of the same batch are left in the barn." }), "what is short is shown whole")
	assert.Contains(t, oneChange(t, func(j *job.Job) { j.Entries[0].Link += "&note=" }), "Entry: note – → ", "a pair with nothing in it is one")
	far := oneChange(t, func(j *job.Job) { j.Entries[0].Link = "v=1&drop=132+mm&run=6+m&cross=" + strings.Repeat("1,", 20_000) })
	assert.Less(t, len(far), 5000, "of a grid not all is told")
	assert.Contains(t, far, " … ")

	with, other := job.Demo(noon), job.Demo(noon)
	with.Checks[0].Picture, other.Checks[0].Picture = onePixel, strings.Replace(onePixel, "6fpt", "6fpu", 1)
	assert.Contains(t, changes(job.Diff(with, other))[0], "A6fptVAAAA", "two pictures of one size are told apart by their letters")
	other.Checks[0].Picture = strings.Replace(onePixel, "==", "AA", 1)
	if again, problems := job.Read(job.Write(other)); assert.Empty(t, problems) {
		assert.Contains(t, changes(job.Diff(with, again))[0], "“1 × 1 px, 67 B” becomes “1 × 1 px, 69 B”")
	}

	name := func(to string) string { return oneChange(t, func(j *job.Job) { j.Name = to }) }
	assert.Equal(t, "Name: “Courtyard (demo job)” becomes “Court[U+200B]yard (demo job)”.", name("Court\u200byard (demo job)"))
	for sign, shown := range map[string]string{"\u202e": "[U+202E]", "\u200f": "[U+200F]", "\u2066": "[U+2066]", "\u00ad": "[U+00AD]", "\u00a0": "[U+00A0]", "\ufeff": "[U+FEFF]",
		"\u3164": "[U+3164]", "\ufe0f": "[U+FE0F]", "\U000e0041": "[U+E0041]", "\u034f": "[U+034F]", "\u2800": "[U+2800]"} {
		assert.Contains(t, name("Courtyard"+sign+" (demo job)"), "“Courtyard"+shown+" (demo job)”", "%U", sign)
	}
	assert.Equal(t, "Name: “Courtyard (demo job)” becomes “Courtyard \u00a0(demo job)”.", name("Courtyard  (demo job)"), "a page shows two spaces as one")
	assert.Equal(t, "Name: “Courtyard (demo job)” becomes “Größe 5′ ✓ 石”.", name("Größe 5′ ✓ 石"), "what is seen is left alone")

	wait := func(change func(c *countdown.Countdown)) []string {
		j := job.Demo(noon)
		c, ok := countdown.Read(j.Countdowns[1].ID, j.Countdowns[1].Text)
		require.True(t, ok)
		change(c)
		j.Countdowns[1].Text = c.Text()
		return changes(job.Diff(job.Demo(noon), j))
	}
	assert.Equal(t, []string{"countdowns[demo-foot].until | Countdown, Walk on the terrace · 2026-04-24 18:30 U…: Ends: “2026-04-24 17:30 UTC” becomes “2026-04-24 18:30 UTC”."},
		wait(func(c *countdown.Countdown) { c.Until += 3_600_000 }))
	assert.Equal(t, []string{"countdowns[demo-foot].until | Countdown, Walk on the terrace · 2026-04-24 17:30 U…: Ends: “2026-04-24T17:30:40.000Z” becomes “2026-04-24T17:30:40.001Z”."},
		wait(func(c *countdown.Countdown) { c.Until++ }), "less than what is shown of a time is shown in full")
	assert.Equal(t, []string{"countdowns[demo-foot].name | Countdown, Gate · 2026-04-24 17:30 UTC: Name: “Walk on the terrace” becomes “Gate”.",
		"countdowns[demo-foot].entry | Countdown, Gate · 2026-04-24 17:30 UTC: Entry: temp 15 C → 25 C"},
		wait(func(c *countdown.Countdown) { c.Name, c.Entry = "Gate", strings.Replace(c.Entry, "15+C", "25+C", 1) }))
	gone := job.Demo(noon)
	gone.Countdowns = gone.Countdowns[:1]
	assert.Equal(t, []string{"countdowns[demo-foot] | Countdown goes: Walk on the terrace · 2026-04-24 17:30 UTC"}, changes(job.Diff(job.Demo(noon), gone)))
	all := job.Diff(gone, job.Demo(noon))
	require.Len(t, all, 1)
	assert.True(t, all[0].New)
}

// No two texts that differ read alike, whatever stands in them.
func FuzzDiffShows(f *testing.F) {
	f.Add("Courtyard", "Court\u200byard")
	f.Add("a\nb", "a b")
	f.Add(strings.Repeat("x", 300)+"1", strings.Repeat("x", 300)+"2")
	f.Fuzz(func(t *testing.T, was, will string) {
		old, new := job.Demo(noon), job.Demo(noon)
		old.HandOver.Remarks, new.HandOver.Remarks = job.CleanLines(was, job.MaxText), job.CleanLines(will, job.MaxText)
		if strings.Contains(was+will, "[U+") || strings.Contains(was+will, "¶") {
			return // somebody writes our own signs
		}
		all := job.Diff(old, new)
		if old.HandOver.Remarks == new.HandOver.Remarks {
			require.Empty(t, all)
			return
		}
		require.Len(t, all, 1)
		with := all[0].Says.With
		if len(with) == 3 { // the field, the one, the other
			require.NotEqual(t, with[1].Text, with[2].Text)
		}
	})
}

// An identical job with full logs, which once held a page for 11.6 s. Linear it is about a hundredth of the bound here; the bound is wide because
// machines are noisy.
func TestDiffOfFullLogsIsQuick(t *testing.T) {
	j := large(job.MaxLog - 5)
	begun := time.Now()
	assert.Empty(t, job.Diff(j, large(job.MaxLog-5)))
	assert.Less(t, time.Since(begun), 2*time.Second)
}

func BenchmarkDiff(b *testing.B) {
	one, two := large(job.MaxLog-5), large(job.MaxLog-5)
	for b.Loop() {
		job.Diff(one, two)
	}
}

func BenchmarkJoin(b *testing.B) {
	base := large(job.MaxLog - 5)
	for b.Loop() {
		job.Join(base, base, base, noon)
	}
}

func TestSearch(t *testing.T) {
	list := []job.Summary{{ID: "a", Name: "Courtyard", Place: "Örby", Changed: 1, Entries: []string{"Steps", "bed"}}, {ID: "b", Name: "Roof", Changed: 3}, {ID: "c", Name: "court", Changed: 2}}
	ids := func(query string) (ids []string) {
		for _, s := range job.Search(list, query) {
			ids = append(ids, s.ID)
		}
		return ids
	}
	assert.Equal(t, []string{"b", "c", "a"}, ids(" "), "the last changed first")
	assert.Equal(t, []string{"c", "a"}, ids("COURT"))
	assert.Equal(t, []string{"a"}, ids("örby bed"))
	assert.Empty(t, ids("courtyard roof"))
	s := job.Summarise(job.Demo(noon))
	assert.Contains(t, s.Entries, "bed")
	assert.Contains(t, s.Entries, "Along the house")
	assert.Equal(t, []string{"demo"}, func() []string { return []string{job.Search([]job.Summary{s}, "joint courtyard")[0].ID} }())
	assert.Equal(t, 16, len(job.Demo(noon).Entries))
	assert.Contains(t, job.Lines(job.Demo(noon)), "\nwait Foot+traffic?v=1&binder=portland&bag_time=24+h&bag_temp=21+C&temp=15+C\n")
	assert.Equal(t, countdown.Instant(noon), s.Changed)
}
