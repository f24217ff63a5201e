package main

import (
	"context"
	"errors"
	"os/exec"
	"slices"
	"strings"

	"setbook/scripts/internal/browser"
	"setbook/scripts/internal/npm"
)

// Names of what the check needs and a machine may lack.
const (
	needNode     = "node"
	needNpm      = "npm"
	needChromium = browser.Name
	needAxe      = "axe-core"
)

// tools finds what is missing and installs it, unless it must not.
func (c *checker) tools(ctx context.Context) (string, error) {
	var debian []string
	for _, name := range []string{needChromium, needNpm, needNode} {
		if _, err := exec.LookPath(name); err != nil {
			c.missing = append(c.missing, name)
			if name != needNode { // it comes with npm
				debian = append(debian, name)
			}
		}
	}
	if slices.Contains(c.missing, needNode) && !slices.Contains(debian, needNpm) {
		debian = append(debian, "nodejs")
	}
	if !npm.Axe.Installed() {
		c.missing = append(c.missing, needAxe)
	}
	if len(c.missing) == 0 {
		return "all there", nil
	}
	list := strings.Join(c.missing, ", ")
	if c.offline {
		return "missing, and left so: " + list, nil
	}
	if err := c.install(ctx, debian); err != nil {
		return "", errors.Join(errors.New("could not install "+list+" (-offline goes on without)"), err)
	}
	c.missing = nil
	return "installed " + list, nil
}

func (c *checker) install(ctx context.Context, debian []string) error {
	if len(debian) > 0 {
		if _, err := c.command(ctx, nil, "apt-get", "update"); err != nil {
			return err
		}
		arguments := append([]string{"install", "--yes", "--no-install-recommends"}, debian...)
		if _, err := c.command(ctx, []string{"DEBIAN_FRONTEND=noninteractive"}, "apt-get", arguments...); err != nil {
			return err
		}
	}
	if npm.Axe.Installed() {
		return nil
	}
	return npm.Axe.Install(ctx)
}

// lacks reports whether a tool is still missing.
func (c *checker) lacks(name string) bool { return slices.Contains(c.missing, name) }
