//go:build !race

package compiler_test

const raced = false
