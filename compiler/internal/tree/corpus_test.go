package tree

import (
	"math"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/tree/treetest"
	"benchleaf/compiler/source"
)

// plain turns a table into what BurntSushi/toml decodes into.
func plain(table *Table) map[string]any {
	out := map[string]any{}
	for _, entry := range table.Entries {
		out[entry.Key] = plainValue(entry.Value)
	}
	return out
}

func plainValue(value *Value) any {
	switch value.Kind {
	case StringKind:
		return value.Text
	case IntegerKind:
		return value.Int
	case FloatKind:
		if math.IsNaN(value.Float) {
			return "not a number"
		}
		return value.Float
	case BooleanKind:
		return value.Bool
	case TableKind:
		return plain(value.Table)
	case ArrayKind, TablesKind:
		out := []any{}
		for _, item := range value.Items {
			out = append(out, plainValue(item))
		}
		return out
	default:
		return moment(value.Kind, value.Text)
	}
}

// moment brings a date as written into one form, in UTC where it has a zone.
func moment(kind Kind, text string) string {
	text = strings.ToUpper(strings.Replace(text, " ", "T", 1))
	if kind == DateTimeKind {
		parsed, err := time.Parse("2006-01-02T15:04:05.999999999Z07:00", text)
		if err != nil {
			return err.Error()
		}
		return parsed.UTC().Format("2006-01-02T15:04:05.999999999Z")
	}
	if whole, part, found := strings.Cut(text, "."); found { // more than nanoseconds is cut, as the standard says
		text = strings.TrimRight(whole+"."+part[:min(len(part), 9)], "0")
		text = strings.TrimSuffix(text, ".")
	}
	return text
}

// theirs brings what BurntSushi/toml decoded into the same form.
func theirs(value any) any {
	switch value := value.(type) {
	case map[string]any:
		out := map[string]any{}
		for key, inner := range value {
			out[key] = theirs(inner)
		}
		return out
	case []map[string]any:
		out := []any{}
		for _, inner := range value {
			out = append(out, theirs(inner))
		}
		return out
	case []any:
		out := []any{}
		for _, inner := range value {
			out = append(out, theirs(inner))
		}
		return out
	case float64:
		if math.IsNaN(value) {
			return "not a number"
		}
		return value
	case time.Time:
		switch value.Location().String() {
		case "datetime-local":
			return value.Format("2006-01-02T15:04:05.999999999")
		case "date-local":
			return value.Format("2006-01-02")
		case "time-local":
			return value.Format("15:04:05.999999999")
		}
		return value.UTC().Format("2006-01-02T15:04:05.999999999Z")
	}
	return value
}

// The TOML project's own corpus (toml-lang/toml-test/v2): every valid file reads
// to what BurntSushi/toml reads, and every invalid one is refused.
func TestCorpus(t *testing.T) {
	valid, invalid := 0, 0
	for name, text := range treetest.Corpus(t) {
		t.Run(name, func(t *testing.T) {
			document, findings := Parse(source.New(name, []byte(text)))
			if strings.HasPrefix(name, "invalid/") {
				invalid++
				assert.NotEmpty(t, findings, "is refused:\n%s", text)
				return
			}
			valid++
			if !assert.Empty(t, findings, text) {
				return
			}
			var decoded map[string]any
			_, err := toml.Decode(text, &decoded)
			require.NoError(t, err)
			assert.Equal(t, theirs(decoded), any(plain(document.Root)))
		})
	}
	assert.Greater(t, valid, 150)
	assert.Greater(t, invalid, 300)
}

func FuzzParse(f *testing.F) {
	for _, text := range treetest.Corpus(f) {
		f.Add(text)
	}
	f.Add("benchleaf = 1\n[part.plug]\ntorque = \"42 to 48 N·m\nuse = [\"a\",\n[[step]]\nfill = ")
	f.Fuzz(func(t *testing.T, text string) {
		file := source.New("fuzz.toml", []byte(text))
		document, findings := Parse(file)
		assert.LessOrEqual(t, len(findings), mostFaults+1)
		for _, found := range findings {
			within(t, len(text), found.Place.Span)
			for _, fix := range found.Fixes {
				for _, edit := range fix.Edits {
					within(t, len(text), edit.Place.Span)
				}
			}
		}
		spans(t, len(text), document.Root)
		if len(findings) > 0 {
			return
		}
		var decoded map[string]any
		if _, err := toml.Decode(text, &decoded); err != nil {
			if lenient(text) {
				return
			}
			t.Fatalf("read without a fault, and refused by BurntSushi/toml: %v", err)
		}
		if !strings.Contains(text, "\r") {
			assert.Equal(t, theirs(decoded), any(plain(document.Root)))
		}
	})
}

// lenient tells of texts on which BurntSushi/toml is known to be stricter or other
// than the standard: bare carriage returns.
func lenient(text string) bool { return strings.ContainsAny(text, "\r") }

func within(t *testing.T, length int, span source.Span) {
	t.Helper()
	if span.Start < 0 || span.End < span.Start || span.End > length {
		t.Fatalf("the span %v is outside the %d bytes of the file", span, length)
	}
}

func spans(t *testing.T, length int, table *Table) {
	within(t, length, table.Header)
	for _, entry := range table.Entries {
		within(t, length, entry.KeySpan)
		valueSpans(t, length, entry.Value)
	}
}

func valueSpans(t *testing.T, length int, value *Value) {
	within(t, length, value.Span)
	within(t, length, value.Inside(0, len(value.Text)))
	for _, item := range value.Items {
		valueSpans(t, length, item)
	}
	if value.Table != nil {
		spans(t, length, value.Table)
	}
}

// BenchmarkParse reads the same text as BurntSushi/toml does in the same run.
func BenchmarkParse(b *testing.B) {
	text := strings.Repeat("[[step]]\ntighten = \"drain-plug\"\ntorque = \"42 to 48 N·m\"\nsay = \"Fit a **new** washer.\" # comment\nsupplies = { rags = 2 }\n\n", 40)
	var ours, floor time.Duration
	for b.Loop() {
		start := time.Now()
		_, findings := Parse(source.New("bench.toml", []byte(text)))
		ours += time.Since(start)
		require.Empty(b, findings)
		start = time.Now()
		var decoded map[string]any
		_, err := toml.Decode(text, &decoded)
		floor += time.Since(start)
		require.NoError(b, err)
	}
	b.ReportMetric(float64(ours)/float64(floor), "×BurntSushi")
}
