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
	"os"
	"os/exec"
	"path/filepath"
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

// suite is one binary of tests, and the mutants that change something in it.
type suite struct {
	binary, folder, pattern string
	limit                   time.Duration
	marked                  map[int]bool
}

// build compiles the tests of ./compiler and of each package that is changed, and runs each once with no mutant alive.
func build(packages []string, overlay, scratch, pattern string) ([]suite, error) {
	suites := []suite{{folder: "compiler", pattern: pattern}}
	for _, folder := range packages {
		if tests, _ := filepath.Glob(folder + "/*_test.go"); len(tests) > 0 {
			suites = append(suites, suite{folder: folder, pattern: "."})
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
		out, err := one.run(0, one.pattern, time.Minute, "MUTANT_MARKS="+marks)
		if err != nil {
			return nil, fmt.Errorf("the tests of %s fail with no mutant alive: %w\n%s", one.folder, err, out)
		}
		one.limit = 4*time.Since(start) + 5*time.Second
		text, err := os.ReadFile(marks)
		if err != nil && !errors.Is(err, os.ErrNotExist) {
			return nil, err
		}
		one.marked = map[int]bool{}
		for _, word := range strings.Fields(string(text)) {
			id, err := strconv.Atoi(word)
			if err != nil {
				return nil, err
			}
			one.marked[id] = true
		}
	}
	return suites, nil
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

// try tells what becomes of a mutant: the tests of its own rules first, then all.
func try(suites []suite, id int, own string) int {
	became := idle
	for i := range suites {
		one := &suites[i]
		if !one.marked[id] {
			continue
		}
		patterns := []string{one.pattern}
		if i == 0 && own != "" {
			patterns = []string{own, one.pattern}
		}
		for _, pattern := range patterns {
			switch _, err := one.run(id, pattern, one.limit); {
			case errors.Is(err, context.DeadlineExceeded):
				return timedOut
			case err != nil:
				return killed
			}
		}
		became = survived
	}
	return became
}
