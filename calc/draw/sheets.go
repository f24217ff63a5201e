package draw

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"setbook/calc"
	"setbook/calc/markup"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// The part of a sheet of paper that may be drawn on, in CSS px: what A4 (210 by 297 mm) and Letter (8 1/2 by 11 in) both
// have within margins of 15 mm, less a strip at the foot for the title, the scale and the key.
const (
	millimetre = 96 / 25.4
	paperWide  = 178 * millimetre
	paperHigh  = 218 * millimetre
	foot       = 27 * millimetre
	lap        = 10 * millimetre // a sheet shows so much again of what the one beside it shows
	mostSheets = 9
)

// Scales of plans, each 1 to so many. ISO 5455 has 1, 2 and 5 and their tens; scale rules have 1:25 too. The other list is
// the architect's scale of the United States, in fractions of an inch to the foot. Up to legible a plan goes on one sheet;
// a larger place is parted among sheets at that scale, and drawn smaller only where they would be too many.
var (
	metricScales = []float64{1, 2, 5, 10, 20, 25, 50, 100, 200, 500, 1000}
	usScales     = []float64{1, 2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 192, 384, 768}
)

const legible = 50

// paper is a plan at the scale of paper: 1 to so many, on sheets across and down.
type paper struct {
	scene
	d            *calc.Drawing
	to           float64
	larger       float64 // than on the screen
	across, down int
	wide, high   float64 // of the plan as it lies on the sheets
	marked       bool    // pieces bear letters
}

// sheets writes a plan for print, on one sheet or on several that lap. The shapes are those of the screen, drawn again by
// reference; letters and dimension lines are set anew, at their size on paper.
func sheets(d *calc.Drawing, screen *scene) string {
	p := scaled(d, screen)
	var w markup.Writer
	for i := range p.across * p.down {
		p.sheet(&w, i)
	}
	return w.String()
}

// scaled finds the largest scale at which one sheet holds the plan, where that can still be read with ease, or else the
// largest below at which its sheets are not too many.
func scaled(d *calc.Drawing, screen *scene) *paper {
	scales := usScales
	if screen.r.Style.System == unit.Metric {
		scales = metricScales
	}
	var p, parted *paper
	for _, to := range scales {
		p = laid(d, screen, to)
		of := p.across * p.down
		switch {
		case to <= legible && of == 1:
			return p
		case to <= legible:
			parted = p
		case parted.across*parted.down <= mostSheets:
			return parted
		case of <= mostSheets:
			return p
		}
	}
	return p
}

// laid is the plan at one scale.
func laid(d *calc.Drawing, screen *scene, to float64) *paper {
	p := &paper{scene: scene{r: screen.r, id: screen.id, name: screen.name, box: empty, bare: true, scale: millimetre / 1000 / to}, d: d, to: to, larger: millimetre / 1000 / to / screen.scale}
	p.lay()
	if other := tiles(p.high, paperWide) * tiles(p.wide, paperHigh); other < p.across*p.down {
		p.turned = true
		p.lay()
	}
	return p
}

// lay sets the letters and counts the sheets.
func (p *paper) lay() {
	p.over, p.box, p.walls, p.marked = markup.Writer{}, empty, nil, false
	for i := range p.d.Shapes {
		p.shape(&p.d.Shapes[i])
		p.marked = p.marked || p.d.Shapes[i].Room > 0
	}
	p.wide, p.high = p.box.x1-p.box.x0, p.box.y1-p.box.y0
	if p.turned {
		p.wide, p.high = p.high, p.wide
	}
	p.across, p.down = tiles(p.wide, paperWide), tiles(p.high, paperHigh)
}

// tiles is how many sheets of a width it takes, each lapping the next.
func tiles(long, sheet float64) int {
	return max(1, int(unit.Whole((long-lap)/(sheet-lap))))
}

// sheet writes one sheet: its part of the plan in a frame, and the strip at the foot. The first holds the whole plan, to be referred to.
func (p *paper) sheet(w *markup.Writer, i int) {
	n := markup.Number
	column, row := i%p.across, i/p.across
	id := p.id + "-sheet-" + strconv.Itoa(i+1)
	w.Put(`<svg class="plan-sheet" width="%mm" height="%mm" viewBox="0 0 % %" role="img" aria-labelledby="%-title" xmlns="http://www.w3.org/2000/svg"><title id="%-title">%</title>`,
		n(paperWide/millimetre), n((paperHigh+foot)/millimetre), n(paperWide), n(paperHigh+foot), id, id, p.r.Word(p.d.Title))
	if i == 0 {
		p.whole(w)
	}
	x, y := (paperWide-p.wide)/2, (paperHigh-p.high)/2
	if p.across > 1 {
		x = -float64(column) * (paperWide - lap)
	}
	if p.down > 1 {
		y = -float64(row) * (paperHigh - lap)
	}
	w.Put(`<svg width="%" height="%"><use href="#%-paper" x="%" y="%"/></svg>`, n(paperWide), n(paperHigh), p.id, n(x), n(y))
	w.Put(`<path class="line s-outline" fill="none" d="M0 0H%V%H0Z"/>`, n(paperWide), n(paperHigh))
	p.joins(w, column, row)
	p.strip(w, i)
	w.Put(`</svg>`)
}

// whole writes the plan at its scale, its upper left corner at nought.
func (p *paper) whole(w *markup.Writer) {
	n := markup.Number
	w.Put(`<defs><g class="plan-paper" id="%-paper">`, p.id)
	if p.turned { // to be read from the right
		w.Put(`<g transform="translate(% %) rotate(-90)">`, n(-p.box.y0), n(p.box.x1))
	} else {
		w.Put(`<g transform="translate(% %)">`, n(-p.box.x0), n(-p.box.y0))
	}
	w.Put(`<use href="#%-shapes" transform="scale(%)"/>`, p.id, strconv.FormatFloat(p.larger, 'g', 12, 64))
	w.Markup(p.over.String())
	w.Put(`</g></g></defs>`)
}

// joins marks where this sheet is cut to meet those beside it, in the middle of what both show.
func (p *paper) joins(w *markup.Writer, column, row int) {
	n := markup.Number
	mark := func(beside bool, other int, path string, x, y, turn float64) {
		if !beside {
			return
		}
		w.Put(`<path class="line s-axis" fill="none" d="%"/><text class="note-text" x="%" y="%" text-anchor="middle" transform="rotate(% % %)">%</text>`,
			path, n(x), n(y), n(turn), n(x), n(y),
			p.r.Line(words.Say("cut here to meet sheet {n}", words.Is("n", unit.Count(other+1), unit.Whole1))))
	}
	i := row*p.across + column
	right, low := paperWide-lap/2, paperHigh-lap/2
	mark(column > 0, i-1, "M"+n(lap/2)+" 0V"+n(paperHigh), lap/2-5, paperHigh/2, -90)
	mark(column < p.across-1, i+1, "M"+n(right)+" 0V"+n(paperHigh), right+5, paperHigh/2, 90)
	mark(row > 0, i-p.across, "M0 "+n(lap/2)+"H"+n(paperWide), paperWide/2, lap/2-5, 0)
	mark(row < p.down-1, i+p.across, "M0 "+n(low)+"H"+n(paperWide), paperWide/2, low+15, 0)
}

// strip writes the title, the scale with a bar to check it by, what the letters are, and where the sheet lies among the others.
func (p *paper) strip(w *markup.Writer, i int) {
	n := markup.Number
	const first, second, bar, below = paperHigh + 15, paperHigh + 33, paperHigh + 42, paperHigh + 62
	long := p.bar()
	title, of := p.r.Word(p.d.Title), p.across*p.down
	if p.name != "" {
		title += " · " + p.name
	}
	w.Put(`<text class="dim-text plan-title" x="0" y="%">%</text>`, n(first), fitting(title, of > 1))
	says := p.r.Line(p.d.Says)
	if p.marked {
		says += " " + p.r.Word("The same letter is the same cut.")
	}
	p.key(w, says, below)
	w.Put(`<text class="dim-text plan-scale" x="0" y="%">%</text>`, n(second), p.says())
	w.Put(`<text class="note-text" x="%" y="%" text-anchor="end">%</text>`, n(paperWide), n(second),
		p.r.Line(words.Say("Print at 100 %. The bar is then {long} long on the paper.", words.Is("long", long/unit.Length(p.to), onPaper))))
	const parts = 4
	each := float64(long) * p.scale / parts
	for part := range parts {
		class := "ground"
		if part%2 == 0 {
			class = "arrow"
		}
		w.Put(`<path class="%" d="M% %h%v6h%z"/>`, class, n(float64(part)*each), n(bar), n(each), n(-each))
	}
	w.Put(`<path class="line s-outline plan-bar" fill="none" d="M0 %h%v6H0z"/><text class="note-text" x="%" y="%">%</text>`,
		n(bar), n(4*each), n(4*each+8), n(bar+8), p.r.Style.Print(unit.Fig(long, onSite)))
	if of > 1 {
		w.Put(`<text class="dim-text" x="%" y="%" text-anchor="end">%</text>`, n(paperWide-float64(p.across)*10-8), n(first),
			p.r.Line(words.Say("Sheet {n} of {all}", words.Is("n", unit.Count(i+1), unit.Whole1), words.Is("all", unit.Count(of), unit.Whole1))))
		for other := range of {
			x, y := paperWide-float64(p.across-other%p.across)*10, paperHigh+4+float64(other/p.across)*8
			class := "line s-outline"
			if other == i {
				class += " plan-here"
			}
			w.Put(`<path class="%" fill="none" d="M% %h10v8h-10z"/>`, class, n(x), n(y))
		}
	}
}

var (
	onPaper = &unit.Pair{US: unit.Form{Unit: unit.Inches, Fraction: 16}, Metric: unit.Form{Unit: unit.Millimetres}}
	onSite  = &unit.Pair{US: unit.Form{Unit: unit.Feet, Fraction: 16}, Metric: unit.Form{Unit: unit.Metres}}
	// perFoot prints an inch to the foot as a fraction.
	perFoot = &unit.Pair{US: unit.Form{Unit: unit.Inches, Fraction: 32}, Metric: unit.Form{Unit: unit.Inches, Fraction: 32}}
)

// says names the scale; in the United States also as so much to the foot, where that is a fraction that a rule has.
func (p *paper) says() string {
	to := words.Is("to", unit.Count(p.to), unit.Whole1)
	inch := unit.Foot / unit.Length(p.to)
	if p.r.Style.System == unit.Metric || unit.Length(int(inch/unit.Inch*32))*unit.Inch/32 != inch {
		return p.r.Line(words.Say("Scale 1:{to}", to))
	}
	return p.r.Line(words.Say("Scale 1:{to} ({inch} = 1 ft)", to, words.Is("inch", inch, perFoot)))
}

// key writes a text in lines as wide as a sheet, in letters of 11 px.
func (p *paper) key(w *markup.Writer, text string, y float64) {
	for text != "" {
		line, rest := text, ""
		for utf8.RuneCountInString(line) > 106 {
			i := strings.LastIndexByte(line, ' ')
			if i < 0 {
				break
			}
			line, rest = text[:i], text[i+1:]
		}
		w.Put(`<text class="note-text plan-key" x="0" y="%">%</text>`, markup.Number(y), line)
		text, y = rest, y+12
	}
}

// fitting is as much of a title as a sheet's width holds, or what is left of it beside the number of the sheet.
func fitting(title string, numbered bool) string {
	room := 70 // bold letters of 9 px
	if numbered {
		room = 45
	}
	if letters := []rune(title); len(letters) > room {
		return string(letters[:room-1]) + "…"
	}
	return title
}

// bar is the longest round length that is no more than a third of the sheet's width on paper.
func (p *paper) bar() unit.Length {
	unitOf, steps := unit.Foot, []unit.Length{1. / 12, 1. / 6, 1. / 3, 1. / 2, 1, 2, 4, 8, 16, 32, 64, 128}
	if p.r.Style.System == unit.Metric {
		unitOf, steps = unit.Metre, []unit.Length{0.02, 0.04, 0.1, 0.2, 0.4, 1, 2, 4, 10, 20, 40, 100}
	}
	long := unitOf * steps[0]
	for _, step := range steps {
		if l := unitOf * step; float64(l)*p.scale <= paperWide/3 {
			long = l
		}
	}
	return long
}
