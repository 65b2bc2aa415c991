package desk

import (
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A pipe in the shop folder, which would wait for who writes into it, keeps nothing else from being saved.
func TestAPipeIsNotWaitedFor(t *testing.T) {
	at := empty(t)
	require.NoError(t, syscall.Mkfifo(filepath.Join(at, "pipe.toml"), 0o666))
	p := visited(t, at)
	p.client.Timeout = 20 * time.Second
	status, answer := p.send("GET", "api/file?path=pipe.toml", "", nil)
	assert.Equal(t, 403, status)
	assert.Contains(t, answer["error"], "not a plain file")
	status, _ = p.save("pipe.toml", "x", "")
	assert.Equal(t, 403, status)
	status, _ = p.save("oil.toml", "x", "")
	assert.Equal(t, 200, status)
}
