package job

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Our reader of JSON takes what the standard library takes, and reads the same texts out of it, but for what it refuses on
// purpose: a key given twice, half a surrogate pair, bytes that are no UTF-8, values too deep, too many keys.
func FuzzTree(f *testing.F) {
	for _, seed := range []string{`{"a":[1,-0.5e+3,true,null,"\u00e9\ud83e\uddf1\n\/"]}`, `[]`, `01`, `"`, `{"a":1,"a":2}`, "[1 ,\n2]", `1.`, `-`, `"\x"`, "\"\x01\"", "[\"\xff\"]", `1e5`} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		n, wrong := tree(text)
		if wrong == nil {
			require.True(t, json.Valid([]byte(text)), "%q", text)
			var other any
			d := json.NewDecoder(strings.NewReader(text))
			d.UseNumber()
			require.NoError(t, d.Decode(&other))
			alike(t, &n, other)
			return
		}
		require.NotZero(t, wrong.Line)
		if json.Valid([]byte(text)) {
			require.Contains(t, []string{"Values stand too deep in one another at “{read}”.", "A key is given twice: “{read}”.", "There are too many keys at “{read}”.",
				"This is not text in UTF-8: “{read}”.", "This is no escape of JSON: “{read}”."}, string(wrong.Says.Msg), "%q", text)
		}
	})
}

func alike(t *testing.T, n *node, other any) {
	switch other := other.(type) {
	case map[string]any:
		require.EqualValues(t, '{', n.kind)
		require.Len(t, n.in, len(other))
		for i := range n.in {
			alike(t, &n.in[i], other[n.in[i].key])
		}
	case []any:
		require.EqualValues(t, '[', n.kind)
		require.Len(t, n.in, len(other))
		for i := range n.in {
			alike(t, &n.in[i], other[i])
		}
	case string:
		require.EqualValues(t, '"', n.kind)
		require.Equal(t, other, n.text)
	case json.Number:
		require.Equal(t, string(other), n.text)
	case bool:
		require.Equal(t, map[bool]byte{true: 't', false: 'f'}[other], n.kind)
	default:
		require.EqualValues(t, 'n', n.kind)
	}
}

// Whatever text is quoted is read back by the standard library and by us.
func FuzzQuote(f *testing.F) {
	f.Add("a\"\\/\b\f\n\r\t\x00\x1f\u2028é\U0001F9F1")
	f.Fuzz(func(t *testing.T, text string) {
		text = strings.ToValidUTF8(text, "?")
		var b strings.Builder
		quote(&b, text)
		var other string
		require.NoError(t, json.Unmarshal([]byte(b.String()), &other))
		require.Equal(t, text, other)
		n, wrong := tree(b.String())
		require.Nil(t, wrong)
		require.Equal(t, text, n.text)
	})
}
