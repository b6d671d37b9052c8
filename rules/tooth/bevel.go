package tooth

import (
	"fmt"
	"math"
)

// Bevel is a pair of straight bevel gears. The shafts meet at ShaftAngle
// degrees, above 0 and below 180; Module is in mm at the large end.
type Bevel struct {
	Pinion, Wheel int
	Module        float64
	ShaftAngle    float64
}

// Cones is the pitch cones of a [Bevel]: angles in degrees, lengths in mm.
type Cones struct {
	PinionAngle, WheelAngle     float64 // half angles at the apex
	Distance                    float64 // from the apex to the large end, along the cone
	MostFace                    float64 // face width it should not exceed
	PinionVirtual, WheelVirtual float64 // tooth counts of the spur gears they look like
}

// Cones returns the pitch cones. Source: SDP/SI D785 section 8 and Shigley
// section 13-9 (from memory):
//
//	tan(d1) = sin(S)/(z2/z1 + cos(S)), d2 = S - d1
//	Re = m z2/(2 sin(d2)), face <= Re/3 or 10 m, zv = z/cos(d)
//
// A wheel at 90 deg is a crown gear: its virtual count is infinite. Beyond 90
// deg the cone would be hollow, which is refused.
func (b Bevel) Cones() (Cones, error) {
	err := first(
		count("pinion teeth", b.Pinion, 1), count("wheel teeth", b.Wheel, 1),
		length("module", b.Module),
		within("shaft angle in degrees", b.ShaftAngle, 0.1, 179.9),
	)
	if err != nil {
		return Cones{}, err
	}
	shafts := b.ShaftAngle * degree
	z1, z2 := float64(b.Pinion), float64(b.Wheel)
	d1 := math.Atan2(z1*math.Sin(shafts), z2+z1*math.Cos(shafts))
	d2 := shafts - d1
	const flat = 90 + 1e-9
	if d1 > flat*degree || d2 > flat*degree {
		return Cones{}, fmt.Errorf("%w: cone angles of %.6g and %.6g deg at a shaft angle of %.6g deg, one is hollow",
			ErrNoMesh, d1/degree, d2/degree, b.ShaftAngle)
	}
	distance := b.Module * z2 / (2 * math.Sin(d2))
	return Cones{
		PinionAngle: d1 / degree, WheelAngle: d2 / degree,
		Distance:      distance,
		MostFace:      math.Min(distance/3, 10*b.Module),
		PinionVirtual: coneTeeth(z1, d1), WheelVirtual: coneTeeth(z2, d2),
	}, nil
}

// coneTeeth is the virtual tooth count on a cone, infinite on a flat one.
func coneTeeth(z, cone float64) float64 {
	if c := math.Cos(cone); c > 1e-9 {
		return z / c
	}
	return math.Inf(1)
}

// CrownGearShaftAngle returns the shaft angle in degrees at which a bevel pinion
// meets a flat crown gear of more teeth: 90 + asin(z1/z2). Computed from the
// pitch cones.
func CrownGearShaftAngle(pinion, crown int) (float64, error) {
	err := first(count("pinion teeth", pinion, 1), count("crown gear teeth", crown, pinion+1))
	if err != nil {
		return 0, err
	}
	return 90 + math.Asin(float64(pinion)/float64(crown))/degree, nil
}
