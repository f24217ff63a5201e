package jobpage_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/job"
	"setbook/calc/jobpage"
)

// A draft holds what is typed and in no record yet, and nothing else; on another page of the same job it stands as it stood.
func TestADraftOutlivesThePage(t *testing.T) {
	v := view(us, job.Demo(at))
	assert.Empty(t, v.Draft())
	v.Type("place", "Old town", at)
	assert.Empty(t, v.Draft(), "what is in the record is no draft")
	typed := map[string]string{"check-where": "By the gate & the “drain” = 50 %\nnew line", "mix-amount": "much", "note-text": "é+ ", "wind": "strong"}
	for key, text := range typed {
		v.Type(key, text, at)
	}
	picture := photo(t, 40, 30, 0)
	v.TakePicture(v.BeginPicture(""), picture)

	again := view(us, job.Demo(at))
	before := job.Write(again.Job)
	again.Redraft(v.Draft(), at)
	for key, text := range typed {
		got, ok := again.Field(key)
		assert.Equal(t, true, ok)
		assert.Equal(t, text, got)
	}
	assert.Equal(t, picture, again.Picture(""))
	assert.Equal(t, true, again.Invalid("wind"), "what could not be taken is told so again")
	assert.Equal(t, before, job.Write(again.Job), "a draft changes no record")
	assert.Equal(t, v.Draft(), again.Draft())
	for _, bad := range []string{"", "picture=javascript:1", "picture=data:image/png;base64,AAAA", "%%%", "name=", "nobody=1"} {
		v := view(us, job.Demo(at))
		v.Redraft(bad, at)
		assert.Empty(t, v.Picture(""))
		assert.Equal(t, before, job.Write(v.Job))
	}
}

// What was removed comes back once, however often it is asked for, and never so that the record could not be read again: this countdown was taken
// in anew meanwhile, and that list has been filled.
func TestWhatIsBroughtBackFits(t *testing.T) {
	v := view(us, job.Demo(at))
	c := v.Job.Countdowns[0]
	require.True(t, v.Press("remove", "countdowns/"+c.ID, at, "x"))
	v.Job.Countdowns = append(v.Job.Countdowns, c)
	v.Press("undo", "", at, "x")
	whole(t, v.Job)
	assert.Len(t, v.Job.Countdowns, 2)

	for i := len(v.Job.HandOver.Materials); i < job.MaxMaterials; i++ {
		v.Job.HandOver.Materials = append(v.Job.HandOver.Materials, job.Material{ID: "f" + strconv.Itoa(i), Name: "Grout"})
	}
	require.True(t, v.Press("remove", "materials/m1", at, "x"))
	v.Type("material-name", "Primer", at)
	require.True(t, v.Press("material", "", at, "new"))
	assert.False(t, v.Press("undo", "", at, "x"))
	whole(t, v.Job)
	assert.Contains(t, made(t, v, "undo"), "no more room")
	require.True(t, v.Press("remove", "materials/new", at, "x"))
	require.True(t, v.Press("remove", "materials/m2", at, "x"))
	require.True(t, v.Press("undo", "", at, "x"), "the last one first")
	require.True(t, v.Press("undo", "", at, "x"), "each one")
	assert.False(t, v.Press("undo", "", at, "x"), "of three there is room for two")
	require.True(t, v.Press("remove", "materials/f9", at, "x"))
	v.Job.HandOver.Materials = v.Job.HandOver.Materials[1:] // there is room again
	require.True(t, v.Press("undo", "", at, "x"))
	assert.Len(t, v.Job.HandOver.Materials, job.MaxMaterials-1)
	whole(t, v.Job)
}

// A job that is kept again takes the place of one that was deleted or cleared, never of one that is there.
func TestWhatMayBeRevived(t *testing.T) {
	j := job.Demo(at)
	alive := jobpage.HeadOf(j)
	gone := alive
	gone.Gone = at
	assert.Equal(t, jobpage.None, jobpage.May(j.ID, "", jobpage.Revived))
	assert.Equal(t, jobpage.None, jobpage.May(j.ID, gone.Text(), jobpage.Revived))
	assert.Equal(t, jobpage.Conflict, jobpage.May(j.ID, alive.Text(), jobpage.Revived))
	assert.Equal(t, jobpage.NewerJob, jobpage.May(j.ID, "head=9", jobpage.Revived))
	assert.Equal(t, jobpage.Gone, jobpage.May(j.ID, gone.Text(), j.Revision))
}
