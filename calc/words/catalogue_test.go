// These tests ask the go tool, which a program in WebAssembly cannot start.

//go:build !js

package words_test

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/tools/go/packages"

	"setbook/calc/languages"
	"setbook/calc/words"
)

const msgType, argType = "setbook/calc/words.Msg", "*setbook/calc/words.Arg"

// use is one place in the code where a message stands.
type use struct {
	at    token.Position
	names []string // of the placeholders that the call fills; nil where that cannot be told
}

// catalogue finds every message in the program, wasm and build included, by its type.
func catalogue(t *testing.T) (messages map[words.Msg][]use, plain []string) {
	messages = map[words.Msg][]use{}
	for _, load := range []struct{ env, pattern []string }{
		{[]string{"GOOS=js", "GOARCH=wasm"}, []string{"setbook/calc/...", "setbook/wasm/..."}},
		{nil, []string{"setbook/site/...", "setbook/scripts/..."}},
	} {
		found, err := packages.Load(&packages.Config{
			Mode: packages.NeedName | packages.NeedFiles | packages.NeedSyntax | packages.NeedTypes | packages.NeedTypesInfo | packages.NeedImports | packages.NeedDeps,
			Env:  append(os.Environ(), load.env...),
		}, load.pattern...)
		require.NoError(t, err)
		require.NotEmpty(t, found)
		for _, p := range found {
			require.Empty(t, p.Errors, p.PkgPath)
			if p.PkgPath == "setbook/calc/languages" {
				continue // what the messages are in other languages is no use of them
			}
			for _, file := range p.Syntax {
				plain = append(plain, gather(p, file, messages)...)
			}
		}
	}
	return messages, plain
}

// gather notes the messages of one file, and the plain texts that it writes on a page.
func gather(p *packages.Package, file *ast.File, messages map[words.Msg][]use) (plain []string) {
	inCall := map[ast.Expr][]string{}
	ast.Inspect(file, func(n ast.Node) bool {
		if call, ok := n.(*ast.CallExpr); ok {
			if names, known := filled(p, call); known {
				for _, a := range call.Args {
					inCall[a] = names
				}
			}
			plain = append(plain, unworded(p, call)...)
		}
		e, ok := n.(ast.Expr)
		if !ok {
			return true
		}
		if tv := p.TypesInfo.Types[e]; tv.Value != nil && tv.Type != nil && tv.Type.String() == msgType {
			m := words.Msg(constant.StringVal(tv.Value))
			if m != "" {
				messages[m] = append(messages[m], use{p.Fset.Position(e.Pos()), inCall[e]})
			}
			return false
		}
		return true
	})
	return plain
}

// filled gives the names of the placeholders that a call's arguments fill, where
// every one of them is named by a literal.
func filled(p *packages.Package, call *ast.CallExpr) (names []string, known bool) {
	names = []string{}
	for _, a := range call.Args {
		if tv := p.TypesInfo.Types[a]; tv.Type == nil || tv.Type.String() != argType {
			continue
		}
		inner, ok := a.(*ast.CallExpr)
		if !ok || len(inner.Args) == 0 {
			return nil, false
		}
		tv := p.TypesInfo.Types[inner.Args[0]]
		if tv.Value == nil || tv.Value.Kind() != constant.String {
			return nil, false
		}
		names = append(names, constant.StringVal(tv.Value))
	}
	return names, call.Ellipsis == token.NoPos && !bySymbol(p, call)
}

// bySymbol reports whether a call fills its placeholders from the figures that a sheet knows by their symbols: the
// conformance suite holds those to be filled, at every point that it works.
func bySymbol(p *packages.Package, call *ast.CallExpr) bool {
	f := call.Fun
	if index, ok := f.(*ast.IndexExpr); ok {
		f = index.X
	}
	name, ok := f.(*ast.Ident)
	if sel, isSel := f.(*ast.SelectorExpr); isSel {
		name, ok = sel.Sel, true
	}
	if !ok {
		return false
	}
	of, ok := p.TypesInfo.Uses[name].(*types.Func)
	return ok && of.Pkg() != nil && of.Pkg().Path() == "setbook/calc" &&
		slices.Contains([]string{"Warn", "Refuse", "Works", "WorksUS"}, of.Name())
}

var letters = regexp.MustCompile(`\p{L}{2}`)

// unworded finds constant texts with letters that are handed straight to the
// writer of markup, past the catalogue.
func unworded(p *packages.Package, call *ast.CallExpr) (plain []string) {
	sel, ok := call.Fun.(*ast.SelectorExpr)
	if !ok {
		return nil
	}
	f, ok := p.TypesInfo.Uses[sel.Sel].(*types.Func)
	if !ok || f.Pkg() == nil || f.Pkg().Path() != "setbook/calc/markup" {
		return nil
	}
	text := func(e ast.Expr) (string, bool) {
		tv := p.TypesInfo.Types[e]
		if tv.Value == nil || tv.Value.Kind() != constant.String || tv.Type.String() == msgType {
			return "", false
		}
		return constant.StringVal(tv.Value), true
	}
	note := func(e ast.Expr, said string) {
		if letters.MatchString(said) {
			plain = append(plain, fmt.Sprintf("%s: %s", p.Fset.Position(e.Pos()), said))
		}
	}
	switch f.Name() {
	case "Text":
		if said, ok := text(call.Args[0]); ok {
			note(call.Args[0], said)
		}
	case "Put":
		made, _ := text(call.Args[0])
		note(call.Args[0], tag.ReplaceAllString(made, ""))
		for i, a := range call.Args[1:] {
			if said, ok := text(a); ok && !insideTag(made, i) {
				note(a, said)
			}
		}
	}
	return plain
}

var tag = regexp.MustCompile(`<[^>]*>`)

// insideTag reports whether the nth place of a markup stands inside a tag, where a value is no word.
func insideTag(made string, n int) bool {
	parts := strings.SplitAfter(made, "%")
	before := strings.Join(parts[:min(n+1, len(parts))], "")
	return strings.LastIndex(before, "<") > strings.LastIndex(before, ">")
}

var placeholder = regexp.MustCompile(`\{[\p{L}_0-9]+\}`)

func placeholders(text string) []string {
	found := placeholder.FindAllString(text, -1)
	slices.Sort(found)
	return slices.Compact(found)
}

// audit compares a language with the messages in use.
func audit(messages map[words.Msg][]use, l *words.Language) (faults []string) {
	for m, uses := range messages {
		own, ok := l.Say[m]
		if !ok {
			faults = append(faults, fmt.Sprintf("%s: missing: %q (%s)", l.Tag, m, uses[0].at))
			continue
		}
		if !slices.Equal(placeholders(string(m)), placeholders(string(own))) {
			faults = append(faults, fmt.Sprintf("%s: placeholders differ: %q and %q", l.Tag, m, own))
		}
	}
	for m := range l.Say {
		if _, ok := messages[m]; !ok {
			faults = append(faults, fmt.Sprintf("%s: unused: %q", l.Tag, m))
		}
	}
	slices.Sort(faults)
	return faults
}

// Every word on a page comes from the catalogue; every placeholder is filled by the call that
// says it; every language has every message and no more.
func TestCatalogue(t *testing.T) {
	messages, plain := catalogue(t)
	assert.Greater(t, len(messages), 150, "the catalogue was found")
	assert.Contains(t, messages, words.Msg("Notch width"))
	assert.Empty(t, plain, "words that pass by the catalogue")
	for m, uses := range messages {
		assert.Equal(t, strings.TrimSpace(string(m)), string(m), "%s", uses[0].at)
		assert.Equal(t, strings.Count(string(m), "{"), len(placeholder.FindAllString(string(m), -1)), "broken placeholder in %q at %s", m, uses[0].at)
		for _, u := range uses {
			if u.names == nil {
				continue
			}
			for _, ph := range placeholders(string(m)) {
				assert.Contains(t, u.names, strings.Trim(ph, "{}"), "%s: nothing fills %s", u.at, ph)
			}
			for _, name := range u.names {
				assert.Contains(t, string(m), "{"+name+"}", "%s: %s is filled but not said", u.at, name)
			}
		}
	}
	for _, l := range languages.All {
		if l != words.English {
			assert.Empty(t, audit(messages, l))
		}
	}
}

// The audit itself finds a missing, an unused and a mangled message.
func TestAuditFinds(t *testing.T) {
	messages := map[words.Msg][]use{"Bed {bed}": {{}}, "Stop": {{}}}
	l := &words.Language{Tag: "xx", Say: map[words.Msg]words.Msg{"Bed {bed}": "{bad}", "Gone": "x"}}
	assert.Equal(t, []string{`xx: missing: "Stop" (-)`, `xx: placeholders differ: "Bed {bed}" and "{bad}"`, `xx: unused: "Gone"`}, audit(messages, l))
}
