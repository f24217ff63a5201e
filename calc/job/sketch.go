package job

import "setbook/calc/countdown"

// Diff lists what taking over another record would change, in the order of the record.
func Diff(old, new *Job) []Change { return nil }

// Summarise is what a list shows of a job.
func Summarise(j *Job) Summary {
	return Summary{ID: j.ID, Name: j.Name, Place: j.Place, Changed: j.Changed}
}

// Search keeps the summaries that hold every word of a query, the last changed first.
func Search(list []Summary, query string) []Summary { return list }

// FromEntries makes a job out of what a browser held before there were jobs: the last entry of each calculator by its ID,
// and the countdowns by theirs.
func FromEntries(id string, entries, countdowns map[string]string, now countdown.Instant) *Job {
	return nil
}

// Fed gives an entry's link with the weather of the job in the place of its own, where the calculator asks for it.
func (j *Job) Fed(e Entry, find Find) string { return e.Link }

// Today tells the state of a job at an instant.
func Today(j *Job, now countdown.Instant, find Find) *Day { return &Day{} }
