package job

import (
	"setbook/calc/countdown"
	"setbook/calc/unit"
)

// Demo is an invented job to try with: a courtyard, from the slab to the hand-over, as it stands at an instant in the middle of
// the work. One countdown runs and one is over. House, client and crew are nobody's.
//
// Its sums tell of one slab: the outline is that of whole pavers one way and of equal cuts the other, and the areas, the widths
// and lengths of joints and the bag are those that the other entries come to. The bag is that of the order's own example, which orders this job.
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
		{"slope", "House to drain", "v=1&drop=132+mm&run=6+m&cross=0+mm"},
		{"levels", "The slab", "v=1&grid=132+mm,133,132,132,131,132,132,133,132;99,99,100,99,99,98,99,99,99;66,67,66,66,65,66,66,66,67;33,33,33,34,33,33,32,33,33;0,1,0,0,0,1,0,0,0&step_x=1+m&step_y=1.5+m&edge=595+mm&building=top&bag_yield=14+L"},
		{"movement", "Joint grid", "v=1&span=3+m&length=8+m&paver=595+mm&joint=5+mm&summer=50+C&winter=-5+C&fit=20+C"},
		{"setout", "Courtyard", "v=1&outline=0+m,0+m;8+m,0+m;8+m,6.0154+m;0+m,6.0154+m&edges=building,open,open,wall&paver_l=595+mm&paver_w=595+mm&joint=5+mm&soft=12.7+mm&perimeter=12.7+mm&start=fixed&start_x=0.40115+m&start_y=0.0127+m"},
		{"film", "Membrane", "v=1&area=48.12+m2&wet=0.6+mm&coats=2&solids=60+%25&waste=10+%25&pail=15+L"},
		{"batch", "Mortar", "v=1&powder=50+lb&bag=50+lb&liquid=4.9+L&liquid_min=4.5+L&liquid_max=5.3+L&bucket=30+L"},
		{"pace", "Two setters", "v=1&crew=2&rate=2.5+m2/h&open=20+min&pot=60+min&paver_l=595+mm&paver_w=595+mm&joint=5+mm&bed=5.2+mm&powder_yield=0.76+L/kg"},
		{"bed", "Terrace", "v=1&notch=square&width=12+mm&depth=12+mm&land=12+mm&hold=45+deg&skim=1+mm&hollow=1+mm&area=40.12+m2&waste=10+%25&bag_yield=17.2+L"},
		{"bed", "Along the house", "v=1&notch=square&width=12+mm&depth=12+mm&land=12+mm&hold=45+deg&skim=1+mm&hollow=0.5+mm&area=8+m2&waste=10+%25&bag_yield=17.2+L"},
		{"contact", "Third paver", "v=1&paver_l=595+mm&paver_w=595+mm&voids=60+mm,40+mm;30+mm,30+mm&corners=0"},
		{"grout", "All of it", "v=1&paver_l=595+mm&paver_w=595+mm&joint=5+mm&depth=20+mm&area=48.12+m2&powder_rate=1.6+kg/L&bag=5+kg&waste=10+%25"},
		{"sealant", "Field joints", "v=1&width=12.7+mm&depth=0+mm&run=19.97+m&cartridge=600+mL&waste=10+%25&paver=20+mm&bed=5.2+mm"},
		{"sealant", "Around the edge", "v=1&width=12.7+mm&depth=0+mm&run=14.02+m&cartridge=600+mL&waste=10+%25&paver=20+mm&bed=5.2+mm"},
		{"wait", "Foot traffic", "v=1&binder=portland&bag_time=24+h&bag_temp=21+C&temp=15+C"},
		{"gohold", "This morning", "v=1&air=16+C&humidity=60+%25&surface=18+C&wind=8+km/h&lowest=9+C&bag_low=5+C&bag_high=35+C&rain=48+h&stage=24+h"},
		{"lift", "One paver", "v=1&mass=16.3+kg&reach=280+mm&height=750+mm&travel=500+mm"},
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
		{30, "50 lb", "Mortar", "M-0417", "17 °C"},
		{29.3, "50 lb", "Mortar", "M-0417", "18 °C"},
		{28.5, "50 lb", "Mortar", "M-0418", "18 °C"},
		{22.5, "25 lb", "Mortar", "M-0418", "17 °C"},
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
