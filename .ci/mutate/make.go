package main

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"slices"
	"strconv"
	"strings"
)

// mutant is one change of the code.
type mutant struct {
	file string // from the root of the project
	line int
	what string
}

// maker puts calls of the package mutation into one file, and lists what they can change. The code
// keeps its lines, so what the compiler says of it is where the author wrote it.
type maker struct {
	path    string
	text    []byte
	fset    *token.FileSet
	info    *types.Info
	pkg     *types.Package
	uses    map[types.Object][]*ast.Ident
	fixed   map[types.Object]bool // constants that other constants, or the length of an array, stand on
	mutants *[]mutant

	before, after map[int][]string
	instead       map[int]string // of a token that begins here
	skip          map[int]int    // how long that token is
}

const call = "mutation_."

func (m *maker) at(pos token.Pos) int { return m.fset.Position(pos).Offset }

func (m *maker) source(node ast.Node) string {
	return strings.Join(strings.Fields(string(m.text[m.at(node.Pos()):m.at(node.End())])), " ")
}

// add lists a mutant and gives its number.
func (m *maker) add(node ast.Node, format string, args ...any) int {
	*m.mutants = append(*m.mutants, mutant{m.path, m.fset.Position(node.Pos()).Line, fmt.Sprintf(format, args...)})
	return len(*m.mutants)
}

// wrap puts text round a node; what is put on first stands outermost.
func (m *maker) wrap(node ast.Node, prefix, suffix string) {
	start, end := m.at(node.Pos()), m.at(node.End())
	m.before[start] = append(m.before[start], prefix)
	m.after[end] = append(m.after[end], suffix)
}

func (m *maker) replace(pos token.Pos, old, text string) {
	m.instead[m.at(pos)], m.skip[m.at(pos)] = text, len(old)
}

// condition wraps an expression in a call that takes a mutant and a truth.
func (m *maker) condition(node ast.Expr, function, what string) {
	id := m.add(node, "%s: %s", what, short(m.source(node)))
	m.wrap(node, fmt.Sprintf("%s%s(%d, ", call, function, id), ")")
}

func short(text string) string {
	if len(text) > 90 {
		return text[:87] + "…"
	}
	return text
}

// written is the file with every mutant in it.
func (m *maker) written(name *ast.Ident) []byte {
	end := m.at(name.End())
	m.after[end] = append(m.after[end], "; import mutation_ \"benchleaf/compiler/internal/mutation\"")
	var out []byte
	for i := 0; i <= len(m.text); i++ {
		for _, text := range slices.Backward(m.after[i]) {
			out = append(out, text...)
		}
		for _, text := range m.before[i] {
			out = append(out, text...)
		}
		if text, ok := m.instead[i]; ok {
			out = append(out, text...)
			i += m.skip[i] - 1
			continue
		}
		if i < len(m.text) {
			out = append(out, m.text[i])
		}
	}
	return append(out, "\nvar _ = mutation_.On\n"...)
}

// whole goes over a file.
func (m *maker) whole(file *ast.File) {
	for _, decl := range file.Decls {
		switch decl := decl.(type) {
		case *ast.FuncDecl:
			if decl.Body != nil {
				m.function(decl.Body, decl.Type)
			}
		case *ast.GenDecl:
			m.declaration(decl)
		}
	}
}

func (m *maker) function(body *ast.BlockStmt, form *ast.FuncType) {
	m.statements(body.List, form.Results == nil)
}

// declaration makes mutants of variables, and of constants that can be variables.
func (m *maker) declaration(decl *ast.GenDecl) {
	if decl.Tok == token.CONST {
		m.constants(decl)
		return
	}
	for _, spec := range decl.Specs {
		if spec, ok := spec.(*ast.ValueSpec); ok {
			for _, value := range spec.Values {
				m.expression(value)
			}
		}
	}
}

func (m *maker) constants(decl *ast.GenDecl) {
	kinds := map[ast.Expr]string{}
	for _, spec := range decl.Specs {
		spec := spec.(*ast.ValueSpec)
		if len(spec.Values) != len(spec.Names) {
			return
		}
		for i, name := range spec.Names {
			kind := ""
			for _, use := range m.uses[m.info.Defs[name]] {
				one := m.named(m.info.TypeOf(use))
				if one == "" || kind != "" && one != kind {
					return
				}
				kind = one
			}
			if kind == "" || ast.IsExported(name.Name) || !isNumber(m.info.Defs[name].Type()) || m.fixed[m.info.Defs[name]] {
				return
			}
			kinds[spec.Values[i]] = kind
		}
	}
	m.replace(decl.TokPos, "const", "var")
	for _, spec := range decl.Specs {
		for _, value := range spec.(*ast.ValueSpec).Values {
			m.number(value, kinds[value], true)
		}
	}
}

// named is how a type is written in this file, or "" where it cannot be.
func (m *maker) named(t types.Type) string {
	basic, ok := t.Underlying().(*types.Basic)
	if !ok || basic.Info()&types.IsUntyped != 0 {
		return ""
	}
	known := true
	text := types.TypeString(t, func(p *types.Package) string {
		known = known && p == m.pkg
		return ""
	})
	if !known {
		return ""
	}
	return text
}

func isNumber(t types.Type) bool {
	basic, ok := t.Underlying().(*types.Basic)
	return ok && basic.Info()&(types.IsInteger|types.IsFloat) != 0
}

// number makes an amount one more and one less, or a quarter more and a fifth less where it has a fraction.
func (m *maker) number(node ast.Expr, kind string, less bool) {
	text := m.source(node)
	ways := []string{text + " + 1", text + " - 1"}
	if value := m.info.Types[node].Value; strings.HasPrefix(kind, "float") && value != nil && constant.Sign(value) != 0 {
		ways = []string{text + " * 1.25", text + " * 0.8"}
	}
	if !less {
		ways = ways[:1]
	}
	if value := m.info.Types[node].Value; strings.HasPrefix(kind, "uint") && value != nil && constant.Sign(value) == 0 {
		ways = ways[:1]
	}
	for _, way := range ways {
		id := m.add(node, "%s for %s", way, text)
		m.wrap(node, fmt.Sprintf("%sPick[%s](%d, ", call, kind, id), ", "+way+")")
	}
}

func (m *maker) statements(list []ast.Stmt, void bool) {
	for _, one := range list {
		m.statement(one, len(list) == 1, void)
	}
}

// leave makes a mutant that leaves a statement out.
func (m *maker) leave(node ast.Stmt) {
	id := m.add(node, "left out: %s", short(m.source(node)))
	m.wrap(node, fmt.Sprintf("if !%sOn(%d) { ", call, id), " }")
}

func (m *maker) statement(node ast.Stmt, alone, void bool) {
	switch node := node.(type) {
	case *ast.BlockStmt:
		m.statements(node.List, void)
	case *ast.ExprStmt:
		if call, ok := node.X.(*ast.CallExpr); ok {
			if name, ok := call.Fun.(*ast.Ident); !ok || name.Name != "panic" {
				m.leave(node)
			}
		}
		m.expression(node.X)
	case *ast.AssignStmt:
		if node.Tok != token.DEFINE {
			m.leave(node)
			for _, left := range node.Lhs {
				if index, ok := left.(*ast.IndexExpr); ok {
					m.expression(index.Index)
				}
			}
		}
		for _, right := range node.Rhs {
			m.expression(right)
		}
	case *ast.BranchStmt:
		if !alone && (node.Tok == token.BREAK || node.Tok == token.CONTINUE) {
			m.leave(node)
		}
	case *ast.ReturnStmt:
		if len(node.Results) == 0 && !alone && void {
			m.leave(node)
		}
		for _, result := range node.Results {
			if name, ok := result.(*ast.Ident); ok && (name.Name == "true" || name.Name == "false") && m.named(m.info.TypeOf(name)) == "bool" {
				m.condition(name, "Not", "turned round")
				continue
			}
			m.expression(result)
		}
	case *ast.IfStmt:
		if node.Init != nil {
			m.within(node.Init)
		}
		m.choice(node.Cond, true)
		m.statements(node.Body.List, void)
		if node.Else != nil {
			m.statement(node.Else, false, void)
		}
	case *ast.ForStmt:
		if node.Init != nil {
			m.within(node.Init)
		}
		if node.Cond != nil {
			m.choice(node.Cond, false)
		}
		m.statements(node.Body.List, void)
	case *ast.RangeStmt:
		m.expression(node.X)
		m.statements(node.Body.List, void)
	case *ast.SwitchStmt:
		if node.Init != nil {
			m.within(node.Init)
		}
		if node.Tag != nil {
			m.expression(node.Tag)
		}
		for _, clause := range node.Body.List {
			clause := clause.(*ast.CaseClause)
			for _, one := range clause.List {
				if node.Tag == nil {
					m.choice(one, true)
				} else {
					m.oneCase(one)
				}
			}
			m.statements(clause.Body, void)
		}
	case *ast.TypeSwitchStmt:
		for _, clause := range node.Body.List {
			m.statements(clause.(*ast.CaseClause).Body, void)
		}
	case *ast.DeclStmt:
		if decl, ok := node.Decl.(*ast.GenDecl); ok {
			m.declaration(decl)
		}
	case *ast.LabeledStmt:
		switch node.Stmt.(type) {
		case *ast.ForStmt, *ast.RangeStmt, *ast.SwitchStmt:
			m.statement(node.Stmt, true, void)
		}
	}
}

// within makes mutants of what stands in front of a condition, which no statement may be put round.
func (m *maker) within(node ast.Stmt) {
	if assign, ok := node.(*ast.AssignStmt); ok {
		for _, right := range assign.Rhs {
			m.expression(right)
		}
	}
}

// oneCase makes a mutant that leaves a case of a switch out.
func (m *maker) oneCase(node ast.Expr) {
	basic, ok := m.info.TypeOf(node).Underlying().(*types.Basic)
	kind := m.named(m.info.TypeOf(node))
	if m.info.Types[node].Value == nil || !ok || basic.Info()&(types.IsString|types.IsInteger) == 0 {
		return
	}
	none := `"\x00"`
	if basic.Info()&types.IsInteger != 0 {
		none = "100"
	}
	if kind != "" {
		kind = "[" + kind + "]"
	} else if _, literal := node.(*ast.BasicLit); literal {
		return // of a named type of another package: its name may not be known here
	}
	id := m.add(node, "no case %s", m.source(node))
	m.wrap(node, fmt.Sprintf("%sPick%s(%d, ", call, kind, id), ", "+none+")")
}

// choice makes mutants of a condition: held to be true, held to be false, and each of its parts left out.
func (m *maker) choice(node ast.Expr, both bool) {
	inner := node
	for {
		paren, ok := inner.(*ast.ParenExpr)
		if !ok {
			break
		}
		inner = paren.X
	}
	joined, _ := inner.(*ast.BinaryExpr)
	and, or := joined != nil && joined.Op == token.LAND, joined != nil && joined.Op == token.LOR
	if m.info.Types[node].Value == nil && types.Identical(types.Default(m.info.TypeOf(node)), types.Typ[types.Bool]) {
		if !and && both {
			m.condition(node, "True", "true")
		}
		if !or {
			m.condition(node, "False", "false")
		}
	}
	m.parts(inner)
}

// parts makes mutants of the parts of a condition, each left out.
func (m *maker) parts(node ast.Expr) {
	switch node := node.(type) {
	case *ast.ParenExpr:
		m.parts(node.X)
		return
	case *ast.UnaryExpr:
		if node.Op == token.NOT {
			m.parts(node.X)
			return
		}
	case *ast.BinaryExpr:
		switch node.Op {
		case token.LAND, token.LOR:
			for _, one := range []ast.Expr{node.X, node.Y} {
				if inner, ok := one.(*ast.BinaryExpr); !ok || inner.Op != node.Op { // a && b && c has three parts
					m.condition(one, map[bool]string{true: "True", false: "False"}[node.Op == token.LAND], "left out of "+node.Op.String())
				}
				m.parts(one)
			}
			return
		case token.EQL, token.NEQ: // left out and held true are more than turned round
			m.expression(node.X)
			m.expression(node.Y)
			return
		}
	}
	m.expression(node)
}

var functions = map[token.Token]string{
	token.LSS: "Less", token.LEQ: "LessEqual", token.GTR: "More", token.GEQ: "MoreEqual",
	token.ADD: "Sum", token.SUB: "Difference", token.MUL: "Product", token.QUO: "Quotient",
}

var turned = map[token.Token]string{
	token.LSS: "<=", token.LEQ: "<", token.GTR: ">=", token.GEQ: ">",
	token.ADD: "-", token.SUB: "+", token.MUL: "/", token.QUO: "*",
}

func (m *maker) expression(node ast.Expr) {
	switch node := node.(type) {
	case *ast.ParenExpr:
		m.expression(node.X)
	case *ast.BasicLit:
		m.literal(node, true)
	case *ast.UnaryExpr:
		m.expression(node.X)
	case *ast.StarExpr:
		m.expression(node.X)
	case *ast.SelectorExpr:
		m.expression(node.X)
	case *ast.BinaryExpr:
		m.binary(node)
	case *ast.CallExpr:
		m.call(node)
	case *ast.IndexExpr:
		if m.info.Types[node.Index].IsType() {
			return
		}
		m.expression(node.X)
		m.index(node.Index)
	case *ast.SliceExpr:
		m.expression(node.X)
		for _, one := range []ast.Expr{node.Low, node.High, node.Max} {
			if one != nil {
				m.index(one)
			}
		}
	case *ast.CompositeLit:
		m.composite(node)
	case *ast.FuncLit:
		m.function(node.Body, node.Type)
	case *ast.KeyValueExpr:
		m.expression(node.Value)
	}
}

func (m *maker) index(node ast.Expr) {
	if literal, ok := node.(*ast.BasicLit); ok {
		m.literal(literal, false)
		return
	}
	m.expression(node)
}

func (m *maker) literal(node *ast.BasicLit, less bool) {
	if node.Kind != token.INT && node.Kind != token.FLOAT {
		return
	}
	if kind := m.named(m.info.TypeOf(node)); kind != "" && isNumber(m.info.TypeOf(node)) {
		m.number(node, kind, less)
	}
}

func (m *maker) binary(node *ast.BinaryExpr) {
	if m.info.Types[node].Value != nil {
		return
	}
	switch node.Op {
	case token.LAND, token.LOR:
		m.parts(node)
		return
	case token.EQL, token.NEQ:
		m.condition(node, "Not", "turned round")
	case token.SHL, token.SHR:
		return
	default:
		one, two := m.info.TypeOf(node.X), m.info.TypeOf(node.Y)
		ordered := node.Op == token.LSS || node.Op == token.LEQ || node.Op == token.GTR || node.Op == token.GEQ
		if function := functions[node.Op]; function != "" && types.Identical(one, two) && (ordered || isNumber(one)) {
			id := m.add(node, "%s for %s: %s", turned[node.Op], node.Op, short(m.source(node)))
			m.wrap(node, fmt.Sprintf("%s%s(%d, ", call, function, id), ")")
			m.replace(node.OpPos, node.Op.String(), ",")
		}
	}
	m.expression(node.X)
	m.expression(node.Y)
}

func (m *maker) call(node *ast.CallExpr) {
	if name, ok := node.Fun.(*ast.Ident); ok && name.Name == "make" {
		return
	}
	m.expression(node.Fun)
	form, ok := m.info.TypeOf(node.Fun).Underlying().(*types.Signature)
	if ok && form.Variadic() && !node.Ellipsis.IsValid() {
		first := form.Params().Len() - 1
		rest := node.Args[min(first, len(node.Args)):]
		kind := m.entry(form.Params().At(first).Type().(*types.Slice).Elem())
		if len(rest) > 1 && kind != "" {
			id := 0
			for _, one := range rest {
				if n := m.add(one, "left out of the list: %s", short(m.source(one))); id == 0 {
					id = n
				}
			}
			start, end := m.at(rest[0].Pos()), m.at(rest[len(rest)-1].End())
			m.before[start] = append(m.before[start], fmt.Sprintf("%sDrop(%d, []%s{", call, id, kind))
			m.after[end] = append(m.after[end], "})...")
		}
	}
	for _, one := range node.Args {
		m.expression(one)
	}
}

// entry is how the type of what is in a list is written, where a list can lose an entry: texts and functions.
func (m *maker) entry(t types.Type) string {
	if basic, ok := t.Underlying().(*types.Basic); ok && basic.Kind() == types.String {
		return m.named(t)
	}
	if _, ok := t.Underlying().(*types.Signature); ok {
		known := true
		text := types.TypeString(t, func(p *types.Package) string {
			known = known && p == m.pkg
			return ""
		})
		if known {
			return text
		}
	}
	return ""
}

// longest is the longest list of which entries are left out.
const longest = 200

func (m *maker) composite(node *ast.CompositeLit) {
	t := m.info.TypeOf(node)
	if named, ok := t.(*types.Named); ok && named.Obj().Name() == "Rule" && named.Obj().Pkg() != m.pkg {
		return // its words and its examples
	}
	var keyed bool
	for _, one := range node.Elts {
		_, ok := one.(*ast.KeyValueExpr)
		keyed = keyed || ok
	}
	switch t := t.Underlying().(type) {
	case *types.Slice:
		if n := len(node.Elts); n > 1 && n <= longest && !keyed && node.Type != nil {
			id := 0
			for _, one := range node.Elts {
				if next := m.add(one, "left out of the list: %s", short(m.source(one))); id == 0 {
					id = next
				}
			}
			m.wrap(node, fmt.Sprintf("%sDrop(%d, ", call, id), ")")
		}
	case *types.Map:
		basic, ok := t.Key().Underlying().(*types.Basic)
		if ok && basic.Kind() == types.String && len(node.Elts) <= longest && node.Type != nil {
			for _, one := range node.Elts {
				key := one.(*ast.KeyValueExpr).Key
				if m.info.Types[key].Value == nil {
					continue
				}
				id := m.add(one, "left out of the map: %s", short(m.source(one)))
				m.wrap(node, fmt.Sprintf("%sWithout(%d, ", call, id), ", "+strconv.Quote(constant.StringVal(m.info.Types[key].Value))+")")
			}
		}
	}
	for _, one := range node.Elts {
		m.expression(one)
	}
}
