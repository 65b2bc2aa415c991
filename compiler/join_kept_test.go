package compiler

import (
	"errors"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/rules"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// keptJob is a joined job of the demonstration shop, in its parts: the head and the steps.
type keptJob struct {
	files  []*source.File
	name   string
	blocks []string
}

// keptJobs are one of each machine whose procedures can be joined.
func keptJobs(t *testing.T) []keptJob {
	t.Helper()
	files := ReadFolder(t, "../procedures")
	result := Compile(Input{Files: files})
	var out []keptJob
	machines := machinesOf(result)
	for _, unit := range slices.Sorted(maps.Keys(machines)) {
		names := machines[unit]
		for _, some := range [][]string{names[:min(3, len(names))], names[:2]} {
			made, err := result.Join(Look{}, Joining{Procedures: some, Unit: unit, On: "2026-05-01"})
			var fight *Conflict
			if errors.As(err, &fight) {
				continue
			}
			require.NoError(t, err, unit)
			out = append(out, keptJob{files, made.Name, strings.Split(string(made.Source), "\n\n[[")})
			break
		}
	}
	require.NotEmpty(t, out)
	return out
}

// says are the findings of a kept job that was changed. language: a fault of the language is
// among them, and so the job is not held against anything.
func (k keptJob) says(blocks []string) (joined []finding.Finding, language bool) {
	text := source.New(k.name+".toml", []byte(strings.Join(blocks, "\n\n[[")))
	for _, found := range Compile(Input{Files: append(slices.Clone(k.files), text), Targets: []string{k.name + ".toml"}}).Findings {
		switch family, _, _ := strings.Cut(found.Rule, "/"); family {
		case "joined":
			joined = append(joined, found)
		case "language", "reference", "syntax", "units":
			language = language || found.Severity == finding.Error
		}
	}
	return joined, language
}

// with is the job with one of its parts in another form; none leaves it out.
func (k keptJob) with(at int, block ...string) []string {
	return slices.Concat(k.blocks[:at], block, k.blocks[at+1:])
}

var (
	figureOf = regexp.MustCompile(`[0-9]`)
	originOf = regexp.MustCompile(`(?m)^origin = "(.*)"$`)
)

// otherwise is a line of a step that says something else: another figure, another letter.
func otherwise(line string) string {
	key, value, _ := strings.Cut(line, " = ")
	if at := figureOf.FindStringIndex(value); at != nil {
		return key + " = " + value[:at[0]] + string('1'+(value[at[0]]-'0'+1)%9) + value[at[1]:]
	}
	at := strings.LastIndex(value, `"`)
	if at < 0 {
		return key + " = " + map[string]string{"true": "false"}[value]
	}
	return key + " = " + value[:at] + " not" + value[at:]
}

// A kept job that is damaged by hand is told, in every key that a step of it has: it is taken
// out, it says something else; and so is a step that is left out, one that is moved, an origin
// that is cut.
func TestDamagedKeptJobsAreTold(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	tried, told := map[string]int{}, map[string]int{}
	var missed []string
	for _, k := range keptJobs(t) {
		before, language := k.says(k.blocks)
		require.Empty(t, before, k.name)
		require.False(t, language, k.name)
		here := map[string]bool{} // of this job; one of a kind is enough
		try := func(kind, what string, blocks []string) {
			if here[kind] {
				return
			}
			found, language := k.says(blocks)
			if language {
				return // told before anything is held against it
			}
			here[kind] = true
			tried[kind]++
			if len(found) > 0 {
				told[kind]++
			} else {
				missed = append(missed, k.name+": "+kind+": "+what)
			}
		}
		shop := ""
		for _, file := range k.files {
			shop += string(file.Text)
		}
		for i := 1; i < len(k.blocks); i++ {
			lines := strings.Split(k.blocks[i], "\n")
			verb := ""
			for n, line := range lines {
				key, value, found := strings.Cut(line, " = ")
				if !found || rules.Unheld[key] != "" {
					continue
				}
				if _, is := schema.FindVerb(key); is {
					verb = key
				}
				if key == "notes" { // those of join itself are not its authors', and a wait has no others
					if first := strings.Split(value, `"`)[1]; verb == "wait" || !strings.Contains(shop, first) {
						continue
					}
				}
				try(key+" otherwise", line, k.with(i, strings.Join(slices.Concat(lines[:n], []string{otherwise(line)}, lines[n+1:]), "\n")))
				if key != verb {
					try(key+" left out", line, k.with(i, strings.Join(slices.Concat(lines[:n], lines[n+1:]), "\n")))
				}
			}
			for _, added := range []string{`time = "99 min"`, `say = "Turn it the other way."`, `keep = ["Nothing is left."]`, `wear = ["face-shield"]`, `count = 9`, `limit = "99 mm"`} {
				if key, _, _ := strings.Cut(added, " = "); !strings.Contains(k.blocks[i], "\n"+key+" = ") {
					try(key+" added", k.blocks[i], k.with(i, strings.Replace(k.blocks[i], "\norigin", "\n"+added+"\norigin", 1)))
				}
			}
			origins := strings.Split(originOf.FindStringSubmatch(k.blocks[i])[1], ", ")
			for n := range origins {
				cut := slices.Delete(slices.Clone(origins), n, n+1)
				if len(cut) > 0 && len(regexp.MustCompile(`\b`+origins[n]+`\b`).FindAllString(strings.Join(k.blocks, "\n"), -1)) == 1 { // no other step names it
					try("origin cut", k.blocks[i], k.with(i, originOf.ReplaceAllString(k.blocks[i], `origin = "`+strings.Join(cut, ", ")+`"`)))
				}
			}
			if !work(verb) {
				continue
			}
			try("left out", k.blocks[i], k.with(i))
			try("origin left out", k.blocks[i], k.with(i, originOf.ReplaceAllString(k.blocks[i], "")))
			letter := origins[0][:1]
			for later := i + 1; later < len(k.blocks); later++ {
				other := originOf.FindStringSubmatch(k.blocks[later])[1]
				next := ""
				for _, line := range strings.Split(k.blocks[later], "\n") {
					if key, _, _ := strings.Cut(line, " = "); next == "" {
						if _, is := schema.FindVerb(key); is {
							next = key
						}
					}
				}
				if other[:1] == letter && work(next) && k.blocks[later][:4] == k.blocks[i][:4] { // of one part of the job
					swapped := slices.Clone(k.blocks)
					swapped[i], swapped[later] = swapped[later], swapped[i]
					try("moved", k.blocks[i], swapped)
					break
				}
			}
		}
	}
	t.Log(tried)
	total := 0
	for kind, n := range tried {
		total += n
		assert.Equal(t, n, told[kind], kind)
	}
	assert.Empty(t, missed)
	assert.Greater(t, total, 100)
	assert.Greater(t, len(tried), 30)
}

// What is only written otherwise, and what is noted besides, is not told.
func TestKeptJobsMayBeWrittenOtherwise(t *testing.T) {
	if testing.Short() {
		t.Skip("one thing after the other: nothing that race could find")
	}
	for _, k := range keptJobs(t) {
		blocks := slices.Clone(k.blocks)
		for i := 1; i < len(blocks); i++ {
			lines := strings.Split(blocks[i], "\n")
			slices.SortStableFunc(lines[1:], func(a, b string) int { return strings.Compare(b, a) })
			blocks[i] = strings.ReplaceAll(strings.ReplaceAll(strings.Join(lines, "\n"), " N·m", "Nm"), " = [", " =   [ ") + " # looked at"
			if !strings.Contains(blocks[i], "notes") {
				blocks[i] += "\nnotes = [\"The light is better from behind.\"]"
			}
		}
		found, language := k.says(blocks)
		assert.Empty(t, found, k.name)
		assert.False(t, language, k.name)
	}
}

// A list of the head that is lost or does not fit has one reason, and one finding.
func TestLostListsOfAKeptJobAreToldOnce(t *testing.T) {
	joins, revisions := regexp.MustCompile(`(?m)^joins = .*\n`), regexp.MustCompile(`(?m)^joined-revisions = .*\n`)
	first := regexp.MustCompile(`(?m)^(joins|joined-revisions) = \["[^"]*", `)
	last := regexp.MustCompile(`(?m)^((?:joins|joined-revisions) = .*), "[^"]*"\]$`)
	for _, k := range keptJobs(t) {
		for name, change := range map[string]func(string) string{
			"joins":            func(head string) string { return joins.ReplaceAllString(head, "") },
			"joined-revisions": func(head string) string { return revisions.ReplaceAllString(head, "") },
			"both":             func(head string) string { return revisions.ReplaceAllString(joins.ReplaceAllString(head, ""), "") },
			"the last":         func(head string) string { return last.ReplaceAllString(head, "$1]") },
			"a revision too few": func(head string) string {
				return regexp.MustCompile(`(joined-revisions = .*), "[^"]*"\]`).ReplaceAllString(head, "$1]")
			},
		} {
			found, language := k.says(k.with(0, change(k.blocks[0])))
			assert.False(t, language, "%s: %s", k.name, name)
			assert.Len(t, found, 1, "%s: %s", k.name, name)
		}
		found, _ := k.says(k.with(0, first.ReplaceAllString(k.blocks[0], "$1 = [")))
		assert.NotEmpty(t, found, k.name)
		assert.LessOrEqual(t, len(found), 12, "the letters stand for others, %s", k.name)
		text := source.New(k.name+".toml", []byte(strings.Join(k.with(0, regexp.MustCompile(`joins = \["`).ReplaceAllString(k.blocks[0], `joins = ["no-`)), "\n\n[[")))
		all := Compile(Input{Files: append(slices.Clone(k.files), text), Targets: []string{k.name + ".toml"}}).Findings
		all = slices.DeleteFunc(all, func(one finding.Finding) bool { return one.Severity < finding.Error })
		assert.Len(t, all, 1, "%s: joined out of one that is not there", k.name)
	}
}

// What the head of a kept job loses of what a procedure has worn, warned of or written down is told.
func TestAHeadThatLosesSomethingIsTold(t *testing.T) {
	tried := map[string]int{}
	for _, k := range keptJobs(t) {
		for _, key := range []string{"who", "manual", "start", "end", "wear", "cautions", "record"} {
			line := regexp.MustCompile(`(?m)^` + key + ` = \[?"(.*)"\]?$`)
			if !line.MatchString(k.blocks[0]) {
				continue
			}
			tried[key]++
			other := `"somebody"`
			if !slices.Contains([]string{"who", "manual"}, key) {
				other = map[bool]string{true: `["gloves"]`, false: `["start"]`}[key == "wear"]
			}
			found, _ := k.says(k.with(0, line.ReplaceAllString(k.blocks[0], key+" = "+other)))
			assert.True(t, slices.ContainsFunc(found, func(one finding.Finding) bool { return one.Rule == "joined/value" }), "%s: %s", k.name, key)
		}
	}
	assert.Greater(t, len(tried), 5)
}
