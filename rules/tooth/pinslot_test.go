package tooth

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// anomaly has the radii of Freeth et al., Nature 444 (2006) (from memory).
var anomaly = PinSlot{PinRadius: 9.6, Offset: 1.1}

func TestPinSlot(t *testing.T) {
	// Computed; Freeth et al. give about 6.5 deg.
	computed(t, 0.1145833, anomaly.Offset/anomaly.PinRadius)
	s := must(anomaly.Swing())
	computed(t, 6.579593, s.Amplitude)
	computed(t, 83.420407, s.At)
	computed(t, 0.897196, s.LeastSpeed)
	computed(t, 1.129412, s.Most)
	same(t, 8.5, s.SlotFrom)
	same(t, 10.7, s.SlotTo)
	for pin, slotted := range map[float64]float64{45: 50.03852, 90: 96.53663, 150: 152.98354, 180: 180} {
		computed(t, slotted, must(anomaly.SlottedAngle(pin)), pin)
	}
	same(t, 90, must(anomaly.SlottedAngle(s.At)))
	same(t, s.Most, must(anomaly.SpeedRatio(0)))
	same(t, s.LeastSpeed, must(anomaly.SpeedRatio(180)))
	for k, amplitude := range map[int]string{1: "6.5651", 2: "0.3761", 3: "0.0287"} {
		printed(t, amplitude, must(anomaly.Harmonic(k)), k)
	}
}

func TestOffsetFor(t *testing.T) {
	// Computed: offset over pin radius; 6.289 is the Moon's greatest equation of
	// the centre.
	for amplitude, offset := range map[float64]float64{
		1.915: 0.033417, 4.5: 0.078459, 5.0: 0.087156, 6.289: 0.109543, 6.5: 0.113203,
	} {
		computed(t, offset, must(OffsetFor(1, amplitude)), amplitude)
		swing := must(PinSlot{PinRadius: 20, Offset: must(OffsetFor(20, amplitude))}.Swing())
		same(t, amplitude, swing.Amplitude)
	}
}

func TestSecondHarmonicAgainstKepler(t *testing.T) {
	// Computed: with e/r = 2 ecc, the second harmonic is (e/r)^2/2 against
	// Kepler's 5/16 (e/r)^2, about 0.13 deg apart at 6.29 deg.
	ratio := must(OffsetFor(1, 6.29))
	kepler := 5.0 / 16 * ratio * ratio / degree
	assert.InDelta(t, 0.13, must(PinSlot{PinRadius: 1, Offset: ratio}.Harmonic(2))-kepler, 0.005)
}

func TestPinSlotHoldsTogether(t *testing.T) {
	const h = 1e-4
	for pin := -720.0; pin <= 720; pin += 7.5 {
		slotted := must(anomaly.SlottedAngle(pin))
		series := pin
		for k := 1; k <= 20; k++ {
			series += must(anomaly.Harmonic(k)) * math.Sin(float64(k)*pin*degree)
		}
		assert.InDelta(t, series, slotted, 1e-9, "the series of harmonics")
		slope := (must(anomaly.SlottedAngle(pin+h)) - must(anomaly.SlottedAngle(pin-h))) / (2 * h)
		assert.InDelta(t, slope, must(anomaly.SpeedRatio(pin)), 1e-6)
		same(t, slotted+360, must(anomaly.SlottedAngle(pin+360)))
	}
	_, err := PinSlot{PinRadius: 5, Offset: 5}.Swing()
	require.ErrorIs(t, err, ErrRange)
}
