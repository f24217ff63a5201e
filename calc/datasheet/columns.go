package datasheet

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

const nameKey, typeKey = "product", "type"

// kind is a set of the types of product.
type kind uint8

const (
	mortar kind = 1 << iota
	grout
	coating
	sealant
)

var kinds = map[string]kind{"mortar": mortar, "grout": grout, "coating": coating, "sealant": sealant}

const typeNames = "mortar, grout, coating, sealant"

// target is an input of a calculator.
type target struct{ calculator, key string }

// column is one field of a product: which types have it, and which inputs it fills.
type column struct {
	*calc.Input
	of    kind
	fills []target
}

var (
	density = unit.In(unit.PoundsPerGallon, unit.KilogramsPerLitre)
	tube    = unit.In(unit.FluidOunces, unit.Millilitres)
	film    = unit.In(unit.Mils, unit.Millimetres)
	turning = unit.Both(unit.RPM)
)

// columns are the fields in the order in which they are shown. Their limits are those of the inputs that they fill.
var columns = []column{
	{calc.Ask("bag", "", "Powder in a full bag", unit.PoundKg, unit.Kilogram, 60*unit.Kilogram, "50 lb").Input, mortar | grout, []target{{"batch", "bag"}}},
	{calc.Ask("liquid", "", "Liquid for a full bag", unit.QuartL, unit.Litre/10, 60*unit.Litre, "5.2 qt").Input, mortar | grout, []target{{"batch", "liquid"}}},
	{calc.Ask("liquid_min", "", "Least liquid on the bag", unit.QuartL, unit.Litre/10, 60*unit.Litre, "4.8 qt").Input, mortar | grout, []target{{"batch", "liquid_min"}}},
	{calc.Ask("liquid_max", "", "Most liquid on the bag", unit.QuartL, unit.Litre/10, 60*unit.Litre, "5.5 qt").Input, mortar | grout, []target{{"batch", "liquid_max"}}},
	{calc.Ask("wet_density", "", "Density of the wet mix", density, unit.Density(600), 2600, "1.6 kg/L").Input, mortar | grout, []target{{"batch", "wet_density"}}},
	{calc.Ask("yield", "", "Wet mortar a bag", unit.CubicFootL, unit.Litre, 100*unit.Litre, "0.6 ft3").Input, mortar, []target{{"bed", "bag_yield"}}},
	{calc.Ask("powder_rate", "", "Powder for the joint’s volume", density, unit.Density(500), 3000, "1.6 kg/L").Input, grout, []target{{"grout", "powder_rate"}}},
	{calc.Ask("open_time", "", "Open time", unit.MinSpan, 2*unit.Minute, 3*unit.Hour, "20 min").Input, mortar, []target{{"pace", "open"}}},
	{calc.Ask("pot_life", "", "Pot life", unit.MinSpan, 2*unit.Minute, 12*unit.Hour, "45 min").Input, mortar | grout | coating, []target{{"pace", "pot"}}},
	{calc.Ask("speed_max", "", "Fastest that the mix allows", turning, unit.PerMinute(50), 1500, "300 rpm").Input, mortar | grout | coating, []target{{"paddle", "limit"}}},
	{calc.Choose("binder", "Binder", "portland", calc.Option{Name: "rapid", Label: "Rapid-setting"}, calc.Option{Name: "portland", Label: "Portland cement, ordinary set"}).Input,
		mortar | grout, []target{{"wait", "binder"}}},
	{stage("foot_time", "Time until it takes feet"), mortar | grout | coating, nil},
	{stage("grout_time", "Time until it may be grouted"), mortar, nil},
	{stage("cover_time", "Time until it may be covered"), coating, nil},
	{stage("wheel_time", "Time until it takes wheels"), mortar | grout | coating, nil},
	{stage("cure_time", "Time until it is cured"), sealant, nil},
	{calc.Ask("times_at", "", "Temperature that the times are for", unit.Warmth, unit.Temperature(5), 40, "70 F").Input, mortar | grout | coating | sealant, []target{{"wait", "bag_temp"}, {"ripen", "reference"}}},
	{calc.Ask("dry_time", "", "Hours that it must stay dry", unit.HourSpan, 0, 168*unit.Hour, "24 h").Input, mortar | grout | coating | sealant, []target{{"gohold", "stage"}}},
	{calc.Ask("temp_min", "", "Least temperature on the bag", unit.Warmth, unit.Temperature(-20), 35, "50 F").Input, mortar | grout | coating | sealant, []target{{"gohold", "bag_low"}}},
	{calc.Ask("temp_max", "", "Highest temperature on the bag", unit.Warmth, unit.Temperature(0), 60, "90 F").Input, mortar | grout | coating | sealant, []target{{"gohold", "bag_high"}}},
	{calc.Ask("wet_film", "", "Wet film, each coat", film, 10*unit.Micrometre, 6*unit.Millimetre, "20 mil").Input, coating, []target{{"film", "wet"}}},
	{calc.Ask("coats", "", "Coats", unit.Whole1, unit.Count(1), 10, "2").Input, coating, []target{{"film", "coats"}}},
	{calc.Ask("solids", "", "Solids, by volume", unit.Share, unit.Ratio(0.05), 1, "60 %").Input, coating, []target{{"film", "solids"}}},
	{calc.Ask("pail", "", "Pail", unit.GallonL, unit.Litre/10, 1000*unit.Litre, "3.5 gal").Input, coating, []target{{"film", "pail"}}},
	{calc.Ask("part_a", "", "Part A in a full kit", unit.PoundKg, 10*unit.Gram, 250*unit.Kilogram, "8 lb").Input, grout | coating | sealant, []target{{"kit", "part_a"}}},
	{calc.Ask("part_b", "", "Part B in a full kit", unit.PoundKg, 10*unit.Gram, 250*unit.Kilogram, "2 lb").Input, grout | coating | sealant, []target{{"kit", "part_b"}}},
	{calc.Ask("cartridge", "", "Sealant in a cartridge", tube, 50*unit.Millilitre, 20*unit.Litre, "600 mL").Input, sealant, []target{{"sealant", "cartridge"}}},
	{calc.Ask("capability", "", "What the sealant takes", unit.Share, unit.Ratio(0.05), 1, "25 %").Input, sealant, []target{{"movement", "capability"}}},
}

func stage(key string, label words.Msg) *calc.Input {
	return calc.Ask(key, "", label, unit.HourSpan, 5*unit.Minute, 60*unit.Day, "24 h").Input
}

// stages are the columns that each give the one waiting time that the calculator wait asks for.
var stages = [...]struct {
	key  string
	says words.Msg
}{
	{"foot_time", "until feet"}, {"grout_time", "until grout"}, {"cover_time", "until it is covered"},
	{"wheel_time", "until wheels"}, {"cure_time", "until it is cured"},
}

// waits is the calculator that a stage's time fills, at waitKey.
const waits, waitKey = "wait", "bag_time"

// Field is a column as a page tells of it.
type Field struct {
	Key     string
	Label   words.Msg
	Example string
	Types   []string
}

// Fields lists every column but the name and the type, in order.
func Fields() []Field {
	var fields []Field
	for i := range columns {
		c := &columns[i]
		f := Field{Key: c.Key, Label: c.Label, Example: c.Example}
		for _, name := range [...]string{"mortar", "grout", "coating", "sealant"} {
			if c.of&kinds[name] != 0 {
				f.Types = append(f.Types, name)
			}
		}
		fields = append(fields, f)
	}
	return fields
}

func find(key string) *column {
	for i := range columns {
		if columns[i].Key == key {
			return &columns[i]
		}
	}
	return nil
}
