package site

import "setbook/calc/words"

// phrases are the words of the shell, by the name that a template calls each by.
type phrases struct {
	Name, TitleOf, Skip, Cover, Contents, Intro, NoScript, Failed, Before, After, Way words.Msg
	Countdowns, Beside                                                                words.Msg
	Jobs, JobsSays, Job, JobSays, JobsNoScript                                        words.Msg
	Units, US, Metric, UnitsUS, UnitsMetric                                           words.Msg
	Look, Light, Dark, Auto, Local                                                    words.Msg
	Missing, MissingSays, MissingGo                                                   words.Msg
	About, AboutDoes, Is, IsSays, IsNot, IsNotSays, IsNotCode                         words.Msg
	Rests, RestsSays, Published, PublishedSays, Practice, PracticeSays                words.Msg
	Memory, MemorySays, Shows, Phone, PhoneSays, PhoneForget, Offline                 words.Msg
}

var shell = phrases{
	Name:     "Setbook",
	TitleOf:  "{page} – Setbook",
	Skip:     "Skip to the page",
	Cover:    "Pavers on concrete, sum by sum",
	Contents: "Contents",
	Intro:    "The sums of a crew that bonds 20 mm porcelain pavers to an outdoor concrete slab, in the order of the work.",
	NoScript: "Scripts are off: this page shows a worked example. Turn scripts on to work your own figures.",
	Failed:   "This page cannot work here: the browser did not run its program. It shows a worked example. Load it again, or bring the browser up to date.",
	Before:   "Before this",
	After:    "After this",
	Way:      "Pages before and after",

	Countdowns: "Countdowns",

	Jobs:         "Jobs",
	JobsSays:     "What the crew keeps of each job, on this phone: its sums, the weather, the log of mixes, contact checks, notes, the hand-over sheet.",
	Job:          "A job",
	JobSays:      "One job as it stands today: what cures, what may be walked on, what to do next.",
	JobsNoScript: "Scripts are off: jobs are kept and shown by a script. Turn scripts on to use them.",
	Beside:       "Beside the work",

	Units:       "Units",
	US:          "ft °F",
	Metric:      "m °C",
	UnitsUS:     "US units: feet, pounds, Fahrenheit",
	UnitsMetric: "Metric units: metres, kilograms, Celsius",

	Look:  "Look",
	Light: "Light",
	Dark:  "Dark",
	Auto:  "As the phone",
	Local: "What you type stays on this phone. No account, nothing sent.",

	Missing:     "There is no page here",
	MissingSays: "The address leads to nothing that this book holds. A link may have been cut short when it was copied.",
	MissingGo:   "Go to the contents",

	About:     "About this book",
	AboutDoes: "What Setbook is, what it is not, and what its figures rest on.",
	Is:        "What it is",
	IsSays:    "A pocket book that works out its own pages. Each page answers one question asked on site: it shows the figures that went in, the working line by line, where each rule comes from, and what to watch for.",
	IsNot:     "What it is not",
	IsNotSays: "It does not stand in for the words on the bag, the local code, or the judgement of a licensed person who sees the job. Where they differ from a page here, they win.",
	IsNotCode: "It does not measure anything. An answer is as good as what was typed: measure twice, and read the caution beside the answer.",

	Rests:         "What the figures rest on",
	RestsSays:     "Every line of the working says which of these stands behind it.",
	Published:     "Published",
	PublishedSays: "Printed by somebody outside this project, such as a standard, a public body or a textbook. The page names it, with the place in it.",
	Practice:      "Common practice",
	PracticeSays:  "What the trade does, with no printed source found. It is marked so.",
	Memory:        "From memory",
	MemorySays:    "Known, but not confirmed in print. It is marked so: check your local code.",
	Shows:         "Under “The working” each sum is written out so that it can be done again on any pocket calculator.",

	Phone:       "Where it lives",
	PhoneSays:   "The sums are done on this phone. The last entry of each page is kept on it too, and nowhere else. There is no account, and nothing that you type is sent.",
	PhoneForget: "To forget everything, clear this site’s data in the browser’s settings.",
	Offline:     "After one visit every page works with no signal.",
}
