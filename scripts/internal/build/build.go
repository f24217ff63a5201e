// Package build makes the whole site: the program for the phone, every page, the
// service worker, and each file's compressed forms. It is a package so that the check, the bench
// and the tests build exactly what the build script builds.
package build

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"setbook/calc/all"
	"setbook/calc/languages"
	"setbook/scripts/internal/repo"
	"setbook/scripts/internal/stylesheet"
	"setbook/site"
	"setbook/site/icon"
)

// Options say what to build.
type Options struct {
	Out  string // folder to be made or replaced; "" is dist at the top of the source tree
	Base string // path at which the site will stand; "" is "/"

	Parents []string // origins that an embedded calculator talks with, beside those of site/parents.txt
	Sheets  string   // a folder of suppliers' data sheets, to be served with the site; "" is none
}

// File is one file of the site with its sizes in bytes; Brotli and Gzip are 0 where it is sent as it is.
type File struct {
	Path               string
	Size, Brotli, Gzip int
}

// Result is what was built.
type Result struct {
	Dir     string
	Files   []File // in the order of their paths
	Program string // path of the program that most pages have
	Whole   string // path of the one with everything
	Version string
	Took    time.Duration
}

// File finds a built file by its path.
func (r Result) File(path string) (File, bool) {
	for _, f := range r.Files {
		if f.Path == path {
			return f, true
		}
	}
	return File{}, false
}

// tree is the site as it grows, by path.
type tree map[string][]byte

// hashed adds a file under assets with the hash of its content in its name.
func (t tree) hashed(name string, data []byte) string {
	ext := path.Ext(name)
	at := "assets/" + strings.TrimSuffix(name, ext) + "-" + Hash(data) + ext
	t[at] = data
	return at
}

// Hash is the part of a hashed name that tells the content.
func Hash(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:8])
}

// Build makes the site and puts it in place as one: a server that reads the folder meanwhile
// sees the old site or the new one.
func Build(ctx context.Context, o Options) (Result, error) {
	start := time.Now()
	root, err := repo.Root()
	if err != nil {
		return Result{}, err
	}
	if o.Out == "" {
		o.Out = filepath.Join(root, "dist")
	}
	if o.Base == "" {
		o.Base = "/"
	}
	if !strings.HasPrefix(o.Base, "/") || !strings.HasSuffix(o.Base, "/") {
		return Result{}, fmt.Errorf("the base %q must begin and end with a slash", o.Base)
	}
	var p parts
	p.pocket, p.whole, p.exec, err = programs(ctx, root)
	if err != nil {
		return Result{}, err
	}
	t := tree{}
	r := Result{Dir: o.Out}
	if r.Program, r.Whole, r.Version, err = t.fill(p, o); err != nil {
		return Result{}, err
	}
	if r.Files, err = t.write(o.Out); err != nil {
		return Result{}, err
	}
	r.Took = time.Since(start)
	return r, nil
}

// parts are what the compiler gives: the two programs and the script that runs either.
type parts struct{ pocket, whole, exec []byte }

// fill makes every file of the site from the programs and what the source tree embeds.
func (t tree) fill(p parts, o Options) (program, whole, version string, err error) {
	style, err := site.Style()
	if err != nil {
		return "", "", "", err
	}
	looks, err := stylesheet.Read(string(style))
	if err != nil {
		return "", "", "", err
	}
	boot, err := site.BootScript()
	if err != nil {
		return "", "", "", err
	}
	a := site.Assets{
		Style:    t.hashed("setbook.css", style),
		Program:  t.hashed("setbook.wasm", p.pocket),
		Whole:    t.hashed("setbook-whole.wasm", p.whole),
		Boot:     t.hashed("boot.js", append(slices.Concat(p.exec, []byte("\n")), boot...)),
		Manifest: "manifest.webmanifest",
		Edition:  Hash(p.whole)[:8],
		Light:    stylesheet.CSS(looks.Light["paper"]),
		Dark:     stylesheet.CSS(looks.Dark["paper"]),
	}
	icons, err := t.icons(&a, icon.Colours{Paper: looks.Light["paper"], Ink: looks.Light["ink"], Chalk: looks.Light["chalk"]})
	if err != nil {
		return "", "", "", err
	}
	if a.Parents, err = site.Parents(o.Parents...); err != nil {
		return "", "", "", err
	}
	a.Words = map[string]string{}
	for _, l := range languages.All[1:] {
		a.Words[l.Tag] = t.hashed("words-"+l.Tag+".txt", []byte(l.Text()))
	}
	reader := site.Reader()
	if t[a.Manifest], err = site.Manifest(reader, a, icons); err != nil {
		return "", "", "", err
	}
	for _, l := range languages.All {
		reader.Language = l
		pages, err := site.Pages(all.Calculators(), reader, languages.All, a, o.Base)
		if err != nil {
			return "", "", "", err
		}
		for _, p := range pages {
			t[p.Path] = p.HTML
		}
	}
	if t["embed/embed.js"], err = site.EmbedScript(); err != nil {
		return "", "", "", err
	}
	if err := t.sheets(o.Sheets); err != nil {
		return "", "", "", err
	}
	version = t.version()
	t["sw.js"], err = site.Worker(version, t.addresses())
	return a.Program, a.Whole, version, err
}

// icons draws the icons and gives them as the manifest lists them. Each fills its square, so that a launcher may
// cut it ("maskable") or not ("any").
func (t tree) icons(a *site.Assets, c icon.Colours) ([]site.ManifestIcon, error) {
	a.Icon = t.hashed("icon.svg", c.SVG())
	list := []site.ManifestIcon{{Source: a.Icon, Sizes: "any", Type: "image/svg+xml", Purpose: "any"}}
	for _, side := range []int{192, 512} {
		png, err := c.PNG(side)
		if err != nil {
			return nil, err
		}
		sizes := fmt.Sprintf("%[1]dx%[1]d", side)
		at := t.hashed("icon-"+sizes+".png", png)
		for _, purpose := range []string{"any", "maskable"} {
			list = append(list, site.ManifestIcon{Source: at, Sizes: sizes, Type: "image/png", Purpose: purpose})
		}
	}
	touch, err := c.PNG(180) // named by each page, not by the manifest
	if err != nil {
		return nil, err
	}
	a.Touch = t.hashed("touch.png", touch)
	return list, nil
}

// version is a hash over every path and its content.
func (t tree) version() string {
	h := sha256.New()
	for _, p := range t.paths() {
		sum := sha256.Sum256(t[p])
		fmt.Fprintf(h, "%s %x\n", p, sum)
	}
	return hex.EncodeToString(h.Sum(nil)[:8])
}

func (t tree) paths() []string {
	var paths []string
	for p := range t {
		paths = append(paths, p)
	}
	slices.Sort(paths)
	return paths
}

// addresses lists every file as a browser asks for it: a page by its folder.
func (t tree) addresses() []string {
	var list []string
	for _, p := range t.paths() {
		if dir, ok := strings.CutSuffix(p, "index.html"); ok {
			p = "./" + dir
		}
		list = append(list, p)
	}
	return list
}

// write puts the files and their compressed forms in a folder beside the old one, then changes them over.
func (t tree) write(out string) ([]File, error) {
	fresh, old := out+".new", out+".old"
	if err := os.RemoveAll(fresh); err != nil {
		return nil, err
	}
	var files []File
	for _, p := range t.paths() {
		f := File{Path: p, Size: len(t[p])}
		name := filepath.Join(fresh, filepath.FromSlash(p))
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			return nil, err
		}
		if err := os.WriteFile(name, t[p], 0o644); err != nil {
			return nil, err
		}
		if path.Ext(p) != ".png" { // already compressed
			br, gz, err := compress(t[p])
			if err != nil {
				return nil, err
			}
			f.Brotli, f.Gzip = len(br), len(gz)
			if err := os.WriteFile(name+".br", br, 0o644); err != nil {
				return nil, err
			}
			if err := os.WriteFile(name+".gz", gz, 0o644); err != nil {
				return nil, err
			}
		}
		files = append(files, f)
	}
	if err := os.RemoveAll(old); err != nil {
		return nil, err
	}
	if err := os.Rename(out, old); err != nil && !os.IsNotExist(err) {
		return nil, err
	}
	if err := os.Rename(fresh, out); err != nil {
		return nil, err
	}
	return files, os.RemoveAll(old)
}
