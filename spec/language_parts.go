package spec

import "wheelwork/spec/tomlread"

func arborAttributes() []Attribute {
	return []Attribute{
		attr("carried_by", func(a *Arbor) setter { return &a.CarriedBy }, "the arm that carries it, or the frame", refers(ToCarrier), unless(Frame)),
		attr("at", func(a *Arbor) setter { return &a.Position }, "where its axis stands in the plan of what carries it: [x, y] from the frame's origin or the arm's middle, x along the arm", mm),
		attr("radius", func(a *Arbor) setter { return &a.Radius }, "distance of its axis from the origin of the plan, with bearing, instead of at", mm, notNegative),
		attr("bearing", func(a *Arbor) setter { return &a.Bear }, "direction of its axis from the origin, counter-clockwise from x", degrees),
		attr("diameter", func(a *Arbor) setter { return &a.Diameter }, "outer diameter", mm, positive),
		attr("bore", func(a *Arbor) setter { return &a.Bore }, "inner diameter of a tube", mm, positive),
		attr("from", func(a *Arbor) setter { return &a.From }, "height of its lower end", mm),
		attr("to", func(a *Arbor) setter { return &a.To }, "height of its upper end", mm),
		attr("tilt", func(a *Arbor) setter { return &a.Tilt }, "how far its axis leans from upright", degrees, unless("0")),
		attr("toward", func(a *Arbor) setter { return &a.Toward }, "direction towards which it leans, counter-clockwise from x", degrees, unless("0")),
	}
}

var arbors = keep(func(d *Design) *[]*Arbor { return &d.Arbors })

var partBlocks = []*BlockKind{
	{Kind: "arbor", Form: tomlread.Labelled, Doc: "a turning shaft or tube, on the frame or on an arm",
		add:        arbors,
		Attributes: arborAttributes()},
	{Kind: "stud", Form: tomlread.Labelled, Doc: "an arbor that does not turn on what carries it",
		add: func(d *Design, room *any) any {
			a := arbors(d, room).(*Arbor)
			a.Stud = true
			return a
		},
		Attributes: arborAttributes()},
	{Kind: "arm", Form: tomlread.Labelled, Doc: "a body that turns and carries arbors; fixed to the arbor in its middle",
		add: keep(func(d *Design) *[]*Arm { return &d.Arms }),
		Attributes: []Attribute{
			attr("on", func(a *Arm) setter { return &a.On }, "the arbor it is fixed to and turns about", required, refers(ToArbor)),
			attr("reach", func(a *Arm) setter { return &a.Reach }, "length from its middle to its tip", mm, positive),
			attr("z", func(a *Arm) setter { return &a.Z }, "height of its lower side", mm),
			attr("face", func(a *Arm) setter { return &a.Face }, "its height from lower to upper side", mm, positive),
		}},
	{Kind: "wheel", Form: tomlread.Labelled, Doc: "a toothed part fixed to an arbor: wheel, pinion, ring, bevel, crown wheel or worm",
		add: keep(func(d *Design) *[]*Wheel { return &d.Wheels }),
		Attributes: []Attribute{
			attr("on", func(w *Wheel) setter { return &w.On }, "the arbor it is fixed to", required, refers(ToArbor)),
			attr("teeth", func(w *Wheel) setter { return &w.Teeth }, "number of teeth; of a worm, its starts", required),
			attr("module", func(w *Wheel) setter { return &w.Module }, "pitch diameter over teeth; normal module of a helical wheel", mm, positive),
			attr("pitch", func(w *Wheel) setter { return &w.Pitch }, "diametral pitch: teeth per inch of pitch diameter, instead of module", positive),
			attr("kind", func(w *Wheel) setter { return &w.Shape }, "its shape", oneOf("spur", "ring", "bevel", "crown", "worm"), unless("spur")),
			attr("form", func(w *Wheel) setter { return &w.Form }, "the curve of its teeth", oneOf("involute", "cycloidal"), unless("involute")),
			attr("pressure_angle", func(w *Wheel) setter { return &w.PressureAngle }, "pressure angle of the basic rack", degrees, positive, unless("20")),
			attr("shift", func(w *Wheel) setter { return &w.Shift }, "profile shift in modules", unless("0")),
			attr("addendum", func(w *Wheel) setter { return &w.Addendum }, "height above the pitch circle in modules", positive, unless("1")),
			attr("dedendum", func(w *Wheel) setter { return &w.Dedendum }, "depth below the pitch circle in modules", positive, unless("1.25")),
			attr("helix", func(w *Wheel) setter { return &w.Helix }, "helix angle at the pitch circle", degrees, notNegative, unless("0")),
			attr("hand", func(w *Wheel) setter { return &w.HandOf }, "hand of a helix or worm", oneOf("right", "left"), unless("right")),
			attr("z", func(w *Wheel) setter { return &w.Z }, "height of its lower side", mm),
			attr("face", func(w *Wheel) setter { return &w.Face }, "face width: its height from lower to upper side", mm, positive),
			attr("bore", func(w *Wheel) setter { return &w.Bore }, "diameter of its hole", mm, positive),
			attr("material", func(w *Wheel) setter { return &w.Material }, "what it is cut from"),
		}},
	{Kind: "sprocket", Form: tomlread.Labelled, Doc: "a chain wheel fixed to an arbor",
		add: keep(func(d *Design) *[]*Sprocket { return &d.Sprockets }),
		Attributes: []Attribute{
			attr("on", func(s *Sprocket) setter { return &s.On }, "the arbor it is fixed to", required, refers(ToArbor)),
			attr("teeth", func(s *Sprocket) setter { return &s.Teeth }, "number of teeth", required),
			attr("z", func(s *Sprocket) setter { return &s.Z }, "height of its lower side", mm),
		}},
	{Kind: "track", Form: tomlread.Labelled, Doc: "an inclined ring that a follower climbs",
		add: keep(func(d *Design) *[]*Track { return &d.Tracks }),
		Attributes: []Attribute{
			attr("on", func(t *Track) setter { return &t.On }, "the body that carries it: an arm, an arbor or the frame", required, refers(ToBody)),
			attr("tilt", func(t *Track) setter { return &t.Tilt }, "how far its plane leans from level", degrees),
			attr("radius", func(t *Track) setter { return &t.Radius }, "radius of the ring", mm, positive),
		}},
}
