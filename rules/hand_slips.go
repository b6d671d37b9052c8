package rules

import "wheelwork/spec/train"

type handSlipsKey struct{}

// handSlips is how the slip of joints reaches each hand, in the order of the
// hands; a hand that nothing turns has none.
func handSlips(f *Facts) [][]train.Slip {
	return Shared(f, handSlipsKey{}, func(f *Facts) [][]train.Slip {
		list := make([][]train.Slip, len(f.Design.Hands))
		slips := f.Train.NewSlips()
		for i, h := range f.Design.Hands {
			if _, known := f.Train.Against(h.Arbor, h.Base); known {
				list[i] = slips.Of(h.Arbor, h.Base)
			}
		}
		return list
	})
}
