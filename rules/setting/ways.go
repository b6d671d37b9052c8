package setting

import "math"

// drive runs the model forward until the hand is right: by as many whole turns
// of it as what follows it by ratio asks, or as bring a slower hand of the same
// train near its place.
func (b *bench) drive(h *Hand) Step {
	want := h.Degrees
	if n := b.rounds[h]; n > 1 {
		want = math.Mod(h.total, 360*float64(n))
		if want < 0 {
			want += 360 * float64(n)
		}
	} else {
		want += 360 * b.wholeTurns(h)
	}
	turns := want / 360 * h.sign / h.drive
	for _, o := range b.hands {
		b.at[o] += 360 * turns * o.drive * o.sign
	}
	return Step{By: ByDrive, Turn: want, Drive: turns}
}

// wholeTurns is how often the driven hand goes round until the next hand that
// nothing else sets freely stands where it should, to half of what a turn moves it.
func (b *bench) wholeTurns(h *Hand) float64 {
	const (
		fine = 6.0 // degrees a turn: a hand that moves more is not set by it
		most = 1000
	)
	for _, o := range b.hands {
		if o == h || o.SlipTorque.Set() || o.Ratio.Set() || countedBy(o) > 0 || o.yields(b.gives) {
			continue
		}
		step := 360 * o.drive / h.drive * o.sign * h.sign
		if step <= 0 || step > fine {
			continue
		}
		if n := math.Round(turn(o.Degrees-step*h.Degrees/360) / step); n <= most {
			return n
		}
	}
	return 0
}

// step sets a hand without moving those that are set.
func (b *bench) step(h *Hand) Step {
	lack := nearest(h.Degrees-b.stands(h), 360)
	free := lack // or with whole turns, for those that follow it by ratio
	if n := b.rounds[h]; n > 1 {
		free = nearest(math.Mod(h.total, 360*float64(n))-b.at[h], 360*float64(n))
	}
	if math.Abs(free) < nothing {
		return Step{By: ByFollows, Error: -lack}
	}
	if h.SlipTorque.Set() {
		b.at[h] += lack
		return Step{By: BySlip, Turn: lack}
	}
	for _, slip := range h.slips {
		if b.gives[slip.Joint.Part] && b.alone(h, slip.Index) {
			b.shift(h, slip.Index, free)
			return Step{By: ByCoupling, Joint: slip.Joint, index: slip.Index, Turn: free}
		}
	}
	if math.Abs(lack) < nothing {
		return Step{By: ByFollows, Error: -lack}
	}
	if pitch := countedBy(h); pitch > 0 {
		for _, slip := range h.slips {
			if slip.Joint.Part.Kind == "counter" && b.alone(h, slip.Index) {
				n := math.Round(lack / pitch)
				b.shift(h, slip.Index, n*pitch)
				return Step{By: ByCounter, Joint: slip.Joint, index: slip.Index, Turn: n * pitch, Pitch: pitch, Places: int(n), Error: nearest(n*pitch-lack, 360)}
			}
		}
	}
	return b.teeth(h, lack)
}
