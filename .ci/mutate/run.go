package main

import (
	"bytes"
	"context"
	_ "embed"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

//go:embed mutation/mutation.go
var mutation []byte

// prepare writes the files with their mutants, and the overlay that puts them in the place of the code.
func prepare(packages []string, scratch string) ([]mutant, string, error) {
	var mutants []mutant
	here, err := os.Getwd()
	if err != nil {
		return nil, "", err
	}
	replaced := map[string]string{}
	put := func(path string, text []byte) error {
		to := filepath.Join(scratch, strconv.Itoa(len(replaced))+".go")
		replaced[filepath.Join(here, path)] = to
		return os.WriteFile(to, text, 0o644)
	}
	if err := put("compiler/internal/mutation/mutation.go", mutation); err != nil {
		return nil, "", err
	}
	for _, folder := range packages {
		if err := change(folder, &mutants, put); err != nil {
			return nil, "", err
		}
	}
	for _, folder := range append([]string{"compiler"}, packages...) {
		if err := tell(folder, put); err != nil {
			return nil, "", err
		}
	}
	overlay, err := json.Marshal(map[string]any{"Replace": replaced})
	if err != nil {
		return nil, "", err
	}
	path := filepath.Join(scratch, "overlay.json")
	return mutants, path, os.WriteFile(path, overlay, 0o644)
}

// change makes the mutants of the files of one package.
func change(folder string, mutants *[]mutant, put func(string, []byte) error) error {
	fset := token.NewFileSet()
	found, err := filepath.Glob(folder + "/*.go")
	if err != nil {
		return err
	}
	var paths []string
	var files []*ast.File
	for _, path := range found {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(fset, path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		paths, files = append(paths, path), append(files, file)
	}
	if len(files) == 0 {
		return fmt.Errorf("%s: no Go files are there; name a folder of the project, as compiler/internal/rules", folder)
	}
	exports, err := exportsOf(folder)
	if err != nil {
		return err
	}
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}, Defs: map[*ast.Ident]types.Object{}}
	config := types.Config{Importer: importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })}
	pkg, err := config.Check("benchleaf/"+filepath.ToSlash(folder), fset, files, info)
	if err != nil {
		return err
	}
	uses, fixed := map[types.Object][]*ast.Ident{}, map[types.Object]bool{}
	for ident, object := range info.Uses {
		uses[object] = append(uses[object], ident)
	}
	for _, file := range files {
		ast.Inspect(file, func(node ast.Node) bool {
			var within []ast.Expr
			switch node := node.(type) {
			case *ast.ArrayType:
				within = []ast.Expr{node.Len}
			case *ast.GenDecl:
				for _, spec := range node.Specs {
					if spec, ok := spec.(*ast.ValueSpec); ok && node.Tok == token.CONST {
						within = append(within, spec.Values...)
					}
				}
			}
			for _, one := range within {
				if one != nil {
					ast.Inspect(one, func(node ast.Node) bool {
						if ident, ok := node.(*ast.Ident); ok && info.Uses[ident] != nil {
							fixed[info.Uses[ident]] = true
						}
						return true
					})
				}
			}
			return true
		})
	}
	for i, file := range files {
		text, err := os.ReadFile(paths[i])
		if err != nil {
			return err
		}
		m := &maker{path: filepath.ToSlash(paths[i]), text: text, fset: fset, info: info, pkg: pkg, uses: uses, fixed: fixed, mutants: mutants,
			before: map[int][]string{}, after: map[int][]string{}, instead: map[int]string{}, skip: map[int]int{}}
		m.whole(file)
		if err := put(paths[i], m.written(file.Name)); err != nil {
			return err
		}
	}
	return nil
}

var testForm = regexp.MustCompile(`func\(?(?: ?Test\w+\()?t \*testing\.T\) \{`)

// tell lets each test of a package say that it begins.
func tell(folder string, put func(string, []byte) error) error {
	paths, err := filepath.Glob(folder + "/*_test.go")
	if err != nil {
		return err
	}
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		if !testForm.Match(text) {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, text, parser.PackageClauseOnly)
		if err != nil {
			return err
		}
		end := int(file.Name.End()) - 1
		out := append([]byte{}, text[:end]...)
		out = append(out, "; import mutation_ \"benchleaf/compiler/internal/mutation\""...)
		out = append(out, testForm.ReplaceAll(text[end:], []byte("$0 defer mutation_.Test(t.Name())();"))...)
		if err := put(path, out); err != nil {
			return err
		}
	}
	return nil
}

// exportsOf are the compiled packages that a package stands on.
func exportsOf(folder string) (map[string]string, error) {
	command := exec.Command("go", "list", "-export", "-deps", "-f", "{{.ImportPath}}\t{{.Export}}", "./"+folder)
	command.Stderr = os.Stderr
	list, err := command.Output()
	if err != nil {
		return nil, err
	}
	out := map[string]string{}
	for line := range strings.Lines(string(list)) {
		path, file, _ := strings.Cut(strings.TrimSpace(line), "\t")
		out[path] = file
	}
	return out, nil
}

// suite is one binary of tests, and which of them a mutant changes something in.
type suite struct {
	binary, folder string
	limit          time.Duration
	order          []string // its tests
	marked         map[int][]string
}

// build compiles the tests of ./compiler and of each package that is changed, and runs each once with no mutant alive.
func build(packages []string, overlay, scratch, pattern string) ([]suite, error) {
	suites := []suite{{folder: "compiler"}}
	patterns := []string{pattern}
	for _, folder := range packages {
		if tests, _ := filepath.Glob(folder + "/*_test.go"); len(tests) > 0 {
			suites, patterns = append(suites, suite{folder: folder}), append(patterns, "^Test")
		}
	}
	for i := range suites {
		one := &suites[i]
		one.binary = filepath.Join(scratch, strconv.Itoa(i)+".test")
		command := exec.Command("go", "test", "-c", "-vet=off", "-overlay", overlay, "-o", one.binary, "./"+one.folder)
		command.Stdout, command.Stderr = os.Stderr, os.Stderr
		if err := command.Run(); err != nil {
			return nil, fmt.Errorf("build of the tests of %s: %w", one.folder, err)
		}
		marks := filepath.Join(scratch, strconv.Itoa(i)+".marks")
		start := time.Now()
		out, err := one.run(0, patterns[i], 5*time.Minute, "MUTANT_MARKS="+marks)
		if err != nil {
			return nil, fmt.Errorf("the tests of %s fail with no mutant alive: %w\n%s", one.folder, err, out)
		}
		one.limit = 4*time.Since(start) + 5*time.Second
		text, err := os.ReadFile(marks)
		if err != nil && !errors.Is(err, os.ErrNotExist) {
			return nil, err
		}
		one.marked = map[int][]string{}
		for line := range strings.Lines(string(text)) {
			number, test, _ := strings.Cut(strings.TrimSuffix(line, "\n"), "\t")
			id, err := strconv.Atoi(number)
			if err != nil {
				return nil, err
			}
			one.marked[id] = append(one.marked[id], test)
		}
		if one.order, err = one.tests(patterns[i]); err != nil {
			return nil, err
		}
	}
	return suites, nil
}

// tests are the names of the tests of a pattern.
func (s *suite) tests(pattern string) ([]string, error) {
	command := exec.Command(s.binary, "-test.list", pattern)
	command.Dir = s.folder
	out, err := command.Output()
	return strings.Fields(string(out)), err
}

// patternsOf are the tests that a mutant changes something in, as patterns to run one behind the other: those
// with cases first, of which only the cases count where it does. What is changed before any test begins counts in all.
func (s *suite) patternsOf(id int, fixes bool) []string {
	var cased, others []string
	levels := [2]map[string]bool{{}, {}}
	everywhere := slices.Contains(s.marked[id], "")
	if everywhere {
		others = slices.Clone(s.order)
	}
	for _, name := range s.marked[id] {
		parts := strings.SplitN(name, "/", 3)
		switch {
		case everywhere:
		case len(parts) == 1:
			others = append(others, parts[0])
		default:
			cased = append(cased, parts[0])
			for i, part := range parts[1:] {
				levels[i][part] = true
			}
		}
	}
	if !fixes {
		others = slices.DeleteFunc(others, func(name string) bool { return slices.Contains(ofFixes, name) })
	}
	var out []string
	if len(cased) > 0 {
		pattern := oneOf(cased)
		for _, level := range levels {
			if len(level) > 0 {
				pattern += "/" + oneOf(slices.Collect(maps.Keys(level)))
			}
		}
		out = append(out, pattern)
	}
	if len(others) > 0 {
		out = append(out, oneOf(others))
	}
	return out
}

func oneOf(names []string) string {
	slices.Sort(names)
	for i, name := range names {
		names[i] = regexp.QuoteMeta(name)
	}
	return "^(" + strings.Join(slices.Compact(names), "|") + ")$"
}

// run runs tests with one mutant alive.
func (s *suite) run(id int, pattern string, limit time.Duration, more ...string) (string, error) {
	ctx, stop := context.WithTimeout(context.Background(), limit)
	defer stop()
	command := exec.CommandContext(ctx, s.binary, "-test.failfast", "-test.run", pattern)
	command.Dir = s.folder
	command.Env = append(append(os.Environ(), "MUTANT="+strconv.Itoa(id), "GOMAXPROCS=1"), more...)
	var out bytes.Buffer
	command.Stdout, command.Stderr = &out, &out
	err := command.Run()
	if ctx.Err() != nil {
		err = ctx.Err()
	}
	return out.String(), err
}

// try tells what becomes of a mutant. Where a file makes no fix, the tests of fixes have nothing to tell
// that the tests of findings do not.
func try(suites []suite, id int, fixes bool) int {
	became := idle
	for i := range suites {
		one := &suites[i]
		for _, pattern := range one.patternsOf(id, fixes) {
			switch _, err := one.run(id, pattern, one.limit); {
			case errors.Is(err, context.DeadlineExceeded):
				return timedOut
			case err != nil:
				return killed
			}
			became = survived
		}
	}
	return became
}
