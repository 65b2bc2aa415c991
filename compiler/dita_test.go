package compiler_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
)

// tasks are the machinery tasks of the demonstration shop, with the words set in each language,
// and of what is clean.
func tasks(t *testing.T) []compiler.Output {
	var out []compiler.Output
	for name, one := range shops(t) {
		languages := []string{""}
		switch {
		case name == "procedures":
			languages = compiler.Languages()
		case !strings.HasPrefix(name, "clean/"):
			continue
		}
		for _, language := range languages {
			made, err := one.result.Dita(compiler.Look{Language: language})
			require.NoError(t, err, name)
			for _, task := range made {
				task.Name = strings.ReplaceAll(language+"-"+name, "/", "-") + "-" + task.Name
				out = append(out, task)
			}
		}
	}
	require.Greater(t, len(out), 100)
	return out
}

// The grammar is the standard's own: BENCHLEAF_DITA names the folder that holds machineryTask.dtd
// of DITA 1.2 or 1.3, with its neighbours; the judge is xmllint of libxml2.
func TestTasksAreValidByTheGrammarOfDITA(t *testing.T) {
	judge, err := exec.LookPath("xmllint")
	if err != nil {
		t.Skip("xmllint is not installed")
	}
	grammar := os.Getenv("BENCHLEAF_DITA")
	if grammar == "" {
		t.Skip("BENCHLEAF_DITA names no folder with machineryTask.dtd")
	}
	require.FileExists(t, filepath.Join(grammar, "machineryTask.dtd"))
	folder := t.TempDir()
	valid := func(files ...string) (string, error) {
		said, err := exec.Command(judge, append([]string{"--valid", "--noout", "--nonet", "--path", grammar}, files...)...).CombinedOutput()
		return string(said), err
	}
	var files []string
	for _, task := range tasks(t) {
		files = append(files, filepath.Join(folder, task.Name))
		require.NoError(t, os.WriteFile(files[len(files)-1], task.Bytes, 0o600))
	}
	for some := range slices.Chunk(files, 100) {
		said, err := valid(some...)
		assert.NoError(t, err, said)
		assert.Empty(t, said)
	}
	text, err := os.ReadFile(files[0])
	require.NoError(t, err)
	damaged := filepath.Join(folder, "damaged.dita")
	require.NoError(t, os.WriteFile(damaged, bytes.Replace(text, []byte("<reqpers>"), []byte("<reqpers><perskill/>"), 1), 0o600))
	_, err = valid(damaged)
	assert.Error(t, err, "the grammar refuses what is wrong")
}

func TestATaskSaysWhatItsCardSays(t *testing.T) {
	result := shops(t)["procedures"].result
	made, err := result.Dita(compiler.Look{})
	require.NoError(t, err)
	again, err := result.Dita(compiler.Look{})
	require.NoError(t, err)
	for i, task := range made {
		assert.Equal(t, string(task.Bytes), string(again[i].Bytes), "same files, same bytes")
		var got struct {
			ID    string `xml:"id,attr"`
			Title string `xml:"title"`
			Skill string `xml:"taskbody>prelreqs>reqpers>perskill"`
			Steps []struct {
				Cmd struct {
					Inner string `xml:",innerxml"`
				} `xml:"cmd"`
				Hazards []struct {
					Type string `xml:"type,attr"`
				} `xml:"hazardstatement"`
			} `xml:"taskbody>steps>step"`
			Hazards []struct {
				Type  string `xml:"type,attr"`
				Avoid string `xml:"messagepanel>howtoavoid"`
			} `xml:"taskbody>prelreqs>safety>safecond>hazardstatement"`
			After []string `xml:"taskbody>closereqs>reqconds>reqcond"`
		}
		require.NoError(t, xml.Unmarshal(task.Bytes, &got), task.Name)
		job := task.Jobs[0]
		assert.Equal(t, job.Title, got.Title)
		assert.NotEmpty(t, got.Skill)
		assert.NotEmpty(t, got.After)
		assert.NotEmpty(t, got.Hazards)
		actions := compiler.Actions(job)
		require.Len(t, got.Steps, len(actions))
		for i, step := range got.Steps {
			assert.Equal(t, actions[i], spoken(t, step.Cmd.Inner), task.Name)
		}
		for _, one := range got.Hazards {
			assert.Contains(t, []string{"danger", "warning", "caution", "notice"}, one.Type)
			assert.NotEmpty(t, one.Avoid)
		}
	}
}

// spoken is the text in some XML.
func spoken(t *testing.T, inner string) string {
	var out strings.Builder
	for read := xml.NewDecoder(strings.NewReader(inner)); ; {
		token, err := read.Token()
		if err == io.EOF {
			return out.String()
		}
		require.NoError(t, err)
		if text, ok := token.(xml.CharData); ok {
			out.Write(text)
		}
	}
}
