package batch

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// drawing shows the bucket twice in section: with its liquid, to be poured first, and with
// the wet mix. The bucket is drawn straight-sided and a fifth taller than it is wide; a
// real pail tapers, so its lines stand a little higher.
func drawing(liquid, mix, bucket unit.Volume) calc.Drawing {
	wide := unit.Length(math.Cbrt(float64(bucket) * 1e6 / (1.2 * math.Pi / 4)))
	high := 1.2 * wide
	d := calc.Drawing{
		Title: "The bucket: liquid first, then the wet mix",
		Says: words.Say("Two sections of the bucket, to scale. Left: {liquid} of liquid. Right: {mix} of wet mix in a bucket that holds {bucket} to the rim.",
			words.Is("liquid", liquid, unit.QuartL), words.Is("mix", mix, unit.GallonL), words.Is("bucket", bucket, unit.GallonL)),
	}
	pail(&d, calc.Water, 0, wide, high, float64(liquid/bucket))
	d.Note(calc.Point{X: wide / 2, Y: -wide / 8}, calc.Middle, words.Say("liquid {liquid}", words.Is("liquid", liquid, unit.QuartL)))
	x := 1.35 * wide
	pail(&d, calc.Mortar, x, wide, high, float64(mix/bucket))
	d.Note(calc.Point{X: x + wide/2, Y: -wide / 8}, calc.Middle, words.Say("wet mix {mix}", words.Is("mix", mix, unit.GallonL)))
	return d
}

// pail draws one bucket filled to a share of its height. What does not fit stands heaped above the rim, up to a fifth of the height.
func pail(d *calc.Drawing, of calc.Stuff, x, wide, high unit.Length, share float64) {
	level := high * unit.Length(min(share, 1))
	d.Box(of, x, 0, wide, level)
	if share > 1 {
		heap := high * unit.Length(min(share-1, 0.2))
		d.Area(of, calc.Point{X: x, Y: high}, calc.Point{X: x + wide, Y: high}, calc.Point{X: x + wide/2, Y: high + heap})
	}
	d.Line(calc.Strong, calc.Point{X: x, Y: high}, calc.Point{X: x, Y: 0}, calc.Point{X: x + wide, Y: 0}, calc.Point{X: x + wide, Y: high})
	d.Line(calc.Strong, calc.Point{X: x - wide/20, Y: level}, calc.Point{X: x + wide + wide/20, Y: level})
	d.Line(calc.Hidden, calc.Point{X: x, Y: high}, calc.Point{X: x + wide, Y: high})
}
