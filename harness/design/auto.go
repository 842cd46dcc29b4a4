package design

import "gopkg.in/yaml.v3"

// autoWord stands for a value that package sizing chooses.
const autoWord = "auto"

// isAuto tells whether a value is the word for one left open.
func isAuto(n *yaml.Node) bool {
	n = follow(n)
	return n.Kind == yaml.ScalarNode && fold(n.Value) == autoWord
}

// orAuto lets a key take the word `auto` besides its values; mark notes it.
func orAuto[T any](k key[T], mark func(*T)) key[T] {
	k.Choices = append(k.Choices, autoWord)
	read := k.read
	k.read = func(r *reader, t *T, f field) {
		if isAuto(f.node) {
			mark(t)
			return
		}
		read(r, t, f)
	}
	return k
}

// orNone lets a key take the word `none` for leaving it out on purpose.
func orNone[T any](k key[T]) key[T] {
	k.Choices = append(k.Choices, "none")
	read := k.read
	k.read = func(r *reader, t *T, f field) {
		if n := follow(f.node); n.Kind != yaml.ScalarNode || fold(n.Value) != "none" {
			read(r, t, f)
		}
	}
	return k
}
