package posture

import "math"

// squares adds up the squares of what is missed and, where slopes are wanted, the normal
// equations of making them less.
type squares struct {
	sum    float64
	slopes bool
	a      [][]float64
	g      []float64

	moved []int     // what changes the miss that comes next
	by    []float64 // how much
}

func newSquares(n int) *squares {
	s := &squares{a: make([][]float64, n), g: make([]float64, n), by: make([]float64, n)}
	for i := range s.a {
		s.a[i] = make([]float64, n)
	}
	return s
}

// clear begins anew.
func (s *squares) clear(slopes bool) {
	s.sum, s.slopes = 0, slopes
	if !slopes {
		return
	}
	clear(s.g)
	for _, row := range s.a {
		clear(row)
	}
}

// goes says how the miss that comes next changes with what may be moved.
func (s *squares) goes(at int, by float64) {
	if by == 0 || !s.slopes {
		return
	}
	if s.by[at] == 0 {
		s.moved = append(s.moved, at)
	}
	s.by[at] += by
}

// add adds a miss.
func (s *squares) add(miss float64) {
	s.sum += miss * miss
	for _, i := range s.moved {
		s.g[i] += s.by[i] * miss
		for _, j := range s.moved {
			s.a[i][j] += s.by[i] * s.by[j]
		}
	}
	for _, i := range s.moved {
		s.by[i] = 0
	}
	s.moved = s.moved[:0]
}

// Steps are held back by how stiff each way is, up to so much: careful ones by all of it,
// bold ones hardly more on stiff ways than on others.
const (
	careful = 1e9
	bold    = 10
)

// least moves q until the squares of what miss says are least, by so many steps at most.
//
// Method: Levenberg (1944) and Marquardt (1963), from memory: steps of Gauss and Newton,
// held back while they make it worse. Marquardt's hold is careful, Levenberg's bold.
func least(miss func(q []float64, s *squares), q []float64, most int, stiff float64) (at []float64, sum float64) {
	held, s := 1e-3, newSquares(len(q))
	next, step := make([]float64, len(q)), newSolver(len(q))
	for range most {
		s.clear(true)
		miss(q, s)
		now, better := s.sum, false
		sum = now
		for range 12 {
			by := step.solve(s.a, s.g, held, stiff)
			for i := range q {
				next[i] = q[i] - by[i]
			}
			s.clear(false)
			miss(next, s)
			if s.sum < now {
				better = now-s.sum > enough*now
				q, next, held, sum = next, q, held/4, s.sum
				break
			}
			held *= 4
		}
		if !better {
			break
		}
	}
	return q, sum
}

// enough is the share of what is missed that a step must mend for another one to follow.
const enough = 1e-6

// solver solves linear equations of one size again and again.
type solver struct {
	m [][]float64
	x []float64
}

func newSolver(n int) *solver {
	v := &solver{make([][]float64, n), make([]float64, n)}
	for i := range v.m {
		v.m[i] = make([]float64, n)
	}
	return v
}

// solve gives x in (a + held·diagonal)·x = g, the diagonal up to what counts as stiff, by
// the root of the left side (Cholesky 1924).
func (v *solver) solve(a [][]float64, g []float64, held, stiff float64) []float64 {
	for i, row := range v.m {
		copy(row, a[i])
		row[i] += held*min(row[i], stiff) + 1e-9
		for j := range i + 1 {
			sum := row[j]
			for k := range j {
				sum -= row[k] * v.m[j][k]
			}
			if j < i {
				row[j] = sum / v.m[j][j]
			} else {
				row[j] = math.Sqrt(math.Max(sum, 1e-12))
			}
		}
	}
	for i, row := range v.m {
		sum := g[i]
		for k := range i {
			sum -= row[k] * v.x[k]
		}
		v.x[i] = sum / row[i]
	}
	for i := len(v.m) - 1; i >= 0; i-- {
		for k := i + 1; k < len(v.m); k++ {
			v.x[i] -= v.m[k][i] * v.x[k]
		}
		v.x[i] /= v.m[i][i]
	}
	return v.x
}
