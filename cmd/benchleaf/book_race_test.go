//go:build race

package main

// raced: under the race detector everything is many times slower.
const raced = true
