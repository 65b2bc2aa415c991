//go:build !race

package compiler

// Raced: under the race detector everything is many times slower.
const Raced = false
