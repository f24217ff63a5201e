// Package npm keeps the few npm packages that only the check and the bench use, in
// the user's cache and not in the source tree.
package npm

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
)

// Package is an npm package at one version.
type Package struct{ Name, Version string }

// The packages that are used: the accessibility checks of axe, and Lighthouse.
var (
	Axe        = Package{"axe-core", "4.14.1"}
	Lighthouse = Package{"lighthouse", "13.5.0"}
)

// Dir is the folder of a package, whether it is there or not. Each version has its own.
func (p Package) Dir() (string, error) {
	cache, err := os.UserCacheDir()
	if err != nil {
		return "", err
	}
	return filepath.Join(cache, "setbook", "npm", p.Name+"-"+p.Version), nil
}

// File is the path of a file inside the package. It fails where the package is not installed.
func (p Package) File(path string) (string, error) {
	dir, err := p.Dir()
	if err != nil {
		return "", err
	}
	name := filepath.Join(dir, "node_modules", p.Name, filepath.FromSlash(path))
	if _, err := os.Stat(name); err != nil {
		return "", fmt.Errorf("%s %s is not installed: go run ./scripts/check installs it (%w)", p.Name, p.Version, err)
	}
	return name, nil
}

// Installed reports whether the package is there.
func (p Package) Installed() bool {
	_, err := p.File("package.json")
	return err == nil
}

// Install fetches the package through npm.
func (p Package) Install(ctx context.Context) error {
	dir, err := p.Dir()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	out, err := exec.CommandContext(ctx, "npm", "install", "--prefix", dir, "--no-audit", "--no-fund", "--ignore-scripts",
		p.Name+"@"+p.Version).CombinedOutput()
	if err != nil {
		return fmt.Errorf("npm install %s@%s: %w\n%s", p.Name, p.Version, err, out)
	}
	return nil
}
