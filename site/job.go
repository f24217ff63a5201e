package site

import "setbook/calc/words"

// jobs is the page of all jobs and job the page of one; the program fills both, since what they show is on the phone alone.
func (b *book) jobs() ([]byte, error) {
	return b.ofJobs("jobs", shell.Jobs, shell.JobsSays)
}

func (b *book) job() ([]byte, error) {
	return b.ofJobs("job", shell.Job, shell.JobSays)
}

func (b *book) ofJobs(kind string, title, says words.Msg) ([]byte, error) {
	return b.page(kind, struct{ W phrases }{shell}, frame{Title: b.titled(title), Description: b.reader.Word(says), Root: "../"})
}
