package calc

import (
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Supply is a quantity to buy as an order names it, before it is rounded to whole packages: an order adds first and rounds once.
type Supply struct {
	Of *Material
	In words.Msg // what it is counted in: "bags"; "" where the figure has a unit of its own

	// Pack is one package, as far as the sheet knows it: the mass or the volume in it, what it yields, the face of a paver.
	// Supplies of one material are added where their packs and grades are the same.
	Pack  unit.Figure
	Grade float64 // any figure that tells two products of one material apart, as a film's thickness does; else 0

	Likely, Low, High float64 // in base units of the answer
}

// Material is what an order calls a thing that is bought.
type Material struct {
	Key  string // in links and files: never changes
	Name words.Msg
}

// The materials, in the order in which an order lists them.
var (
	BuyPavers  = &Material{"pavers", "Pavers"}
	BuyPatch   = &Material{"patch", "Patching mortar"}
	BuyFilm    = &Material{"film", "Primer or membrane"}
	BuyKits    = &Material{"kits", "Two-part kits"}
	BuyMortar  = &Material{"mortar", "Mortar"}
	BuyGrout   = &Material{"grout", "Grout"}
	BuySealant = &Material{"sealant", "Sealant"}
	BuyBacking = &Material{"backing", "Backing rod or bond-breaker tape"}
	BuyTape    = &Material{"tape", "Masking tape"}
	BuySpacers = &Material{"spacers", "Spacers"}
	BuyClips   = &Material{"clips", "Levelling clips"}
	BuyBlades  = &Material{"blades", "Diamond blades"}
	Supplies   = [...]*Material{BuyPavers, BuyPatch, BuyFilm, BuyKits, BuyMortar, BuyGrout, BuySealant, BuyBacking, BuyTape, BuySpacers, BuyClips, BuyBlades}
)
