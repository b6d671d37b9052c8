package manual

import (
	"bytes"
	"encoding/json"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"wheelwork/rules"
	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/quantity"
	"wheelwork/spec/tomlread"
)

// SchemaPath is where the JSON Schema of the TOML notation lies within docs.
const SchemaPath = "wheelwork.schema.json"

// object is an object of JSON whose members keep their order.
type object []member

type member struct {
	key   string
	value any
}

// MarshalJSON writes the members in their order.
func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		key, err := plainJSON(m.key)
		if err != nil {
			return nil, err
		}
		value, err := plainJSON(m.value)
		if err != nil {
			return nil, err
		}
		b.Write(key)
		b.WriteByte(':')
		b.Write(value)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// plainJSON is JSON in which <, > and & stand as they are.
func plainJSON(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return bytes.TrimSpace(b.Bytes()), err
}

// schemaPage is the JSON Schema of the TOML notation, for editors that complete
// and check TOML by one: draft 7, which they all know. It is no closer than a
// schema can be; what it lets through the program may still refuse.
func schemaPage() string {
	var kinds object
	for _, k := range spec.Language() {
		if k.Kind != "given" {
			kinds = append(kinds, member{k.Kind, kindSchema(k)})
		}
	}
	body, err := plainJSON(object{
		{"$schema", "http://json-schema.org/draft-07/schema#"},
		{"$comment", "Written by go generate ./cmd/wheelwork/internal/manual; change the program instead."},
		{"title", "Design of a geared model, for wheelwork"},
		{"type", "object"},
		{"properties", kinds},
		{"additionalProperties", false},
	})
	if err != nil {
		panic(fmt.Sprintf("schema: %v", err)) // it holds nothing that JSON cannot
	}
	var b bytes.Buffer
	if err := json.Indent(&b, body, "", "  "); err != nil {
		panic(fmt.Sprintf("schema: %v", err))
	}
	return b.String() + "\n"
}

// kindSchema is how blocks of a kind are written in TOML.
func kindSchema(k *spec.BlockKind) object {
	doc := capital(sentence(k.Doc))
	switch k.Form {
	case tomlread.Labelled:
		return object{
			{"description", doc}, {"type", "object"},
			{"propertyNames", object{{"minLength", 1}, {"maxLength", spec.MostName}}},
			{"additionalProperties", partSchema(k)},
		}
	case tomlread.Repeated:
		return object{{"description", doc}, {"type", "array"}, {"items", partSchema(k)}}
	case tomlread.Grouped:
		return boundsSchema(doc)
	}
	return append(object{{"description", doc}}, partSchema(k)...)
}

// partSchema is one block of a kind.
func partSchema(k *spec.BlockKind) object {
	var properties object
	required := []string{}
	for i := range k.Attributes {
		a := &k.Attributes[i]
		properties = append(properties, member{a.Name, attributeSchema(a)})
		if a.Required {
			required = append(required, a.Name)
		}
	}
	o := object{{"type", "object"}, {"properties", properties}}
	if len(required) > 0 {
		o = append(o, member{"required", required})
	}
	return append(o, member{"additionalProperties", false})
}

// boundsSchema is the bounds of every rule.
func boundsSchema(doc string) object {
	var each object
	for _, r := range rules.All() {
		properties := object{{"severity", object{
			{"description", fmt.Sprintf("What a finding weighs; %s unless given.", r.Severity)},
			{"enum", rules.Severities}, {"default", r.Severity.String()},
		}}}
		for _, t := range r.Thresholds {
			properties = append(properties, member{t.Name, described(fmt.Sprintf("%s; %s unless given.", capital(t.Doc), t.Default), figure(t.Dimension, spec.AnySign))})
		}
		each = append(each, member{r.Name, object{
			{"description", "Checks that " + sentence(r.Checks)},
			{"type", "object"}, {"properties", properties}, {"additionalProperties", false},
		}})
	}
	return object{{"description", doc}, {"type", "object"}, {"properties", each}, {"additionalProperties", false}}
}

func described(doc string, o object) object { return append(object{{"description", doc}}, o...) }

func attributeSchema(a *spec.Attribute) object {
	doc := capital(sentence(a.Doc)) + " " + capital(sentence(Holds(a)))
	o := described(doc, valueSchema(a))
	switch {
	case a.Default == "":
		return o
	case a.Holds == spec.AFlag:
		return append(o, member{"default", a.Default == "true"})
	}
	if n, err := strconv.ParseFloat(a.Default, 64); err == nil {
		return append(o, member{"default", n})
	}
	return append(o, member{"default", a.Default})
}

// valueSchema is what a value may be.
func valueSchema(a *spec.Attribute) object {
	one := func(item object) object { return object{{"type", "array"}, {"items", item}} }
	switch a.Holds {
	case spec.AName:
		return name()
	case spec.AChoice:
		return object{{"enum", a.Choices}}
	case spec.ANumber:
		return figure(a.Dimension, a.Sign)
	case spec.ACount:
		return either(object{{"type", "integer"}, {"minimum", 1}, {"maximum", spec.MostTeeth}}, object{{"type", "string"}, {"pattern", `^\s*[0-9]`}})
	case spec.AFlag:
		return object{{"type", "boolean"}}
	case spec.APoint:
		return append(one(figure(a.Dimension, a.Sign)), member{"minItems", 2}, member{"maxItems", 2})
	case spec.APeriod:
		return either(object{{"enum", periodNames()}}, figure(quantity.Time, spec.Positive))
	case spec.ATolerance:
		return object{{"type", "string"}, {"pattern", `^\s*\+?[0-9.].*(ppm|%|\sin\s+[0-9].*)\s*$`}}
	case spec.ANames:
		if a.Refers == spec.ToPart {
			return one(object{{"type", "string"}, {"pattern", `^(` + strings.Join(spec.StageKinds, "|") + `)\.`}})
		}
		return one(name())
	case spec.ANumbers:
		return one(figure(a.Dimension, a.Sign))
	case spec.ARanges:
		return one(either(object{{"type", "integer"}, {"minimum", 1}}, object{{"type", "string"}, {"pattern", `^\s*[0-9]+\s*(-\s*[0-9]+\s*)?$`}}))
	}
	return object{{"type", "string"}} // text, and dates
}

func name() object { return object{{"type", "string"}, {"minLength", 1}} }

func either(first, second object) object { return object{{"anyOf", []object{first, second}}} }

// figure is a number, or a string with a unit of the dimension.
func figure(d quantity.Dimension, s spec.Sign) object {
	number := object{{"type", "number"}}
	switch s {
	case spec.Positive:
		number = append(number, member{"exclusiveMinimum", 0})
	case spec.NotNegative:
		number = append(number, member{"minimum", 0})
	}
	ends := "[0-9.]"
	for _, u := range quantity.Units(d) {
		ends += "|" + regexp.QuoteMeta(u.Name)
	}
	return either(number, object{{"type", "string"}, {"pattern", `^\s*[-+]?[0-9.](.*(` + ends + `))?\s*$`}})
}

func periodNames() []string {
	var names []string
	for _, p := range sky.Periods() {
		names = append(append(names, p.Name), p.Also...)
	}
	return names
}
