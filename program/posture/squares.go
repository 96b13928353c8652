package posture

import "math"

// least moves q until the squares of what miss says are least, by so many steps at most.
//
// Method: Levenberg (1944) and Marquardt (1963), from memory: steps of Gauss and Newton,
// held back while they make it worse; the slopes are taken by small differences.
func least(miss func(q []float64) []float64, q []float64, most int) []float64 {
	held := 1e-3
	now := miss(q)
	for range most {
		a, g := normal(miss, q, now)
		better := false
		for range 12 {
			step := solved(a, g, held)
			next := make([]float64, len(q))
			for i := range q {
				next[i] = q[i] - step[i]
			}
			then := miss(next)
			if sum(then) < sum(now) {
				better = sum(now)-sum(then) > enough*sum(now)
				q, now, held = next, then, held/4
				break
			}
			held *= 4
		}
		if !better {
			break
		}
	}
	return q
}

// enough is the share of what is missed that a step must mend for another one to follow.
const enough = 1e-6

func sum(r []float64) (s float64) {
	for _, x := range r {
		s += x * x
	}
	return s
}

// normal are the normal equations at q.
func normal(miss func(q []float64) []float64, q, now []float64) (a [][]float64, g []float64) {
	const small = 1e-6
	slopes := make([][]float64, len(q))
	for i := range q {
		was := q[i]
		q[i] += small
		slopes[i] = miss(q)
		q[i] = was
		for k := range now {
			slopes[i][k] = (slopes[i][k] - now[k]) / small
		}
	}
	a, g = make([][]float64, len(q)), make([]float64, len(q))
	for i := range q {
		a[i] = make([]float64, len(q))
	}
	for i, row := range slopes {
		for k, s := range row {
			if s == 0 {
				continue
			}
			g[i] += s * now[k]
			for j := i; j < len(q); j++ {
				a[i][j] += s * slopes[j][k]
			}
		}
		for j := range i {
			a[i][j] = a[j][i]
		}
	}
	return a, g
}

// solved is x in (a + held·diagonal)·x = g, by elimination.
func solved(a [][]float64, g []float64, held float64) []float64 {
	n := len(g)
	m := make([][]float64, n)
	for i := range m {
		m[i] = append(append([]float64(nil), a[i]...), g[i])
		m[i][i] += held*a[i][i] + 1e-9
	}
	for i := range m {
		for k := i + 1; k < n; k++ {
			if math.Abs(m[k][i]) > math.Abs(m[i][i]) {
				m[i], m[k] = m[k], m[i]
			}
		}
		for k := i + 1; k < n; k++ {
			f := m[k][i] / m[i][i]
			for j := i; j <= n; j++ {
				m[k][j] -= f * m[i][j]
			}
		}
	}
	x := make([]float64, n)
	for i := n - 1; i >= 0; i-- {
		x[i] = m[i][n]
		for j := i + 1; j < n; j++ {
			x[i] -= m[i][j] * x[j]
		}
		x[i] /= m[i][i]
	}
	return x
}
