package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
)

// change is a mutant in a file: its bytes from From up to To become New.
type change struct {
	file     string
	from, to int
	new      string
	line     int
}

// flips make the new text of an expression; "" = it has no such change.
var flips = map[string]func(e ast.Expr, text func(ast.Node) string) string{
	"edge": operator(map[token.Token]string{token.LSS: "<=", token.LEQ: "<", token.GTR: ">=", token.GEQ: ">"}),
	"turn": operator(map[token.Token]string{token.LSS: ">", token.LEQ: ">=", token.GTR: "<", token.GEQ: "<=",
		token.EQL: "!=", token.NEQ: "=="}),
	"minus":   operator(map[token.Token]string{token.ADD: "-", token.SUB: "+", token.MUL: "/", token.QUO: "*"}),
	"up":      constant("*1.1", "+1"),
	"down":    constant("*0.9", "-1"),
	"tenfold": constant("*10", "*10"),
	"true":    func(e ast.Expr, text func(ast.Node) string) string { return "(" + text(e) + " || true)" },
	"false":   func(e ast.Expr, text func(ast.Node) string) string { return "(" + text(e) + " && false)" },
	"left":    operand(0),
	"right":   operand(1),
}

// operator puts another operator between the two sides.
func operator(to map[token.Token]string) func(ast.Expr, func(ast.Node) string) string {
	return func(e ast.Expr, text func(ast.Node) string) string {
		b, ok := e.(*ast.BinaryExpr)
		if !ok || to[b.Op] == "" {
			return ""
		}
		return "(" + text(b.X) + ") " + to[b.Op] + " (" + text(b.Y) + ")"
	}
}

// constant scales a number, or moves a whole one by one.
func constant(scale, step string) func(ast.Expr, func(ast.Node) string) string {
	return func(e ast.Expr, text func(ast.Node) string) string {
		by := scale
		if l, ok := e.(*ast.BasicLit); ok && l.Kind == token.INT {
			by = step
		}
		return "((" + text(e) + ")" + by + ")"
	}
}

// operand drops one side of an operator, or one of two arguments of a least or most.
func operand(keep int) func(ast.Expr, func(ast.Node) string) string {
	return func(e ast.Expr, text func(ast.Node) string) string {
		switch e := e.(type) {
		case *ast.BinaryExpr:
			return "(" + text([]ast.Expr{e.X, e.Y}[keep]) + ")"
		case *ast.CallExpr:
			if len(e.Args) == 2 {
				return "(" + text(e.Args[keep]) + ")"
			}
		}
		return ""
	}
}

// find is where a mutant changes what, in the package's folder.
func find(m mutant, dir string) (change, error) {
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		return change{}, err
	}
	var found []change
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		source, err := os.ReadFile(file)
		if err != nil {
			return change{}, err
		}
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, file, source, parser.SkipObjectResolution)
		if err != nil {
			return change{}, err
		}
		for _, c := range changes(m, set, tree, source) {
			c.file = file
			found = append(found, c)
		}
	}
	switch {
	case flips[m.Flip] == nil:
		return change{}, fmt.Errorf("%s: no such flip", m)
	case len(found) == 0 || m.Nth > len(found):
		return change{}, fmt.Errorf("%s: not found (%d there)", m, len(found))
	case m.Nth == 0 && len(found) > 1:
		return change{}, fmt.Errorf("%s: %d there, name one by nth", m, len(found))
	}
	return found[max(m.Nth-1, 0)], nil
}

// changes are the places of a file that a mutant's words fit.
func changes(m mutant, set *token.FileSet, tree *ast.File, source []byte) []change {
	offset := func(p token.Pos) int { return set.Position(p).Offset }
	text := func(n ast.Node) string { return string(source[offset(n.Pos()):offset(n.End())]) }
	var out []change
	for _, root := range declared(tree, m.In) {
		ast.Inspect(root, func(n ast.Node) bool {
			e, ok := n.(ast.Expr)
			if !ok || m.At != "" && bare(text(e)) != bare(m.At) || flips[m.Flip] == nil {
				return true
			}
			to := flips[m.Flip](e, text)
			if to == "" {
				return true
			}
			out = append(out, change{from: offset(e.Pos()), to: offset(e.End()), new: to, line: set.Position(e.Pos()).Line})
			return false
		})
	}
	return out
}

// bare is text without spaces.
func bare(text string) string { return strings.Join(strings.Fields(text), "") }

// declared are the bodies of the functions, and the values of the constants and
// variables, of a name; the whole file for "".
func declared(tree *ast.File, name string) []ast.Node {
	if name == "" {
		return []ast.Node{tree}
	}
	var out []ast.Node
	for _, d := range tree.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			if d.Body != nil && receiver(d)+d.Name.Name == name {
				out = append(out, d.Body)
			}
		case *ast.GenDecl:
			for _, s := range d.Specs {
				v, ok := s.(*ast.ValueSpec)
				for i := 0; ok && i < len(v.Names) && i < len(v.Values); i++ {
					if v.Names[i].Name == name {
						out = append(out, v.Values[i])
					}
				}
			}
		}
	}
	return out
}

// receiver is "Type." of a method.
func receiver(d *ast.FuncDecl) string {
	if d.Recv == nil {
		return ""
	}
	t := d.Recv.List[0].Type
	if star, ok := t.(*ast.StarExpr); ok {
		t = star.X
	}
	if id, ok := t.(*ast.Ident); ok {
		return id.Name + "."
	}
	return ""
}
