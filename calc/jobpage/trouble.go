package jobpage

import "setbook/calc/words"

// Trouble is why a job is not kept as it stands on the page.
type Trouble uint8

// The troubles.
const (
	None      Trouble = iota
	NoStorage         // the browser has no storage for this page, or forbids it
	Full              // there is no more room
	Failed            // the browser gave an error
	NewerBase         // everything kept here is a newer program's
	NewerJob          // this job is a newer program's
	Conflict          // another page has changed it since
	Gone              // it was deleted or cleared since
	TooLarge          // it is more than a record takes
	Unfit             // it could not be read again
	Stale             // what a list shows was changed on another page since
)

// Error makes a trouble an error, for those who keep; a person reads Says.
func (t Trouble) Error() string { return "the job cannot be kept as it stands" }

// Err is the trouble as an error, nil where there is none.
func (t Trouble) Err() error {
	if t == None {
		return nil
	}
	return t
}

// Says tells a person.
func (t Trouble) Says() words.Msg {
	switch t {
	case NoStorage:
		return "This browser keeps nothing for this page. The job is here only as long as the page is open: hand it on as a file before you close it."
	case Full:
		return "Not saved: there is no more room on this phone for this site. Hand the job on as a file now, then make room and press “Try again”."
	case Failed:
		return "Not saved: the browser did not carry it out. Hand the job on as a file now, then press “Try again”."
	case NewerBase:
		return "What is kept on this phone was last used by a newer Setbook. This one shows it and changes nothing. Load the page again to get the newer one."
	case NewerJob:
		return "This job was written by a newer Setbook. What this one understands of it is shown. It can be handed on as it is, and is not changed here."
	case Conflict:
		return "Not saved: this job was changed on another page of this phone since it was opened here. Neither has overwritten the other. Choose how to go on."
	case Gone:
		return "Not saved: this job is no longer kept on this phone. It was deleted on another page, or the browser cleared its storage. All that this page holds can be kept again."
	case Unfit:
		return "Not saved: as it stands here this job could not be read again. Undo or remove what was done last and press “Try again”."
	case Stale:
		return "Nothing was done: this job was changed on another page of this phone meanwhile. Here is how it stands now."
	case TooLarge:
		return "Not saved: this is more than one job takes. Remove something from it and press “Try again”, or go on in another job."
	}
	return ""
}

// Lasting is what the browser says of how long it keeps what is stored (Storage Standard, persistence).
type Lasting uint8

// The answers.
const (
	NotAsked Lasting = iota
	Promised         // it is not cleared unless the person says so
	Refused          // it may be cleared when the phone runs short of room
	Unasked          // this browser has no such question
)

// lasting tells the person.
func (b *Book) lasting() string {
	says := [...]words.Msg{
		NotAsked: "",
		Promised: "The browser has promised to keep this until you clear it yourself.",
		Refused:  "The browser did not promise to keep this: short of room, it may clear it. Hand a copy on at the end of each day.",
		Unasked:  "This browser cannot be asked to keep this for good. Hand a copy on at the end of each day.",
	}[b.Lasting]
	w := b.writer()
	if b.Back > 0 {
		w.Put(`<p class="job-back">%</p>`, b.Reader.Line(words.Say("The browser had lost what it kept for this site. Jobs brought back from the second copy: {count}. Hand them on as files now.", count("count", b.Back))))
	}
	if says != "" {
		w.put(`<p class="note">%</p>`, says)
	}
	return w.String()
}
