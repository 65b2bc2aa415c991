package main

import (
	"embed"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

//go:embed outside
var outsideFiles embed.FS

// programs are what the report runs beside benchleaf: programs of this computer, and those that
// npm installs into a folder of the report, in the versions of outside/package.json.
type programs struct {
	folder string
	tried  bool
	fault  error
	known  map[string]string // version by name; "not installed" where there is none
}

// find is the path of the first of some programs that is installed, and empty where none is; it
// keeps what the program says of its version.
func (p *programs) find(names ...string) string {
	for _, name := range names {
		path, err := exec.LookPath(name)
		if err != nil {
			continue
		}
		told, err := exec.Command(path, "--version").Output()
		if err != nil {
			p.keep(name, "installed, and does not tell its version")
		} else {
			p.keep(name, firstLine(string(told)))
		}
		return path
	}
	p.keep(names[len(names)-1], "not installed")
	return ""
}

func (p *programs) keep(name, version string) {
	if p.known == nil {
		p.known = map[string]string{}
	}
	p.known[name] = version
}

// facts are the programs that were looked for, with their versions.
func (p *programs) facts() (out []fact) {
	for name, version := range p.known {
		out = append(out, fact{name, version})
	}
	slices.SortFunc(out, func(a, b fact) int { return strings.Compare(a.label, b.label) })
	return out
}

// install brings the programs of npm into the folder, once.
func (p *programs) install() (folder string, err error) {
	if p.tried {
		return p.folder, p.fault
	}
	p.tried = true
	p.fault = p.bring()
	for _, name := range []string{"@myriaddreamin/typst-ts-node-compiler", "@taplo/cli", "tombi"} {
		p.keep(name+" (npm)", p.npmVersion(name))
	}
	return p.folder, p.fault
}

func (p *programs) bring() error {
	npm := p.find("npm")
	if npm == "" || p.find("node") == "" {
		return errors.New("npm and node are not installed")
	}
	if err := os.MkdirAll(p.folder, 0o755); err != nil {
		return err
	}
	files, err := outsideFiles.ReadDir("outside")
	if err != nil {
		return err
	}
	for _, file := range files {
		text, err := outsideFiles.ReadFile("outside/" + file.Name())
		if err == nil {
			err = os.WriteFile(filepath.Join(p.folder, file.Name()), text, 0o600)
		}
		if err != nil {
			return err
		}
	}
	command := exec.Command(npm, "install", "--no-package-lock", "--no-audit", "--no-fund", "--ignore-scripts")
	command.Dir = p.folder
	if told, err := command.CombinedOutput(); err != nil {
		return fmt.Errorf("npm install: %w: %s", err, firstLine(string(told)))
	}
	return nil
}

func (p *programs) npmVersion(name string) string {
	text, err := os.ReadFile(filepath.Join(p.folder, "node_modules", filepath.FromSlash(name), "package.json"))
	var told struct{ Version string }
	if err != nil || json.Unmarshal(text, &told) != nil || told.Version == "" {
		return "not installed"
	}
	return told.Version
}

// npmProgram is the path of a program that npm has installed, and empty where it is not there. Of
// one that a script only starts, the pattern finds the program itself, below node_modules.
func (p *programs) npmProgram(name string, itself ...string) string {
	folder, err := p.install()
	if err != nil {
		return ""
	}
	for _, pattern := range append(itself, filepath.Join(".bin", name)) {
		found, err := filepath.Glob(filepath.Join(folder, "node_modules", filepath.FromSlash(pattern)))
		if err == nil && len(found) > 0 {
			return found[0]
		}
	}
	return ""
}
