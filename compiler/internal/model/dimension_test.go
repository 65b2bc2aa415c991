package model

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"benchleaf/schema"
)

func TestEveryAmountOfTheSchemaHasItsDimensions(t *testing.T) {
	seen := 0
	for _, table := range schema.Tables() {
		for _, key := range table.Keys {
			if key.Kind != schema.Amount && key.Kind != schema.Amounts {
				continue
			}
			seen++
			for _, name := range strings.Fields(key.Of) {
				assert.NotEmpty(t, dimensionNames[name], "%s.%s names %q", table.Name, key.Name, name)
			}
			assert.NotEmpty(t, dimensions(key.Of), "%s.%s", table.Name, key.Name)
		}
	}
	assert.Greater(t, seen, 30)
}
