package jobpage_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"setbook/calc/job"
	"setbook/calc/jobpage"
)

// FuzzImport takes any text as a file or as the fragment of a link the whole way that an import goes: it is looked at, compared with a job that is here
// or with none, shown, and taken over. Nothing panics; what cannot be read offers nothing to take; what is taken is one whole record that is read
// again as it was written; and looking changes nothing of what is here.
func FuzzImport(f *testing.F) {
	here := job.Demo(at)
	kept := job.Write(here)
	f.Add(kept, false)
	changed := job.Demo(at + 9)
	changed.Checks[1].Contact, changed.Notes, changed.HandOver.Client = "99 %", changed.Notes[1:], "Somebody"
	f.Add(job.Write(changed), true)
	f.Add(strings.Replace(kept, `"version": 1`, `"version": 2`, 1), true)
	f.Add(strings.Replace(kept, `"where": "Last row"`, `"where": "Last row", "picture": "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptV"`, 1), true)
	f.Add(strings.Replace(kept, `"id": "c3"`, `"id": "c2"`, 1), false)
	f.Add(`{"setbook":"job","version":1,"id":"demo","name":"b","created":"1970-01-01T00:00:00.000Z","changed":"9998-01-01T00:00:00.000Z","revision":0}`, true)
	packed, ok := job.Pack(here)
	require.Equal(f, true, ok)
	f.Add(packed, false)
	f.Add(packed[:len(packed)/2], false)
	b := book(us)
	f.Fuzz(func(t *testing.T, text string, known bool) {
		p := jobpage.Look(text)
		if job.Packed(text) {
			p = jobpage.LookPacked(text)
		}
		require.Equal(t, p.New == nil, len(p.Problems) > 0)
		if p.New == nil {
			return // most inputs; TestAPreviewChangesNothing sees that nothing is offered
		}
		if known {
			p.New.ID = here.ID
			p.Against(here, at)
		}
		made := (&jobpage.List{Book: b, Preview: p}).HTML(at)
		require.Equal(t, kept, job.Write(here), "nothing is changed by looking")
		offered := strings.Contains(made, `data-job-do="take"`)
		if !offered {
			require.True(t, p.Blocked != jobpage.None || len(p.Problems) > 0)
			return
		}
		require.Equal(t, jobpage.None, p.Blocked)
		for _, beside := range []bool{false, true} {
			taken := p.Taken(b, "fresh", beside)
			if taken.Newer != 0 {
				require.Equal(t, text, p.Record, "a newer program's record is kept as it is")
				continue
			}
			written := job.Write(taken)
			again, problems := job.Read(written)
			require.Empty(t, problems)
			require.Equal(t, written, job.Write(again))
		}
	})
}
