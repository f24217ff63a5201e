package job_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/calctest"
	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/words"
)

const noon countdown.Instant = 1_777_000_000_000

var english = words.Reader{Language: words.English}

func says(problems []job.Problem) string {
	var lines []string
	for _, p := range problems {
		lines = append(lines, english.Line(p.Says))
	}
	return strings.Join(lines, "\n")
}

// large is a job with so many lines in each log.
func large(lines int) *job.Job {
	j := job.Demo(noon)
	for i := range lines {
		id := "l" + strconv.Itoa(i)
		j.Mixes = append(j.Mixes, job.Mix{ID: id, When: noon + countdown.Instant(i), Amount: "25 kg", Lot: "L" + id, Air: "20 °C", Note: "nothing, “quoted” \\ and\nbroken"})
		j.Checks = append(j.Checks, job.Check{ID: id, When: noon, Contact: "96 %"})
		j.Notes = append(j.Notes, job.Note{ID: id, When: noon, Text: "x"})
	}
	return j
}

// onePixel is a whole PNG of one pixel (Portable Network Graphics, third edition).
const onePixel = "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGP4DwABAQEAsTj2FAAAAABJRU5ErkJggg=="

func jobs() map[string]*job.Job {
	picture := job.Demo(noon)
	picture.Checks[0].Picture = onePixel
	return map[string]*job.Job{
		"demo": job.Demo(noon), "early": job.Demo(1), "large": large(2000), "picture": picture,
		"bare":       {ID: "a", Name: "ä \U0001F9F1 \"quoted\" \\ / <b>"},
		"from entry": job.FromEntries("b", "My entries", map[string]string{"bed": "v=1&width=1/2+in", "": "v=1", "no%": "x=1", "dew": "%4"}, map[string]string{"c": "countdown=1"}, noon),
	}
}

// Every job is read back as it was, also by the standard library's reader, and is written in one way.
func TestRoundTrip(t *testing.T) {
	for name, j := range jobs() {
		text := job.Write(j)
		again, problems := job.Read(text)
		require.Empty(t, problems, "%s: %s", name, says(problems))
		require.Equal(t, j, again, name)
		require.Equal(t, text, job.Write(again), name)
		var other struct {
			ID, Name string
			Mixes    []struct{ ID, Amount, Note string }
			Entries  []struct{ Calculator, Link string }
		}
		require.NoError(t, json.Unmarshal([]byte(text), &other), name)
		assert.Equal(t, j.Name, other.Name)
		require.Len(t, other.Mixes, len(j.Mixes))
		for i, m := range j.Mixes {
			assert.Equal(t, [3]string{m.ID, m.Amount, m.Note}, [3]string{other.Mixes[i].ID, other.Mixes[i].Amount, other.Mixes[i].Note}, name)
		}
		for i, e := range j.Entries {
			assert.Equal(t, [2]string{e.Calculator, e.Link}, [2]string{other.Entries[i].Calculator, other.Entries[i].Link})
		}
	}
	from := jobs()["from entry"]
	require.Len(t, from.Entries, 1, "what is no entry is not taken over")
	assert.Empty(t, from.Countdowns)
}

func schema(t testing.TB) *jsonschema.Schema {
	s, err := jsonschema.NewCompiler().Compile(filepath.Join(calctest.Testdata(), "job.schema.json"))
	require.NoError(t, err)
	return s
}

func matches(t testing.TB, s *jsonschema.Schema, text string) error {
	v, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
	require.NoError(t, err, text)
	return s.Validate(v)
}

// What is written is what the schema says, by a validator that has nothing to do with this project (github.com/santhosh-tekuri/jsonschema).
func TestSchema(t *testing.T) {
	s := schema(t)
	for name, j := range jobs() {
		assert.NoError(t, matches(t, s, job.Write(j)), name)
	}
}

// spoil is a change of the demo job's text that makes it no record: what is wrong, and on which line.
type spoil struct{ old, new, path, problem string }

var spoils = []spoil{
	{`"version": 1,`, `"version": 0,`, "version", "from 1 on"},
	{`"version": 1,`, `"version": "1",`, "version", "from 1 on"},
	{`"revision": 0,`, `"revision": -1,`, "revision", "whole number"},
	{`"revision": 0,`, `"revision": 9007199254740992,`, "revision", "whole number"},
	{`"revision": 0,`, `"revision": 1.5,`, "revision", "whole number"},
	{`"revision": 0,`, `"revision": null,`, "revision", "whole number"},
	{`  "revision": 0,` + "\n", ``, "revision", "missing"},
	{`"id": "demo"`, `"id": "Demo"`, "id", "small letters"},
	{`"id": "demo"`, `"id": ""`, "id", "nothing"},
	{`"name": "Courtyard (demo job)"`, `"name": 7`, "name", "text in quotes"},
	{`"name": "Courtyard (demo job)"`, `"name": "` + strings.Repeat("x", 101) + `"`, "name", "more than 100 characters"},
	{`"name": "Courtyard (demo job)"`, `"name": "a\u0007b"`, "name", "control character"},
	{`"place": "Invented"`, `"place": "Invented", "script": "x"`, "script", "no such key"},
	{`"weather": {`, `"weather": {"rain": "yes", `, "weather.rain", "no such key"},
	{`"air": "18 °C", "humidity"`, `"air": "cold", "humidity"`, "weather.air", "is not a number"},
	{`"wind": "8 km/h"`, `"wind": [8]`, "weather.wind", "text in quotes"},
	{`"entries": [`, `"entries": [` + "\n    {},", "entries[1].id", "missing"},
	{`"entries": [`, `"entries": [` + "\n    7,", "entries[1]", "object in braces"},
	{`"id": "e2"`, `"id": "e1"`, "entries[2].id", "two of them"},
	{`"calculator": "bed"`, `"calculator": "Bed!"`, "entries[8].calculator", "small letters"},
	{`"v=1&drop=132+mm&run=6+m&cross=0+mm"`, `"v=1\u0001"`, "entries[1].link", "control character"},
	{`"text": "countdown=1&name=Set`, `"text": "countdown=2&name=Set`, "countdowns[1].text", "no countdown"},
	{`"mixes": [`, `"mixes": {"a": 1}, "mixers": [`, "mixes", "list in brackets"},
	{`"amount": "25 lb"`, `"amount": "a lot"`, "mixes[5].amount", "2 bags"},
	{`"contact": "93 %"`, `"contact": "930 %"`, "checks[2].contact", "It takes from"},
	{`"where": "Last row"`, `"where": "Last row", "picture": "data:image/svg+xml;base64,PHN2Zz4="`, "checks[3].picture", "no JPEG"},
	{`"where": "Last row"`, `"where": "Last row", "picture": "https://example.org/x.png"`, "checks[3].picture", "no JPEG"},
	{`"text": "Slab swept`, `"text": 3, "txt": "Slab swept`, "notes[1].text", "text in quotes"},
	{`"created": "2026-04-21T00:06:40.000Z"`, `"created": "2026-04-21 00:06"`, "created", "time in UTC"},
	{`"created": "2026-04-21T00:06:40.000Z"`, `"created": "2026-13-21T00:06:40.000Z"`, "created", "time in UTC"},
	{`"created": "2026-04-21T00:06:40.000Z"`, `"created": "2026-04-21T24:06:40.000Z"`, "created", "time in UTC"},
	{`"handover": {`, `"handover": {"when": 7, `, "handover.when", "time in UTC"},
	{`"lots": "K-22"`, `"lots": "K-22", "price": "1"`, "materials[2].price", "no such key"},
}

// Each thing that can be wrong is told with its line and its path, and gives no job at all. Where the schema can tell, it refuses it too.
func TestStrict(t *testing.T) {
	text, s := job.Write(job.Demo(noon)), schema(t)
	beyond := map[string]bool{"is not a number": true, "two of them": true, "It takes from": true, "2 bags": false, "no countdown": false}
	for _, c := range spoils {
		require.Equal(t, true, strings.Contains(text, c.old), c.old)
		spoilt := strings.Replace(text, c.old, c.new, 1)
		j, problems := job.Read(spoilt)
		assert.Nil(t, j, c.new)
		require.NotEmpty(t, problems, c.new)
		p := problems[0]
		assert.Equal(t, c.path, p.Path, c.new)
		assert.Contains(t, says(problems), c.problem)
		assert.Contains(t, english.Line(p.Says), c.path)
		line := 1 + strings.Count(text[:strings.Index(text, c.old)], "\n")
		switch {
		case strings.HasPrefix(c.path, "entries[1]") && strings.Contains(c.new, "\n"):
			line++
		case c.problem == "missing":
			line = 1
		}
		assert.Equal(t, line, p.Line, c.new)
		assert.Contains(t, english.Line(p.Says), "Line "+strconv.Itoa(line)+",")
		if !beyond[c.problem] {
			assert.Error(t, matches(t, s, spoilt), "the schema refuses it too: %s", c.new)
		}
	}
	j := large(job.MaxLog)
	_, problems := job.Read(job.Write(j))
	require.Len(t, problems, 3, "three logs are each a few lines too long")
	assert.Equal(t, "mixes", problems[0].Path)
	assert.Error(t, matches(t, s, job.Write(j)))
	got, problems := job.Read(text + strings.Repeat(" ", job.MaxSize))
	assert.Nil(t, got)
	assert.Contains(t, says(problems), "8 MB")
}

// A text that is no JSON is told with its line and character.
func TestBrokenJSON(t *testing.T) {
	for text, want := range map[string]string{
		"":                                "Line 1, character 1",
		"{\n \"setbook\" \"job\"}":        "Line 2, character 12",
		"{\"a\": 1,\n\"é\": x}":           "Line 2, character 6",
		"[1,]":                            "Line 1, character 4",
		"{\"a\": 1} {":                    "Line 1, character 10",
		"{\"a\": 1, \"a\": 2}":            "Line 1, character 10",
		"{\"a\": \"\\ud800\"}":            "Line 1, character 8",
		"{\"a\": \"\xff\"}":               "Line 1, character 8",
		"[[[[[[[[[[1]]]]]]]]]]":           "Line 1, character 10",
		"{}":                              "no job",
		"[]":                              "no job",
		`{"setbook":"entry","version":1}`: "no job",
	} {
		j, problems := job.Read(text)
		assert.Nil(t, j)
		require.Len(t, problems, 1, text)
		assert.Contains(t, says(problems), want, "%q", text)
	}
}

// A record of a newer program is looked at as far as it goes: what is not known is passed over, whole lines at a time.
func TestNewer(t *testing.T) {
	text := job.Write(job.Demo(noon))
	newer := strings.NewReplacer(`"version": 1,`, `"version": 7, "crane": {"hired": true},`, `"amount": "25 lb"`, `"amount": {"lb": 25}`, `"wind": "8 km/h"`, `"gust": "x", "wind": 8`).Replace(text)
	j, problems := job.Read(newer)
	require.Empty(t, problems)
	assert.EqualValues(t, 7, j.Newer)
	want := job.Demo(noon)
	assert.Equal(t, want.Entries, j.Entries)
	assert.Equal(t, want.Mixes[:4], j.Mixes)
	assert.Equal(t, "18 °C", j.Weather.Air)
	assert.Empty(t, j.Weather.Wind)
	j, problems = job.Read(`{"setbook":"job","version":2,"id":7}`)
	assert.Nil(t, j)
	assert.Contains(t, says(problems), "newer Setbook (version 2)")
}

// A file of each version that has landed is read for ever. testdata/job-1.json was written by the first version and is not to be changed.
func TestEveryLandedVersion(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(calctest.Testdata(), "job-*.json"))
	require.NoError(t, err)
	require.Len(t, files, job.Version, "one for each version")
	for _, file := range files {
		held, err := os.ReadFile(file)
		require.NoError(t, err)
		j, problems := job.Read(string(held))
		require.Empty(t, problems, "%s: %s", file, says(problems))
		assert.Equal(t, "Courtyard (demo job)", j.Name)
		assert.Len(t, j.Entries, 16)
		assert.Len(t, j.Countdowns, 2)
		assert.Equal(t, noon-75*3_600_000, j.Created)
		assert.Equal(t, "93 %", j.Checks[1].Contact)
		assert.Equal(t, "M-0417, M-0418", j.HandOver.Materials[0].Lots)
		assert.NoError(t, matches(t, schema(t), job.Write(j)))
	}
}

// Times agree with the standard library's.
func FuzzStamps(f *testing.F) {
	f.Add(int64(0))
	f.Add(int64(253_370_764_799_999))
	f.Fuzz(func(t *testing.T, at int64) {
		at = max(at, -at) % 253_370_764_800_000
		if at < 0 {
			return // the least of all has no opposite
		}
		text := job.Write(&job.Job{ID: "a", Name: "b", Created: countdown.Instant(at)})
		require.Contains(t, text, `"created": "`+time.UnixMilli(at).UTC().Format("2006-01-02T15:04:05.000Z")+`"`)
		j, problems := job.Read(text)
		require.Empty(t, problems)
		require.EqualValues(t, at, j.Created)
	})
}

// No text does worse than problems in words: none gives part of a job, and what is read is read again from what is written. What is
// read is JSON to the standard library too.
func FuzzRead(f *testing.F) {
	text := job.Write(job.Demo(noon))
	f.Add(text)
	for _, c := range spoils {
		f.Add(strings.Replace(text, c.old, c.new, 1))
	}
	f.Add(strings.Replace(text, `"version": 1`, `"version": 2`, 1))
	f.Add(`{"setbook":"job","version":1,"id":"a","name":"b","created":"1970-01-01T00:00:00.000Z","changed":"1970-01-01T00:00:00.000Z","revision":0}`)
	f.Fuzz(func(t *testing.T, text string) {
		j, problems := job.Read(text)
		require.Equal(t, j == nil, len(problems) > 0)
		for _, p := range problems {
			require.NotEmpty(t, p.Says.Msg)
		}
		if j == nil {
			return
		}
		require.True(t, json.Valid([]byte(text)))
		require.True(t, utf8.ValidString(text))
		if j.Newer > 0 {
			return
		}
		written := job.Write(j)
		again, problems := job.Read(written)
		require.Empty(t, problems, "%s: %s", says(problems), written)
		require.Equal(t, j, again)
		require.Empty(t, job.Diff(j, again))
		merged, problems := job.Merge(j, job.Demo(noon), noon)
		require.Equal(t, merged == nil, len(problems) > 0)
	})
}
