package datasheet

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Offer is what one product, or one stage of it, puts into a calculator.
type Offer struct {
	Product *Product
	Stage   words.Msg // "" where the product is offered as a whole
	Texts   calc.Texts
	From    map[string]words.Msg // the label of the column that each came from, by the key of the input
}

// Offers lists what the products of a sheet put into a calculator, in the order of the sheet.
func (s *Sheet) Offers(calculator string) (offers []Offer) {
	for _, p := range s.Products {
		o := Offer{Product: p, Texts: calc.Texts{}, From: map[string]words.Msg{}}
		for i := range columns {
			c := &columns[i]
			text, given := p.Texts[c.Key]
			for _, t := range c.fills {
				if given && t.calculator == calculator {
					o.put(t.key, text, c.Label)
				}
			}
		}
		p.derive(calculator, &o)
		if calculator != waits {
			if len(o.Texts) > 0 {
				offers = append(offers, o)
			}
			continue
		}
		for _, st := range stages {
			if text, given := p.Texts[st.key]; given {
				staged := Offer{p, st.says, calc.Texts{}, map[string]words.Msg{}}
				for key, text := range o.Texts {
					staged.put(key, text, o.From[key])
				}
				staged.put(waitKey, text, find(st.key).Label)
				offers = append(offers, staged)
			}
		}
	}
	return offers
}

func (o *Offer) put(key, text string, from words.Msg) { o.Texts[key], o.From[key] = text, from }

// derive adds what a calculator asks for in another form than a data sheet prints it.
func (p *Product) derive(calculator string, o *Offer) {
	bag, yield := p.base["bag"], p.base["yield"]
	if calculator == "pace" && bag > 0 && yield > 0 {
		given := unit.Yield(yield * 1e-12 / (bag * 1e-9)) // nanolitres and micrograms to m3/kg
		text, _ := unit.Style{System: unit.Metric, Decimal: '.'}.Form(float64(given), unit.Form{Unit: unit.LitresPerKilogram, Digits: 4})
		o.put("powder_yield", text, "Wet mortar a bag, over the powder in it")
	}
	if bag, given := p.Texts["bag"]; calculator == "grout" && given && p.Type == "grout" {
		o.put("bag", bag, find("bag").Label)
	}
	if calculator == "pace" && p.Type != "mortar" {
		o.Texts = nil // grout has a pot life too, but paves nothing
	}
}
