package train_test

import "math/big"

// dense is Gaussian elimination over math/big, written without regard to the
// sparse solver: rows are equations, the last column the right-hand side.
type dense struct {
	unknowns int
	rows     [][]*big.Rat
}

func (d *dense) add(terms map[int]*big.Rat, right *big.Rat) {
	row := make([]*big.Rat, d.unknowns+1)
	for i := range row {
		row[i] = new(big.Rat)
	}
	for i, k := range terms {
		row[i].Add(row[i], k)
	}
	row[d.unknowns].Set(right)
	d.rows = append(d.rows, row)
}

// solve returns each unknown's value, nil where it is not settled; ok is false
// if the equations contradict each other.
func (d *dense) solve() (values []*big.Rat, ok bool) {
	pivots := make([]int, 0, d.unknowns)
	row := 0
	for col := 0; col < d.unknowns && row < len(d.rows); col++ {
		at := -1
		for r := row; r < len(d.rows); r++ {
			if d.rows[r][col].Sign() != 0 {
				at = r
				break
			}
		}
		if at < 0 {
			continue
		}
		d.rows[row], d.rows[at] = d.rows[at], d.rows[row]
		inverse := new(big.Rat).Inv(d.rows[row][col])
		for c := range d.rows[row] {
			d.rows[row][c].Mul(d.rows[row][c], inverse)
		}
		for r := range d.rows {
			if r == row || d.rows[r][col].Sign() == 0 {
				continue
			}
			k := new(big.Rat).Set(d.rows[r][col])
			for c := range d.rows[r] {
				d.rows[r][c].Sub(d.rows[r][c], new(big.Rat).Mul(k, d.rows[row][c]))
			}
		}
		pivots = append(pivots, col)
		row++
	}
	for r := row; r < len(d.rows); r++ {
		if d.rows[r][d.unknowns].Sign() != 0 {
			return nil, false
		}
	}
	values = make([]*big.Rat, d.unknowns)
	for r, col := range pivots {
		settled := true
		for c := col + 1; c < d.unknowns; c++ {
			if d.rows[r][c].Sign() != 0 {
				settled = false
			}
		}
		if settled {
			values[col] = d.rows[r][d.unknowns]
		}
	}
	return values, true
}
