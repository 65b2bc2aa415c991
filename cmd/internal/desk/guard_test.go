package desk

import (
	"encoding/json"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// page is a client that has opened the address of a desk.
type page struct {
	*testing.T
	desk   *Desk
	client *http.Client
}

func visited(t *testing.T, at string) page {
	t.Helper()
	d := served(t, at)
	jar, err := cookiejar.New(nil)
	require.NoError(t, err)
	p := page{t, d, &http.Client{Jar: jar}}
	answer, err := p.client.Get(d.Address())
	require.NoError(t, err)
	defer answer.Body.Close()
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.NotContains(t, answer.Request.URL.String(), d.token, "the token does not stay in the address")
	return p
}

func (p page) address(name string) string { return "http://" + p.desk.address + p.desk.base + name }

// send sends a request of the page, changed as a test wants it.
func (p page) send(method, name, body string, change func(*http.Request)) (int, map[string]any) {
	p.Helper()
	request, err := http.NewRequest(method, p.address(name), strings.NewReader(body))
	require.NoError(p, err)
	if body != "" {
		request.Header.Set("Content-Type", "application/json")
	}
	if change != nil {
		change(request)
	}
	answer, err := p.client.Do(request)
	require.NoError(p, err)
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	require.NoError(p, err)
	out := map[string]any{}
	if strings.HasPrefix(answer.Header.Get("Content-Type"), "application/json") {
		require.NoError(p, json.Unmarshal(text, &out), string(text))
	}
	return answer.StatusCode, out
}

func (p page) save(path, text, hash string) (int, map[string]any) {
	p.Helper()
	body, err := json.Marshal(saving{path, text, hash})
	require.NoError(p, err)
	return p.send("POST", "api/save", string(body), nil)
}

func TestTheDeskAnswersItsOwnPageOnly(t *testing.T) {
	at := empty(t)
	put(t, at, "oil.toml", "benchleaf = 1\n")
	p := visited(t, at)
	header := func(name, value string) func(*http.Request) {
		return func(r *http.Request) { r.Header.Set(name, value) }
	}
	host := func(name string) func(*http.Request) { return func(r *http.Request) { r.Host = name } }
	cases := []struct {
		says   string
		change func(*http.Request)
		want   int
	}{
		{"its own", nil, 200},
		{"its own, by the other name of this computer", func(r *http.Request) {
			r.Host = "localhost:" + p.desk.port
			r.AddCookie(&http.Cookie{Name: cookieName, Value: p.desk.token})
		}, 200},
		{"its own origin", header("Origin", "http://"+p.desk.address), 200},
		{"a foreign host", host("attacker.example"), 403},
		{"a foreign host with the port", host("attacker.example:" + p.desk.port), 403},
		{"this computer at another port", host("127.0.0.1:1"), 403},
		{"a foreign origin", header("Origin", "http://attacker.example"), 403},
		{"an origin of nowhere", header("Origin", "null"), 403},
		{"another port of this computer", header("Origin", "http://127.0.0.1:1"), 403},
		{"the other name of this computer", header("Origin", "http://localhost:"+p.desk.port), 403},
		{"a safe page of the same name", header("Origin", "https://"+p.desk.address), 403},
		{"a foreign page without an origin", header("Sec-Fetch-Site", "cross-site"), 403},
		{"a page at another port", header("Sec-Fetch-Site", "same-site"), 403},
	}
	for _, one := range cases {
		status, _ := p.send("GET", "api/file?path=oil.toml", "", one.change)
		assert.Equal(t, one.want, status, "GET, %s", one.says)
		status, _ = p.send("POST", "api/check", `{"path":"oil.toml"}`, one.change)
		assert.Equal(t, one.want, status, "POST, %s", one.says)
	}
}

func TestNothingIsAnsweredWithoutTheToken(t *testing.T) {
	at := empty(t)
	put(t, at, "oil.toml", "benchleaf = 1\n")
	p := visited(t, at)
	stranger := page{t, p.desk, &http.Client{}}
	wrong := func(value string) func(*http.Request) {
		return func(r *http.Request) { r.AddCookie(&http.Cookie{Name: cookieName, Value: value}) }
	}
	for _, name := range []string{"", "desk.js", "editor.js", "api/language", "api/shop", "api/file?path=oil.toml", "?token=", "?token=" + strings.Repeat("0", 64), "api/shop?token=" + p.desk.token} {
		for says, change := range map[string]func(*http.Request){"no token": nil, "wrong token": wrong(strings.Repeat("0", 64)), "empty token": wrong(""), "half a token": wrong(p.desk.token[:32])} {
			status, _ := stranger.send("GET", name, "", change)
			assert.Equal(t, 403, status, "%q, %s", name, says)
		}
	}
	status, _ := stranger.send("POST", "api/save", `{"path":"new.toml","text":"","hash":""}`, nil)
	assert.Equal(t, 403, status)
	assert.NoFileExists(t, filepath.Join(at, "new.toml"))
	answer, err := http.Get("http://" + p.desk.address + "/?token=" + p.desk.token)
	require.NoError(t, err)
	answer.Body.Close()
	assert.Equal(t, 403, answer.StatusCode, "the folder of the addresses is part of them")

	status, _ = stranger.send("GET", "desk.js", "", wrong(p.desk.token))
	assert.Equal(t, 200, status)
	address, err := url.Parse(p.address(""))
	require.NoError(t, err)
	require.Len(t, p.client.Jar.Cookies(address), 1)
	address.Path = "/"
	assert.Empty(t, p.client.Jar.Cookies(address), "the token goes nowhere but to this desk")
}

func TestTheCookieIsStrict(t *testing.T) {
	d := served(t, empty(t))
	client := &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	answer, err := client.Get(d.Address())
	require.NoError(t, err)
	answer.Body.Close()
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
	require.Len(t, answer.Cookies(), 1)
	cookie := answer.Cookies()[0]
	assert.Equal(t, http.SameSiteStrictMode, cookie.SameSite)
	assert.True(t, cookie.HttpOnly)
	assert.Equal(t, d.base, cookie.Path)
	assert.Len(t, cookie.Value, 64)
	assert.True(t, strings.HasPrefix(d.address, "127.0.0.1:"))
}

func TestThePageMayRunNothingButItsOwnScripts(t *testing.T) {
	p := visited(t, empty(t))
	answer, err := p.client.Get(p.address(""))
	require.NoError(t, err)
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	policy := answer.Header.Get("Content-Security-Policy")
	assert.Contains(t, policy, "default-src 'none'; script-src 'self';")
	assert.NotContains(t, policy, "unsafe")
	assert.NotRegexp(t, `<script(?:[^>]*)>[^<]`, string(text), "no script stands in the page")
	assert.NotRegexp(t, `\son[a-z]+=|\sstyle=`, string(text))
	assert.NotRegexp(t, `(?:href|src)="(?:https?:)?//`, string(text), "nothing is asked of the network")
}

func TestNothingIsWrittenByGet(t *testing.T) {
	at := empty(t)
	put(t, at, "oil.toml", "benchleaf = 1\n")
	p := visited(t, at)
	for _, name := range []string{"api/save?path=new.toml&text=x&hash=", "api/save", "api/print", "api/check", "api/write", "api/tidy", "api/complete"} {
		for _, method := range []string{"GET", "HEAD", "PUT", "DELETE", "PATCH"} {
			status, _ := p.send(method, name, "", nil)
			assert.Contains(t, []int{404, 405}, status, "%s %s", method, name)
		}
	}
	for _, kind := range []string{"", "text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x"} {
		status, _ := p.send("POST", "api/save", `{"path":"new.toml","text":"","hash":""}`, func(r *http.Request) { r.Header.Set("Content-Type", kind) })
		assert.Equal(t, 415, status, "what a form of a foreign page can send: %q", kind)
	}
	status, _ := p.send("POST", "api/save", `{"path":"new.toml","text":"","hash":"","more":1}`, nil)
	assert.Equal(t, 400, status)
	assert.NoFileExists(t, filepath.Join(at, "new.toml"))
}

func TestNothingIsReachedOutsideTheShopFolder(t *testing.T) {
	outer := empty(t)
	at := filepath.Join(outer, "shop")
	put(t, outer, "secret.toml", "benchleaf = 1\n")
	put(t, outer, "folder/deep.toml", "benchleaf = 1\n")
	put(t, at, "oil.toml", "benchleaf = 1\n")
	put(t, at, "service-book.toml", "[[entry]]\n")
	put(t, at, "notes.txt", "x")
	put(t, at, ".hidden/a.toml", "x")
	require.NoError(t, os.Symlink(filepath.Join(outer, "secret.toml"), filepath.Join(at, "link.toml")))
	require.NoError(t, os.Symlink("../secret.toml", filepath.Join(at, "short.toml")))
	require.NoError(t, os.Symlink(filepath.Join(outer, "folder"), filepath.Join(at, "door")))
	require.NoError(t, os.Symlink("notes.txt", filepath.Join(at, "text.toml")))
	require.NoError(t, os.Symlink("nowhere.toml", filepath.Join(at, "lost.toml")))
	p := visited(t, at)
	paths := []string{"../secret.toml", "/etc/hostname.toml", filepath.Join(outer, "secret.toml"), "a/../../secret.toml", "..", "", ".", "./oil.toml", `..\secret.toml`, "C:/x.toml", "link.toml", "short.toml", "door/deep.toml", "door/new.toml", "text.toml", "lost.toml", "notes.txt", "oil.toml.txt", "new.sh", "service-book.toml", "sub/service-book.toml", ".hidden/a.toml", ".new.toml", "oil.toml\x00.toml"}
	for _, path := range paths {
		status, answer := p.send("GET", "api/file?path="+url.QueryEscape(path), "", nil)
		assert.Equal(t, 403, status, "read %q: %v", path, answer)
		for _, hash := range []string{"", digest([]byte("benchleaf = 1\n"))} {
			status, answer = p.save(path, "pwned", hash)
			assert.Equal(t, 403, status, "write %q: %v", path, answer)
		}
		body, err := json.Marshal(checking{asked: asked{Unsaved: map[string]string{path: "x"}}})
		require.NoError(t, err)
		status, _ = p.send("POST", "api/check", string(body), nil)
		assert.Equal(t, 403, status, "lay over %q", path)
	}
	for _, path := range []string{"secret.toml", "folder/deep.toml", "shop/oil.toml"} {
		assert.Equal(t, "benchleaf = 1\n", onDisk(t, outer, path))
	}
	assert.Equal(t, "x", onDisk(t, at, "notes.txt"))
	assert.NoFileExists(t, filepath.Join(outer, "folder/new.toml"))
	for _, path := range []string{"../../../../etc/passwd", "%2e%2e%2fdesk.go", "build/package.json", "page.html", "..%2fphone%2fphone.css"} {
		status, _ := p.send("GET", path, "", nil)
		assert.NotEqual(t, 200, status, path)
	}
	require.NoError(t, os.Symlink("oil.toml", filepath.Join(at, "inside.toml")))
	status, _ := p.save("inside.toml", "benchleaf = 1\n# by its link\n", digest([]byte("benchleaf = 1\n")))
	assert.Equal(t, 200, status, "a link within the folder is followed")
	assert.Equal(t, "benchleaf = 1\n# by its link\n", onDisk(t, at, "oil.toml"))
	info, err := os.Lstat(filepath.Join(at, "inside.toml"))
	require.NoError(t, err)
	assert.NotZero(t, info.Mode()&os.ModeSymlink)
}

func TestTooMuchIsRefused(t *testing.T) {
	at := empty(t)
	p := visited(t, at)
	status, answer := p.save("big.toml", strings.Repeat("#", mostText+1), "")
	assert.Equal(t, 413, status)
	assert.Contains(t, answer["error"], "at most 4 MiB")
	status, _ = p.save("big.toml", strings.Repeat("#", mostBody), "")
	assert.Equal(t, 413, status)
	assert.NoFileExists(t, filepath.Join(at, "big.toml"))
	status, _ = p.save("large.toml", strings.Repeat("#", mostText), "")
	assert.Equal(t, 200, status)
	put(t, at, "grown.toml", strings.Repeat("#", mostText+1))
	status, _ = p.send("GET", "api/file?path=grown.toml", "", nil)
	assert.Equal(t, 413, status)
	put(t, at, "latin.toml", "title = \"\xe9\"\n")
	status, answer = p.send("GET", "api/file?path=latin.toml", "", nil)
	assert.Equal(t, 422, status, "a text the page would not give back as it was")
	assert.Contains(t, answer["error"], "UTF-8")
}
