package desk

import (
	"crypto/subtle"
	"net/http"
	"slices"
	"strings"
)

// cookieName names the cookie that carries the token.
const cookieName = "benchleaf-desk"

// guarded lets through what comes from the page of this desk and from nowhere else: by the
// name it was asked under, so that no foreign name may be made to lead here; by the page it
// comes from; and by the token, which only the address on the terminal has.
func (d *Desk) guarded(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		head := w.Header()
		head.Set("X-Content-Type-Options", "nosniff")
		head.Set("Referrer-Policy", "no-referrer")
		head.Set("Cross-Origin-Opener-Policy", "same-origin")
		head.Set("Cross-Origin-Resource-Policy", "same-origin")
		head.Set("Cache-Control", "no-store")
		head.Set("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'")
		hosts := []string{"127.0.0.1:" + d.port, "localhost:" + d.port}
		if !slices.Contains(hosts, r.Host) {
			refuse(w, http.StatusForbidden, "The desk is not served under this name.")
			return
		}
		if origin, sent := r.Header["Origin"]; sent && (len(origin) != 1 || origin[0] != "http://"+r.Host) {
			refuse(w, http.StatusForbidden, "The desk answers its own page only.")
			return
		}
		if site := r.Header.Get("Sec-Fetch-Site"); site != "" && site != "same-origin" && site != "none" {
			refuse(w, http.StatusForbidden, "The desk answers its own page only.")
			return
		}
		if !strings.HasPrefix(r.URL.Path, d.base) {
			refuse(w, http.StatusForbidden, notOpened)
			return
		}
		if given := r.URL.Query().Get("token"); given != "" && r.URL.Path == d.base && r.Method == http.MethodGet && d.knows(given) {
			http.SetCookie(w, &http.Cookie{Name: cookieName, Value: d.token, Path: d.base, HttpOnly: true, SameSite: http.SameSiteStrictMode})
			http.Redirect(w, r, d.base, http.StatusSeeOther)
			return
		}
		cookie, err := r.Cookie(cookieName)
		if err != nil || !d.knows(cookie.Value) {
			refuse(w, http.StatusForbidden, notOpened)
			return
		}
		next.ServeHTTP(w, r)
	})
}

const notOpened = "Open the address that benchleaf desk printed in your terminal."

func (d *Desk) knows(token string) bool {
	return subtle.ConstantTimeCompare([]byte(token), []byte(d.token)) == 1
}

func refuse(w http.ResponseWriter, status int, why string) { http.Error(w, why, status) }
