package tooth

import (
	"errors"
	"math"
	"math/rand"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"
)

// The functions and types that take plain values; every exported method of the
// types is tried too.
var (
	plainFunctions = []any{
		Involute, InvoluteAngle, BasicRack, WorkshopDepth, FinePitchDepth, ModuleChoice, NearestModule,
		ModuleOfPitch, PitchOfModule, NearestPitch, DisguisedPitch, TeethForCentre, ContactRatioLimit,
		ApproxBacklash, OpeningForBacklash, NormalBacklash, PlayAngle, TrainPlay, IndustrialBacklash,
		InstrumentBacklash, MachineBacklash, FinePitchBacklash, LeastTeeth, LeastPinion, LargestWheel,
		CrownGearShaftAngle, WormEfficiency, PlanetGap, NewHunt, UseOfLeaves, LewisFactor, TangentialForce,
		LewisStress, LewisForce, VelocityFactor, PitchLineSpeed, Efficiency, TorqueThrough, StarStep,
		OffsetFor, Tolerance, CentreTolerance,
	}
	plainTypes = []any{
		Gear{}, Pair{}, Fit{}, Bevel{}, Crown{}, Worm{}, Planetary{}, Hunt{}, Cycloidal{}, DividingHead{},
		Geneva{}, Ratchet{}, PinSlot{}, CutterSet(0),
	}
	soundPairs = somePairs(100)
	// Infinity means "without limit" in these.
	unlimited = []string{"LargestWheel", "Bevel.Cones"}
)

// anyValue fills v with values sound and unsound.
func anyValue(random *rand.Rand, v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		odd := []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0, 1e-300, 1e-12, 1e300, math.MaxFloat64, 89.9, 90, 180, 360}
		if random.Intn(12) == 0 {
			v.SetFloat(odd[random.Intn(len(odd))])
		} else {
			v.SetFloat([]float64{20, 14.5, 25, 1, 0.5, 3, 0.05, 60, 1.25, 0.3}[random.Intn(10)])
		}
	case reflect.Int:
		odd := []int{math.MinInt, -1, 0, 1, 2, 3, math.MaxInt, mostTeeth, mostTeeth + 1}
		if random.Intn(6) == 0 {
			v.SetInt(int64(odd[random.Intn(len(odd))]))
		} else {
			v.SetInt(int64(5 + random.Intn(80)))
		}
	case reflect.Bool:
		v.SetBool(random.Intn(2) == 0)
	case reflect.Uint8:
		v.SetUint(uint64("ABCDEZ"[random.Intn(6)]))
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), random.Intn(4), 4))
		for i := range v.Len() {
			anyValue(random, v.Index(i))
		}
	case reflect.Struct:
		anyStruct(random, v)
	default:
		panic("no values for " + v.Type().String())
	}
}

// anyStruct fills v with anything, a gear, pair or fit mostly with a sound one
// of which one thing is changed: by chance alone they would never be sound.
func anyStruct(random *rand.Rand, v reflect.Value) {
	switch v.Interface().(type) {
	case Gear:
		v.Set(reflect.ValueOf(soundPairs[random.Intn(len(soundPairs))].B))
		if random.Intn(2) == 0 {
			anyValue(random, v.Field(random.Intn(v.NumField())))
		}
	case Pair:
		v.Set(reflect.ValueOf(soundPairs[random.Intn(len(soundPairs))]))
		if random.Intn(2) == 0 {
			anyStruct(random, v.Field(random.Intn(2)))
		}
	case Fit:
		p := soundPairs[random.Intn(len(soundPairs))]
		v.Set(reflect.ValueOf(must(p.At(must(p.NominalCentre()) * (1 + 0.2*random.Float64())))))
	default:
		for i := range v.NumField() {
			anyValue(random, v.Field(i))
		}
	}
}

// unsound returns whether a NaN, or an infinity where none may be, is in v.
func unsound(v reflect.Value, mayBeInfinite bool) bool {
	switch v.Kind() {
	case reflect.Float64:
		return math.IsNaN(v.Float()) || !mayBeInfinite && math.IsInf(v.Float(), 0)
	case reflect.Struct:
		for i := range v.NumField() {
			if unsound(v.Field(i), mayBeInfinite) {
				return true
			}
		}
	}
	return false
}

func TestNoArgumentYieldsNaN(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	try := func(name string, f reflect.Value) {
		sound, refused := 0, 0
		for range 3000 {
			args := make([]reflect.Value, f.Type().NumIn())
			for i := range args {
				args[i] = reflect.New(f.Type().In(i)).Elem()
				anyValue(random, args[i])
			}
			call := f.Call
			if f.Type().IsVariadic() {
				call = f.CallSlice
			}
			results := call(args)
			last := results[len(results)-1]
			if err, isError := last.Interface().(error); isError {
				refused++
				if !errors.Is(err, ErrRange) && !errors.Is(err, ErrNoMesh) {
					t.Errorf("%s%v: error of no kind: %v", name, args, err)
				}
				continue
			}
			sound++
			for _, r := range results {
				if unsound(r, slices.Contains(unlimited, name)) {
					t.Errorf("%s%+v gives %+v", name, args, r)
				}
			}
		}
		if sound == 0 {
			t.Errorf("%s refused all %d arguments: the test tries nothing", name, refused)
		}
	}
	for _, f := range plainFunctions {
		full := runtime.FuncForPC(reflect.ValueOf(f).Pointer()).Name()
		try(full[strings.LastIndexByte(full, '.')+1:], reflect.ValueOf(f))
	}
	for _, v := range plainTypes {
		typ := reflect.TypeOf(v)
		for i := range typ.NumMethod() {
			try(typ.Name()+"."+typ.Method(i).Name, typ.Method(i).Func)
		}
	}
}
