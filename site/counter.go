package site

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"strings"

	"setbook/calc"
	embedded "setbook/calc/embed"
	"setbook/calc/words"
)

// What a supplier loads into a page of their own, and the pages that tell how.
//
//go:embed counter.html embed.js parents.txt
var counterFiles embed.FS

// EmbedScript is the script that a page around loads: it makes the element <setbook-calculator>.
func EmbedScript() ([]byte, error) { return counterFiles.ReadFile("embed.js") }

// Parents are the origins that an embedded calculator talks with: those of parents.txt, and more.
func Parents(more ...string) (string, error) {
	text, err := counterFiles.ReadFile("parents.txt")
	if err != nil {
		return "", err
	}
	var all []string
	for line := range strings.Lines(string(text)) {
		if line = strings.TrimSpace(line); line != "" && line[0] != '#' {
			all = append(all, line)
		}
	}
	all = append(all, more...)
	for _, o := range all {
		if !embedded.IsOrigin(o) {
			return "", fmt.Errorf("%q is no origin as a browser writes it, https://shop.example", o)
		}
	}
	return strings.Join(all, " "), nil
}

const (
	frameTitle    words.Msg = "A calculator in another page"
	frameSays     words.Msg = "One calculator of this book, set up by the page around it."
	frameNoScript words.Msg = "Scripts are off: a calculator in another page needs them."
	frameWhole    words.Msg = "Open the whole page"
)

// framed is the page that stands in a frame of another page: the program puts the calculator into it that the address names.
func (b *book) framed() ([]byte, error) {
	f := frame{W: shell, A: b.assets, Title: b.reader.Word(frameTitle), Description: b.reader.Word(frameSays), Root: "../../../", Home: "../../../" + b.under}
	f.Program = f.Root + b.assets.Whole // the address may name any calculator
	f.Lang, f.Units, f.IsUS = b.reader.Language.Tag, "us", true
	if name, ok := b.assets.Words[f.Lang]; ok {
		f.Words = f.Root + name
	}
	var out bytes.Buffer
	err := b.shell.ExecuteTemplate(&out, "frame", struct {
		frame
		Parents, NoScript, Whole string
	}{f, b.assets.Parents, b.reader.Word(frameNoScript), b.reader.Word(frameWhole)})
	return out.Bytes(), err
}

// framePath is where that page stands: outside the folder of its language, so that one rule of headers is for all of them.
func (b *book) framePath() string { return "embed/frame/" + b.reader.Language.Tag + "/index.html" }

// told is a page of running text.
type told struct {
	path        string
	title, asks words.Msg
	parts       []part
}

// part is one stretch of such a page, in this order: head, paragraphs, steps, code, names with what they mean, and whatever
// else stands there.
type part struct {
	head  words.Msg
	says  []words.Msg
	steps []words.Msg
	code  string
	rows  []named
	slot  func(r words.Reader) string                   // markup made by calc/page, which escapes
	made  func(words.Reader, []*calc.Calculator) string // in the place of code, what the program itself writes
}

// named is a name that no language changes, with its meaning.
type named struct {
	name string
	says words.Line
}

func means(name string, m words.Msg) named { return named{name, words.Say(m)} }

// tell renders such a page.
func (b *book) tell(p *told) ([]byte, error) {
	type row struct{ Name, Says string }
	type stretch struct {
		Head, Code  string
		Says, Steps []string
		Rows        []row
		Slot        template.HTML
	}
	var parts []stretch
	for _, p := range p.parts {
		s := stretch{Head: b.reader.Word(p.head), Code: p.code}
		if p.made != nil {
			s.Code = p.made(b.reader, b.calculators)
		}
		for _, m := range p.says {
			s.Says = append(s.Says, b.reader.Word(m))
		}
		for _, m := range p.steps {
			s.Steps = append(s.Steps, b.reader.Word(m))
		}
		for _, n := range p.rows {
			s.Rows = append(s.Rows, row{n.name, b.reader.Line(n.says)})
		}
		if p.slot != nil && len(b.calculators) > 0 {
			s.Slot = template.HTML(p.slot(b.reader))
		}
		parts = append(parts, s)
	}
	return b.page("told", struct {
		Title, Asks string
		Parts       []stretch
	}{b.reader.Word(p.title), b.reader.Word(p.asks), parts},
		frame{Title: b.titled(p.title), Description: b.reader.Word(p.asks), Root: "../"})
}
