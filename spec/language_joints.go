package spec

import "wheelwork/spec/tomlread"

func arborNamed(name, doc string, field func(*Counter) setter) Attribute {
	return attr(name, field, doc, required, refers(ToArbor))
}

var jointBlocks = []*BlockKind{
	{Kind: "mesh", Form: tomlread.Repeated, Doc: "two toothed parts in engagement",
		add: keep(func(d *Design) *[]*Mesh { return &d.Meshes }),
		Attributes: []Attribute{
			attr("wheels", func(m *Mesh) setter { return &m.Wheels }, "the two wheels, the driver first", required, refers(ToWheel)),
			attr("name", func(m *Mesh) setter { return &m.Named }, "how messages call it"),
			attr("train", func(m *Mesh) setter { return &m.Train }, "the train it belongs to"),
			attr("sense", func(m *Mesh) setter { return &m.Sense }, "whether both turn the same way or opposite ways, each seen from above; needed where axes cross", oneOf("same", "opposite")),
			attr("backlash", func(m *Mesh) setter { return &m.Backlash }, "play at the pitch circle that is wanted", mm, notNegative),
		}},
	{Kind: "chain", Form: tomlread.Repeated, Doc: "a chain over sprockets",
		add: keep(func(d *Design) *[]*Chain { return &d.Chains }),
		Attributes: []Attribute{
			attr("sprockets", func(c *Chain) setter { return &c.Sprockets }, "the sprockets in the order in which the chain runs over them, the driver first", required, refers(ToSprocket)),
			attr("size", func(c *Chain) setter { return &c.Size }, "its ISO 606 number, such as \"04C\""),
			attr("pitch", func(c *Chain) setter { return &c.Pitch }, "its pitch, where it has no ISO 606 number", mm, positive),
			attr("links", func(c *Chain) setter { return &c.Links }, "number of links"),
			attr("crossed", func(c *Chain) setter { return &c.Crossed }, "whether it crosses itself between two sprockets, which makes them turn opposite ways", unless("false")),
			attr("name", func(c *Chain) setter { return &c.Named }, "how messages call it"),
			attr("train", func(c *Chain) setter { return &c.Train }, "the train it belongs to"),
		}},
	{Kind: "slot", Form: tomlread.Labelled, Doc: "a pin on one arbor in a slot on another whose axis lies beside it: one to one in the mean, with a swing",
		add: keep(func(d *Design) *[]*Slot { return &d.Slots }),
		Attributes: []Attribute{
			attr("pin_on", func(s *Slot) setter { return &s.PinOn }, "the arbor that carries the pin", required, refers(ToArbor)),
			attr("slot_on", func(s *Slot) setter { return &s.SlotOn }, "the arbor that carries the slot", required, refers(ToArbor)),
			attr("pin_radius", func(s *Slot) setter { return &s.PinRadius }, "distance of the pin from its axis", required, mm, positive),
			attr("offset", func(s *Slot) setter { return &s.Offset }, "distance between the two axes", required, mm, notNegative),
		}},
	{Kind: "counter", Form: tomlread.Labelled, Doc: "moves one arbor by one step for each turn of another",
		add: keep(func(d *Design) *[]*Counter { return &d.Counters }),
		Attributes: []Attribute{
			arborNamed("from", "the arbor whose turns are counted", func(c *Counter) setter { return &c.From }),
			arborNamed("to", "the arbor that is moved", func(c *Counter) setter { return &c.To }),
			attr("steps", func(c *Counter) setter { return &c.Steps }, "slots of the geneva wheel or teeth of the star: steps for one turn of it", required),
			attr("kind", func(c *Counter) setter { return &c.Sort }, "how it steps", oneOf("geneva", "star"), unless("geneva")),
			attr("sense", func(c *Counter) setter { return &c.Sense }, "whether both turn the same way or opposite ways; a pin or finger outside the wheel it moves turns it the opposite way", oneOf("same", "opposite"), unless("same")),
		}},
	{Kind: "coupling", Form: tomlread.Labelled, Doc: "makes two arbors turn as one",
		add: keep(func(d *Design) *[]*Coupling { return &d.Couples }),
		Attributes: []Attribute{
			attr("arbors", func(c *Coupling) setter { return &c.Arbors }, "the two arbors", required, refers(ToArbor)),
			attr("kind", func(c *Coupling) setter { return &c.Sort }, "how it couples", oneOf("clutch", "dog", "universal"), unless("clutch")),
			attr("slips", func(c *Coupling) setter { return &c.Slips }, "whether it slips when its hand is moved to set it", unless("false")),
			attr("slip_torque", func(c *Coupling) setter { return &c.SlipTorque }, "the torque at which it slips, which is the most that it passes on", torque, positive),
		}},
}
