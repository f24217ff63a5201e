package job_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/countdown"
	"setbook/calc/job"
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
	changed.Mixes[1].Amount = "24 kg"
	changed.Checks = append(changed.Checks, job.Check{ID: "new", When: noon, Contact: "99 %"})
	changed.HandOver.Materials[0].Lots = "M-0419"
	assert.Equal(t, []string{
		"name | Name: “Courtyard (demo job)” becomes “Courtyard”.",
		"place | Place: “Invented” goes.",
		"address | Address: “Nowhere 1” is new.",
		"air | Air temperature: “18 °C” becomes “9 °C”.",
		"mixes[x2] | Mix goes: 2026-04-22 21:06 UTC · 25 kg · Mortar · M-0417 · 17 °C · 17 °C",
		"mixes[x3].amount | Mix, 2026-04-22 21:48 UTC · 24 kg · Mortar · …: Powder mixed: “25 kg” becomes “24 kg”.",
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
