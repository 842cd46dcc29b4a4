package page

import (
	"fmt"
	"io/fs"
	"regexp"
	"slices"
	"strings"
)

// A module imports and exports in these forms alone, each on a line of its own, so that
// modules can be put behind one another as one script.
var (
	importLine = regexp.MustCompile(`(?m)^import (?:\{([^}]*)\}|\* as (\w+)) from '\./([\w-]+\.js)';\n`)
	exportLine = regexp.MustCompile(`(?m)^export ((?:async )?function\*?|const|class) (\w+)([^\n]*)`)
	quotedText = regexp.MustCompile(`'[^'\n]*'`)
	furtherOne = regexp.MustCompile(`^ = '', (\w+) = '';?$`) // export const id = '…', title = '…';
	leftOver   = regexp.MustCompile(`(?m)^\s*(?:import\b|export\b)[^\n]*`)
)

// bundler puts modules behind one another, each after those that it imports.
type bundler struct {
	files   fs.FS
	instead map[string]string // texts of modules in place of their files
	out     strings.Builder
	names   map[string][]string // exported, by module; nil while it is being read
	order   []string
}

// bundle makes one script of a module and all that it imports. Each module is a function of
// its own, which gives back what it exports.
func bundle(files fs.FS, entry string, instead map[string]string) (string, error) {
	b := &bundler{files: files, instead: instead, names: map[string][]string{}}
	if err := b.module(entry); err != nil {
		return "", err
	}
	return b.out.String(), nil
}

func (b *bundler) module(name string) error {
	if exported, begun := b.names[name]; begun {
		if exported == nil {
			return fmt.Errorf("modules import each other in a ring: %s", strings.Join(append(b.order, name), ", "))
		}
		return nil
	}
	text, given := b.instead[name]
	if !given {
		data, err := fs.ReadFile(b.files, name)
		if err != nil {
			return err
		}
		text = string(data)
	}
	b.names[name], b.order = nil, append(b.order, name)
	var heads []string
	for _, m := range importLine.FindAllStringSubmatch(text, -1) {
		if err := b.module(m[3]); err != nil {
			return err
		}
		if m[2] != "" {
			heads = append(heads, fmt.Sprintf("const %s = %s;", m[2], variable(m[3])))
			continue
		}
		for one := range strings.SplitSeq(m[1], ",") {
			one = strings.TrimSpace(one)
			if !slices.Contains(b.names[m[3]], one) {
				return fmt.Errorf("%s imports %q, which %s does not export", name, one, m[3])
			}
		}
		heads = append(heads, fmt.Sprintf("const {%s} = %s;", strings.TrimSpace(m[1]), variable(m[3])))
	}
	text = importLine.ReplaceAllString(text, "")
	exported := []string{}
	for _, m := range exportLine.FindAllStringSubmatch(text, -1) {
		exported = append(exported, m[2])
		if m[1] == "const" {
			if more := furtherOne.FindStringSubmatch(quotedText.ReplaceAllString(m[3], "''")); more != nil {
				exported = append(exported, more[1])
			}
		}
	}
	text = exportLine.ReplaceAllString(text, "$1 $2$3")
	if left := leftOver.FindString(text); left != "" {
		return fmt.Errorf("%s: %q is in none of the forms of this page's modules", name, left)
	}
	fmt.Fprintf(&b.out, "const %s = (() => {\n%s\n%s\nreturn {%s};\n})();\n", variable(name), strings.Join(heads, "\n"), strings.TrimSpace(text), strings.Join(exported, ", "))
	b.names[name], b.order = exported, b.order[:len(b.order)-1]
	return nil
}

// variable holds what a module exports: what_if of what-if.js.
func variable(module string) string {
	return "$" + strings.ReplaceAll(strings.TrimSuffix(module, ".js"), "-", "_")
}
