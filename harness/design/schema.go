package design

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/library"
)

// schemaNode is a node of a JSON Schema; maps are written with sorted keys.
type schemaNode = map[string]any

// Schema is the JSON Schema (draft 7, which YAML editors read) of the design
// format, made from the reader's own tables and the names of a library. It
// catches what stands in one value or record: keys, kinds, words, units, what is
// missing. What takes the whole design, such as names that lead nowhere or
// limits between two values, only the reader knows. Names of the library are
// offered, others are taken too, since a library file may add them.
func Schema(lib *library.Library) ([]byte, error) {
	defs := schemaNode{}
	var whole schemaNode
	for _, s := range Format() {
		node := sectionSchema(s, lib)
		if s.Name == designSection.Name {
			whole = node
			continue
		}
		defs[s.Name] = node
	}
	whole["$schema"] = "http://json-schema.org/draft-07/schema#"
	whole["title"] = "Fusewright design, format version " + FormatVersion
	whole["definitions"] = defs
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	err := enc.Encode(whole)
	return b.Bytes(), err
}

// sectionSchema is one record, or what may stand in its place.
func sectionSchema(s Section, lib *library.Library) schemaNode {
	properties, required := schemaNode{}, []string{}
	var either []schemaNode // a required key or its old name
	for _, k := range s.Keys {
		properties[k.Name] = keySchema(k, lib)
		if k.Was != "" {
			old := k
			old.Doc = "now `" + k.Name + "`: " + k.Doc
			properties[k.Was] = keySchema(old, lib)
		}
		switch {
		case k.Required && k.Was != "":
			either = []schemaNode{{"required": []string{k.Name}}, {"required": []string{k.Was}}}
		case k.Required:
			required = append(required, k.Name)
		}
	}
	record := schemaNode{"type": "object", "properties": properties, "additionalProperties": false,
		"description": s.Doc, "examples": []string{s.Example}}
	if len(required) > 0 {
		record["required"] = required
	}
	if either != nil {
		record["anyOf"] = either
	}
	if short := shortSchema(s.Name); short != nil {
		return schemaNode{"description": s.Doc, "anyOf": []schemaNode{short, record}}
	}
	return record
}

// shortSchema is what may stand in place of a record of a section; nil when
// nothing may. It goes with the section's Short, which says it in words.
func shortSchema(section string) schemaNode {
	switch section {
	case vehicleLoadSection.Name:
		return schemaNode{"type": "string", "pattern": quantity.Pattern(quantity.Power, false)}
	case placeSection.Name:
		return schemaNode{"type": "null"}
	case nearSection.Name:
		return textSchema()
	case wireSection.Name:
		return schemaNode{"type": "string", "pattern": quantity.Pattern(quantity.Area, false)}
	case waySection.Name:
		return anyOf(wordsSchema([]string{"spare", "none", autoWord}),
			schemaNode{"type": "string", "pattern": quantity.Pattern(quantity.Current, false)})
	}
	return nil
}

// keySchema is the value of one key, with what an editor shows of it.
func keySchema(k Key, lib *library.Library) schemaNode {
	node := valueSchema(k, lib)
	text := k.Doc
	if k.Min < k.Max && k.Kind == KindQuantity {
		text += fmt.Sprintf("; %s to %s", quantity.Plain(k.Min, k.Unit), quantity.Plain(k.Max, k.Unit))
	}
	if k.Default != "" {
		text += "; left out: " + k.Default
	}
	described := schemaNode{"description": text}
	if k.Example != "" && !strings.HasPrefix(k.Example, "see ") {
		described["examples"] = []string{k.Example}
	}
	if node["$ref"] != nil { // in draft 7 nothing counts beside a $ref
		node = schemaNode{"allOf": []schemaNode{node}}
	}
	for name, value := range described {
		node[name] = value
	}
	return node
}

func valueSchema(k Key, lib *library.Library) schemaNode {
	switch k.Kind {
	case KindText:
		return textSchema()
	case KindTexts:
		return anyOf(textSchema(), listSchema(textSchema()))
	case KindNumber:
		if k.Whole {
			return schemaNode{"type": "integer", "minimum": k.Min, "maximum": k.Max}
		}
		return schemaNode{"type": "number", "minimum": k.Min, "maximum": k.Max}
	case KindQuantity:
		q := schemaNode{"type": "string", "pattern": quantity.Pattern(k.Unit, k.Min < 0)}
		return withWords(k.Choices, q)
	case KindChoice:
		return wordsSchema(k.Choices)
	case KindYesNo:
		return wordsSchema([]string{"yes", "no", "true", "false"})
	case KindLibrary:
		return withWords(k.Choices, anyOf(schemaNode{"enum": libraryNames(lib, k.Library)}, textSchema()))
	case KindPlace, KindState, KindRelay, KindSwitch, KindLoad:
		return textSchema()
	case KindCondition:
		return withWords(k.Choices, textSchema())
	case KindFeeds, KindReturns:
		return anyOf(textSchema(), listSchema(textSchema()), schemaNode{"type": "object", "minProperties": 1,
			"additionalProperties": anyOf(schemaNode{"$ref": "#/definitions/" + wireSection.Name}, schemaNode{"type": "null"})})
	case KindParts, KindLoads, KindSwitches, KindStates, KindConditions:
		return anyOf(textSchema(), listSchema(textSchema()))
	}
	return compoundSchema(k)
}

// compoundSchema is a record or several.
func compoundSchema(k Key) schemaNode {
	ref := schemaNode{"$ref": "#/definitions/" + strings.ReplaceAll(k.Section, " ", "%20")}
	switch k.Kind {
	case KindRecord:
		return ref
	case KindList:
		list := listSchema(ref)
		if k.Required {
			list["minItems"] = 1
		}
		return list
	case KindNamed:
		names := schemaNode{"minLength": 1, "maxLength": maxName}
		if k.Section == waySection.Name {
			names = schemaNode{"pattern": "^[0-9]{1,3}$"}
		}
		return schemaNode{"type": "object", "additionalProperties": ref, "propertyNames": names}
	case KindCurve:
		return schemaNode{"type": "object", "minProperties": 1,
			"propertyNames": schemaNode{"pattern": quantity.Pattern(quantity.Speed, false)},
			"additionalProperties": anyOf(
				schemaNode{"type": "string", "pattern": quantity.Pattern(quantity.Current, false)},
				schemaNode{"type": "string", "pattern": quantity.Pattern(quantity.Power, false)})}
	case KindPositions:
		names := anyOf(textSchema(), listSchema(textSchema()))
		return anyOf(listSchema(textSchema()), schemaNode{"type": "object", "minProperties": 1, "additionalProperties": names})
	case KindSettings:
		return schemaNode{"type": "object", "additionalProperties": textSchema()}
	case KindCharges:
		return schemaNode{"type": "object", "additionalProperties": schemaNode{"type": "string", "pattern": quantity.Pattern(quantity.Share, false)}}
	case KindMoney:
		return schemaNode{"type": "object",
			"additionalProperties": schemaNode{"type": "string", "pattern": moneyForm.String()}}
	case KindLabels:
		return schemaNode{"type": "object", "additionalProperties": textSchema(),
			"propertyNames": schemaNode{"pattern": "^revision$|" + labelForm.String()}}
	}
	panic("design: no schema for values of the kind " + k.Kind)
}

func anyOf(list ...schemaNode) schemaNode { return schemaNode{"anyOf": list} }

func listSchema(of schemaNode) schemaNode { return schemaNode{"type": "array", "items": of} }

// textSchema is any text; YAML reads some, such as a revision, as numbers.
func textSchema() schemaNode {
	return anyOf(schemaNode{"type": "string", "pattern": `\S`, "maxLength": maxSentence}, schemaNode{"type": "number"},
		schemaNode{"type": "boolean"})
}

// withWords is a value in whose place a word may stand.
func withWords(words []string, value schemaNode) schemaNode {
	if len(words) == 0 {
		return value
	}
	return anyOf(wordsSchema(words), value)
}

// wordsSchema is one of a few words, in any case. Older YAML reads yes, no, on
// and off as truth values, and version 1 is a number.
func wordsSchema(words []string) schemaNode {
	enum := []any{}
	var forms []string
	truth := map[string]bool{"yes": true, "on": true, "true": true, "no": false, "off": false, "false": false}
	seen := map[bool]bool{}
	for _, w := range words {
		enum = append(enum, w)
		forms = append(forms, quantity.AnyCase(w))
		if v, ok := truth[w]; ok && !seen[v] {
			seen[v] = true
			enum = append(enum, v)
		}
		if n, err := strconv.Atoi(w); err == nil {
			enum = append(enum, n)
		}
	}
	return anyOf(schemaNode{"enum": enum},
		schemaNode{"type": "string", "pattern": `^\s*(` + strings.Join(forms, "|") + `)\s*$`})
}

// libraryNames are the names that a key with this Library takes; of a crimp part,
// its kind is one.
func libraryNames(lib *library.Library, list string) []string {
	names := lib.Names(list)
	if list == "terminals" {
		names = slices.Compact(slices.Sorted(slices.Values(append(lib.TerminalKinds(), names...))))
	}
	return names
}
