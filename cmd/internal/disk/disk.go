// Package disk says what every command says of a fault of the disk.
package disk

import (
	"errors"
	"io/fs"
	"os"
)

// Reason is the plain cause of a fault of reading or writing, without the path and the call.
func Reason(err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err
	}
	if err != nil && err.Error() == "EvalSymlinks: too many links" { // filepath has no name for it
		return errCircle
	}
	return err
}

var errCircle = errors.New("its links lead in a circle")
