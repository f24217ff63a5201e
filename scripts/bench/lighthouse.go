package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"

	"setbook/scripts/internal/browser"
	"setbook/scripts/internal/npm"
)

// nodeWanted is the major version of Node that Lighthouse 13 asks for; an older Debian has an older one.
const nodeWanted = 22

// categories are Lighthouse's, with what to aim at; performance has no aim, since
// the bench measures it closer.
var categories = []struct{ id, aim string }{{"accessibility", "100"}, {"best-practices", "100"}, {"performance", ""}}

// lighthouse runs Lighthouse on the page as on a phone and prints its scores.
func (m *bench) lighthouse(ctx context.Context) error {
	node, err := newEnough(ctx)
	if err != nil {
		return err
	}
	if !npm.Lighthouse.Installed() {
		fmt.Println("Fetching Lighthouse", npm.Lighthouse.Version)
		if err := npm.Lighthouse.Install(ctx); err != nil {
			return err
		}
	}
	command, err := npm.Lighthouse.File("cli/index.js")
	if err != nil {
		return err
	}
	site, err := browser.Serve(m.dist, m.netlify)
	if err != nil {
		return err
	}
	defer site.Stop()
	dir, err := os.MkdirTemp("", "setbook-lighthouse-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	report := filepath.Join(dir, "report.json")
	chromium, err := exec.LookPath(browser.Name)
	if err != nil {
		return err
	}
	cmd := exec.CommandContext(ctx, node, command, site.URL+m.path, "--quiet", "--output=json", "--output-path="+report,
		"--only-categories=accessibility,best-practices,performance",
		"--chrome-flags=--headless --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync")
	cmd.Env = append(os.Environ(), "CHROME_PATH="+chromium)
	if out, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("lighthouse: %w\n%s", err, out)
	}
	text, err := os.ReadFile(report)
	if err != nil {
		return err
	}
	return printScores(text)
}

// newEnough gives a Node that Lighthouse runs on: the machine's own, or one that is fetched through npm.
func newEnough(ctx context.Context) (string, error) {
	own, err := exec.CommandContext(ctx, "node", "--version").Output()
	if err != nil {
		return "", fmt.Errorf("no node on this machine: go run ./scripts/check installs it (%w)", err)
	}
	if nodeMajor(string(own)) >= nodeWanted {
		return "node", nil
	}
	arch := map[string]string{"amd64": "x64", "arm64": "arm64"}[runtime.GOARCH]
	p := npm.Package{Name: "node-linux-" + arch, Version: "22.23.3"}
	if !p.Installed() {
		fmt.Println("Fetching node", p.Version, "since this machine has", strings.TrimSpace(string(own)))
		if err := p.Install(ctx); err != nil {
			return "", err
		}
	}
	return p.File("bin/node")
}

// nodeMajor reads "v20.20.2"; it gives 0 for what it cannot read.
func nodeMajor(version string) int {
	major, _, _ := strings.Cut(strings.TrimPrefix(strings.TrimSpace(version), "v"), ".")
	n, err := strconv.Atoi(major)
	if err != nil {
		return 0
	}
	return n
}

// printScores prints the scores of a report and each audit that keeps accessibility or best practices from 100.
func printScores(text []byte) error {
	var report struct {
		Categories map[string]struct {
			Score  *float64 `json:"score"`
			Audits []struct {
				ID     string  `json:"id"`
				Weight float64 `json:"weight"`
			} `json:"auditRefs"`
		} `json:"categories"`
		Audits map[string]struct {
			Title string   `json:"title"`
			Score *float64 `json:"score"`
		} `json:"audits"`
	}
	if err := json.Unmarshal(text, &report); err != nil {
		return err
	}
	fmt.Println("Lighthouse", npm.Lighthouse.Version+", one run")
	for _, c := range categories {
		of, ok := report.Categories[c.id]
		if !ok || of.Score == nil {
			return fmt.Errorf("lighthouse gave no score for %s", c.id)
		}
		line := fmt.Sprintf("  %-34s %8.0f", c.id, *of.Score*100)
		if c.aim != "" {
			line += "  aim " + c.aim
		}
		fmt.Println(line)
		for _, ref := range of.Audits {
			if a := report.Audits[ref.ID]; c.aim != "" && ref.Weight > 0 && a.Score != nil && *a.Score < 1 {
				fmt.Println("    " + a.Title)
			}
		}
	}
	return nil
}
