package slim

// record is one runtime._func with its lists: 11 words of 4 bytes, then a word for each table by places (PCDATA),
// then one for each piece of data (FUNCDATA).
type record []byte

// Words of a record.
const (
	entryOff  = 0
	nameOff   = 1
	pcsp      = 4 // depth of the stack, by places
	pcfile    = 5 // source file, by places
	pcln      = 6 // line, by places
	npcdata   = 7
	cuOffset  = 8
	startLine = 9
	fixed     = 11 // words before the lists

	nfuncdata = 43 // a byte
	none      = ^uint32(0)
)

// Places in the lists of a record (internal/abi/symtab.go).
const (
	unsafePoint  = 0 // PCDATA: where a function may be stopped by a signal
	inlTreeIndex = 2 // PCDATA: which inlined call a place belongs to
	inlTree      = 3 // FUNCDATA: the inlined calls
	argInfo      = 5 // FUNCDATA: how to print the arguments, up to argEnd
)

const argEnd = 0xff // abi.TraceArgsEndSeq

// One runtime.inlinedCall: its size, and the places of its name and of its line, in bytes.
const (
	inlinedSize = 16
	inlinedName = 4
	inlinedLine = 12
)

// recordAt gives the record at a place, or nil where it is cut short.
func recordAt(funcs []byte, at int) record {
	if at > len(funcs) || len(funcs)-at < 4*fixed {
		return nil
	}
	f := record(funcs[at:])
	size := 4 * (fixed + int64(f.word(npcdata)) + int64(f[nfuncdata]))
	if int64(len(f)) < size {
		return nil
	}
	return f[:size:size]
}

func (f record) word(n int) uint32   { return le.Uint32(f[4*n:]) }
func (f record) set(n int, v uint32) { le.PutUint32(f[4*n:], v) }

// pcdata gives the words that refer to tables by places, beside those of the fixed part.
func (f record) pcdata() []int { return span(fixed, int(f.word(npcdata))) }

// funcdata gives the words that refer to pieces of data.
func (f record) funcdata() []int { return span(fixed+int(f.word(npcdata)), int(f[nfuncdata])) }

// references gives every word that refers to a run.
func (f record) references() []int { return append(f.pcdata(), pcsp, pcfile, pcln) }

func span(from, count int) []int {
	var words []int
	for n := range count {
		words = append(words, from+n)
	}
	return words
}
