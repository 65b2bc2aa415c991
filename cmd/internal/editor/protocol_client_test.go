package editor

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The client library of the protocol, which is not ours, drives all that the service answers.
func TestTheProtocolClientIsHelped(t *testing.T) {
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("Node is not installed")
	}
	client, err := filepath.Abs("../../../testdata/editor")
	require.NoError(t, err)
	if _, err := os.Stat(filepath.Join(client, "node_modules", "vscode-languageserver-protocol")); err != nil {
		t.Skip("vscode-languageserver-protocol is not installed; run npm ci in testdata/editor")
	}
	command, shop := commandAndShop(t)
	told := filepath.Join(t.TempDir(), "saw.json")
	run := exec.Command(node, filepath.Join(client, "client.mjs"))
	run.Env = append(os.Environ(), "BENCHLEAF="+command, "SHOP="+shop, "SAW="+told)
	said, err := run.CombinedOutput()
	require.NoError(t, err, "%s", said)
	text, err := os.ReadFile(told)
	require.NoError(t, err, "%s", said)
	type session struct {
		Server string
		Sync   int
		Sent   int // files that findings were sent of
		Code   int
	}
	var saw struct {
		Error string
		Sent  struct {
			session
			Clean int
			Found struct {
				Message, Code, Source, Line string
				Severity                    int
			}
			Fix struct {
				Title, Kind string
				Mends       bool
			}
			Mended                               bool
			Offered                              []string
			Inserted, Documented, Hover, Defined string
			References                           struct {
				Files  []string
				Places int
			}
			Used           int
			Outline, Hints []string
			Tidy           bool
			Placeholder    string
			Renamed        []string
			Left           int
			After          []string
			Refused        string
		}
		Asked struct {
			session
			Clean, Pulled string
		}
	}
	require.NoError(t, json.Unmarshal(text, &saw), "%s", text)
	require.Empty(t, saw.Error)
	sent := saw.Sent
	assert.Equal(t, session{"benchleaf", 2, len(sent.Renamed), 0}, sent.session)
	assert.Zero(t, sent.Clean)
	assert.Contains(t, sent.Found.Message, `no part, cover or spare is named "drain-plux"`)
	assert.Equal(t, "reference/unknown-name", sent.Found.Code)
	assert.Equal(t, "benchleaf", sent.Found.Source)
	assert.Equal(t, 1, sent.Found.Severity)
	assert.Equal(t, `remove = "drain-plux"`, sent.Found.Line)
	assert.Equal(t, `Write "drain-plug"`, sent.Fix.Title)
	assert.Equal(t, "quickfix", sent.Fix.Kind)
	assert.True(t, sent.Fix.Mends)
	assert.True(t, sent.Mended)
	assert.Contains(t, sent.Offered, "drain-plug")
	assert.Contains(t, sent.Offered, "chain-guard")
	assert.Equal(t, "drain-plug", sent.Inserted, "between the quotes that stand there")
	assert.Contains(t, sent.Documented, "markdown: ")
	assert.Contains(t, sent.Documented, "M22")
	assert.Contains(t, sent.Hover, "42 to 48 N·m")
	assert.Equal(t, "[part.drain-plug]", sent.Defined)
	assert.Subset(t, sent.References.Files, []string{"log-deck-gearbox-oil.toml", "machines/log-deck.toml"})
	assert.Greater(t, sent.References.Places, 4)
	assert.Equal(t, sent.References.Places-1, sent.Used)
	assert.Contains(t, sent.Outline, "Change the worm gearbox oil")
	assert.NotEmpty(t, sent.Hints)
	assert.True(t, sent.Tidy)
	assert.Equal(t, "drain-plug", sent.Placeholder)
	assert.Equal(t, []string{"log-deck-gearbox-oil.toml", "machines/log-deck.toml", "machines/second/log-deck.toml"}, sent.Renamed)
	assert.Zero(t, sent.Left)
	assert.Empty(t, sent.After)
	assert.NotEmpty(t, sent.Refused)
	assert.Equal(t, session{"benchleaf", 2, 0, 0}, saw.Asked.session, "one that asks is sent none")
	assert.Equal(t, "full: ", saw.Asked.Clean)
	assert.Contains(t, saw.Asked.Pulled, `"drain-plux"`)
}
