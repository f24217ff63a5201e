// Package site is what stands around the calculators: the shell of every page,
// the contents page, the style sheet, the boot script, the service worker, the
// manifest. The build renders it; nothing here runs in the phone but the scripts.
package site

import (
	"bytes"
	"embed"
	"encoding/json"
	"html/template"
	"io/fs"
	"slices"
	"strings"

	"setbook/calc"
	"setbook/calc/page"
	"setbook/calc/unit"
	"setbook/calc/words"
)

//go:embed shell.html css/*.css sw.js boot.js
var files embed.FS

// Assets are the addresses, relative to the top of the site, that every page refers to, and the
// colours that a browser paints around a page.
type Assets struct {
	Style, Program, Boot, Icon, Touch, Manifest string
	Whole                                       string            // the program with everything, for the pages that need it
	Words                                       map[string]string // the messages of a language, by its tag
	Edition                                     string            // tells one build of the program from another
	Light, Dark                                 string
	Parents                                     string // the origins that an embedded calculator talks with
}

// Page is one rendered file.
type Page struct {
	Path string // "bed/index.html"
	HTML []byte
}

// Style is the style sheet: the files of css in the order of their names.
func Style() ([]byte, error) {
	names, err := fs.Glob(files, "css/*.css")
	if err != nil {
		return nil, err
	}
	var all bytes.Buffer
	for _, name := range names {
		text, err := files.ReadFile(name)
		if err != nil {
			return nil, err
		}
		all.Write(text)
	}
	return all.Bytes(), nil
}

// BootScript starts the program in the page. It needs Go's wasm_exec.js in front of it.
func BootScript() ([]byte, error) { return files.ReadFile("boot.js") }

// Worker is the service worker for a version of the site and the paths that it is made of.
func Worker(version string, paths []string) ([]byte, error) {
	source, err := files.ReadFile("sw.js")
	if err != nil {
		return nil, err
	}
	list, err := json.MarshalIndent(paths, "", "\t")
	if err != nil {
		return nil, err
	}
	name, err := json.Marshal(version)
	if err != nil {
		return nil, err
	}
	return []byte("const version = " + string(name) + ";\nconst files = " + string(list) + ";\n\n" + string(source)), nil
}

// Reader is whom the pages are first written for, before the phone knows better.
func Reader() words.Reader {
	return words.Reader{Language: words.English, Style: unit.Style{System: unit.US, Decimal: '.'}}
}

// book renders pages for one reader.
type book struct {
	calculators []*calc.Calculator
	reader      words.Reader
	assets      Assets
	shell       *template.Template
	under       string            // the folder of the language's pages, "" or "in/es/"
	languages   []*words.Language // every one
	at          string            // the path of the page that is being made, under that folder
}

// frame is what the shell's template is filled with.
type frame struct {
	W                              phrases
	A                              Assets
	Lang, Units, Words, Program    string
	Others                         []other
	IsUS, IsMetric                 bool
	Title, Description, Root, Home string
	Main                           template.HTML
	Way                            *way
}

// other is the same page in another language.
type other struct{ Tag, Name, Href string }

// entry is a calculator as it is listed.
type entry struct{ Href, Title, Asks string }

// stage is a step of the work with its calculators.
type stage struct {
	Title   string
	Entries []entry
}

// way leads to the pages before and after, in the order of the work.
type way struct{ Before, After *entry }

// Pages renders every page of the site for one reader, in the folder of the reader's language: the first of the languages stands at
// the top. A renderer gives Root relative to that folder. Base is the path at which the site will stand, "/" unless it is
// put in a folder: only the page for a missing page needs it, since it may stand for any address.
func Pages(calculators []*calc.Calculator, r words.Reader, languages []*words.Language, a Assets, base string) ([]Page, error) {
	b := &book{calculators: calculators, reader: r, assets: a, languages: languages, under: folder(r.Language, languages)}
	var err error
	b.shell, err = template.New("").Funcs(template.FuncMap{"word": r.Word}).ParseFS(files, "shell.html")
	if err != nil {
		return nil, err
	}
	if _, err = b.shell.ParseFS(counterFiles, "counter.html"); err != nil {
		return nil, err
	}
	type made struct {
		path   string
		render func() ([]byte, error)
	}
	list := []made{
		{"index.html", b.contents},
		{"about/index.html", b.about},
		{"jobs/index.html", b.jobs},
		{"job/index.html", b.job},
		{"class/index.html", b.class},
		{"glossary/index.html", b.glossary},
	}
	if b.under == "" { // a host has one page for what is missing
		list = append(list, made{"404.html", func() ([]byte, error) { return b.missing(base) }})
	}
	for _, p := range counterPages {
		list = append(list, made{p.path + "index.html", func() ([]byte, error) { return b.tell(p) }})
	}
	for i := range calculators {
		list = append(list, made{calculators[i].ID + "/index.html", func() ([]byte, error) { return b.question(i) }})
	}
	var pages []Page
	for _, m := range list {
		b.at = m.path
		html, err := m.render()
		if err != nil {
			return nil, err
		}
		pages = append(pages, Page{b.under + m.path, html})
	}
	html, err := b.framed()
	if err != nil {
		return nil, err
	}
	return append(pages, Page{b.framePath(), html}), nil
}

func (b *book) contents() ([]byte, error) {
	var stages []stage
	for i, title := range calc.Stages {
		s := stage{Title: b.reader.Word(title)}
		for _, c := range b.calculators {
			if c.Stage == calc.Stage(i) {
				s.Entries = append(s.Entries, b.entry(c, "./"))
			}
		}
		if len(s.Entries) > 0 {
			stages = append(stages, s)
		}
	}
	return b.page("contents", struct {
		W      phrases
		Stages []stage
		Beside []entry
	}{shell, stages, b.beside()}, frame{Title: b.reader.Word(shell.Name), Description: b.reader.Word(shell.Intro), Root: "./"})
}

func (b *book) question(i int) ([]byte, error) {
	c := b.calculators[i]
	w := &way{}
	if i > 0 {
		before := b.entry(b.calculators[i-1], "../")
		w.Before = &before
	}
	if i+1 < len(b.calculators) {
		after := b.entry(b.calculators[i+1], "../")
		w.After = &after
	}
	return b.page("question", struct {
		W                      phrases
		ID, Stage, Title, Asks string
		Section                template.HTML
	}{
		shell, c.ID, b.reader.Word(calc.Stages[c.Stage]), b.reader.Word(c.Title), b.reader.Word(c.Asks),
		template.HTML(page.NewLive(c, c.ID, b.reader).HTML()), // markup made by calc/page, which escapes
	}, frame{Title: b.titled(c.Title), Description: b.reader.Word(c.Asks), Root: "../", Way: w})
}

func (b *book) about() ([]byte, error) {
	return b.page("about", struct{ W phrases }{shell},
		frame{Title: b.titled(shell.About), Description: b.reader.Word(shell.AboutDoes), Root: "../"})
}

func (b *book) missing(base string) ([]byte, error) {
	return b.page("missing", struct {
		W    phrases
		Home string
	}{shell, base}, frame{Title: b.titled(shell.Missing), Description: b.reader.Word(shell.MissingSays), Root: base})
}

// page puts the inside of a page, made by its own template, into the shell.
func (b *book) page(kind string, inside any, f frame) ([]byte, error) {
	var main, out bytes.Buffer
	if err := b.shell.ExecuteTemplate(&main, kind, inside); err != nil {
		return nil, err
	}
	f.W, f.A, f.Home = shell, b.assets, f.Root
	b.translated(&f)
	f.Program = f.Root + b.program()
	f.Main = template.HTML(strings.TrimSpace(main.String())) // already escaped by its template
	f.Lang = b.reader.Language.Tag
	f.Units, f.IsUS = "us", true
	if b.reader.Style.System == unit.Metric {
		f.Units, f.IsUS, f.IsMetric = "metric", false, true
	}
	err := b.shell.ExecuteTemplate(&out, "page", f)
	return out.Bytes(), err
}

// program is the one that the page being made has: the whole one for a long calculator, and for the pages that need more than
// a calculator does.
func (b *book) program() string {
	page := strings.TrimSuffix(b.at, "index.html")
	whole := slices.Contains([]string{"class/", "jobs/", "job/", "datasheet/", "counter/"}, page)
	for _, c := range b.calculators {
		whole = whole || c.ID+"/" == page && c.Long
	}
	if whole {
		return b.assets.Whole
	}
	return b.assets.Program
}

// folder is where the pages of a language stand, relative to the top of the site.
func folder(l *words.Language, languages []*words.Language) string {
	if len(languages) == 0 || l == languages[0] {
		return ""
	}
	return "in/" + l.Tag + "/"
}

// translated gives a page its way to the top of the site, its words for the phone, and the same page in the other languages.
func (b *book) translated(f *frame) {
	if b.under != "" {
		f.Root = strings.TrimPrefix(f.Root, "./") + "../../"
	}
	if name, ok := b.assets.Words[b.reader.Language.Tag]; ok {
		f.Words = f.Root + name
	}
	if b.at == "404.html" {
		return
	}
	for _, l := range b.languages {
		if l != b.reader.Language {
			f.Others = append(f.Others, other{l.Tag, l.Name, f.Root + folder(l, b.languages) + strings.TrimSuffix(b.at, "index.html")})
		}
	}
}

func (b *book) titled(m words.Msg) string {
	return b.reader.Line(words.Say(shell.TitleOf, words.Named("page", m)))
}

func (b *book) entry(c *calc.Calculator, root string) entry {
	return entry{root + c.ID + "/", b.reader.Word(c.Title), b.reader.Word(c.Asks)}
}
