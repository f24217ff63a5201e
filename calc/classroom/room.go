// Package classroom is the page for a trade class: rounds of exercises with a score, worksheets to print with their
// key, and the teacher's link that makes the same ones on another device. Package drill makes and judges the exercises.
package classroom

import (
	"strconv"

	"setbook/calc"
	"setbook/calc/drill"
	"setbook/calc/link"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Limits of what can be chosen.
const (
	MostExercises = 40
	MostSeed      = 999_999
)

// Room is the page of a class as one student or teacher has it.
type Room struct {
	Reader      words.Reader
	calculators []*calc.Calculator
	of          *calc.Calculator
	seed        uint64
	wanted      int         // exercises of a round
	count       int         // as many as the calculator gives of them
	system      unit.System // of the exercises: Either follows the reader
	sheet       bool        // a worksheet to print instead of a round
	key         bool        // the worksheet's key is shown too
	series      *drill.Series
	set         []drill.Exercise // as far as they were wanted
	at          int              // which exercise of the round
	marks       []mark           // of the exercises that are done
	tries       int              // at this one
	text        string           // answered last
	verdict     *drill.Verdict   // to that
	problem     words.Line       // of what was chosen
	best        map[string]int   // most right in a full round, of ten, by calculator
}

// mark is how an exercise of the round went.
type mark struct{ right, first bool }

// opening is the calculator that the room opens with: two numbers and a ratio, which everybody can do.
const opening = "slope"

// New opens the room with a first set.
func New(calculators []*calc.Calculator, r words.Reader) *Room {
	room := &Room{Reader: r, calculators: calculators, of: calculators[0], seed: 1, wanted: 10, best: map[string]int{}}
	for _, c := range calculators {
		if c.ID == opening {
			room.of = c
		}
	}
	room.begin()
	return room
}

// units is the system of the exercises.
func (room *Room) units() unit.System {
	if room.system != unit.Either {
		return room.system
	}
	if room.Reader.Style.System == unit.Metric {
		return unit.Metric
	}
	return unit.US
}

// begin makes the set and starts the round anew.
func (room *Room) begin() {
	room.series, room.set = drill.Begin(room.of, room.seed, room.units()), nil
	room.count = room.wanted
	room.make(1)
	room.at, room.tries, room.text, room.verdict, room.marks = 0, 0, "", nil, nil
}

// make sees that the first so many exercises are there. A calculator that has fewer to give makes the set shorter.
func (room *Room) make(wanted int) {
	for len(room.set) < min(wanted, room.count) {
		x, ok := room.series.Next()
		if !ok {
			room.count = len(room.set)
			return
		}
		room.set = append(room.set, x)
	}
}

// Address writes the page for another reader.
func (room *Room) Address(r words.Reader) {
	before := room.units()
	room.Reader = r
	if room.units() != before {
		room.begin()
	}
}

// Choose takes one of the choices: calculator, seed, count, units (us, metric, or "" for the reader's), view (round,
// sheet, key). What cannot be taken is said, and changes nothing.
func (room *Room) Choose(key, value string) bool {
	room.problem = words.Line{}
	switch key {
	case "calculator":
		for _, c := range room.calculators {
			if c.ID == value {
				room.of = c
				room.begin()
				return true
			}
		}
	case "seed":
		if n, err := strconv.ParseUint(value, 10, 64); err == nil && n <= MostSeed {
			room.seed = n
			room.begin()
			return true
		}
		room.problem = words.Say("Number of the set: read “{read}”. It takes a whole number from 0 to 999999.", words.Text("read", calc.Cut(value)))
		return false
	case "count":
		if n, err := strconv.Atoi(value); err == nil && 1 <= n && n <= MostExercises {
			room.wanted = n
			room.begin()
			return true
		}
		room.problem = words.Say("Exercises: read “{read}”. It takes a whole number from 1 to 40.", words.Text("read", calc.Cut(value)))
		return false
	case "units":
		if system, ok := map[string]unit.System{"": unit.Either, "us": unit.US, "metric": unit.Metric}[value]; ok {
			room.system = system
			room.begin()
			return true
		}
	case "view":
		if value == "round" || value == "sheet" || value == "key" {
			room.sheet, room.key = value != "round", value == "key"
			if room.sheet {
				room.make(room.count)
			}
			return true
		}
	}
	room.problem = words.Say("This link asks for “{read}” under “{key}”, which this page does not know.", words.Text("read", calc.Cut(value)), words.Text("key", calc.Cut(key)))
	return false
}

// Load takes a teacher's link. It reports whether every part of it could be taken.
func (room *Room) Load(fragment string) bool {
	texts, problems := link.Parse(fragment)
	if len(problems) > 0 {
		room.problem = problems[0].Says
		return false
	}
	ok := true
	for _, key := range []string{"calculator", "units", "count", "seed", "view"} {
		if value, given := texts[key]; given {
			ok = room.Choose(key, value) && ok
			delete(texts, key)
		}
	}
	for key, value := range texts {
		ok = room.Choose(key, value)
	}
	return ok
}

// Link is the teacher's link to this set: calculator, seed, count, units, and whether it is a worksheet.
func (room *Room) Link() string {
	units, view := "us", "round"
	if room.units() == unit.Metric {
		units = "metric"
	}
	if room.sheet {
		view = "sheet" // the key is never in the link that a class is given
	}
	return "v=" + link.Version + "&calculator=" + room.of.ID + "&units=" + units +
		"&count=" + strconv.Itoa(room.wanted) + "&seed=" + strconv.FormatUint(room.seed, 10) + "&view=" + view
}

// Answer judges what was written.
func (room *Room) Answer(text string) {
	if room.done() || room.verdict != nil && room.verdict.Right {
		return
	}
	v := room.set[room.at].Judge(text, room.habit())
	room.text, room.verdict = text, &v
	if v.Read {
		room.tries++
	}
	if v.Right {
		room.marks = append(room.marks, mark{true, room.tries == 1})
	}
}

func (room *Room) habit() calc.Habit {
	h := calc.Habit{Decimal: room.Reader.Style.Decimal, System: room.units()}
	if h.Decimal == 0 {
		h.Decimal = '.'
	}
	return h
}

// Next goes on to the next exercise; one that was not answered rightly is marked so.
func (room *Room) Next() {
	if room.done() {
		return
	}
	if len(room.marks) == room.at {
		room.marks = append(room.marks, mark{})
	}
	room.at++
	room.make(room.at + 1)
	room.tries, room.text, room.verdict = 0, "", nil
	if room.done() {
		room.best[room.of.ID] = max(room.best[room.of.ID], room.score()*10/room.count)
	}
}

// Again starts a round with other numbers.
func (room *Room) Again() {
	room.seed = (room.seed + 1) % (MostSeed + 1)
	room.begin()
}

func (room *Room) done() bool { return room.at >= room.count }

// score counts the exercises that were right at the first try.
func (room *Room) score() (right int) {
	for _, m := range room.marks {
		if m.first {
			right++
		}
	}
	return right
}
