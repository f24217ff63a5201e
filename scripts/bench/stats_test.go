package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestSample(t *testing.T) {
	assert.Equal(t, 2.0, sample{3, 1, 2}.median())
	assert.Equal(t, 2.5, sample{4, 1, 2, 3}.median())
	assert.True(t, math.IsNaN(sample{}.median()))
	hundred := sample{}
	for i := 100; i >= 1; i-- {
		hundred = append(hundred, float64(i))
	}
	assert.Equal(t, 95.0, hundred.percentile(95))
	assert.Equal(t, 7.0, sample{7}.percentile(95))
	assert.Contains(t, sample{1, 3}.row("x", "ms", "4 ms"), "2.0 ms   (1.0 to 3.0, 2 runs)  aim 4 ms")
	assert.Contains(t, sample{}.row("x", "ms", ""), "not seen")
}

func TestNodeMajor(t *testing.T) {
	assert.Equal(t, 20, nodeMajor("v20.20.2\n"))
	assert.Equal(t, 22, nodeMajor("v22.0.0"))
	assert.Zero(t, nodeMajor("unknown"))
}

func TestScoresThatAreMissingAreAFault(t *testing.T) {
	assert.Error(t, printScores([]byte(`{"categories": {"accessibility": {"score": 1}}}`)))
	assert.Error(t, printScores([]byte(`{"categories": {"accessibility": {"score": null}, "best-practices": {"score": 1}, "performance": {"score": 1}}}`)))
	assert.NoError(t, printScores([]byte(`{"categories": {"accessibility": {"score": 1}, "best-practices": {"score": 1}, "performance": {"score": 0.9}}}`)))
}
