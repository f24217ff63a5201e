package cutting_test

import (
	"fmt"
	"slices"

	"setbook/calc/cutting"
	"setbook/calc/unit"
)

// slack is what a coordinate may be off by: pieces are rounded up to an eighth of a micrometre.
const slack = 0.2

// box is a rectangle in a sheet.
type box struct{ left, bottom, right, top unit.Length }

// verify checks a plan from its placed pieces and its cuts alone, with none of the code that made it. It returns what is
// wrong, or "".
func verify(sheet cutting.Size, kerf unit.Length, pieces []cutting.Piece, plan cutting.Plan) string {
	seen := make([]bool, len(pieces))
	if len(plan.Cuts) != len(plan.Sheets) {
		return "cuts for other sheets than there are"
	}
	for i, placed := range plan.Sheets {
		var boxes []box
		if len(placed) == 0 {
			return fmt.Sprintf("sheet %d is empty", i)
		}
		for _, q := range placed {
			if q.Piece < 0 || q.Piece >= len(pieces) || seen[q.Piece] {
				return fmt.Sprintf("piece %d is not there or stands twice", q.Piece)
			}
			seen[q.Piece] = true
			piece := pieces[q.Piece]
			w, l := piece.W, piece.L
			if q.Turned {
				w, l = l, w
				if !piece.Turn {
					return fmt.Sprintf("piece %d may not be turned", q.Piece)
				}
			}
			b := box{q.X, q.Y, q.X + w, q.Y + l}
			if b.left < -slack || b.bottom < -slack || b.right > sheet.W+slack || b.top > sheet.L+slack {
				return fmt.Sprintf("piece %d sticks out of sheet %d: %v", q.Piece, i, b)
			}
			if fault := factory(q, b, sheet); fault != "" {
				return fault
			}
			boxes = append(boxes, b)
		}
		for a := range boxes {
			for b := range a {
				if !apart(boxes[a], boxes[b], kerf) {
					return fmt.Sprintf("two pieces of sheet %d overlap, or no kerf is between them: %v, %v", i, boxes[a], boxes[b])
				}
			}
		}
		if !staged(boxes, true, 3, kerf) && !staged(boxes, false, 3, kerf) {
			return fmt.Sprintf("sheet %d cannot be cut in three stages", i)
		}
		if fault := saw(sheet, kerf, boxes, plan.Cuts[i]) + named(plan.Cuts[i]); fault != "" {
			return fmt.Sprintf("sheet %d: %s", i, fault)
		}
	}
	if i := slices.Index(seen, false); i >= 0 {
		return fmt.Sprintf("piece %d is nowhere", i)
	}
	return ""
}

func factory(q cutting.Placed, b box, sheet cutting.Size) string {
	for _, side := range []struct {
		edge cutting.Edges
		gap  unit.Length
	}{{cutting.Left, b.left}, {cutting.Bottom, b.bottom}, {cutting.Right, sheet.W - b.right}, {cutting.Top, sheet.L - b.top}} {
		if (q.Factory&side.edge != 0) != (side.gap < 2*slack) {
			return fmt.Sprintf("piece %d is %v off an edge and says %b", q.Piece, side.gap, q.Factory)
		}
	}
	return ""
}

// apart reports whether a saw passes between two pieces.
func apart(a, b box, kerf unit.Length) bool {
	across := max(a.left-b.right, b.left-a.right)
	along := max(a.bottom-b.top, b.bottom-a.top)
	return max(across, along) >= kerf-slack
}

// staged reports whether boxes come apart into single ones by so many stages of cuts, the first of them upright or not.
// To split wherever a kerf runs clear never hinders a later stage.
func staged(boxes []box, upright bool, stages int, kerf unit.Length) bool {
	if len(boxes) <= 1 {
		return true
	}
	if stages == 0 {
		return false
	}
	ends := func(b box) (low, high unit.Length) {
		if upright {
			return b.left, b.right
		}
		return b.bottom, b.top
	}
	sorted := slices.Clone(boxes)
	slices.SortFunc(sorted, func(a, b box) int {
		x, _ := ends(a)
		y, _ := ends(b)
		return int(x - y)
	})
	start := 0
	_, reach := ends(sorted[0])
	for i, b := range sorted {
		low, high := ends(b)
		if i > start && low >= reach+kerf-slack {
			if !staged(sorted[start:i], !upright, stages-1, kerf) {
				return false
			}
			start = i
		}
		reach = max(reach, high)
	}
	return staged(sorted[start:], !upright, stages-1, kerf)
}

// saw makes the cuts in order, each right across one part that then lies there, and looks whether the pieces come off.
func saw(sheet cutting.Size, kerf unit.Length, boxes []box, cuts []cutting.Cut) string {
	parts := []box{{0, 0, sheet.W, sheet.L}}
	for n, c := range cuts {
		if c.Stage < 1 || c.Stage > 4 {
			return fmt.Sprintf("cut %d is of stage %d", n, c.Stage)
		}
		at := slices.IndexFunc(parts, func(b box) bool {
			if c.Upright {
				return near(b.bottom, c.From) && near(b.top, c.To) && b.left-slack < c.At && c.At < b.right+slack
			}
			return near(b.left, c.From) && near(b.right, c.To) && b.bottom-slack < c.At && c.At < b.top+slack
		})
		if at < 0 {
			return fmt.Sprintf("cut %d of stage %d runs across no part: %+v in %v", n, c.Stage, c, parts)
		}
		low, high := c.At, c.At+kerf
		if c.Beyond {
			low, high = c.At-kerf, c.At
		}
		b := parts[at]
		first, second := b, b
		if c.Upright {
			first.right, second.left = low, high
		} else {
			first.top, second.bottom = low, high
		}
		off := first
		if c.Beyond {
			off = second
		}
		wide := off.top - off.bottom
		if c.Upright {
			wide = off.right - off.left
		}
		if !near(wide, c.Wide) {
			return fmt.Sprintf("cut %d takes off %v and says %v", n, wide, c.Wide)
		}
		parts = slices.Delete(parts, at, at+1)
		for _, part := range []box{first, second} {
			if part.right > part.left && part.top > part.bottom {
				parts = append(parts, part)
			}
		}
	}
	for _, b := range boxes {
		if !slices.ContainsFunc(parts, func(p box) bool {
			return near(p.left, b.left) && near(p.right, b.right) && near(p.bottom, b.bottom) && near(p.top, b.top)
		}) {
			return fmt.Sprintf("the cuts do not give the piece at %v: %v", b, parts)
		}
	}
	return ""
}

// named checks that the parts on the saw are counted in the order in which they lie, and to the depth of their stage.
func named(cuts []cutting.Cut) string {
	for _, a := range cuts {
		for depth, n := range a.Part {
			if (n > 0) != (depth < a.Stage-1) {
				return fmt.Sprintf("a cut of stage %d in part %v", a.Stage, a.Part)
			}
		}
		for _, b := range cuts {
			last := a.Stage - 2
			if last < 0 || a.Stage != b.Stage || !slices.Equal(a.Part[:last], b.Part[:last]) {
				continue
			}
			if (a.Part[last] < b.Part[last]) != (a.From < b.From) {
				return fmt.Sprintf("part %v lies before part %v", b.Part, a.Part)
			}
		}
	}
	return ""
}

func near(a, b unit.Length) bool { return a-b < 2*slack && b-a < 2*slack }
