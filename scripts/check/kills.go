package main

import (
	"context"
	"errors"
	"fmt"
	"strings"
)

// killTest ends the browser in the middle of saves; it has a stage of its own because it takes long, and because its count is told.
const killTest = "TestAKilledBrowserLosesNothing"

func (c *checker) kills(ctx context.Context) (string, error) {
	switch {
	case c.short:
		return "", fmt.Errorf("%w: -short", errLeftOut)
	case c.lacks(needChromium):
		return "", fmt.Errorf("%w, for want of %s", errLeftOut, needChromium)
	}
	count := "20"
	if c.long {
		count = "200"
	}
	out, err := c.command(ctx, nil, "go", "test", "-count=1", "-v", "-timeout", "2h", "-run", "^"+killTest+"$", browserTests, "-kills", count)
	if err != nil {
		return "", err
	}
	return killed(out)
}

// killed finds in a test's output what it counted: a run that killed nothing has checked nothing.
func killed(out string) (string, error) {
	for line := range strings.Lines(out) {
		if strings.HasPrefix(line, "killed ") {
			return strings.TrimSpace(line), nil
		}
	}
	return "", errors.New("the test told of no kill:\n" + out)
}
