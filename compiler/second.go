package compiler

import (
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/source"
)

// SecondReading writes the blanks of a second reading of a file: the figures that
// another person is to read again, without their values. It is empty where the file
// has none, and false where a fault of the syntax stands in it.
func SecondReading(text *source.File) (blanks string, ok bool) {
	file := model.Read([]*source.File{text}, inParallel).Files[0]
	if file.Unread() {
		return "", false
	}
	return file.Blanks(), true
}

// SecondPath is the path of the file that holds the second reading of another;
// false where the other holds one itself.
func SecondPath(path string) (string, bool) { return model.SecondPath(path) }
