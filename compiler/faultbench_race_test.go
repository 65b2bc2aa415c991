//go:build race

package compiler_test

// raced: under the race detector everything is many times slower.
const raced = true
