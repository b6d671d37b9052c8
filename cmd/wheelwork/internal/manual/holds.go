package manual

import (
	"strings"

	"wheelwork/spec"
	"wheelwork/spec/quantity"
)

// Holds says in a few words what an attribute's value is.
func Holds(a *spec.Attribute) string {
	var s string
	switch a.Holds {
	case spec.AText:
		return "text"
	case spec.AName:
		return "name of " + referred(a.Refers, false)
	case spec.ANames:
		if a.Refers == spec.NoReference {
			return "list of texts"
		}
		return "list of names of " + referred(a.Refers, true)
	case spec.AChoice:
		return strings.Join(a.Choices, ", ")
	case spec.ACount:
		return "whole number"
	case spec.AFlag:
		return "true or false"
	case spec.APoint:
		return "[x, y] in mm"
	case spec.ADate:
		return "date"
	case spec.APeriod:
		return "period of the catalogue, or a time"
	case spec.ATolerance:
		return "tolerance"
	case spec.ARanges:
		return "list of whole numbers and ranges"
	case spec.ANumbers:
		s = "list, each " + measure(a.Dimension)
	default:
		s = measure(a.Dimension)
	}
	switch a.Sign {
	case spec.Positive:
		s += ", more than 0"
	case spec.NotNegative:
		s += ", 0 or more"
	}
	return s
}

// measure is "length in mm".
func measure(d quantity.Dimension) string {
	noun := strings.TrimPrefix(strings.TrimPrefix(d.Noun(), "an "), "a ")
	if base := d.Base(); base != "" {
		return noun + " in " + base
	}
	return noun
}

func referred(r spec.Reference, many bool) string {
	words := map[spec.Reference][2]string{
		spec.ToArbor:    {"an arbor or stud", "arbors or studs"},
		spec.ToCarrier:  {"an arm, or frame", "arms, or frame"},
		spec.ToBody:     {"an arm or arbor, or frame", "arms or arbors, or frame"},
		spec.ToWheel:    {"a wheel", "wheels"},
		spec.ToSprocket: {"a sprocket", "sprockets"},
		spec.ToHand:     {"a hand", "hands"},
		spec.ToPart:     {"a part, as kind.name", "parts, as kind.name"},
	}
	if many {
		return words[r][1]
	}
	return words[r][0]
}

// Given says what holds where an attribute is not given.
func Given(a *spec.Attribute) string {
	switch {
	case a.Required:
		return "must be given"
	case a.Default != "":
		return a.Default
	}
	return ""
}

// Written says how a block is written in both notations.
func Written(k *spec.BlockKind) (hcl, toml string) {
	switch k.Form {
	case tomlLabelled:
		return k.Kind + ` "name" { }`, "[" + k.Kind + ".name]"
	case tomlRepeated:
		return k.Kind + " { }", "[[" + k.Kind + "]]"
	case tomlGrouped:
		return k.Kind + " { rule-name { } }", "[" + k.Kind + ".rule-name]"
	}
	if k.Kind == "given" {
		return k.Kind + " { }", ""
	}
	return k.Kind + " { }", "[" + k.Kind + "]"
}
