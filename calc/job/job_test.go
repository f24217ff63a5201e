package job_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"setbook/calc/countdown"
	"setbook/calc/job"
)

const noon countdown.Instant = 1_777_000_000_000

func TestRoundTrip(t *testing.T) {
	demo := job.Demo(noon)
	text := job.Write(demo)
	t.Log(text, len(text))
	again, problems := job.Read(text)
	for _, p := range problems {
		t.Log(p)
	}
	require.Empty(t, problems)
	require.Equal(t, demo, again)
	require.Equal(t, text, job.Write(again))
}
