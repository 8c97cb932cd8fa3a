package game

import (
	"strconv"

	"leafwright/geom/door"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// Schema gives the JSON Schema (draft 2020-12) of the job file, made from the
// table that reads it. What a schema cannot say, such as hinges off the leaf or
// stations out of order, [Parse] says.
func Schema() []byte {
	root := node{kind: groupNode}
	root.put("$schema", str("https://json-schema.org/draft/2020-12/schema"))
	root.put("title", str("Leafwright job file"))
	root.put("description", str("One door leaf and the opening it hangs in. Lengths in mm, angles in degrees. "+
		"Only the sizes of leaf and opening and the hinges are needed, or readings instead of them; everything else has a value when it is left out."))
	body := objectOf(table(), &node{kind: groupNode})
	properties := node{kind: groupNode}
	version := node{kind: groupNode}
	version.put("const", num(Version))
	properties.put(versionField, version)
	properties.members = append(properties.members, body.get("properties").members...)
	root.put("type", str("object"))
	byHand := node{kind: groupNode}
	byHand.put("required", *body.get("required"))
	sizes := node{kind: groupNode}
	for i := range properties.members { // needed only of shapes given by hand
		if required, had := properties.members[i].take("required"); had {
			group := node{kind: groupNode}
			group.put("required", required)
			sizes.put(properties.members[i].name, group)
		}
	}
	byHand.put("properties", sizes)
	read := node{kind: groupNode}
	read.put("required", node{kind: listNode, items: []node{str(readingsPath)}})
	root.put("properties", properties)
	root.put("required", node{kind: listNode, items: []node{str(versionField)}})
	root.put("anyOf", node{kind: listNode, items: []node{byHand, read}})
	root.put("additionalProperties", boolean(false))
	return root.print()
}

func str(s string) node { return node{kind: textNode, text: s} }

func boolean(b bool) node { return node{kind: boolNode, text: strconv.FormatBool(b)} }

// typed starts the schema of a value.
func typed(name, description string) node {
	n := node{kind: groupNode}
	n.put("type", str(name))
	if description != "" {
		n.put("description", str(description))
	}
	return n
}

// objectOf adds the schema of a group to n.
func objectOf(fs []*field, n *node) *node {
	properties, required := node{kind: groupNode}, node{kind: listNode}
	for k := range fs {
		f := fs[k]
		properties.put(f.name, f.schema())
		if f.need && f.counts == nil || needs(f) { // one that turns on another field is asked for by [Parse]
			required.items = append(required.items, str(f.name))
		}
	}
	n.put("properties", properties)
	if len(required.items) > 0 {
		n.put("required", required)
	}
	n.put("additionalProperties", boolean(false))
	return n
}

func (f *field) schema() node {
	about := f.label
	if f.help != "" {
		about += ". " + f.help
	}
	switch {
	case f.list != nil:
		n := typed("array", about)
		item := typed("object", "")
		n.put("items", *objectOf(f.parts, &item))
		n.put("minItems", num(f.count.Lo))
		n.put("maxItems", num(f.count.Hi))
		return n
	case f.parts != nil:
		n := typed("object", "")
		return *objectOf(f.parts, &n)
	}
	return f.sample().schema(f, about)
}

// sample gives the field's value in an item in which nothing was given. It must not
// be changed.
func (f *field) sample() value { return f.at(&emptyItems, 0) }

// emptyItems has one item in each list.
var emptyItems = Job{
	Door:      door.Door{Hinges: make([]door.Hinge, 1)},
	Anatomy:   door.Anatomy{Rails: make([]door.Rail, 1), Muntins: make([]door.Muntin, 1)},
	Readings:  make([]Reading, 1),
	Neighbour: make([]door.Rail, 1),
	Voids:     make([]Void, 1),
	Made:      make([]trim.Move, 1),
	Options:   []Option{{Moves: make([]trim.Move, 1)}},
}

// numberIn is the schema of a number in a range, left out where the range is empty.
func numberIn(r door.Range, about string) node {
	n := typed("number", about)
	n.put("minimum", num(r.Lo))
	n.put("maximum", num(r.Hi))
	return n
}

// listOfNumbers is the schema of a list of so many numbers.
func listOfNumbers(r door.Range, least, most int) node {
	return listOfNodes(numberIn(r, ""), least, most)
}

func listOfNodes(item node, least, most int) node {
	n := typed("array", "")
	n.put("items", item)
	n.put("minItems", num(float64(least)))
	n.put("maxItems", num(float64(most)))
	return n
}

func (v length) schema(f *field, about string) node  { return numberIn(f.limits, about) }
func (v degrees) schema(f *field, about string) node { return numberIn(f.limits, about) }

func (v line) schema(_ *field, about string) node  { return textOf(lineMost, about) }
func (v lines) schema(_ *field, about string) node { return textOf(linesMost, about) }

func textOf(most int, about string) node {
	n := typed("string", about)
	n.put("maxLength", num(float64(most)))
	return n
}

func (v word[T]) schema(_ *field, about string) node {
	n := node{kind: groupNode}
	n.put("description", str(about))
	words := node{kind: listNode}
	if len(v.choices()) > mostNamed { // the kinds of reading, each with what it is
		for _, c := range v.choices() {
			one := node{kind: groupNode}
			one.put("const", str(c.Value))
			one.put("description", str(c.Label+signOf(c.Value)))
			words.items = append(words.items, one)
		}
		n.put("oneOf", words)
		return n
	}
	for _, c := range v.choices() {
		words.items = append(words.items, str(c.Value))
	}
	n.put("enum", words)
	return n
}

// signOf says which way a kind of reading is above 0.
func signOf(kind string) string {
	if spec := survey.SpecOf(survey.Kind(kind)); spec != nil && spec.Sign != "" {
		return "; " + spec.Sign
	}
	return ""
}

func (v truth) schema(_ *field, about string) node { return typed("boolean", about) }

func (v stations) schema(f *field, about string) node {
	s := f.shape
	place, value := s.place, s.value
	switch s.turns { // of either hand
	case places:
		place = either(place)
	case values:
		value = either(value)
	}
	pair := typed("array", "")
	pair.put("prefixItems", node{kind: listNode, items: []node{numberIn(place, s.columns[0]), numberIn(value, s.columns[1])}})
	pair.put("minItems", num(2))
	pair.put("maxItems", num(2))
	n := typed("array", about+": stations, each [place, value], in rising order of place.")
	n.put("items", pair)
	n.put("minItems", num(1))
	n.put("maxItems", num(door.Stations))
	return n
}

// either is the numbers of a range and of its mirror image, and those between.
func either(r door.Range) door.Range {
	return door.Range{Lo: min(r.Lo, -r.Hi), Hi: max(r.Hi, -r.Lo)}
}

func (v floor) schema(*field, string) node {
	about := "Height of the finished floor above its height at the foot of the hinge jamb."
	simple := numberIn(door.FloorHeight, "")
	sill := typed("object", "A level floor with a threshold under the closed leaf.")
	properties := node{kind: groupNode}
	properties.put("level", numberIn(door.FloorHeight, ""))
	properties.put("threshold", numberIn(door.FloorHeight, ""))
	sill.put("properties", properties)
	sill.put("minProperties", num(1))
	sill.put("additionalProperties", boolean(false))
	table := typed("object", "Heights at distances in plan from the foot of the hinge jamb and at swing angles in degrees: one row for each angle, one height for each distance.")
	properties = node{kind: groupNode}
	properties.put("radii", listOfNumbers(door.FloorRadius, 1, door.FloorMost))
	properties.put("angles", listOfNumbers(door.FloorAngle, 1, door.FloorMost))
	properties.put("heights", listOfNodes(listOfNumbers(door.FloorHeight, 1, door.FloorMost), 1, door.FloorMost))
	table.put("properties", properties)
	table.put("required", node{kind: listNode, items: []node{str("radii"), str("angles"), str("heights")}})
	table.put("additionalProperties", boolean(false))
	n := node{kind: groupNode}
	n.put("description", str(about))
	n.put("anyOf", node{kind: listNode, items: []node{simple, sill, table}})
	return n
}

func (v listOf[T]) schema(*field, string) node { return node{kind: groupNode} }
