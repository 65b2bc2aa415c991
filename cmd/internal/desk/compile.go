package desk

import (
	"context"
	"crypto/sha256"
	"fmt"
	"slices"

	"benchleaf/compiler"
)

// checker compiles a shop.
type checker interface {
	Check(in compiler.Input) *compiler.Result
}

// session compiles by the compiler's front door, and does not read again what has not changed.
type session struct{ compiler.Session }

func (s *session) Check(in compiler.Input) *compiler.Result { return s.Compile(in) }

// asked is what a request wants compiled.
type asked struct {
	Unsaved map[string]string `json:"unsaved"` // texts that are not saved, by path
	Path    string            `json:"path"`    // the file that is looked at
	All     bool              `json:"all"`     // check every file, and not that one alone
}

// compiled is what came of it.
type compiled struct {
	in     compiler.Input
	faults []error // of reading
	result *compiler.Result
}

// kept is the last compile: whoever asks of the same texts gets it again.
type kept struct {
	of  [sha256.Size]byte
	was compiled
}

// compile compiles the shop with the texts that are not saved, one request at a time, and
// hands what came of it to use while it has the turn. Where whoever asked has gone on to a
// newer text meanwhile, nothing is done and the context's error comes back.
func (d *Desk) compile(ctx context.Context, want asked, use func(compiled) error) error {
	unsaved := map[string][]byte{}
	for path, text := range want.Unsaved {
		if _, err := d.place(path); err != nil {
			return err
		}
		if len(text) > mostText {
			return faultOf(413, "a file is at most %d MiB long", mostText>>20)
		}
		unsaved[path] = []byte(text)
	}
	select {
	case d.turn <- struct{}{}:
	case <-ctx.Done():
		return ctx.Err()
	}
	defer func() { <-d.turn }()
	if err := ctx.Err(); err != nil {
		return err
	}
	in, faults := d.shop.Read(unsaved)
	if !want.All && slices.Contains(in.Targets, want.Path) {
		in.Targets = []string{want.Path}
	}
	sum := sumOf(in)
	if d.kept.was.result == nil || d.kept.of != sum {
		d.kept = kept{sum, compiled{in: in, result: d.check.Check(in)}}
	}
	d.kept.was.faults = faults
	if err := ctx.Err(); err != nil {
		return err
	}
	return use(d.kept.was)
}

// sumOf tells what is compiled apart.
func sumOf(in compiler.Input) [sha256.Size]byte {
	sum := sha256.New()
	for _, file := range in.Files {
		fmt.Fprintf(sum, "file %q %d\n", file.Path, len(file.Text))
		sum.Write(file.Text)
	}
	for _, picture := range in.Pictures {
		fmt.Fprintf(sum, "picture %q %q %d\n", picture.Path, picture.Fault, len(picture.Bytes))
		sum.Write(picture.Bytes)
	}
	fmt.Fprintf(sum, "%q %t", in.Targets, in.Whole)
	return [sha256.Size]byte(sum.Sum(nil))
}
