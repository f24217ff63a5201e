package job

import (
	"strings"

	"setbook/calc/unit"
	"setbook/calc/words"
)

// A link holds a small job packed: the record as it is written, by DEFLATE, in letters that an address may hold.
const (
	MaxPacked   = 8000    // characters of a fragment: what browsers, mail and messengers carry
	maxUnpacked = 1 << 16 // bytes of a record in a link, so that a hostile link stays small
	packedKey   = "packed=1."
)

// dictionary is what most records hold, what is most frequent last (RFC 1951 looks back 32 KB). It is part of what a packed link
// means: another dictionary needs another number in packedKey.
const dictionary = `"remarks": ""care": ""crew": ""client": "` + "\n    " + `{"id": "m1", "name": "Mortar", "product": "", "lots": "` +
	`"picture": "corners": "note": "` + "\n    " + `{"id": "n1", "when": "", "text": "` +
	"v=1&outline=0+m,0+m;&holes=&pattern=stack&turn=0+deg&edges=open&kerf=2.5+mm&grid=&step_x=1+m&step_y=1+m&straightedge=" +
	"v=1&drop=&cross=0+mmv=1&span=&length=&summer=&winter=&fit=&expansion=5.5+e-6/F&capability=25+%25&growth=0+%25&other=0+mm&tolerance=1/16+in&structural=0+mm" +
	"v=1&powder=25+kg&bag=25+kg&liquid=&liquid_min=&liquid_max=&liquid_density=1+kg/L&wet_density=&bucket=" +
	"v=1&crew=2&rate=&open=&pot=&paver_l=600+mm&paver_w=600+mm&joint=5+mm&bed=&powder_yield=" +
	"v=1&air=&humidity=&surface=&wind=&lowest=&bag_low=&bag_high=&rain=&stage=24+h&latitude=&longitude=&zone=&date=&clock=" +
	"v=1&mass=&reach=&height=&travel=&turn=0+deg&rate=&hours=&grip=fair" +
	"v=1&paver_l=24+in&paver_w=24+in&joint=3/16+in&depth=20+mm&area=100+ft2&powder_rate=1.6+kg/L&bag=25+lb&waste=10+%25&variation=1/32+in&warp=1/32+in&pattern=stack&edge_finish=rectified" +
	"v=1&width=10+mm&depth=0+mm&run=&dome=0+mm&sag=0+mm&cartridge=600+mL&waste=10+%25&rod_ratio=1.25&paver=20+mm&bed=" +
	"v=1&area=&wet=20+mil&coats=2&solids=60+%25&waste=10+%25&pail=3.5+gal" +
	"v=1&notch=square&width=1/2+in&depth=1/2+in&land=1/2+in&hold=45+deg&skim=1+mm&hollow=0+mm&area=&waste=10+%25&bag_yield=" +
	"v=1&binder=portland&bag_time=24+h&bag_temp=21+C&temp=" +
	`", "text": "countdown=1&name=&of=wait&from=17&until=17&entry=v%3D1%26binder%3Dportland%26bag_time%3D24%2Bh%26bag_temp%3D21%2BC%26temp%3D` +
	`{` + "\n  " + `"setbook": "job",` + "\n  " + `"version": 1,` + "\n  " + `"id": "` + `",` + "\n  " + `"name": "` + `",` + "\n  " + `"place": "",` + "\n  " + `"address": "` +
	"\n  " + `"created": "2026-` + "\n  " + `"changed": "2026-` + "\n  " + `"revision": ` + "\n  " + `"weather": {"when": "", "air": "", "humidity": "", "surface": "", "wind": "` +
	`km/h"},` + "\n  " + `"entries": [` + "\n  ],\n  " + `"countdowns": [` + "\n  ],\n  " + `"mixes": [` + "\n  ],\n  " + `"checks": [` +
	"\n  ],\n  " + `"notes": [` + "\n  ],\n  " + `"handover": {"` + "\n  ],\n  " + `"materials": [` +
	"\"},\n    " + `{"id": "c1", "when": "2026-00.000Z", "where": "", "contact": " %"},` +
	"\n    " + `{"id": "x1", "when": "2026-00.000Z", "amount": "25 kg", "product": "Mortar", "lot": "", "air": " °C", "surface": " °C"},` +
	"\n    " + `{"id": "e1", "calculator": "bed", "name": "", "changed": "2026-00:00.000Z", "link": "v=1&`

// Pack writes a small job as the fragment of a link, and reports false where it is too large for one: it can still be given as a file.
func Pack(j *Job) (string, bool) {
	text := Write(j)
	if len(text) > maxUnpacked {
		return "", false
	}
	packed := packedKey + base64(deflate(text, dictionary))
	return packed, len(packed) <= MaxPacked
}

// Packed reports whether a fragment is a packed job.
func Packed(fragment string) bool {
	return strings.HasPrefix(strings.TrimPrefix(fragment, "#"), packedKey)
}

// Unpack reads what Pack wrote: a whole job or problems, never both.
func Unpack(fragment string) (*Job, []Problem) {
	fragment = strings.TrimPrefix(fragment, "#")
	if len(fragment) > MaxPacked {
		return nil, whole(words.Say("The link is longer than {most} characters, which is the most that holds a job.", words.Is("most", unit.Count(MaxPacked), unit.Whole1)))
	}
	letters, ok := strings.CutPrefix(fragment, packedKey)
	packed, fine := unbase64(letters)
	if !ok || !fine {
		return nil, whole(words.Say("This link holds no job, or not the whole of one. Copy all of it, or ask for the file."))
	}
	text, ok := inflate(packed, dictionary, maxUnpacked)
	if !ok {
		return nil, whole(words.Say("This link holds no job, or not the whole of one. Copy all of it, or ask for the file."))
	}
	return Read(text)
}

// urlSigns are the letters of base64url (RFC 4648, section 5), which is written without padding.
const urlSigns = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"

func base64(bytes []byte) string {
	var b strings.Builder
	hold, count := 0, 0
	for _, c := range bytes {
		hold = hold<<8 | int(c)
		for count += 8; count >= 6; count -= 6 {
			b.WriteByte(urlSigns[hold>>(count-6)&63])
		}
		hold &= 63
	}
	if count > 0 {
		b.WriteByte(urlSigns[hold<<(6-count)&63])
	}
	return b.String()
}

// unbase64 reads letters that base64 wrote.
func unbase64(letters string) (bytes []byte, ok bool) {
	hold, count := 0, 0
	for _, c := range []byte(letters) {
		value := strings.IndexByte(urlSigns, c)
		if value < 0 {
			return nil, false
		}
		hold = hold<<6 | value
		if count += 6; count >= 8 {
			count -= 8
			bytes = append(bytes, byte(hold>>count))
			hold &= 1<<count - 1
		}
	}
	return bytes, count < 6 && hold == 0
}
