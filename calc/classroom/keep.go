package classroom

import (
	"slices"
	"strconv"
	"strings"
)

// Kept is what the device keeps between visits: the best round of each calculator, of ten.
func (room *Room) Kept() string {
	var all []string
	for id, best := range room.best {
		all = append(all, id+"="+strconv.Itoa(best))
	}
	slices.Sort(all)
	return strings.Join(all, ";")
}

// Recall takes what Kept gave. What it does not know is passed over: it is only a score.
func (room *Room) Recall(text string) {
	for _, one := range strings.Split(text, ";") {
		id, best, _ := strings.Cut(one, "=")
		n, err := strconv.Atoi(best)
		if err != nil || n < 0 || n > 10 {
			continue
		}
		for _, c := range room.calculators {
			if c.ID == id {
				room.best[id] = max(room.best[id], n)
			}
		}
	}
}
