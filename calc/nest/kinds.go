package nest

import (
	"slices"
	"strconv"

	"setbook/calc/cutting"
)

// kind is sheets that are cut alike.
type kind struct {
	mark   string
	count  int
	placed []cutting.Placed
	cuts   []cutting.Cut
}

// group gathers the sheets that are cut alike, in the order in which they first come.
func (j *job) group() {
	seen := map[string]int{}
	for i, placed := range j.plan.Sheets {
		var key []byte
		for _, q := range placed {
			for _, n := range [3]int64{int64(j.of[q.Piece]), int64(q.X), int64(q.Y)} {
				key = append(strconv.AppendInt(key, n, 36), ' ')
			}
			key = strconv.AppendBool(key, q.Turned)
		}
		at, ok := seen[string(key)]
		if !ok {
			at = len(j.kinds)
			seen[string(key)] = at
			j.kinds = append(j.kinds, kind{placed: placed, cuts: j.plan.Cuts[i]})
		}
		j.kinds[at].count++
	}
	slices.SortStableFunc(j.kinds, func(a, b kind) int { return b.count - a.count })
	for i := range j.kinds {
		j.kinds[i].mark = mark(i)
	}
}

// mark is A, B, … Z, AA, AB, …
func mark(i int) string {
	last := string(rune('A' + i%26))
	if i < 26 {
		return last
	}
	return mark(i/26-1) + last
}

// list names the pieces of a sheet by their rows and how many of each: "1 (2), 3".
func (j *job) list(k kind) string {
	counts := make(map[int]int)
	var rows []int
	for _, q := range k.placed {
		row := j.of[q.Piece]
		if counts[row]++; counts[row] == 1 {
			rows = append(rows, row)
		}
	}
	slices.Sort(rows)
	var text []byte
	for i, row := range rows {
		if i > 0 {
			text = append(text, ", "...)
		}
		text = strconv.AppendInt(text, int64(row+1), 10)
		if n := counts[row]; n > 1 {
			text = append(strconv.AppendInt(append(text, " ("...), int64(n), 10), ')')
		}
	}
	return string(text)
}
