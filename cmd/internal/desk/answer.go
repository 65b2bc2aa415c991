package desk

import (
	"bytes"
	"encoding/json"
	"errors"
	"html/template"
	"io/fs"
	"mime"
	"net/http"
	"path"
	"path/filepath"
	"strings"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
	"benchleaf/templates"
)

// mostBody is how long a request may be: a few files of the greatest length.
const mostBody = 24 << 20

// routes are the addresses below the base. What is asked with GET changes nothing.
func (d *Desk) routes() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET "+d.base+"{$}", d.page)
	mux.HandleFunc("GET "+d.base+"{file}", d.part)
	mux.HandleFunc("GET "+d.base+"api/language", answered(func(*http.Request) (any, error) { return language(), nil }))
	mux.HandleFunc("GET "+d.base+"api/shop", answered(d.tellShop))
	mux.HandleFunc("GET "+d.base+"api/file", answered(d.tellFile))
	mux.HandleFunc("POST "+d.base+"api/check", posted(d.tellCheck))
	mux.HandleFunc("POST "+d.base+"api/complete", posted(d.tellCompletions))
	mux.HandleFunc("POST "+d.base+"api/hover", posted(d.tellHover))
	mux.HandleFunc("POST "+d.base+"api/write", posted(func(_ *http.Request, form filled) (any, error) { return written(form) }))
	mux.HandleFunc("POST "+d.base+"api/steps", posted(func(_ *http.Request, in standing) (any, error) { return in.steps(), nil }))
	mux.HandleFunc("POST "+d.base+"api/tidy", posted(d.tellTidy))
	mux.HandleFunc("POST "+d.base+"api/save", posted(d.keepText))
	mux.HandleFunc("POST "+d.base+"api/print", posted(d.tellPrint))
	return mux
}

// page is the page itself. The editor puts its style in by a number that holds for this once.
func (d *Desk) page(w http.ResponseWriter, _ *http.Request) {
	look, err := template.ParseFS(templates.Files, "desk/page.html")
	if err != nil {
		refuse(w, http.StatusInternalServerError, err.Error())
		return
	}
	nonce := secret(16)
	var out bytes.Buffer
	if err := look.Execute(&out, struct{ Nonce string }{nonce}); err != nil {
		refuse(w, http.StatusInternalServerError, err.Error())
		return
	}
	w.Header().Set("Content-Security-Policy", "default-src 'none'; script-src 'self'; style-src 'self' 'nonce-"+nonce+
		"'; img-src 'self' data: blob:; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'")
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Write(out.Bytes())
}

// part is a style sheet or a script of the page.
func (d *Desk) part(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("file")
	kind := map[string]string{".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".txt": "text/plain; charset=utf-8"}[path.Ext(name)]
	text, err := fs.ReadFile(templates.Files, "desk/"+name)
	if kind == "" || err != nil {
		refuse(w, http.StatusNotFound, "There is nothing of this name.")
		return
	}
	w.Header().Set("Content-Type", kind)
	w.Write(text)
}

// answered answers with JSON.
func answered(do func(*http.Request) (any, error)) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		defer func() {
			if crash := recover(); crash != nil && crash != http.ErrAbortHandler {
				tell(w, http.StatusInternalServerError, map[string]any{"error": "This is a fault of benchleaf, not of your files. Your text is still here."})
			}
		}()
		out, err := do(r)
		var wrong *fault
		var differs *changed
		switch {
		case err == nil:
			tell(w, http.StatusOK, out)
		case r.Context().Err() != nil: // nobody listens any more
		case errors.As(err, &wrong):
			tell(w, wrong.status, map[string]any{"error": wrong.why})
		case errors.As(err, &differs):
			tell(w, http.StatusConflict, map[string]any{"error": differs.Error(), "gone": differs.gone, "text": string(differs.text), "hash": hashOf(differs)})
		default:
			tell(w, http.StatusInternalServerError, map[string]any{"error": err.Error()})
		}
	}
}

func hashOf(differs *changed) string {
	if differs.gone {
		return ""
	}
	return digest(differs.text)
}

func tell(w http.ResponseWriter, status int, out any) {
	if file, is := out.(output); is {
		w.Header().Set("Content-Type", file.kind)
		w.Header().Set("Content-Disposition", mime.FormatMediaType("attachment", map[string]string{"filename": file.name}))
		w.Write(file.bytes)
		return
	}
	text, err := json.Marshal(out)
	if err != nil {
		refuse(w, http.StatusInternalServerError, err.Error())
		return
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	w.Write(text)
}

// posted reads a request in JSON, which no form of a foreign page can send, and answers it.
func posted[T any](do func(*http.Request, T) (any, error)) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		if kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type")); err != nil || kind != "application/json" {
			refuse(w, http.StatusUnsupportedMediaType, "The desk reads JSON.")
			return
		}
		r.Body = http.MaxBytesReader(w, r.Body, mostBody)
		var in T
		reader := json.NewDecoder(r.Body)
		reader.DisallowUnknownFields()
		if err := reader.Decode(&in); err != nil {
			var large *http.MaxBytesError
			if errors.As(err, &large) {
				tell(w, http.StatusRequestEntityTooLarge, map[string]any{"error": "This is more text than the desk takes at once."})
				return
			}
			tell(w, http.StatusBadRequest, map[string]any{"error": "The request cannot be read."})
			return
		}
		answered(func(r *http.Request) (any, error) { return do(r, in) })(w, r)
	}
}

func (d *Desk) tellShop(*http.Request) (any, error) {
	return map[string]any{"folder": filepath.Base(d.shop.Folder()), "tidy": true, "stocks": compiler.Stocks()}, nil
}

func (d *Desk) tellFile(r *http.Request) (any, error) {
	asked := r.URL.Query().Get("path")
	text, err := d.legible(asked)
	if err != nil {
		return nil, err
	}
	return map[string]any{"path": asked, "text": string(text), "hash": digest(text)}, nil
}

// kept texts.
type saving struct {
	Path string `json:"path"`
	Text string `json:"text"`
	Hash string `json:"hash"` // of what was opened; empty for a new file
}

func (d *Desk) keepText(_ *http.Request, in saving) (any, error) {
	if err := d.save(in.Path, []byte(in.Text), in.Hash); err != nil {
		return nil, err
	}
	return map[string]any{"hash": digest([]byte(in.Text))}, nil
}

// spot is a place as editors count: lines and UTF-16 units from 0.
type spot struct {
	Line      int `json:"line"`
	Character int `json:"character"`
}

func spotOf(file *source.File, offset int) spot {
	line, character := file.UTF16(offset)
	return spot{line, character}
}

// offsetOf is the byte of a spot; what lies outside the text is moved to its end.
func offsetOf(file *source.File, at spot) int {
	start := 0
	for range at.Line {
		next := bytes.IndexByte(file.Text[start:], '\n')
		if next < 0 {
			return len(file.Text)
		}
		start += next + 1
	}
	units := 0
	for i, r := range string(file.Text[start:]) {
		if units >= at.Character || r == '\n' {
			return start + i
		}
		units++
		if r > 0xFFFF {
			units++
		}
	}
	return len(file.Text)
}

type placeTold struct {
	Path string `json:"path"`
	From spot   `json:"from"`
	To   spot   `json:"to"`
}

func toldPlace(place source.Place) placeTold {
	if place.File == nil {
		return placeTold{}
	}
	return placeTold{place.File.Path, spotOf(place.File, place.Span.Start), spotOf(place.File, place.Span.End)}
}

type findingTold struct {
	placeTold
	Severity string        `json:"severity"`
	Rule     string        `json:"rule"`
	Summary  string        `json:"summary"`
	Why      string        `json:"why,omitempty"`
	Help     string        `json:"help,omitempty"`
	Variant  string        `json:"variant,omitempty"`
	Related  []relatedTold `json:"related,omitempty"`
	Fixes    []fixTold     `json:"fixes,omitempty"`
}

type relatedTold struct {
	placeTold
	Text string `json:"text"`
}

type fixTold struct {
	Title   string     `json:"title"`
	Certain bool       `json:"certain"`
	Edits   []editTold `json:"edits"`
}

type editTold struct {
	placeTold
	Text string `json:"text"`
}

func toldFinding(found finding.Finding) findingTold {
	out := findingTold{placeTold: toldPlace(found.Place), Severity: found.Severity.String(), Rule: found.Rule, Summary: found.Summary, Why: found.Why, Help: found.Help, Variant: found.Variant}
	for _, related := range found.Related {
		out.Related = append(out.Related, relatedTold{toldPlace(related.Place), related.Text})
	}
	for _, fix := range found.Fixes {
		one := fixTold{Title: fix.Title, Certain: fix.Certain}
		for _, edit := range fix.Edits {
			one.Edits = append(one.Edits, editTold{toldPlace(edit.Place), edit.Text})
		}
		out.Fixes = append(out.Fixes, one)
	}
	return out
}

// checking asks for findings, and for the card of the file that is looked at.
type checking struct {
	asked
	Variant string            `json:"variant"`
	Stock   string            `json:"stock"`
	Open    map[string]string `json:"open"` // files that are open, with the digests of what was opened
}

type checkTold struct {
	All      bool          `json:"all"` // of every file
	Files    []fileTold    `json:"files"`
	Faults   []string      `json:"faults,omitempty"`
	Findings []findingTold `json:"findings"`
	Names    []nameTold    `json:"names"`
	Variants []string      `json:"variants"`
	View     *viewTold     `json:"view"`    // nil where there is no card of the file
	Changed  []string      `json:"changed"` // open files that are others on the disk now

	// Holding are the errors that hold the card of the file back, also those in other files; and
	// its steps are unchecked until they are mended.
	Holding   []findingTold `json:"holding"`
	Unchecked bool          `json:"unchecked"`
	// Shop is what a file at the top of the folder can name that is not there yet.
	Shop []nameTold `json:"shop"`
	// Homes are the files in which a thing of each kind can be described, the likeliest first.
	Homes map[string][]string `json:"homes"`
}

type fileTold struct {
	Path  string `json:"path"`
	Kind  string `json:"kind"`
	Title string `json:"title"`
	Name  string `json:"name"`
}

type nameTold struct {
	Kind  string `json:"kind"`
	Name  string `json:"name"`
	Words string `json:"words"`
	Sort  string `json:"sort,omitempty"` // of a tool what it is
}

type viewTold struct {
	Title    string      `json:"title"`
	Machine  string      `json:"machine"`
	Variant  string      `json:"variant"`
	Revision string      `json:"revision"`
	Blocked  bool        `json:"blocked"`
	Sides    []sideTold  `json:"sides"`
	Steps    []stepTold  `json:"steps"`
	Phases   []phaseTold `json:"phases"`
	Strips   []stripTold `json:"strips"`
	Troubles []string    `json:"troubles,omitempty"`
}

type sideTold struct {
	SVG    string     `json:"svg"`
	Width  float64    `json:"width"`
	Height float64    `json:"height"`
	Spots  []spotTold `json:"spots"`
}

type spotTold struct {
	Step   int     `json:"step"`
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
}

type stepTold struct {
	Number int    `json:"number"`
	Words  string `json:"words"`
	From   int    `json:"from"` // lines, from 0
	To     int    `json:"to"`
}

type phaseTold struct {
	Title string `json:"title"`
	From  int    `json:"from"`
	To    int    `json:"to"`
}

type stripTold struct {
	Kind string    `json:"kind"`
	Name string    `json:"name"`
	Bars []barTold `json:"bars"`
}

type barTold struct {
	From int    `json:"from"`
	To   int    `json:"to"`
	Word string `json:"word"`
	Half bool   `json:"half"`
}

func (d *Desk) tellCheck(r *http.Request, in checking) (any, error) {
	out := checkTold{All: in.All, Files: []fileTold{}, Findings: []findingTold{}, Names: []nameTold{}, Variants: []string{}, Changed: []string{}, Holding: []findingTold{}, Shop: []nameTold{}}
	err := d.compile(r.Context(), in.asked, func(c compiled) error {
		for _, one := range c.result.Listing() {
			out.Files = append(out.Files, fileTold(one))
		}
		for _, err := range c.faults {
			out.Faults = append(out.Faults, err.Error())
		}
		for _, found := range c.result.Findings {
			out.Findings = append(out.Findings, toldFinding(found))
		}
		for _, named := range c.result.Names(in.Path) {
			out.Names = append(out.Names, nameTold(named))
		}
		for _, named := range c.result.Names("") {
			out.Shop = append(out.Shop, nameTold(named))
		}
		out.Homes = c.result.Homes(in.Path)
		out.Variants = append(out.Variants, c.result.Variants(in.Path)...)
		holding, unchecked := c.result.Holding(in.Path, in.Variant)
		for _, found := range holding {
			out.Holding = append(out.Holding, toldFinding(found))
		}
		out.Unchecked = unchecked
		view, err := c.result.View(in.Path, in.Variant, compiler.Look{Stock: in.Stock})
		if err != nil && in.Stock != "" { // the shop has no such stock any more
			view, err = c.result.View(in.Path, in.Variant, compiler.Look{})
		}
		if err != nil {
			return err
		}
		out.View = toldView(view)
		return nil
	})
	if err != nil {
		return nil, err
	}
	for path, known := range in.Open {
		if err := d.unchanged(path, known); err != nil {
			var differs *changed
			if errors.As(err, &differs) {
				out.Changed = append(out.Changed, path)
			}
		}
	}
	return out, nil
}

func toldView(view *compiler.View) *viewTold {
	if view == nil {
		return nil
	}
	out := &viewTold{Title: view.Job.Title, Machine: view.Job.Machine, Variant: view.Job.Variant, Revision: view.Job.Revision, Blocked: view.Job.Blocked,
		Sides: []sideTold{}, Steps: []stepTold{}, Phases: []phaseTold{}, Strips: []stripTold{}}
	for _, side := range view.Sides {
		one := sideTold{SVG: string(side.SVG), Width: side.Width, Height: side.Height, Spots: []spotTold{}}
		for _, spot := range side.Spots {
			one.Spots = append(one.Spots, spotTold(spot))
		}
		out.Sides = append(out.Sides, one)
	}
	for _, step := range view.Steps {
		file, span := step.Place.File, step.Place.Span
		out.Steps = append(out.Steps, stepTold{step.Number, step.Words, spotOf(file, span.Start).Line, spotOf(file, span.End).Line})
	}
	for _, phase := range view.Phases {
		out.Phases = append(out.Phases, phaseTold(phase))
	}
	for _, strip := range view.Strips {
		one := stripTold{strip.Kind, strip.Name, []barTold{}}
		for _, bar := range strip.Bars {
			one.Bars = append(one.Bars, barTold(bar))
		}
		out.Strips = append(out.Strips, one)
	}
	for _, trouble := range view.Troubles {
		out.Troubles = append(out.Troubles, trouble.Where+": "+trouble.Text)
	}
	return out
}

// pointing asks about a place of a text.
type pointing struct {
	asked
	At spot `json:"at"`
}

type completionTold struct {
	Label  string `json:"label"`
	Detail string `json:"detail"`
	Doc    string `json:"doc"`
	Insert string `json:"insert"`
	Kind   string `json:"kind"`
	From   spot   `json:"from"`
	To     spot   `json:"to"`
}

func (d *Desk) tellCompletions(r *http.Request, in pointing) (any, error) {
	out := []completionTold{}
	err := d.compile(r.Context(), in.asked, func(c compiled) error {
		file := c.result.Text(in.Path)
		if file == nil {
			return nil
		}
		for _, one := range completions(c.result, in.Path, offsetOf(file, in.At)) {
			place := toldPlace(one.Replace)
			out = append(out, completionTold{one.Label, one.Detail, one.Doc, one.Insert, one.Kind, place.From, place.To})
		}
		return nil
	})
	return out, err
}

func (d *Desk) tellHover(r *http.Request, in pointing) (any, error) {
	var out any = map[string]any{"text": ""}
	err := d.compile(r.Context(), in.asked, func(c compiled) error {
		file := c.result.Text(in.Path)
		if file == nil {
			return nil
		}
		if place, text, ok := hovered(c.result, in.Path, offsetOf(file, in.At)); ok {
			told := toldPlace(place)
			out = map[string]any{"text": text, "from": told.From, "to": told.To}
		}
		return nil
	})
	return out, err
}

func (d *Desk) tellTidy(_ *http.Request, in struct {
	Text string `json:"text"`
}) (any, error) {
	text, faults := compiler.Tidy(source.New("text.toml", []byte(in.Text)))
	if len(faults) > 0 {
		return nil, faultOf(422, "line %d: %s", faults[0].Place.Start().Line, faults[0].Summary)
	}
	return map[string]any{"text": string(text)}, nil
}

// printing asks for a file to print.
type printing struct {
	asked
	Kind    string `json:"kind"` // card, pick, pick-csv or approval
	Variant string `json:"variant"`
	Stock   string `json:"stock"`
}

// output is a file to hand out.
type output struct {
	name, kind string
	bytes      []byte
}

func (d *Desk) tellPrint(r *http.Request, in printing) (any, error) {
	var out any
	in.All = false
	err := d.compile(r.Context(), in.asked, func(c compiled) error {
		look := compiler.Look{Stock: in.Stock}
		var outputs []compiler.Output
		var err error
		ending := ".pdf"
		switch in.Kind {
		case "card":
			outputs, _, err = c.result.Cards(look, nil)
		case "pick":
			outputs, _, err = c.result.Pick(look)
		case "pick-csv":
			ending = ".csv"
			outputs, _, err = c.result.Pick(look)
		case "approval":
			outputs, _, err = c.result.Approvals(compiler.Look{})
		default:
			return faultOf(400, "the desk prints no %q", in.Kind)
		}
		if err != nil {
			return err
		}
		var best compiler.Output
		for _, one := range outputs {
			if path.Ext(one.Name) != ending {
				continue
			}
			for _, job := range one.Jobs {
				if job.Path == in.Path && (best.Name == "" || job.Variant == in.Variant) {
					best = one
				}
			}
		}
		if best.Name == "" {
			return faultOf(409, "An error stands against this procedure, so it is not printed. Mend it first.")
		}
		name := best.Name
		if strings.HasPrefix(in.Kind, "pick") {
			name = strings.TrimSuffix(path.Base(in.Path), ".toml") + "-pick-list" + ending
		}
		kind := map[string]string{".pdf": "application/pdf", ".csv": "text/csv; charset=utf-8"}[ending]
		out = output{name, kind, best.Bytes}
		return nil
	})
	return out, err
}
