package rules

import (
	"fmt"
	"math"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "anomaly-swing",
		Group:    Motion,
		Severity: Warning,
		Checks:   "a pin in a slot makes the Moon, or the Sun, run ahead and behind by as much as the sky does",
		Why:      "the pin-and-slot is there to show that the Moon runs fast at perigee; with the wrong offset she is hours early or late at every quarter, which is worse than an even motion, and with an offset as large as the pin's circle the slot jams or stands still",
		Formula:  "swing = asin(offset / pin_radius), to either side, times the ratio from the slotted arbor to the hand; the offset is the distance of the two axes",
		Source:   "geometry of the pin and slot (Carman, Thorndike and Evans 2012); the Moon's equation of centre 6.289 deg, Meeus, Astronomical Algorithms, ch. 47, from memory, twice her eccentricity of 0.0549 is 6.29 deg; the Sun's 1.915 deg, twice 0.016709",
		Thresholds: []Threshold{
			{Name: "degrees", Dimension: quantity.Angle, Default: "0.5 deg", Doc: "what the swing may be off by: an hour of the Moon's motion"},
			{Name: "apart", Dimension: quantity.Length, Default: "0.02 mm", Doc: "what offset and the distance of the axes may differ by"},
		},
		Breaks: func() string { return swingExample("1.5") },
		Keeps:  func() string { return swingExample("1.04") },
		Run:    anomalySwing,
	})
}

func swingExample(offset string) string {
	return fmt.Sprintf(`
design { title = "The true Moon" }
arbor "mean" {}
arbor "moon" {}
slot "anomaly" {
  pin_on     = "mean"
  slot_on    = "moon"
  pin_radius = 9.5
  offset     = %s
}
hand "moon" {
  on    = "moon"
  shows = "tropical month"
}
clock {
  on     = "mean"
  period = "tropical month"
}
`, offset)
}

// A swinger is a body whose uneven motion a pin and slot can show.
type swinger struct {
	from, to float64 // days of the period that a hand of it shows
	degrees  float64 // to either side
	name     string
}

var swingers = [...]swinger{
	{26, 31, 6.288774, "the Moon's"},
	{360, 371, 1.914602, "the Sun's"},
}

func anomalySwing(p *Pass) {
	if len(p.Design.Slots) == 0 {
		return
	}
	var missing lack
	s := swings{p: p}
	for _, slot := range p.Design.Slots {
		if slot.Pin == nil || slot.Slotted == nil || !slot.PinRadius.Set() || !slot.Offset.Set() {
			continue
		}
		if slot.Offset.Exact.Cmp(slot.PinRadius.Exact) >= 0 {
			f := p.Found(&slot.Part, slot.Offset.Place(), "offset %s reaches the pin's circle of radius %s: the pin passes the slot's axis, and the slot no longer follows it round", mm(slot.Offset.Or(0)), mm(slot.PinRadius.Or(0)))
			p.Report(f.See(slot.PinRadius.Place(), "the pin's circle").Weigh(Error))
			continue
		}
		misplaced(p, slot)
		hand, gain, body := s.served(slot)
		if hand == nil {
			missing.of("no hand behind it shows a month or a year", slot.Title())
			continue
		}
		swing(p, slot, hand, gain, body)
	}
	missing.tell(p)
}

// misplaced reports axes that do not stand as far apart as the offset says.
func misplaced(p *Pass, slot *spec.Slot) {
	apart, ok := p.Train.Distance(slot.Pin, slot.Slotted)
	if !ok || math.Abs(apart-slot.Offset.Or(0)) <= p.Limit("apart") {
		return
	}
	f := p.Found(&slot.Part, slot.Offset.Place(), "offset %s, but the axes of %s and %s stand %s apart", mm(slot.Offset.Or(0)), slot.Pin.Title(), slot.Slotted.Title(), mm(apart))
	f.See(placeOf(slot.Pin), "%s", slot.Pin.Title()).See(placeOf(slot.Slotted), "%s", slot.Slotted.Title())
	if edit, ok := Figure(slot.Offset.At, microns(apart), "mm"); ok {
		f.Mend("say offset "+mm(apart), edit)
	}
	p.Report(f)
}

func swing(p *Pass, slot *spec.Slot, hand *spec.Hand, gain exact.Rat, body swinger) {
	pair := tooth.PinSlot{PinRadius: slot.PinRadius.Or(0), Offset: slot.Offset.Or(0)}
	s, err := pair.Swing()
	if err != nil {
		return // as good as equal
	}
	off := s.Amplitude*gain.Float() - body.degrees
	if math.Abs(off) <= p.Limit("degrees") {
		return
	}
	times := ""
	if !gain.Equal(exact.Int(1)) {
		times = fmt.Sprintf(" x %s", gain)
	}
	f := p.Found(&slot.Part, slot.PinRadius.Place(), "%s swings %s by %s deg to either side, asin(%s / %s)%s, wanted %s deg, %s equation of centre: off by %+.3g deg",
		slot.Title(), hand.Title(), figures(s.Amplitude*gain.Float(), 4), fig(pair.Offset), fig(pair.PinRadius), times, figures(body.degrees, 4), body.name, off)
	f.See(slot.Offset.Place(), "the offset")
	f.See(targetOf(hand), "what %s shows", hand.Title())
	if offset, err := tooth.OffsetFor(pair.PinRadius, body.degrees/gain.Float()); err == nil {
		if edit, ok := Figure(slot.Offset.At, hundredths(offset), "mm"); ok {
			f.Mend("make the offset "+mm(hundredths(offset).Float()), edit)
		}
	}
	radius := pair.Offset / math.Sin(body.degrees/gain.Float()*math.Pi/180)
	if edit, ok := Figure(slot.PinRadius.At, hundredths(radius), "mm"); ok {
		f.Mend("set the pin at "+mm(hundredths(radius).Float()), edit)
	}
	p.Report(f)
}

// microns is a length in mm to a thousandth, hundredths to a hundredth.
func microns(x float64) exact.Rat { return exact.Frac(int64(math.Round(x*1000)), 1000) }

func hundredths(x float64) exact.Rat { return exact.Frac(int64(math.Round(x*100)), 100) }
