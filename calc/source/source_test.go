package source_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var year = regexp.MustCompile(`\b(19|20)\d\d($|[^.\d])`) // 1926.1153 is a paragraph

// Every source that has a title says its edition or date, with a year in it, or that it is Undated: a sheet that leaves its job names each with its date.
// A year in a title alone would stand nowhere in particular, and a source that forgot its date would look like one that has none.
func TestEverySourceIsDatedOrUndated(t *testing.T) {
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	dated, undated := 0, 0
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		require.NoError(t, err)
		ast.Inspect(parsed, func(n ast.Node) bool {
			literal, ok := n.(*ast.CompositeLit)
			if !ok {
				return true
			}
			if name, ok := literal.Type.(*ast.Ident); !ok || name.Name != "Source" {
				return true
			}
			fields := map[string]ast.Expr{}
			for _, e := range literal.Elts {
				pair := e.(*ast.KeyValueExpr)
				fields[pair.Key.(*ast.Ident).Name] = pair.Value
			}
			if fields["Title"] == nil {
				return true // a basis, not a document
			}
			title := text(t, fields["Title"])
			switch edition := fields["Edition"].(type) {
			case *ast.Ident:
				assert.Equal(t, "Undated", edition.Name, title)
				assert.NotRegexp(t, year, title, "a year in the title is a date")
				undated++
			case *ast.BasicLit:
				assert.Regexp(t, year, text(t, edition), title)
				dated++
			default:
				assert.Fail(t, "neither an edition nor Undated", title)
			}
			return true
		})
	}
	assert.Greater(t, dated, 40)
	assert.Greater(t, undated, 40)
}

func text(t *testing.T, e ast.Expr) string {
	t.Helper()
	s, err := strconv.Unquote(e.(*ast.BasicLit).Value)
	require.NoError(t, err)
	return s
}
