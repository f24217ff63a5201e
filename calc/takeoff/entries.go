package takeoff

import (
	"strconv"
	"strings"
	"sync"

	"setbook/calc"
	"setbook/calc/job"
	"setbook/calc/link"
	"setbook/calc/words"
)

// id of this question, which a job may hold an entry of, too: an order does not order itself.
const id = "takeoff"

// mostLines is the most that is read: as many as a job has entries.
const mostLines = job.MaxEntries

// entry is one line of the text: a calculator's entry.
type entry struct {
	of   *calc.Calculator
	name string
	line string
	read calc.Entry
}

// questions are the calculators whose entries can be ordered from.
type questions []*calc.Calculator

func (q questions) find(id string) *calc.Calculator {
	for _, c := range q {
		if c.ID == id {
			return c
		}
	}
	return nil
}

// reads takes the entries of a job: a line each, as in "bed Terrace?v=1&width=1/2+in", or a job's file. It gives the lines.
func (q questions) reads(text string) (kept string, wrong words.Line) {
	file := strings.HasPrefix(text, "{")
	if file {
		j, problems := job.Read(text)
		if len(problems) > 0 {
			return "", problems[0].Says
		}
		text = job.Lines(j)
	}
	var b strings.Builder
	count := 0
	for n, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		name, _, _ := parts(line)
		if line == "" || name == id || file && q.find(name) == nil {
			continue
		}
		if _, wrong := q.entry(line); wrong.Msg != "" {
			return "", words.Say("line {line}: {problem}", words.Text("line", strconv.Itoa(n+1)), words.Also("problem", wrong))
		}
		if count++; count > mostLines {
			return "", words.Say("there are more than {most} lines.", words.Text("most", strconv.Itoa(mostLines)))
		}
		b.WriteString(line + "\n")
	}
	if count == 0 {
		return "", words.Say("nothing to order from was read. Give a line for each entry, as in {example}.", words.Text("example", "bed?width=1/2+in&area=100+ft2"))
	}
	return strings.TrimSuffix(b.String(), "\n"), words.Line{}
}

// parts parts a line into the ID of a calculator, the name of the entry, which may be "", and the link.
func parts(line string) (id, name, text string) {
	head, text, _ := strings.Cut(line, "?")
	id, escaped, _ := strings.Cut(head, " ")
	named, _ := link.Parse("name=" + escaped)
	return id, job.Clean(named["name"], job.MaxName), text
}

// entry reads one line.
func (q questions) entry(line string) (entry, words.Line) {
	id, name, text := parts(line)
	c := q.find(id)
	if c == nil {
		return entry{}, words.Say("there is no calculator named “{read}” here. Write its name, a question mark and its entry, as in {example}.",
			words.Text("read", calc.Cut(id)), words.Text("example", "bed?width=1/2+in&area=100+ft2"))
	}
	read, problems := link.Read(c, text, calc.Habit{})
	if len(problems) > 0 {
		return entry{}, words.Say("{of}: {problem}", words.Named("of", c.Title), words.Also("problem", problems[0].Says))
	}
	return entry{c, name, line, read}, words.Line{}
}

// entries are those of a text that reads has kept.
func (q questions) entries(kept string) (all []entry) {
	for _, line := range strings.Split(kept, "\n") {
		e, _ := q.entry(line)
		all = append(all, e)
	}
	return all
}

// solved holds the sheets of the lines that were worked out last, so that a change of one line, or of the spares, does not work every layout out
// again. It changes no result.
type solved struct {
	mutex  sync.Mutex
	sheets map[string]*calc.Sheet
}

// round is one order's use of them.
type round struct{ last, used map[string]*calc.Sheet }

func (k *solved) begin() round {
	k.mutex.Lock()
	defer k.mutex.Unlock()
	return round{k.sheets, map[string]*calc.Sheet{}}
}

// sheet is that of an entry, worked out where it is not known.
func (r round) sheet(e entry) *calc.Sheet {
	s, ok := r.last[e.line]
	if !ok {
		s = e.of.Solve(e.read)
	}
	r.used[e.line] = s
	return s
}

// end keeps what this order used and nothing older.
func (k *solved) end(r round) {
	k.mutex.Lock()
	defer k.mutex.Unlock()
	k.sheets = r.used
}
