package spec

import (
	"wheelwork/spec/quantity"
	"wheelwork/spec/tomlread"
)

// Events are what a marker can foretell.
var Events = []string{"solar eclipse", "central solar eclipse", "lunar eclipse", "umbral lunar eclipse", "total lunar eclipse"}

var serviceBlocks = []*BlockKind{
	{Kind: "design", Form: tomlread.Single, Doc: "makes a file a design",
		add: func(d *Design, _ *any) any { return &d.Head },
		Attributes: []Attribute{
			attr("title", func(h *Head) setter { return &h.Title }, "what the design is", required),
			attr("epoch", func(h *Head) setter { return &h.Epoch }, "the date it is set to"),
			attr("horizon", func(h *Head) setter { return &h.Horizon }, "for how long it should hold", days, positive, unless("100 yr")),
			attr("uses", func(h *Head) setter { return &h.Uses }, "further files of the design, paths from this file"),
		}},
	{Kind: "given", Form: tomlread.Single, Doc: "named values, in HCL only: given { m = 0.5 } is read as given.m"},
	{Kind: "clock", Form: tomlread.Single, Doc: "fixes model time",
		add: once(func(d *Design) **Clock { return &d.Clock }),
		Attributes: []Attribute{
			attr("on", func(c *Clock) setter { return &c.On }, "the arbor whose turns measure time", required, refers(ToArbor)),
			attr("against", func(c *Clock) setter { return &c.Against }, "the body against which its turns are counted", refers(ToBody), unless(Frame)),
			attr("period", func(c *Clock) setter { return &c.Period }, "how much model time one of its turns takes", required),
			attr("pace", func(c *Clock) setter { return &c.Pace }, "how long one such turn should take by the watch at full speed", days, positive),
		}},
	{Kind: "drive", Form: tomlread.Labelled, Doc: "what turns the model: a motor or a crank",
		add: keep(func(d *Design) *[]*Drive { return &d.Drives }),
		Attributes: []Attribute{
			attr("on", func(d *Drive) setter { return &d.On }, "the arbor it turns", required, refers(ToArbor)),
			attr("speed", func(d *Drive) setter { return &d.Speed }, "its speed against what carries the arbor, counter-clockwise positive", required, rpm),
			attr("torque", func(d *Drive) setter { return &d.Torque }, "its torque when stalled", torque, notNegative),
			attr("by", func(d *Drive) setter { return &d.By }, "what it is", oneOf("motor", "hand"), unless("motor")),
		}},
	{Kind: "hand", Form: tomlread.Labelled, Doc: "what a person reads: a pointer, ball, disc or ring on an arbor",
		add: keep(func(d *Design) *[]*Hand { return &d.Hands }),
		Attributes: []Attribute{
			attr("on", func(h *Hand) setter { return &h.On }, "the arbor it is fixed to", required, refers(ToArbor)),
			attr("against", func(h *Hand) setter { return &h.Against }, "the body against which it is read", refers(ToBody), unless(Frame)),
			attr("shows", func(h *Hand) setter { return &h.Shows }, "the period of the sky it shows"),
			attr("period", func(h *Hand) setter { return &h.Period }, "the period it should have, where it shows none of the sky's"),
			attr("ratio", func(h *Hand) setter { return &h.Ratio }, "turns it should make for one turn of the hand named by of"),
			attr("of", func(h *Hand) setter { return &h.Of }, "the hand that ratio refers to", refers(ToHand)),
			attr("within", func(h *Hand) setter { return &h.Within }, "what it may be off by: of the period, or so much in a span"),
			attr("sense", func(h *Hand) setter { return &h.Sense }, "the way it should turn, seen from above", oneOf("ccw", "cw", "still")),
			attr("slip_torque", func(h *Hand) setter { return &h.SlipTorque }, "the torque at which it slips on its arbor, where it is friction-tight only", torque, positive),
		}},
	{Kind: "marker", Form: tomlread.Labelled, Doc: "an arc on a hand that foretells an event",
		add: keep(func(d *Design) *[]*Marker { return &d.Markers }),
		Attributes: []Attribute{
			attr("hand", func(m *Marker) setter { return &m.OnHand }, "the hand that carries it", required, refers(ToHand)),
			attr("event", func(m *Marker) setter { return &m.Event }, "what it foretells", required, oneOf(Events...)),
			attr("half_angle", func(m *Marker) setter { return &m.HalfAngle }, "half the angle of the arc", degrees, positive),
			attr("length", func(m *Marker) setter { return &m.Length }, "length of the arc, with radius, instead of half_angle", mm, positive),
			attr("radius", func(m *Marker) setter { return &m.Radius }, "radius at which the arc lies", mm, positive),
		}},
	{Kind: "stock", Form: tomlread.Single, Doc: "what there is to build from",
		add: once(func(d *Design) **Stock { return &d.Stock }),
		Attributes: []Attribute{
			attr("teeth", func(s *Stock) setter { return &s.Teeth }, "tooth counts that can be had, as numbers or ranges such as \"12-40\""),
			attr("modules", func(s *Stock) setter { return &s.Modules }, "modules that can be had", mm, positive),
			attr("cutters", func(s *Stock) setter { return &s.Cutters }, "cutters at hand, as \"involute 0.5 17-20\": form, module and the teeth it serves"),
			attr("chains", func(s *Stock) setter { return &s.Chains }, "chain sizes that can be had"),
		}},
	{Kind: "dividing", Form: tomlread.Single, Doc: "the dividing head",
		add: once(func(d *Design) **Dividing { return &d.Dividing }),
		Attributes: []Attribute{
			attr("ratio", func(v *Dividing) setter { return &v.Ratio }, "turns of its handle for one turn of the work", in(quantity.Plain), positive, required),
			attr("circles", func(v *Dividing) setter { return &v.Circles }, "hole circles of its plates"),
		}},
	{Kind: "stage", Form: tomlread.Labelled, Doc: "a step of the assembly",
		add: keep(func(d *Design) *[]*Stage { return &d.Stages }),
		Attributes: []Attribute{
			attr("order", func(s *Stage) setter { return &s.Order }, "when it comes: lower first", required),
			attr("parts", func(s *Stage) setter { return &s.Parts }, "the parts it adds, as kind.name", required, refers(ToPart)),
		}},
	{Kind: "bounds", Form: tomlread.Grouped, Doc: "a block per rule: its severity (error, warning, note, off) and its thresholds"},
}
