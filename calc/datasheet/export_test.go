package datasheet

// Target is an input, "calculator.key", with the column that fills it.
type Target struct {
	Input  string
	Column *column
}

// Targets lists every input that a column fills as it stands.
func Targets() (targets []Target) {
	for i := range columns {
		for _, t := range columns[i].fills {
			targets = append(targets, Target{t.calculator + "." + t.key, &columns[i]})
		}
	}
	for _, s := range stages {
		targets = append(targets, Target{waits + "." + waitKey, find(s.key)})
	}
	return targets
}
