package desk

import (
	"encoding/json"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const secretText = "benchleaf = 1\n# nobody's business\n"

// holding are the files below a folder with what stands in them.
func holding(t testing.TB, folder string) map[string]string {
	t.Helper()
	out := map[string]string{}
	require.NoError(t, filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || entry.Type()&fs.ModeSymlink != 0 {
			return err
		}
		text, err := os.ReadFile(path)
		out[path] = string(text)
		return err
	}))
	return out
}

// Whatever is asked of the desk, it answers with a status of its own, JSON where it says so, and
// never what lies outside the shop folder; only a save with the token changes a file, and that only a
// procedure file of the folder.
func FuzzRequest(f *testing.F) {
	outer, err := filepath.EvalSymlinks(f.TempDir())
	require.NoError(f, err)
	at := filepath.Join(outer, "shop")
	fresh := func(t testing.TB) {
		require.NoError(t, os.RemoveAll(at))
		require.NoError(t, os.MkdirAll(at, 0o777))
		require.NoError(t, os.WriteFile(filepath.Join(at, "oil.toml"), []byte("benchleaf = 1\n[tool.pan]\nkind = \"container\"\n"), 0o666))
		require.NoError(t, os.WriteFile(filepath.Join(at, "service-book.toml"), []byte("[[entry]]\nwho = \"R. A.\"\n"), 0o666))
		require.NoError(t, os.Symlink("../secret.toml", filepath.Join(at, "link.toml")))
		require.NoError(t, os.Symlink("..", filepath.Join(at, "door")))
	}
	fresh(f)
	require.NoError(f, os.WriteFile(filepath.Join(outer, "secret.toml"), []byte(secretText), 0o666))
	d, err := Open(folder(at), 0)
	require.NoError(f, err)
	f.Cleanup(func() { d.Close() })
	base := holding(f, outer)

	f.Add("GET", "", "", "", "", uint8(3))
	f.Add("GET", "desk.js", "", "", "", uint8(3))
	f.Add("GET", "api/file?path=oil.toml", "", "", "", uint8(3))
	f.Add("GET", "api/file?path=../secret.toml", "", "", "", uint8(3))
	f.Add("GET", "api/file?path=door/secret.toml", "Origin", "http://attacker.example", "", uint8(2))
	f.Add("GET", "../../etc/hostname", "Host", "attacker.example", "", uint8(1))
	f.Add("POST", "api/save", "Content-Type", "application/json", `{"path":"new.toml","text":"benchleaf = 1\n","hash":""}`, uint8(3))
	f.Add("POST", "api/save", "Content-Type", "application/json", `{"path":"link.toml","text":"x","hash":"`+digest([]byte(secretText))+`"}`, uint8(3))
	f.Add("POST", "api/save", "Content-Type", "application/json; charset=x", `{"path":"door/secret.toml","text":"x","hash":""}`, uint8(3))
	f.Add("POST", "api/save", "Content-Type", "application/json", `{"path":"a/b/c.toml","text":"x","hash":""} {}`, uint8(0))
	f.Add("POST", "api/check", "Content-Type", "application/json", `{"path":"oil.toml","all":true,"unsaved":{"oil.toml":"benchleaf = 1\n[[step]]\ntorque = \"25Nm\"\n","../secret.toml":"x"},"open":{"link.toml":""}}`, uint8(3))
	f.Add("POST", "api/complete", "Content-Type", "application/json", `{"path":"oil.toml","at":{"line":-1,"character":1000000000000}}`, uint8(3))
	f.Add("POST", "api/hover", "Content-Type", "application/json", `{"path":"oil.toml","at":{"line":2,"character":3}}`, uint8(3))
	f.Add("POST", "api/write", "Content-Type", "application/json", `{"table":"step","header":"step","values":{"say":"x"},"text":"","line":-5}`, uint8(3))
	f.Add("POST", "api/tidy", "Content-Type", "application/json", `{"path":"oil.toml","text":"a=1"}`, uint8(3))
	f.Add("POST", "api/print", "Content-Type", "application/json", `{"path":"oil.toml","what":"card"}`, uint8(3))
	f.Add("POST", "api/print", "Content-Type", "text/plain", strings.Repeat("[", 20000), uint8(3))
	f.Fuzz(func(t *testing.T, method, path, header, value, body string, passes uint8) {
		request, err := http.NewRequest(method, "http://"+d.address+d.base+path, strings.NewReader(body))
		if err != nil || request.URL.Host != d.address { // no client sends it
			return
		}
		if header != "" {
			request.Header[http.CanonicalHeaderKey(header)] = []string{value}
		}
		if strings.EqualFold(header, "Host") {
			request.Host = value
		}
		if passes&1 != 0 {
			request.AddCookie(&http.Cookie{Name: cookieName, Value: d.token})
		}
		if passes&2 != 0 && method == "POST" && request.Header.Get("Content-Type") == "" {
			request.Header.Set("Content-Type", "application/json")
		}
		answer := httptest.NewRecorder()
		d.desk.ServeHTTP(answer, request)
		text := answer.Body.String()
		assert.Contains(t, []int{200, 301, 303, 307, 308, 400, 403, 404, 405, 409, 413, 415, 422}, answer.Code, "%s", text)
		assert.NotContains(t, text, "nobody's business")
		assert.NotContains(t, text, "R. A.")
		assert.NotContains(t, text+answer.Header().Get("Location"), d.token)
		if strings.HasPrefix(answer.Header().Get("Content-Type"), "application/json") {
			assert.True(t, json.Valid([]byte(text)), "%s", text)
		}
		if passes&1 == 0 && answer.Code < 300 {
			t.Errorf("%s %s is answered without the token", method, path)
		}
		now := holding(t, outer)
		changed := false
		for path, text := range now {
			if old, there := base[path]; there && old == text {
				continue
			}
			changed = true
			assert.True(t, method == "POST" && answer.Code == 200 && passes&1 != 0 && strings.HasSuffix(request.URL.Path, "/api/save"), "%s is written by %s %s", path, method, request.URL.Path)
			short, err := filepath.Rel(at, path)
			assert.True(t, err == nil && filepath.IsLocal(short) && filepath.Ext(path) == ".toml" && filepath.Base(path) != "service-book.toml" && !strings.Contains(short, "/."), path)
		}
		assert.GreaterOrEqual(t, len(now), len(base), "a file is gone")
		if changed || t.Failed() {
			fresh(t)
		}
	})
}

// A form that is written can be read: where the text was TOML it is TOML afterwards, with all that
// stood in it and the table with what was filled in.
func FuzzWritten(f *testing.F) {
	f.Add("tool", "pan", "title", "A pan", "benchleaf = 1\n", 0)
	f.Add("step", "step", "say", "Turn it.\n\"\"\"\nSlowly.\\", "benchleaf = 1\n\n[procedure]\ntitle = \"x\"\n\n[[step]]\nsay = \"\"\"\n[[close]]\n\"\"\"\n\n[tool.pan]\n", 6)
	f.Add("step", "prepare", "say", "a", "[procedure]", 0)
	f.Add("step", "close", "say", "\x00\x7f\u2028", "a = '''\n[[step]]\n'''", -3)
	f.Add("part", "plug", "title", "x", "[[close]]\r\n[part.\"plug\"]\r\n", 1<<40)
	f.Fuzz(func(t *testing.T, table, header, key, value, text string, line int) {
		got, err := written(filled{Table: table, Header: header, Values: map[string]any{key: value}, Text: text, Line: line})
		if err != nil {
			assert.IsType(t, &fault{}, err)
			assert.NotEmpty(t, err.Error())
			return
		}
		var before, after map[string]any
		if _, err := toml.Decode(text, &before); err != nil {
			return
		}
		whole := into(text, got)
		_, err = toml.Decode(whole, &after)
		require.NoError(t, err, "%s", whole)
		for name, one := range before {
			if list, is := one.([]map[string]any); is && table == "step" && name == header {
				assert.Len(t, after[name], len(list)+1, "%s", whole)
			} else if name != table {
				assert.Equal(t, one, after[name], "%s", whole)
			}
		}
	})
}
