// Package sarif writes findings as a log of the Static Analysis Results Interchange
// Format, version 2.1.0 (OASIS Standard with errata 01, 28 August 2023), for
// programs that show findings of many tools. It must not know how they were found.
package sarif

import (
	"encoding/json"
	"net/url"
	"slices"
	"strings"
	"unicode/utf8"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// Schema is where the standard publishes the schema of the form.
const Schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"

// root stands for the shop folder, wherever it lies.
const root = "%SRCROOT%"

// Log is what one run found.
type Log struct {
	Version  string // of benchleaf
	Rules    []finding.Rule
	Findings []finding.Finding
	Allowed  []finding.Finding // with the reason, and where it stands, as the last related text
}

type document struct {
	Schema  string `json:"$schema"`
	Version string `json:"version"`
	Runs    []run  `json:"runs"`
}

type run struct {
	Tool        tool            `json:"tool"`
	Invocations []invocation    `json:"invocations"`
	Bases       map[string]base `json:"originalUriBaseIds"`
	Artifacts   []artifact      `json:"artifacts"`
	Results     []result        `json:"results"`
	Columns     string          `json:"columnKind"`
	Language    string          `json:"defaultSourceLanguage"`
	Newlines    []string        `json:"newlineSequences"`
}

type base struct {
	Description message `json:"description"`
}

type tool struct {
	Driver driver `json:"driver"`
}

type driver struct {
	Name    string `json:"name"`
	Version string `json:"version"`
	Rules   []rule `json:"rules"`
}

type rule struct {
	ID      string        `json:"id"`
	Short   message       `json:"shortDescription"`
	Full    message       `json:"fullDescription"`
	Default configuration `json:"defaultConfiguration"`
	Help    message       `json:"help"`
	Tags    tags          `json:"properties"`
}

type tags struct {
	Tags []string `json:"tags"`
}

type configuration struct {
	Level string `json:"level"`
}

type message struct {
	Text     string `json:"text"`
	Markdown string `json:"markdown,omitempty"`
}

type invocation struct {
	Successful bool `json:"executionSuccessful"`
}

type artifact struct {
	Location artifactLocation `json:"location"`
	Length   *int             `json:"length,omitempty"`
	Encoding string           `json:"encoding,omitempty"`
}

type artifactLocation struct {
	URI   string `json:"uri"`
	Base  string `json:"uriBaseId"`
	Index int    `json:"index"`
}

type result struct {
	Rule         string            `json:"ruleId"`
	Index        int               `json:"ruleIndex"`
	Level        string            `json:"level"`
	Message      message           `json:"message"`
	Locations    []location        `json:"locations,omitempty"`
	Fingerprints map[string]string `json:"partialFingerprints"`
	Related      []location        `json:"relatedLocations,omitempty"`
	Suppressions []suppression     `json:"suppressions"` // never left out: an empty list says that nobody stands by it
	Fixes        []fix             `json:"fixes,omitempty"`
	Properties   standing          `json:"properties"`
}

type standing struct {
	Holds   bool   `json:"holds"` // no card is printed while it stands
	Version string `json:"machineVersion,omitempty"`
}

type location struct {
	ID       *int     `json:"id,omitempty"`
	Physical physical `json:"physicalLocation"`
	Message  *message `json:"message,omitempty"`
}

type physical struct {
	Artifact artifactLocation `json:"artifactLocation"`
	Region   *region          `json:"region,omitempty"`
}

// region tells a place three times, as the standard wants each to be whole: by lines and
// columns, by characters, by bytes. Columns and characters are code points.
type region struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn"`
	EndLine     int `json:"endLine"`
	EndColumn   int `json:"endColumn"`
	CharOffset  int `json:"charOffset"`
	CharLength  int `json:"charLength"`
	ByteOffset  int `json:"byteOffset"`
	ByteLength  int `json:"byteLength"`
}

type suppression struct {
	Kind          string    `json:"kind"`
	Status        string    `json:"status"`
	Location      *location `json:"location,omitempty"`
	Justification string    `json:"justification"`
}

type fix struct {
	Description message   `json:"description"`
	Changes     []change  `json:"artifactChanges"`
	Properties  certainty `json:"properties"`
}

type certainty struct {
	Certain bool `json:"certain"` // right for certain, and not only a suggestion
}

type change struct {
	Artifact     artifactLocation `json:"artifactLocation"`
	Replacements []replacement    `json:"replacements"`
}

type replacement struct {
	Deleted  region   `json:"deletedRegion"`
	Inserted *content `json:"insertedContent,omitempty"`
}

type content struct {
	Text string `json:"text"`
}

// Write writes a log as indented JSON with a line break at its end. The same log
// gives the same bytes: no day, no folder of this computer and no identity of a run is in it.
func Write(in Log) []byte {
	w := &writer{list: []artifact{}, artifacts: map[string]int{}, seen: map[string]int{}}
	out := run{
		Tool:     tool{driver{Name: "benchleaf", Version: in.Version, Rules: []rule{}}},
		Bases:    map[string]base{root: {message{Text: "The shop folder: the nearest one that holds shop.toml, or else the folder that was checked."}}},
		Columns:  "unicodeCodePoints",
		Language: "toml",
		Newlines: []string{"\r\n", "\n"},
		Results:  []result{},
	}
	index := map[string]int{}
	for i, one := range in.Rules {
		index[one.ID] = i
		out.Tool.Driver.Rules = append(out.Tool.Driver.Rules, describe(one))
	}
	for _, one := range in.Findings {
		out.Results = append(out.Results, w.result(one, index[one.Rule]))
	}
	for _, one := range in.Allowed {
		out.Results = append(out.Results, w.allowed(one, index[one.Rule]))
	}
	out.Invocations, out.Artifacts = []invocation{{Successful: true}}, w.list
	text, err := json.MarshalIndent(document{Schema: Schema, Version: "2.1.0", Runs: []run{out}}, "", "  ")
	if err != nil {
		panic(err) // every field is a plain value
	}
	return append(text, '\n')
}

// writer keeps the list of files that places of a log are in.
type writer struct {
	list      []artifact
	artifacts map[string]int
	seen      map[string]int // how often findings with a fingerprint were met
}

func (w *writer) artifact(path string, file *source.File) artifactLocation {
	at, known := w.artifacts[path]
	if !known {
		at = len(w.list)
		w.artifacts[path] = at
		w.list = append(w.list, artifact{Location: artifactLocation{URI: address(path), Base: root, Index: at}})
	}
	if one := &w.list[at]; file != nil && one.Length == nil {
		length := len(file.Text)
		one.Length = &length
		if utf8.Valid(file.Text) {
			one.Encoding = "UTF-8"
		}
	}
	return artifactLocation{URI: address(path), Base: root, Index: at}
}

// address is a path from the shop folder as a relative reference of RFC 3986.
func address(path string) string {
	parts := strings.Split(path, "/")
	for i, part := range parts {
		parts[i] = strings.ReplaceAll(url.PathEscape(part), ":", "%3A") // or it would be read as a scheme
	}
	return strings.Join(parts, "/")
}

func (w *writer) result(one finding.Finding, index int) result {
	out := result{Rule: one.Rule, Index: index, Level: one.Severity.String(), Message: words(one), Fingerprints: w.fingerprint(one),
		Suppressions: []suppression{}, Properties: standing{Holds: one.Holds(), Version: one.Variant}}
	if one.Place.Known() {
		out.Locations = []location{w.location(one.Place)}
	}
	for i, other := range one.Related {
		if !other.Place.Known() {
			continue
		}
		at := w.location(other.Place)
		at.ID, at.Message = &i, &message{Text: plain(sentence(other.Text))}
		out.Related = append(out.Related, at)
	}
	for _, offered := range one.Fixes {
		out.Fixes = append(out.Fixes, w.fix(offered))
	}
	return out
}

// allowed is a finding its author stands by; the last related text is the reason.
func (w *writer) allowed(one finding.Finding, index int) result {
	n := len(one.Related) - 1
	reason := one.Related[n]
	one.Related = one.Related[:n]
	out := w.result(one, index)
	at := w.location(reason.Place)
	out.Suppressions = []suppression{{Kind: "inSource", Status: "accepted", Location: &at, Justification: reason.Text}}
	out.Properties.Holds = false
	return out
}

func (w *writer) location(place source.Place) location {
	span := regionOf(place)
	return location{Physical: physical{Artifact: w.artifact(place.File.Path, place.File), Region: &span}}
}

func regionOf(place source.Place) region {
	text := place.File.Text
	first := max(0, min(place.Span.Start, len(text)))
	last := max(first, min(place.Span.End, len(text)))
	start, end := place.File.Position(first), place.File.Position(last)
	out := region{StartLine: start.Line, StartColumn: start.Column, EndLine: end.Line, EndColumn: end.Column,
		CharOffset: utf8.RuneCount(text[:first]), CharLength: utf8.RuneCount(text[first:last]), ByteOffset: first, ByteLength: last - first}
	if mark := "\uFEFF"; strings.HasPrefix(string(text), mark) { // counted as a byte, and never as a character
		if out.StartLine == 1 {
			out.StartColumn = max(1, out.StartColumn-1)
		}
		if out.EndLine == 1 {
			out.EndColumn = max(1, out.EndColumn-1)
		}
		if first == 0 && last > 0 {
			out.CharLength--
		}
		out.CharOffset = max(0, out.CharOffset-1)
	}
	return out
}

// fix groups the edits by their files, in the order of their places.
func (w *writer) fix(offered finding.Fix) fix {
	out := fix{Description: message{Text: plain(sentence(offered.Title))}, Properties: certainty{offered.Certain}}
	edits := slices.Clone(offered.Edits)
	slices.SortStableFunc(edits, func(a, b finding.Edit) int {
		if n := strings.Compare(a.Place.File.Path, b.Place.File.Path); n != 0 {
			return n
		}
		return a.Place.Span.Start - b.Place.Span.Start
	})
	for _, edit := range edits {
		at := w.artifact(edit.Place.File.Path, edit.Place.File)
		if n := len(out.Changes); n == 0 || out.Changes[n-1].Artifact != at {
			out.Changes = append(out.Changes, change{Artifact: at})
		}
		made := replacement{Deleted: regionOf(edit.Place)}
		if edit.Text != "" {
			made.Inserted = &content{edit.Text}
		}
		into := &out.Changes[len(out.Changes)-1]
		into.Replacements = append(into.Replacements, made)
	}
	return out
}
