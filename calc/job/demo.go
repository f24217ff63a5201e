package job

import (
	"setbook/calc/countdown"
	"setbook/calc/unit"
)

// Demo is an invented job to try with: a courtyard, from the slab to the hand-over, as it stands at an instant in the middle of
// the work. One countdown runs and one is over. House, client and crew are nobody's.
func Demo(now countdown.Instant) *Job {
	ago := func(hours float64) countdown.Instant { return max(0, now-countdown.Instant(hours*hour)) }
	j := &Job{
		ID: "demo", Name: "Courtyard (demo job)", Place: "Invented", Created: ago(75), Changed: now,
		Weather: Weather{When: ago(1), Air: "18 °C", Humidity: "55 %", Surface: "20 °C", Wind: "8 km/h"},
		HandOver: HandOver{
			Client: "The client of an invented house", Crew: "Crew of two",
			Care:    "Sweep, then wash with clean water and a neutral cleaner.\nNo acid on grout or sealant.\nLook at the sealant once a year, in the cold season.",
			Remarks: "Two pavers of the same batch are left in the shed.",
			Materials: []Material{
				{"m1", "Mortar", "Large and heavy tile mortar, white", "M-0417, M-0418"},
				{"m2", "Membrane", "Crack-isolation membrane", "K-22"},
				{"m3", "Grout", "Cement grout, grey", "G-1031"},
			},
		},
	}
	for _, e := range [...]struct{ calculator, name, link string }{
		{"slope", "House to drain", "v=1&drop=75+mm&run=4.2+m&cross=0+mm"},
		{"levels", "The slab", "v=1&grid=121+mm,120,120,119,120,121,120;92,90,89,90,90,91,90;61,60,59,58,60,60,61;30,31,30,29,30,30,31;1,0,0,1,0,0,1&step_x=1.4+m&step_y=1.5+m&edge=595+mm&building=top&bag_yield=14+L"},
		{"movement", "Joint grid", "v=1&span=3.6+m&length=8.4+m&paver=595+mm&joint=5+mm&summer=55+C&winter=-10+C&fit=20+C"},
		{"setout", "Courtyard", "v=1&outline=0+m,0+m;8.4+m,0+m;8.4+m,6+m;0+m,6+m&edges=building,open,open,wall&paver_l=595+mm&paver_w=595+mm&joint=5+mm&soft=12+mm&perimeter=10+mm"},
		{"film", "Membrane", "v=1&area=50.4+m2&wet=0.6+mm&coats=2&solids=60+%25&waste=10+%25&pail=15+L"},
		{"batch", "Mortar", "v=1&powder=25+kg&bag=25+kg&liquid=6.5+L&liquid_min=6+L&liquid_max=7+L&bucket=30+L"},
		{"pace", "Two setters", "v=1&crew=2&rate=2.5+m2/h&open=20+min&pot=60+min&paver_l=595+mm&paver_w=595+mm&joint=5+mm&bed=5+mm"},
		{"bed", "Terrace", "v=1&notch=square&width=12+mm&depth=12+mm&land=12+mm&hold=45+deg&skim=1+mm&hollow=1+mm&area=42.0+m2&waste=10+%25&bag_yield=17+L"},
		{"bed", "Along the house", "v=1&notch=square&width=12+mm&depth=12+mm&land=12+mm&hold=45+deg&skim=1+mm&hollow=0.5+mm&area=8.4+m2&waste=10+%25&bag_yield=17+L"},
		{"contact", "Third paver", "v=1&paver_l=595+mm&paver_w=595+mm&voids=60+mm,40+mm;30+mm,30+mm&corners=0"},
		{"grout", "All of it", "v=1&paver_l=595+mm&paver_w=595+mm&joint=5+mm&depth=20+mm&area=50.4+m2&powder_rate=1.6+kg/L&bag=5+kg&waste=10+%25"},
		{"sealant", "Field joints", "v=1&width=12+mm&depth=0+mm&run=20.4+m&cartridge=600+mL&waste=10+%25"},
		{"sealant", "Around the edge", "v=1&width=10+mm&depth=0+mm&run=14.4+m&cartridge=600+mL&waste=10+%25"},
		{"wait", "Foot traffic", "v=1&binder=portland&bag_time=24+h&bag_temp=21+C&temp=15+C"},
		{"gohold", "This morning", "v=1&air=16+C&humidity=60+%25&surface=18+C&wind=8+km/h&lowest=9+C&bag_low=5+C&bag_high=35+C&rain=48+h&stage=24+h"},
		{"lift", "One paver", "v=1&mass=16.5+kg&reach=350+mm&height=750+mm&travel=500+mm"},
	} {
		n := len(j.Entries)
		j.Entries = append(j.Entries, Entry{"e" + countdown.Pad(int64(n+1), 1), e.calculator, e.name, e.link, ago(74 - float64(n)*3)})
	}
	for _, c := range [...]struct {
		id, name   string
		from, long float64 // hours
	}{
		{"demo-membrane", "Set on the membrane", 50, 24},
		{"demo-foot", "Walk on the terrace", 22, 36.4},
	} {
		if begun, ok := countdown.Begin(c.id, c.name, "wait", j.Entries[13].Link, ago(c.from), unit.Span(c.long)*unit.Hour); ok {
			j.Countdowns = append(j.Countdowns, Countdown{begun.ID, begun.Text()})
		}
	}
	for _, m := range [...]struct {
		hours                     float64
		amount, product, lot, air string
	}{
		{30.8, "1 bag", "Mortar", "M-0417", "16 °C"},
		{30, "25 kg", "Mortar", "M-0417", "17 °C"},
		{29.3, "25 kg", "Mortar", "M-0417", "18 °C"},
		{28.5, "50 kg", "Mortar", "M-0418", "18 °C"},
		{22.5, "12.5 kg", "Mortar", "M-0418", "17 °C"},
	} {
		n := len(j.Mixes)
		j.Mixes = append(j.Mixes, Mix{ID: "x" + countdown.Pad(int64(n+1), 1), When: ago(m.hours), Amount: m.amount, Product: m.product, Lot: m.lot, Air: m.air, Surface: m.air})
	}
	j.Checks = []Check{
		{ID: "c1", When: ago(29.5), Where: "Third paver of the first row", Contact: "97 %"},
		{ID: "c2", When: ago(24), Where: "Beside the drain", Contact: "93 %", Corners: "One corner bare", Note: "Taken up, combed again with the deeper notch and set anew."},
		{ID: "c3", When: ago(23), Where: "Last row", Contact: "98 %"},
	}
	j.Notes = []Note{
		{"n1", ago(73), "Slab swept, wetted and looked over: one crack, not moving, bridged with membrane."},
		{"n2", ago(22), "Last paver set. Barriers up on both sides."},
	}
	return j
}
